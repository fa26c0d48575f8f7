import { newJob, appendEvent } from '../../domain/jobs/edit.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { readJob } from '../../domain/jobs/file.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import { inventedSource, stageTitles } from '../../domain/jobs/types.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import { writeDrafts } from '../storage/drafts.ts';
import { openJobStore } from '../storage/jobs.ts';
import type { JobStore, StoredJobs } from '../storage/jobs.ts';
import { loadBook, loadDemoJob } from './data.ts';
import { downloadJob } from './download.ts';
import { engineForm } from './engineForm.ts';
import { belongsInFile } from './fileReminder.ts';
import { newId, now, timeText } from './identity.ts';
import { button, fold, paragraph, ScreenMemory, section } from './parts.ts';
import { fileOpener } from './saveLine.ts';
import { jobAddress } from './shared.ts';

/** `<job-list>`: the jobs on this device, a new one, one from a file, and the invented one. */
export class JobList extends HTMLElement {
  private readonly store: JobStore = openJobStore();
  private readonly memory = new ScreenMemory();
  private readonly jobs = element('div', { class: 'jobs' });
  private readonly note = element('p', { class: 'field-note', role: 'status' });
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
    this.stopWatching = this.store.watch(() => void draw());
    await draw();
    this.replaceChildren(
      section('jobs-here', 'jobs-here', 'Jobs on this device', belongsInFile(), this.jobs, this.note),
      section('new-job', 'new-job', 'New job', this.newJobForm(book.value)),
      section('other-jobs', 'other-jobs', 'From elsewhere', fileOpener((job) => this.open(job)), this.demo()),
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
    );
  }

  private row(job: Job, book: JobBook): HTMLElement {
    const { stage, engine } = deriveJob(job.events, book);
    const invented = job.source.startsWith(inventedSource) ? element('span', { class: 'invented' }, job.source) : undefined;
    const changed = job.events.at(-1)?.at ?? job.createdAt;
    const link = element('a', { class: 'job-link', href: jobAddress('bench', job.id) }, element('strong', {}, job.title));
    const facts = `${engine ? `${engine.layout.title}; ` : ''}${stageTitles[stage]}; last changed ${timeText(changed)}`;
    const more = fold(this.memory, `job-${job.id}`, 'job-more', ['Save or remove'], () => [
      element(
        'p',
        { class: 'actions' },
        button(`save-${job.id}`, 'second-action', 'Save job to a file', () => downloadJob(job)),
        button(`remove-${job.id}`, 'danger-action', 'Remove from this device', () => void this.removeJob(job, book)),
      ),
      paragraph('field-hint', 'Removing cannot be undone: save the job to a file first.'),
    ]);
    return element('li', {}, link, invented, paragraph('job-facts', facts), more);
  }

  private async removeJob(job: Job, book: JobBook): Promise<void> {
    const removed = await this.store.remove(job.id);
    if (removed.ok) writeDrafts(job.id, new Map());
    this.note.textContent = removed.ok ? `“${job.title}” was removed from this device.` : removed.error.message;
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
      void this.open(sound.value).then((problem) => (this.note.textContent = problem ?? ''));
      return undefined;
    });
  }

  /** Keeps the job, together with what this device already has of it, and goes to its bench; gives back what went wrong. */
  private async open(job: Job): Promise<string | undefined> {
    const written = await this.store.write(job);
    if (!written.ok) return written.error.message;
    location.assign(jobAddress('bench', written.value.job.id));
    return undefined;
  }

  private demo(): HTMLElement {
    const note = element('span', { class: 'field-note', role: 'status' });
    const take = async (): Promise<void> => {
      const job = readJob(await loadDemoJob());
      note.textContent = (job.ok ? await this.open(job.value) : 'The invented job is not in this edition of the book.') ?? '';
    };
    const open = button('open-demo', 'second-action', 'Open the invented job', () => void take());
    return element('div', { class: 'demo' }, paragraph('invented', inventedSource), element('p', { class: 'actions' }, open), note);
  }
}

function unreadableRow({ id, message, text }: StoredJobs['unreadable'][number]): HTMLElement {
  const save = button(`save-raw-${id}`, 'second-action', 'Save it to a file as it is', () => downloadText(text, `job-${id}.json`));
  return element('div', { class: 'job-problem' }, paragraph('lead', `One job here cannot be read. ${message}`), element('p', { class: 'actions' }, save));
}
