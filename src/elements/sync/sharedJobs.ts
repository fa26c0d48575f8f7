import { bookAddress, element } from '../dom.ts';
import { newId } from '../jobs/identity.ts';
import { button, paragraph } from '../jobs/parts.ts';
import { browserLines } from './browserLines.ts';
import { readFolder } from './folder.ts';
import type { RoundReport } from './round.ts';
import type { SyncState } from './runner.ts';
import { openFolder } from './server.ts';
import { sharing } from './sharing.ts';
import { tryFolder } from './tryFolder.ts';
import { jobs } from './words.ts';

/** `<shared-jobs>`: switches the sharing of jobs on and off, and tells what the last look at the server found. */
export class SharedJobs extends HTMLElement {
  private readonly found = element('div', { class: 'shared-found', role: 'status' });
  private readonly news = element('div', { class: 'shared-news' });
  private shown = '';
  private stopListening: (() => void) | undefined;

  connectedCallback(): void {
    this.draw();
    this.stopListening = sharing.listen((state) => this.showNews(state));
  }

  disconnectedCallback(): void {
    this.stopListening?.();
  }

  private draw(): void {
    const folder = sharing.folder();
    this.found.replaceChildren();
    this.replaceChildren(...introduction(), ...(folder ? this.onPart(folder.typed, folder.checks) : this.offPart('../shared-jobs/')), this.found, this.news);
  }

  private onPart(typed: string, checks: boolean): Node[] {
    const off = button('shared-off', 'second-action', 'Switch sharing off on this device', () => {
      sharing.switchOff();
      this.draw();
      this.found.replaceChildren(paragraph('field-note', 'Switched off. The jobs stay, here and on the server.'));
    });
    const slower = checks ? '' : ' This server does not check before it overwrites, so each file is compared before it is sent and looked at again later.';
    return [paragraph('lead', `Switched on. Folder: ${typed}.${slower}`), element('p', { class: 'actions' }, off)];
  }

  private offPart(typed: string): Node[] {
    const input = element('input', { id: 'shared-folder', type: 'text', value: typed, autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', 'aria-describedby': 'shared-hint' });
    const label = element('label', { for: 'shared-folder' }, 'Folder on the shop’s server, counted from the book');
    const hint = element('span', { class: 'field-hint', id: 'shared-hint' }, 'On the same server as the book. How to make one: ', element('a', { href: bookAddress('hosting/') }, 'Put it on the shop’s server'), '.');
    const attempt = button('shared-try', 'second-action', 'Try it', () => void this.attempt(input, attempt));
    return [element('p', { class: 'field' }, label, input, hint), element('p', { class: 'actions' }, attempt)];
  }

  private async attempt(input: HTMLInputElement, pressed: HTMLButtonElement): Promise<void> {
    const address = readFolder(input.value, bookAddress(''));
    input.setAttribute('aria-invalid', String(!address.ok));
    if (!address.ok) return this.found.replaceChildren(paragraph('job-problem', address.error.message));
    pressed.disabled = true;
    this.found.replaceChildren(paragraph('field-note', 'Trying …'));
    const result = await tryFolder(openFolder(address.value, browserLines), new URL(address.value).pathname, newId());
    pressed.disabled = false;
    const words = result.words.map((text) => paragraph(result.works ? 'shared-finding' : 'job-problem', text));
    const on = result.works ? button('shared-on', 'main-action', 'Share the jobs of this device', () => this.switchOn(input.value.trim(), result.checks)) : undefined;
    this.found.replaceChildren(...words, ...(on ? [element('p', { class: 'actions' }, on)] : []));
  }

  private switchOn(typed: string, checks: boolean): void {
    const isOn = sharing.switchOn({ typed, checks });
    if (!isOn) return this.found.replaceChildren(paragraph('job-problem', 'This browser keeps no settings, so sharing cannot be switched on.'));
    this.draw();
    document.getElementById('shared-off')?.focus();
  }

  private showNews(state: SyncState | undefined): void {
    const report = state?.report;
    const shown = JSON.stringify(report ?? '');
    // Drawn again only when it changed, so that a button keeps the focus.
    if (shown === this.shown) return;
    this.shown = shown;
    this.news.replaceChildren(...(report ? newsNodes(report) : []));
  }
}

function introduction(): Node[] {
  return [
    paragraph('lead', 'Jobs can lie in a folder on the shop’s server as well, so that every bay sees and carries on the same ones.'),
    element('ul', { class: 'shared-terms' }, ...[
      'This device stays the place of work: without the server everything goes on, and is joined entry by entry when the server is back.',
      'Whoever can open the folder sees the jobs. Where it asks for a name and password the browser asks you; the book keeps neither.',
      'A job removed from this device stays on the server, and one removed from the server stays here.',
      'Invented jobs are not sent.',
    ].map((term) => element('li', {}, term))),
  ];
}

function newsNodes({ problems, gone, removedHere, strangers }: RoundReport): Node[] {
  const again = button('shared-send-again', 'second-action', 'Send them again', () => sharing.sendAgain(gone));
  const fetchThem = button('shared-fetch', 'second-action', 'Fetch them again', () => void sharing.fetchRemoved());
  return [
    ...(problems.length === 0 ? [] : [paragraph('lead', 'These files could not be settled. What is on this device was left as it is:'), ...problemList(problems)]),
    ...(gone.length === 0 ? [] : [paragraph('lead', `No longer on the server: ${jobs(gone.length)} of this device. They stay here.`), element('p', { class: 'actions' }, again)]),
    ...(removedHere === 0 ? [] : [paragraph('lead', `On the server, but removed from this device: ${jobs(removedHere)}.`), element('p', { class: 'actions' }, fetchThem)]),
    ...(strangers === 0 ? [] : [paragraph('field-hint', `In the folder there ${strangers === 1 ? 'is one file that is' : `are ${strangers} files that are`} no job by the name; left alone.`)]),
  ];
}

const mostListed = 20;

function problemList(problems: RoundReport['problems']): Node[] {
  const items = problems.slice(0, mostListed).map(({ file, message }) => element('li', {}, element('code', {}, file), `: ${message.replace(/\.$/, '')}.`));
  const rest = problems.length - items.length;
  return [element('ul', { class: 'shared-problems' }, ...items, rest > 0 ? element('li', {}, `and ${rest} more`) : undefined)];
}
