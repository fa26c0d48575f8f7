import { element } from '../dom.ts';

/** What a screen remembers between two drawings: typed words, opened folds, choices made. */
export class ScreenMemory {
  private readonly texts: Map<string, string>;
  private readonly open = new Set<string>();
  private readonly keep: (texts: ReadonlyMap<string, string>) => void;

  /** Starts with words kept from before; `keep` is called whenever they change. */
  constructor(texts: ReadonlyMap<string, string> = new Map(), keep: (texts: ReadonlyMap<string, string>) => void = () => undefined) {
    this.texts = new Map(texts);
    this.keep = keep;
  }

  text(key: string): string | undefined {
    return this.texts.get(key);
  }

  setText(key: string, value: string): void {
    this.texts.set(key, value);
    this.keep(this.texts);
  }

  isOpen(key: string): boolean {
    return this.open.has(key);
  }

  setOpen(key: string, open: boolean): void {
    if (open) this.open.add(key);
    else this.open.delete(key);
  }

  /** Forgets what was typed into a form, once it is safely in the record; gives back the way to remember it again. */
  forget(form: string): () => void {
    const forgotten = [...this.texts].filter(([key]) => key.startsWith(`${form}.`));
    for (const [key] of forgotten) this.texts.delete(key);
    this.keep(this.texts);
    return () => forgotten.forEach(([key, value]) => this.setText(key, value));
  }
}

export function button(id: string, className: string, label: string, pressed: () => void): HTMLButtonElement {
  const made = element('button', { id, type: 'button', class: className }, label);
  made.addEventListener('click', pressed);
  return made;
}

/** A fold that stays as it was left when the screen is drawn again. Its content is made when it is first opened. */
export function fold(memory: ScreenMemory, key: string, className: string, summary: readonly (Node | string)[], content: () => readonly Node[]): HTMLElement {
  const made = element('details', { class: className, open: memory.isOpen(key) }, element('summary', { id: `${key}-summary` }, ...summary));
  const fill = (): void => {
    if (made.children.length === 1) made.append(...content());
  };
  if (made.open) fill();
  made.addEventListener('toggle', () => {
    memory.setOpen(key, made.open);
    if (made.open) fill();
  });
  return made;
}

/** A fold whose content is there from the start, so that it can be read and pointed at while it is shut. */
export function filledFold(memory: ScreenMemory, key: string, className: string, summary: string, content: readonly Node[]): HTMLElement {
  const made = fold(memory, key, className, [summary], () => []);
  made.append(...content);
  return made;
}

/** A part of the screen with a heading that can take the focus. */
export function section(id: string, className: string, heading: string, ...content: readonly (Node | undefined)[]): HTMLElement {
  return element(
    'section',
    { class: className, 'aria-labelledby': `${id}-heading` },
    element('h2', { id: `${id}-heading`, tabindex: -1 }, heading),
    ...content,
  );
}

export function list(className: string, items: readonly string[]): HTMLElement | undefined {
  return items.length === 0 ? undefined : element('ul', { class: className }, ...items.map((item) => element('li', {}, item)));
}

export function paragraph(className: string, text: string): HTMLElement {
  return element('p', { class: className }, text);
}
