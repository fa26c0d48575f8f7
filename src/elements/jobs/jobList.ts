import { titleOf } from '../../domain/jobs/account.ts';
import { newJob, appendEvent } from '../../domain/jobs/edit.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { readJob } from '../../domain/jobs/file.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import { inventedSource, stageTitles } from '../../domain/jobs/types.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { bookAddress, element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import { backupReminder, forgetSavedToFile, readSavedToFile } from '../storage/backups.ts';
import { writeDrafts } from '../storage/drafts.ts';
import { openJobStore } from '../storage/jobs.ts';
import type { JobStore, StoredJobs } from '../storage/jobs.ts';
import { loadBook, loadDemoJob, loadDemoList } from './data.ts';
import type { DemoJobEntry } from './data.ts';
import { downloadJob } from './download.ts';
import { engineForm } from './engineForm.ts';
import { belongsInFile } from './fileReminder.ts';
import { FileOpener } from './fileOpener.ts';
import { newId, now, timeText } from './identity.ts';
import { button, fold, paragraph, ScreenMemory, section } from './parts.ts';
import { safeKeeping } from './safeKeeping.ts';
import { jobAddress } from './shared.ts';
import { sharedFold, sharedLine } from './sharedFold.ts';

/** `<job-list>`: the jobs on this device, a new one, one from a file, and the invented ones. */
export class JobList extends HTMLElement {
  private readonly store: JobStore = openJobStore();
  private readonly memory = new ScreenMemory();
  private readonly jobs = element('div', { class: 'jobs' });
  private readonly note = element('p', { class: 'field-note', role: 'status' });
  private readonly newJobNote = element('div', { class: 'new-job-note' });
  private stopWatching: (() => void) | undefined;

  connectedCallback(): void {
    void this.start();
  }

  disconnectedCallback(): void {
    this.stopWatching?.();
    this.store.close();
  }

  private async start(): Promise<void> {
    const book = await loadBook();
    if (!book.ok) return this.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, book.error));
    const draw = (): Promise<void> => this.drawJobs(book.value);
    this.stopWatching = this.store.watch(inTurn(draw));
    await draw();
    const opener = new FileOpener(this.store, (onlyJob) => (onlyJob === undefined ? void draw() : location.assign(jobAddress('bench', onlyJob))));
    this.replaceChildren(
      section('jobs-here', 'jobs-here', 'Jobs on this device', belongsInFile(), this.jobs, this.note, sharedLine()),
      section('new-job', 'new-job', 'New job', this.newJobForm(book.value), this.newJobNote),
      section('other-jobs', 'other-jobs', 'From elsewhere', opener.node, this.demo()),
      section('shop', 'shop', 'This shop', ...shopLinks(), sharedFold(this.memory)),
    );
  }

  private async drawJobs(book: JobBook): Promise<void> {
    const stored = await this.store.list();
    if (!stored.ok) return this.jobs.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, stored.error.message));
    const { jobs, unreadable } = stored.value;
    const none = jobs.length === 0 ? [paragraph('lead', 'None yet. Start one below.')] : [];
    this.jobs.replaceChildren(
      ...none,
      element('ul', { class: 'job-list' }, ...jobs.map((job) => this.row(job, book))),
      ...unreadable.map(unreadableRow),
      ...safeKeeping(jobs, () => this.savedAll(jobs.length, book)),
    );
  }

  private savedAll(count: number, book: JobBook): void {
    this.note.textContent = `${count} ${count === 1 ? 'job was' : 'jobs were'} handed to the browser as one file.`;
    void this.drawJobs(book).then(() => document.getElementById('save-all')?.focus());
  }

  private row(job: Job, book: JobBook): HTMLElement {
    const { stage, engine } = deriveJob(job.events, book);
    const invented = job.source.startsWith(inventedSource) ? element('span', { class: 'invented' }, job.source) : undefined;
    const changed = job.events.at(-1)?.at ?? job.createdAt;
    const link = element('a', { class: 'job-link', href: jobAddress('bench', job.id) }, element('strong', {}, titleOf(job)));
    const facts = `${engine ? `${engine.layout.title}; ` : ''}${stageTitles[stage]}; last changed ${timeText(changed)}`;
    const more = fold(this.memory, `job-${job.id}`, 'job-more', ['Save or remove'], () => [
      element(
        'p',
        { class: 'actions' },
        button(`save-${job.id}`, 'second-action', 'Save job to a file', () => this.saveJob(job, book)),
        button(`remove-${job.id}`, 'danger-action', 'Remove from this device', () => void this.removeJob(job, book)),
      ),
      paragraph('field-hint', 'Removing cannot be undone: save the job to a file first.'),
    ]);
    const due = backupReminder(job, readSavedToFile(job.id), now());
    return element('li', {}, link, invented, paragraph('job-facts', facts), due === undefined ? undefined : paragraph('save-reminder', due), more);
  }

  private saveJob(job: Job, book: JobBook): void {
    downloadJob(job);
    void this.drawJobs(book).then(() => document.getElementById(`save-${job.id}`)?.focus());
  }

  private async removeJob(job: Job, book: JobBook): Promise<void> {
    const removed = await this.store.remove(job.id);
    if (removed.ok) {
      writeDrafts(job.id, new Map());
      forgetSavedToFile(job.id);
    }
    this.note.textContent = removed.ok ? `“${titleOf(job)}” was removed from this device.` : removed.error.message;
    await this.drawJobs(book);
    document.getElementById('jobs-here-heading')?.focus();
  }

  /** Pages of codes and engines lead here with `?codes=` and `?engine=`: the engine is chosen, the codes wait in their form. */
  private newJobForm(book: JobBook): HTMLFormElement {
    const asked = new URLSearchParams(location.search);
    const codes = (asked.get('codes') ?? '').slice(0, 500);
    const engineAsked = book.engines.find(({ id }) => id === asked.get('engine'));
    if (engineAsked) this.memory.setText('engine.engine', engineAsked.id);
    return engineForm(this.memory, book, 'Start the job', (engine) => {
      const at = now();
      const job = newJob(newId(), at, `Ignition Bench Book ${book.edition}`, engine.description.slice(0, 120));
      const started = appendEvent(job, engine, newId(), at);
      // Read back as a file would be, so that nothing is kept that could not be opened again.
      const sound = readJob(started);
      if (!sound.ok) return sound.error;
      if (codes !== '') writeDrafts(job.id, new Map([['codes-read.text', codes]]));
      void this.open(sound.value).then((problem) => this.notStarted(sound.value, problem));
      return undefined;
    });
  }

  /** The form still holds every word, and the job can leave the device as a file even where it cannot be kept. */
  private notStarted(job: Job, problem: string | undefined): void {
    if (problem === undefined) return this.newJobNote.replaceChildren();
    // The form took its words as safe and forgot them; they are told to it again as if they were just typed.
    for (const field of this.querySelectorAll('#engine [data-field]')) field.dispatchEvent(new Event('input', { bubbles: true }));
    const save = button('save-new', 'second-action', 'Save job to a file', () => downloadJob(job));
    this.newJobNote.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, problem), element('p', { class: 'actions' }, save));
  }

  /** Keeps the job, together with what this device already has of it, and goes to its bench; gives back what went wrong. */
  private async open(job: Job): Promise<string | undefined> {
    const written = await this.store.write(job);
    if (!written.ok) return written.error.message;
    location.assign(jobAddress('bench', written.value.job.id));
    return undefined;
  }

  /** The invented jobs, once their list is here. */
  private demo(): HTMLElement {
    const note = element('span', { class: 'field-note', role: 'status' });
    const jobs = element('ul', { class: 'job-list' });
    const demo = element('div', { class: 'demo' }, paragraph('invented', inventedSource), jobs, note);
    demo.hidden = true;
    void loadDemoList().then((entries) => {
      jobs.replaceChildren(...entries.map((entry) => this.demoRow(entry, note)));
      demo.hidden = entries.length === 0;
    });
    return demo;
  }

  private demoRow({ id, title, sentence }: DemoJobEntry, note: HTMLElement): HTMLElement {
    const take = async (): Promise<void> => {
      const job = readJob(await loadDemoJob(id));
      note.textContent = (job.ok ? await this.open(job.value) : 'This invented job is not in this edition of the book.') ?? '';
    };
    const open = button(`open-demo-${id}`, 'second-action', title, () => void take());
    return element('li', {}, element('p', { class: 'actions' }, open), paragraph('demo-sentence', sentence));
  }
}

/** One after the other, and once more for all that was asked for meanwhile: a thousand jobs that arrive are not drawn a thousand times. */
function inTurn(work: () => Promise<void>): () => void {
  let isBusy = false;
  let isWanted = false;
  return () => {
    isWanted = true;
    if (isBusy) return;
    isBusy = true;
    void (async () => {
      while (isWanted) {
        isWanted = false;
        const start = performance.now();
        await work();
        // A long list leaves most of the time to whatever else is going on.
        const pause = 5 * (performance.now() - start);
        await new Promise((resolve) => setTimeout(resolve, pause));
      }
      isBusy = false;
    })();
  };
}

function shopLinks(): Node[] {
  const link = element('a', { href: bookAddress('jobs/experience/') }, 'What this shop has found');
  return [element('p', {}, link, ': how often each fault was the one, and the tools this shop has not got.')];
}

function unreadableRow({ id, message, text }: StoredJobs['unreadable'][number]): HTMLElement {
  const save = button(`save-raw-${id}`, 'second-action', 'Save it to a file as it is', () => downloadText(text, `job-${id}.json`));
  return element('div', { class: 'job-problem' }, paragraph('lead', `One job here cannot be read. ${message}`), element('p', { class: 'actions' }, save));
}
