import { element } from '../dom.ts';
import { sharing } from './sharing.ts';
import { lineWords } from './words.ts';

/** `<shared-jobs-line>`: one line that says how things stand with the shop's server; empty where sharing is off. */
export class SharedJobsLine extends HTMLElement {
  private readonly words = element('span', { class: 'shared-words' });
  private readonly trouble = element('span', { class: 'shared-words', role: 'status' });
  private readonly again = element('button', { type: 'button', class: 'second-action' }, 'Try now');
  private stopListening: (() => void) | undefined;

  connectedCallback(): void {
    this.again.addEventListener('click', () => sharing.tryNow());
    this.replaceChildren(this.words, this.trouble, this.again);
    this.stopListening = sharing.listen((state) => {
      this.hidden = state === undefined;
      const { text, isTrouble } = state ? lineWords(state, timeOfDay) : { text: '', isTrouble: false };
      // Said aloud only when it changes, and only when it matters.
      setText(this.words, isTrouble ? '' : text);
      setText(this.trouble, isTrouble ? text : '');
      this.again.hidden = state?.report?.fault === undefined;
      this.again.disabled = state?.working === true;
    });
  }

  disconnectedCallback(): void {
    this.stopListening?.();
  }
}

function setText(node: HTMLElement, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}

function timeOfDay(at: number): string {
  return new Date(at).toLocaleTimeString(undefined, { timeStyle: 'short' });
}
