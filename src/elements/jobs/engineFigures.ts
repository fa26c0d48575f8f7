import type { MakerFigure } from '../../domain/jobs/types.ts';
import { bookAddress, element } from '../dom.ts';
import { shopFiguresOnDemand } from '../figures/onDemand.ts';
import type { ShopFigures } from '../figures/shopFigures.ts';
import type { ScreenMemory } from './parts.ts';

/** The maker's figures that an engine of the shop brings into the job; none for an id that is not one. */
export type EngineFigures = (id: string) => readonly MakerFigure[];

/**
 * Puts a choice of the shop's own engines above the layout in the engine form, once they are here and where there are any. Choosing one
 * chooses its layout, and its maker's figures come into the job with it.
 */
export function offerShopEngines(memory: ScreenMemory, form: HTMLFormElement): EngineFigures {
  let shop: ShopFigures | undefined;
  void shopFiguresOnDemand().then((figures) => {
    shop = figures;
    const layout = form.querySelector<HTMLSelectElement>('select[data-field="engine"]');
    if (!figures || !layout) return;
    const problems = figures.problems.map((problem) => element('p', { class: 'job-problem', role: 'alert' }, problem));
    layout.closest('.field')?.before(...(figures.engines.length > 0 ? [shopEngineField(memory, form, layout, figures)] : []), ...problems);
  });
  return (id) => shop?.figuresForJob(id) ?? [];
}

function shopEngineField(memory: ScreenMemory, form: HTMLFormElement, layout: HTMLSelectElement, { engines, figuresForJob }: ShopFigures): HTMLElement {
  const id = 'engine-shopEngine';
  const before = memory.text('engine.shopEngine') ?? '';
  const note = element('span', { class: 'field-note', id: `${id}-note`, role: 'status' });
  const options = [new Option('None of them', ''), ...engines.map((engine) => new Option(engine.title, engine.id, false, engine.id === before))];
  const select = element('select', { id, 'data-field': 'shopEngine', 'aria-describedby': note.id }, ...options);
  const say = (): void => {
    const { length } = figuresForJob(select.value);
    note.textContent = select.value === '' ? '' : `${length === 1 ? 'One figure of its maker comes' : `${length} figures of its maker come`} into the job.`;
  };
  select.addEventListener('change', () => {
    const engine = engines.find((one) => one.id === select.value);
    say();
    if (!engine) return;
    put(layout, engine.layout);
    const description = form.querySelector<HTMLInputElement>('[data-field="description"]');
    if (description?.value.trim() === '') put(description, engine.title);
  });
  say();
  const way = element('a', { href: bookAddress('my-engines/') }, 'My engines');
  return element('p', { class: 'field' }, element('label', { for: id }, 'One of my engines'), select, element('span', { class: 'field-hint' }, way), note);
}

/** As if it were typed, so that the form keeps it and offers what goes with it. */
function put(field: HTMLInputElement | HTMLSelectElement, value: string | undefined): void {
  if (value === undefined || (field instanceof HTMLSelectElement && ![...field.options].some((option) => option.value === value))) return;
  field.value = value;
  for (const type of ['input', 'change']) field.dispatchEvent(new Event(type, { bubbles: true }));
}
