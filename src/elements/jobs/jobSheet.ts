import { deriveJob } from '../../domain/jobs/reduce.ts';
import { reportOf } from '../../domain/jobs/report.ts';
import type { ComparedReading, Report, ShopReading, ShopRow } from '../../domain/jobs/report.ts';
import { element } from '../dom.ts';
import { openJobStore } from '../storage/jobs.ts';
import { readSettings } from '../storage/settings.ts';
import { loadBook } from './data.ts';
import { dayText, timeText } from './identity.ts';
import { button, list, paragraph } from './parts.ts';
import { jobAddress, jobInAddress, jobNotHere, sayInstead } from './shared.ts';

/** `<job-sheet>`: the sheet of one job, `?job=<id>`, to read and to print. */
export class JobSheet extends HTMLElement {
  connectedCallback(): void {
    void this.start();
  }

  private async start(): Promise<void> {
    const id = jobInAddress();
    const store = openJobStore();
    const [book, job] = await Promise.all([loadBook(), store.read(id)]);
    store.close();
    if (!book.ok) return sayInstead(this, book.error);
    if (!job.ok) return sayInstead(this, job.error.message);
    if (job.value === undefined) return sayInstead(this, jobNotHere);
    const derived = deriveJob(job.value.events, book.value);
    this.replaceChildren(...sheet(reportOf(job.value, derived, book.value, { decimalMark: readSettings().decimalMark })));
  }
}

function sheet(report: Report): Node[] {
  const print = button('print-sheet', 'main-action', 'Print', () => window.print());
  const back = element('a', { class: 'second-action', href: jobAddress('bench', report.jobId) }, 'Back to the job');
  return [element('p', { class: 'actions sheet-actions' }, print, back), sheetHead(report), customerPart(report), shopPart(report)];
}

function sheetHead(report: Report): HTMLElement {
  const facts: readonly (readonly [string, string])[] = [
    ['Car', report.car],
    ['Reference', report.customerReference],
    ['Engine', report.engine],
    ['Job taken in', dayText(report.createdAt)],
    ['Stage', report.stage],
    ['Job number', report.jobId],
  ];
  const rows = facts.filter(([, value]) => value !== '').flatMap(([name, value]) => [element('dt', {}, name), element('dd', {}, value)]);
  return element(
    'header',
    { class: 'sheet-head' },
    element('h1', { class: 'job-title' }, report.title),
    report.invented ? paragraph('invented', report.source) : undefined,
    element('dl', { class: 'sheet-facts' }, ...rows),
  );
}

function customerPart({ customer }: Report): HTMLElement {
  const part = (heading: string, ...content: readonly (Node | undefined)[]): Node[] => {
    const present = content.filter((node) => node !== undefined);
    return present.length === 0 ? [] : [element('h3', {}, heading), ...present];
  };
  const text = (words: string): Node | undefined => (words === '' ? undefined : paragraph('sheet-words', words));
  return element(
    'section',
    { class: 'sheet-customer' },
    element('h2', {}, 'For the customer'),
    ...part('The complaint', text(customer.complaint), list('sheet-list', customer.signs)),
    ...part('What was wrong', text(customer.whatWasWrong)),
    ...part('How we know', list('sheet-list', customer.howWeKnow.tests), comparedTable(customer.howWeKnow.readings)),
    ...part('What was done', list('sheet-list', customer.whatWasDone)),
    ...part(customer.proven ? 'Proven' : 'Not proven', list('sheet-list', customer.proof)),
    ...part('What was not checked', list('sheet-list', customer.notChecked)),
    ...part('What to watch', list('sheet-list', customer.watch)),
    ...part('Cautions', list('sheet-list', customer.cautions.map(({ title, short }) => `${title}: ${short}`))),
    element('div', { class: 'signatures' }, paragraph('signature', 'Mechanic'), paragraph('signature', 'Customer'), paragraph('signature', 'Date')),
  );
}

function table(className: string, heads: readonly string[], rows: readonly (readonly string[])[]): HTMLElement | undefined {
  if (rows.length === 0) return undefined;
  const cells = (tag: 'th' | 'td', words: readonly string[]): HTMLElement[] =>
    words.map((word) => element(tag, tag === 'th' ? { scope: 'col' } : {}, word));
  const made = element(
    'table',
    { class: className },
    element('thead', {}, element('tr', {}, ...cells('th', heads))),
    element('tbody', {}, ...rows.map((row) => element('tr', {}, ...cells('td', row)))),
  );
  return element('div', { class: 'table-scroll', tabindex: 0, role: 'region', 'aria-label': heads.join(', ') }, made);
}

function comparedTable(readings: readonly ComparedReading[]): HTMLElement | undefined {
  const words = (side: ComparedReading['before']): string => (side ? `${side.reading}, ${side.verdict}` : '–');
  const rows = readings.map((reading) => [reading.title, words(reading.before), words(reading.after), `${reading.limits} (${reading.source})`]);
  return table('sheet-table', ['Measured', 'Before', 'After', 'Should be'], rows);
}

function shopPart({ shop }: Report): HTMLElement {
  const readings = shop.readings.map((row: ShopReading) => [row.title, row.reading, row.verdict, row.limits, row.source, row.meter]);
  const measured = table('sheet-table', ['Reading', 'Value', 'Verdict', 'Limit', 'Source', 'How taken'], readings);
  return element(
    'section',
    { class: 'sheet-shop' },
    element('h2', {}, 'For the shop'),
    ...(measured ? [element('h3', {}, 'Readings'), measured] : []),
    element('h3', {}, 'Everything that happened'),
    element('ol', { class: 'sheet-events' }, ...shop.rows.map(shopRow)),
  );
}

function shopRow({ at, title, lines, undone }: ShopRow): HTMLElement {
  const words = undone ? element('s', {}, title) : element('strong', {}, title);
  return element(
    'li',
    { class: undone ? 'is-undone' : undefined },
    element('time', { datetime: at }, timeText(at)),
    ' ',
    words,
    undone ? ' (undone)' : '',
    ...lines.map((line) => paragraph('entry-line', line)),
  );
}
