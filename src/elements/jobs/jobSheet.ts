import type { Job, PictureTaken } from '../../domain/jobs/types.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import { reportOf } from '../../domain/jobs/report.ts';
import type { Report, ShopReading, ShopRow } from '../../domain/jobs/report.ts';
import { element } from '../dom.ts';
import { readDrafts } from '../storage/drafts.ts';
import { openJobStore } from '../storage/jobs.ts';
import { readSettings } from '../storage/settings.ts';
import { chosenConfidence } from './confidence.ts';
import { loadBook } from './data.ts';
import { dayText, timeText } from './identity.ts';
import { button, list, paragraph } from './parts.ts';
import { pictureFigure } from './pictureFigure.ts';
import { jobAddress, jobInAddress, jobNotHere, sayInstead } from './shared.ts';
import { comparedTable, table } from './table.ts';

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
    const derived = deriveJob(job.value.events, book.value, { confidence: chosenConfidence(readDrafts(id)) });
    this.replaceChildren(...sheet(reportOf(job.value, derived, book.value, { decimalMark: readSettings().decimalMark }), job.value));
  }
}

function sheet(report: Report, job: Job): Node[] {
  const print = button('print-sheet', 'main-action', 'Print', () => window.print());
  const back = element('a', { class: 'second-action', href: jobAddress('bench', report.jobId) }, 'Back to the job');
  return [element('p', { class: 'actions sheet-actions' }, print, back), sheetHead(report), customerPart(report), shopPart(report, picturesOf(job))];
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

function picturesOf({ events }: Job): ReadonlyMap<string, PictureTaken> {
  return new Map(events.filter((event) => event.kind === 'picture').map((event) => [event.id, event]));
}

function shopPart({ shop }: Report, pictures: ReadonlyMap<string, PictureTaken>): HTMLElement {
  const readings = shop.readings.map((row: ShopReading) => [row.title, row.reading, row.verdict, row.limits, row.source, row.meter]);
  const measured = table('sheet-table', ['Reading', 'Value', 'Verdict', 'Limit', 'Source', 'How taken'], readings);
  return element(
    'section',
    { class: 'sheet-shop' },
    element('h2', {}, 'For the shop'),
    ...(measured ? [element('h3', {}, 'Readings'), measured] : []),
    element('h3', {}, 'Everything that happened'),
    element('ol', { class: 'sheet-events' }, ...shop.rows.map((row) => shopRow(row, pictures.get(row.id)))),
  );
}

function shopRow({ at, title, lines, undone }: ShopRow, picture: PictureTaken | undefined): HTMLElement {
  const words = undone ? element('s', {}, title) : element('strong', {}, title);
  return element(
    'li',
    { class: undone ? 'is-undone' : undefined },
    element('time', { datetime: at }, timeText(at)),
    ' ',
    words,
    undone ? ' (undone)' : '',
    ...lines.map((line) => paragraph('entry-line', line)),
    picture && !undone ? pictureFigure(picture, picture.caption) : undefined,
  );
}
