import { shopExperience } from '../../domain/experience/experience.ts';
import type { FaultExperience, ShopExperience } from '../../domain/experience/experience.ts';
import { priorStrength } from '../../domain/experience/withExperience.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import { loadPlainBook } from '../jobs/data.ts';
import { dayText, now } from '../jobs/identity.ts';
import { button, paragraph, section } from '../jobs/parts.ts';
import { openJobStore } from '../storage/jobs.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';
import type { Settings } from '../storage/settings.ts';
import { toolsForm } from './toolsForm.ts';

/** `<shop-experience>`: the shop's own finished jobs beside the book's weights, the switch that joins them, and its tools. */
export class ShopExperiencePage extends HTMLElement {
  private readonly counts = element('div', {});
  private readonly note = element('p', { class: 'field-note', role: 'status' });

  connectedCallback(): void {
    void this.start();
  }

  private async start(): Promise<void> {
    const hint = paragraph('', 'Tick what is missing: a test that needs it is not proposed.');
    const tools = section('tools', 'shop-tools', 'Tools this shop has not got', hint, toolsForm());
    const store = openJobStore();
    const [book, stored] = await Promise.all([loadPlainBook(), store.list()]);
    store.close();
    const problem = book.ok ? (stored.ok ? undefined : stored.error.message) : book.error;
    if (!book.ok || !stored.ok) return this.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, problem), tools);
    this.draw(book.value, stored.value.jobs);
    this.replaceChildren(section('found', 'shop-found', 'Faults found and proven', this.counts), tools);
  }

  private draw(book: JobBook, jobs: readonly Job[]): void {
    const { experience: setting } = readSettings();
    const experience = shopExperience(book, jobs, setting.since);
    const change = (kept: Settings['experience'], said: string): void => {
      const written = writeSettings({ experience: kept });
      this.draw(book, jobs);
      this.note.textContent = written.ok ? said : written.error.message;
    };
    const focused = document.activeElement?.id ?? '';
    this.counts.replaceChildren(
      switchLine(setting, change),
      this.note,
      paragraph('', sinceWords(experience.jobs, setting.since)),
      ...tables(experience, setting.on),
      clearing(setting, change),
      ...howWords.map((words) => paragraph('field-hint', words)),
    );
    if (focused !== '') (document.getElementById(focused) ?? document.getElementById('found-heading'))?.focus();
  }
}

type Change = (setting: Settings['experience'], said: string) => void;

function switchLine(setting: Settings['experience'], change: Change): HTMLElement {
  const tick = element('input', { id: 'experience-on', type: 'checkbox', checked: setting.on });
  tick.addEventListener('change', () => {
    const on = 'On: belief in open jobs takes this shop’s jobs in from the next time a job is opened.';
    change({ ...setting, on: tick.checked }, tick.checked ? on : 'Off: the book’s weights alone count.');
  });
  return element('p', { class: 'field tick' }, tick, element('label', { for: 'experience-on' }, 'Join this shop’s finished jobs to the book’s weights'));
}

function sinceWords(jobs: number, since: string | undefined): string {
  const when = since === undefined ? '' : ` finished since ${dayText(since)}`;
  if (jobs === 0) return `No job${when} counts yet: it must be handed over with the repair proven.`;
  return jobs === 1 ? `One job${when} counts, handed over with the repair proven.` : `${jobs} jobs${when} count, handed over with the repair proven.`;
}

const howWords = [
  `The book’s weights are estimates and stand for ${priorStrength} jobs, itself an estimate: after ${priorStrength} finished jobs the shop’s ` +
    'count says as much as the book. A weight is for one place: a job on an engine with many plugs says less about each of them.',
  'Invented jobs, jobs handed over without proof, and repairs after which the same misfire came back are not counted as found.',
];

/** What was found stands open; the rest of the book is folded away. */
function tables({ faults }: ShopExperience, on: boolean): Node[] {
  const touched = faults.filter(({ found, cameBack }) => found > 0 || cameBack > 0);
  const rest = faults.filter((fault) => !touched.includes(fault));
  const title = touched.length === 0 ? `All ${rest.length} faults of the book` : `The other ${rest.length} faults of the book`;
  const fold = element('details', { class: 'other-faults' }, element('summary', { id: 'other-faults' }, title), table(rest, on, title));
  return [...(touched.length === 0 ? [] : [table(touched, on, 'Faults found in this shop')]), fold];
}

function table(faults: readonly FaultExperience[], on: boolean, label: string): HTMLElement {
  const headings = ['Fault', 'Book’s weight', 'Found here', 'Weight used', 'Mean minutes', 'Came back'];
  const head = element('tr', {}, ...headings.map((text) => element('th', { scope: 'col' }, text)));
  const rows = faults.map((fault) => row(fault, on));
  const all = element('table', { class: 'sheet-table' }, element('thead', {}, head), element('tbody', {}, ...rows));
  return element('div', { class: 'table-scroll', tabindex: 0, role: 'region', 'aria-label': label }, all);
}

function row({ fault, title, bookWeight, found, joinedWeight, meanMinutes, cameBack }: FaultExperience, on: boolean): HTMLElement {
  const minutes = meanMinutes === undefined ? '–' : String(Math.round(meanMinutes));
  const cells = [weightText(bookWeight), String(found), weightText(on ? joinedWeight : bookWeight), minutes, String(cameBack)];
  return element('tr', { 'data-fault': fault }, element('th', { scope: 'row' }, title), ...cells.map((text) => element('td', {}, text)));
}

function weightText(weight: number): string {
  return weight.toLocaleString(undefined, { maximumSignificantDigits: 3 });
}

/** The first press asks, the second does it; the jobs themselves stay. */
function clearing(setting: Settings['experience'], change: Change): HTMLElement {
  const place = element('div', {});
  const ask = button('experience-clear', 'second-action', 'Start counting afresh', () => {
    const sure = button('experience-clear-sure', 'danger-action', 'Yes, leave them out', () =>
      change({ ...setting, since: now() }, 'Only jobs finished from now on count. The jobs themselves are untouched.'),
    );
    const keep = button('experience-clear-not', 'second-action', 'No, keep counting', () => {
      place.replaceChildren(line);
      ask.focus();
    });
    place.replaceChildren(paragraph('', 'Every job finished until now would be left out of the count. The jobs themselves stay.'), element('p', { class: 'actions' }, sure, keep));
    keep.focus();
  });
  const again = button('experience-all', 'second-action', 'Count the earlier jobs again', () => change({ on: setting.on }, 'All finished jobs on this device count.'));
  const line = element('p', { class: 'actions' }, ask, setting.since === undefined ? undefined : again);
  place.append(line);
  return place;
}
