import { readBookData } from '../bookData.ts';
import { bookAddress, element } from '../dom.ts';
import { findWords, type Answers } from './answers.ts';
import { findCode, looksLikeCode, type CodeAnswer, type CodeIndex } from './codeSearch.ts';
import { partsOfBook, type Hit } from './fullText.ts';

/** The list of codes is fetched only for a query that may be one. */
async function findCodeInBook(query: string): Promise<CodeAnswer | undefined> {
  return looksLikeCode(query) ? findCode(query, await readBookData<CodeIndex>('search-codes')) : undefined;
}

const perPart = 3;

/**
 * `<book-search>`: answers as you type. A trouble code is looked up exactly and stands alone; words go through the text of the book.
 */
export class BookSearch extends HTMLElement {
  private turn = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  private get input(): HTMLInputElement | null {
    return this.querySelector('input[type="search"]');
  }

  connectedCallback(): void {
    const { input } = this;
    if (!input) return;
    const asked = new URLSearchParams(location.search).get('q');
    if (asked && this.dataset['filters']) input.value = asked;
    input.addEventListener('input', () => this.soon());
    this.addEventListener('keydown', (event) => this.onKey(event));
    this.querySelector('form')?.addEventListener('submit', (event) => void this.onSubmit(event));
    if (this.dataset['filters']) void this.addFilters();
    if (input.value) void this.answer();
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.answer(), 120);
  }

  private get query(): string {
    return this.input?.value.trim() ?? '';
  }

  private get parts(): string[] {
    return [...this.querySelectorAll<HTMLInputElement>('[data-part]:checked')].map((box) => box.value);
  }

  /** Enter on an exact code opens its page; any other query opens the search page, or stays there. */
  private async onSubmit(event: Event): Promise<void> {
    event.preventDefault();
    const { query } = this;
    const code = await findCodeInBook(query).catch(() => undefined);
    if (code?.kind === 'found') location.assign(bookAddress(code.page));
    else if (this.dataset['filters']) await this.answer();
    else location.assign(`${bookAddress('search/')}?q=${encodeURIComponent(query)}`);
  }

  /** Arrow keys go through the results, Escape back to the field. */
  private onKey(event: KeyboardEvent): void {
    const links = [...this.querySelectorAll<HTMLElement>('[data-results] a, [data-results] button')];
    const at = links.indexOf(document.activeElement as HTMLElement);
    if (event.key === 'Escape') {
      if (at >= 0) this.input?.focus();
      else this.show([]);
      return;
    }
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0 || links.length === 0) return;
    event.preventDefault();
    const next = at + step;
    if (next < 0) this.input?.focus();
    else links[Math.min(next, links.length - 1)]?.focus();
  }

  private async answer(): Promise<void> {
    const turn = ++this.turn;
    const { query, parts } = this;
    if (query === '' && parts.length === 0) return this.show([]);
    try {
      const found = await this.find(query, parts);
      if (turn === this.turn) this.show(found);
    } catch {
      if (turn === this.turn) this.show([element('p', { class: 'search-note' }, 'The search could not be read. The book may not be whole on this device: go back to where the network is and open it once more.')]);
    }
  }

  private async find(query: string, parts: readonly string[]): Promise<Node[]> {
    const code = await findCodeInBook(query);
    if (code?.kind === 'found') {
      return [element('p', { class: 'search-code' }, element('a', { href: bookAddress(code.page) }, element('strong', {}, code.code), ` - ${code.title}`))];
    }
    if (code) return [element('p', { class: 'search-note' }, code.says)];
    const answers = await findWords(query, parts);
    return answers.hits.length === 0 ? this.nothing(query, answers.near) : [...notes(query, answers), ...hitsByPart(answers.hits)];
  }

  private nothing(query: string, near: readonly string[]): Node[] {
    const note = element('p', { class: 'search-note' }, nothingFound(query));
    if (near.length === 0) return [note];
    const offers = near.map((word) => {
      const offer = element('button', { type: 'button', class: 'plain' }, word);
      offer.addEventListener('click', () => {
        if (this.input) this.input.value = word;
        this.input?.focus();
        void this.answer();
      });
      return offer;
    });
    return [note, element('p', { class: 'search-note' }, 'Words spelled nearly so: ', ...offers)];
  }

  private show(nodes: readonly Node[]): void {
    const results = this.querySelector('[data-results]');
    results?.replaceChildren(...nodes);
    this.classList.toggle('has-results', nodes.length > 0);
  }

  private async addFilters(): Promise<void> {
    const parts = await partsOfBook().catch(() => ({}));
    const boxes = Object.entries(parts).map(([part, count]) =>
      element('label', { class: 'tick' }, element('input', { type: 'checkbox', value: part, 'data-part': true }), `${part} (${count})`),
    );
    if (boxes.length === 0) return;
    // Folded, so that on a phone the answers stand right under the field.
    const list = element('fieldset', {}, element('legend', {}, 'Parts of the book'), ...boxes);
    const group = element('details', { class: 'search-parts' }, element('summary', {}, 'Only some parts of the book'), list);
    group.addEventListener('change', () => void this.answer());
    this.querySelector('[data-results]')?.before(group);
  }
}

function nothingFound(query: string): string {
  return `Nothing found for "${query}".`;
}

function notes(query: string, { others, instead, leftOut }: Answers): Node[] {
  const lines = [
    ...(instead === undefined ? [] : [`${nothingFound(query)} These are for "${instead}".`]),
    ...(others.length > 0 ? [`Also searched: ${others.join(', ')}.`] : []),
    ...(leftOut.length > 0 ? [`Left out, on no page found: ${leftOut.join(', ')}.`] : []),
  ];
  return lines.map((line) => element('p', { class: 'search-note' }, line));
}

function hitsByPart(hits: readonly Hit[]): Node[] {
  const parts = [...new Set(hits.map((hit) => hit.part))];
  return parts.map((part) => {
    const own = hits.filter((hit) => hit.part === part);
    const rows = (parts.length === 1 ? own : own.slice(0, perPart)).map((hit) => element('li', {}, element('a', { href: hit.page }, hit.title), excerpt(hit)));
    const section = element('section', { class: 'search-part' }, element('h2', {}, part), element('ul', {}, ...rows));
    section.setAttribute('aria-label', `Results in ${part}`);
    return section;
  });
}

function excerpt(hit: Hit): HTMLElement {
  return element('span', { class: 'excerpt' }, ...hit.excerpt.map((piece) => (piece.matched ? element('mark', {}, piece.text) : piece.text)));
}
