import type { JobBook } from '../../domain/jobs/book.ts';
import { bookAddress, element } from '../dom.ts';

/** The bench or the sheet of one job. */
export function jobAddress(page: 'bench' | 'sheet', id: string): string {
  return `${bookAddress(`jobs/${page}/`)}?job=${encodeURIComponent(id)}`;
}

/** The job that the address names; empty where it names none. */
export function jobInAddress(): string {
  return new URLSearchParams(location.search).get('job') ?? '';
}

export const jobNotHere = 'This job is not on this device. Open its file from the list of jobs.';

/** A plain line in place of the job, with the way on; the page keeps its heading. */
export function sayInstead(host: HTMLElement, message: string): void {
  const way = element('a', { href: bookAddress('jobs/'), class: 'second-action' }, 'All jobs');
  const heading = host.querySelector('h1') ?? '';
  host.replaceChildren(heading, element('p', { class: 'job-problem', role: 'alert' }, message), element('p', { class: 'actions' }, way));
}

const severities = ['danger', 'warning', 'care'];

/** The short sentence of each caution, the gravest first, to stand before the action. */
export function cautionNodes(book: JobBook, ids: readonly string[]): Node[] {
  return book.cautions
    .filter((caution) => ids.includes(caution.id))
    .toSorted((one, other) => severities.indexOf(one.severity) - severities.indexOf(other.severity))
    .map(({ severity, title, short, address }) => element('p', { class: `caution is-${severity}` }, element('a', { href: bookAddress(address) }, title), `: ${short}`));
}
