import { planImport } from '../../domain/jobs/importPlan.ts';
import type { ImportPlan } from '../../domain/jobs/importPlan.ts';
import { titleOf } from '../../domain/jobs/account.ts';
import { element } from '../dom.ts';
import type { JobStore } from '../storage/jobs.ts';
import type { JobOfFile } from '../storage/jobsFile.ts';
import { timeText } from './identity.ts';
import { paragraph } from './parts.ts';

/** What a file would do to one job of this device, or why it cannot be taken in. */
export type Reviewed =
  | { readonly plan: ImportPlan; readonly title: string }
  | { readonly plan: undefined; readonly title: string; readonly message: string };

/** Compares each job of a file with what is on the device. Nothing is written. */
export function reviewImport(store: JobStore, jobs: readonly JobOfFile[]): Promise<readonly Reviewed[]> {
  return Promise.all(jobs.map((job) => (job.ok ? reviewJob(store, job) : { plan: undefined, ...job.error })));
}

async function reviewJob(store: JobStore, { value: job }: Extract<JobOfFile, { ok: true }>): Promise<Reviewed> {
  const title = `“${titleOf(job)}”`;
  const here = await store.read(job.id);
  if (!here.ok) return { plan: undefined, title, message: here.error.message };
  const plan = planImport(here.value, job);
  return plan.ok ? { plan: plan.value, title } : { plan: undefined, title, message: plan.error.message };
}

/** Would taking it in change anything? */
export function changesSomething({ plan }: Reviewed): boolean {
  return plan?.kind === 'new' || plan?.kind === 'adds';
}

const mostListed = 20;

/** In plain words, what would change. */
export function reviewNodes(reviewed: Reviewed): Node[] {
  if (reviewed.plan === undefined) return [paragraph('job-problem', `${reviewed.title} cannot be taken in. ${reviewed.message}`)];
  const { plan, title } = reviewed;
  const { kind, added, onlyHere } = plan;
  const stay = onlyHere > 0 ? ` ${entries(onlyHere)} that only this device holds ${onlyHere === 1 ? 'stays' : 'stay'}.` : '';
  switch (kind) {
    case 'new':
      return [paragraph('import-words', `${title} is not on this device yet. It would be taken in with ${entries(added.length)}.`)];
    case 'same':
      return [paragraph('import-words', `${title} is on this device already, with every entry of the file. Nothing would change.`)];
    case 'older':
      return [paragraph('import-words', `The file is older than ${title} on this device, which has ${entries(onlyHere)} more. Nothing would change, and nothing is lost.`)];
    case 'adds':
      return [paragraph('import-words', `${entries(added.length)} would be added to ${title}:`), addedList(added), ...(stay === '' ? [] : [paragraph('import-words', stay.trim())])];
  }
}

function addedList(added: ImportPlan['added']): HTMLElement {
  const items = added.slice(0, mostListed).map(({ at, title }) => element('li', {}, `${timeText(at)}: ${title}`));
  const rest = added.length - items.length;
  return element('ul', { class: 'import-added' }, ...items, rest > 0 ? element('li', {}, `and ${entries(rest)} more`) : undefined);
}

function entries(count: number): string {
  return `${count} ${count === 1 ? 'entry' : 'entries'}`;
}
