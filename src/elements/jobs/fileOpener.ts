import { element } from '../dom.ts';
import { writeSavedToFile } from '../storage/backups.ts';
import type { JobStore } from '../storage/jobs.ts';
import { readJobsFile } from './download.ts';
import { now } from './identity.ts';
import { changesSomething, reviewImport, reviewNodes } from './importReview.ts';
import type { Reviewed } from './importReview.ts';
import { button } from './parts.ts';
import { jobAddress } from './shared.ts';

/**
 * A field that opens a file of one job or several. First it says what would change, and only a press takes it in. What is wrong with
 * the file is said beside the field.
 */
export class FileOpener {
  readonly node: HTMLElement;
  private readonly store: JobStore;
  private readonly taken: (onlyJob: string | undefined) => void;
  private readonly input = element('input', { id: 'open-file', type: 'file', accept: '.json,application/json', 'aria-describedby': 'open-file-note' });
  private readonly note = element('span', { class: 'field-note', id: 'open-file-note', role: 'status' });
  private readonly review = element('div', { class: 'import-review' });

  /** `taken` is called when the device holds more than before, with the id where the file was of one job. */
  constructor(store: JobStore, taken: (onlyJob: string | undefined) => void) {
    this.store = store;
    this.taken = taken;
    this.input.addEventListener('change', () => void this.choose());
    const label = element('label', { for: 'open-file' }, 'Open job from a file');
    this.node = element('div', {}, element('p', { class: 'field' }, label, this.input, this.note), this.review);
  }

  private async choose(): Promise<void> {
    const file = this.input.files?.[0];
    if (!file) return;
    this.review.replaceChildren();
    const jobs = await readJobsFile(file);
    const reviewed = jobs.ok ? await reviewImport(this.store, jobs.value) : [];
    const [first] = reviewed;
    // The same file can be chosen again once it has been mended.
    this.input.value = '';
    if (!jobs.ok) return this.say(jobs.error, true);
    if (first === undefined) return this.say('This file holds no job.', true);
    if (reviewed.length === 1 && first.plan === undefined) return this.say(first.message, true);
    this.say('', false);
    this.showReview(file.name, reviewed);
  }

  private say(message: string, isProblem: boolean): void {
    this.note.textContent = message;
    this.input.setAttribute('aria-invalid', String(isProblem));
  }

  private showReview(file: string, reviewed: readonly Reviewed[]): void {
    const wanted = reviewed.filter(changesSomething);
    const label = reviewed.length === 1 ? 'Take it in' : `Take in ${wanted.length} of ${reviewed.length} jobs`;
    const take = button('import-take', 'main-action', label, () => void this.takeIn(wanted, reviewed.length === 1, take));
    const leave = button('import-leave', 'second-action', 'Leave it', () => this.leave());
    const heading = element('h3', { tabindex: -1 }, `What ${file} would change`);
    const items = reviewed.map((one) => element('li', {}, ...reviewNodes(one)));
    this.review.replaceChildren(heading, element('ul', { class: 'import-jobs' }, ...items), element('p', { class: 'actions' }, wanted.length > 0 ? take : openLink(reviewed), leave));
    heading.focus();
  }

  private leave(): void {
    this.review.replaceChildren();
    this.say('Left as it was: nothing was taken in.', false);
    this.input.focus();
  }

  /** What the device holds by now may be more than when it was looked at; the store joins the entries of both. */
  private async takeIn(reviewed: readonly Reviewed[], isOnlyJob: boolean, pressed: HTMLButtonElement): Promise<void> {
    pressed.disabled = true;
    let count = 0;
    for (const { plan } of reviewed) {
      if (plan === undefined) continue;
      const written = await this.store.write(plan.job);
      if (!written.ok) {
        pressed.disabled = false;
        this.say(`${count === 0 ? 'Nothing was taken in.' : `Only ${count} of ${reviewed.length} jobs were taken in.`} ${written.error.message}`, true);
        return count > 0 ? this.taken(undefined) : undefined;
      }
      if (plan.kind === 'new') writeSavedToFile(plan.job, now());
      count += 1;
    }
    this.review.replaceChildren();
    this.say(`${count} ${count === 1 ? 'job was' : 'jobs were'} taken in.`, false);
    this.input.focus();
    this.taken(isOnlyJob ? reviewed[0]?.plan?.job.id : undefined);
  }
}

/** Where nothing would change, the way to the job that is here already. */
function openLink(reviewed: readonly Reviewed[]): HTMLElement | undefined {
  const plan = reviewed.length === 1 ? reviewed[0]?.plan : undefined;
  return plan && element('a', { class: 'second-action', href: jobAddress('bench', plan.job.id) }, 'Open the job as it is here');
}
