import type { Job } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import { readJobFile, downloadJob } from './download.ts';
import { FileReminder } from './fileReminder.ts';
import { timeText } from './identity.ts';
import { button } from './parts.ts';
import type { JobSession } from './session.ts';

/** The line that says whether the job is safe, with the ways out when it is not. */
export class SaveLine {
  readonly node: HTMLElement;
  private readonly words = element('span', { class: 'save-words', role: 'status' });
  private readonly reminder = new FileReminder();
  private readonly again: HTMLButtonElement;
  private readonly session: () => JobSession | undefined;

  constructor(session: () => JobSession | undefined) {
    this.session = session;
    this.again = button('save-again', 'second-action', 'Try again', () => void session()?.save());
    const download = button('save-to-file', 'second-action', 'Save job to a file', () => {
      const open = session();
      if (!open) return;
      downloadJob(open.job);
      this.reminder.filed(open);
    });
    this.again.hidden = true;
    this.node = element('div', { class: 'save-line' }, this.words, this.again, download, this.reminder.node);
  }

  show(): void {
    const session = this.session();
    if (!session) return;
    const { status } = session;
    this.reminder.show(session);
    this.node.classList.toggle('is-failed', status.kind === 'failed');
    this.again.hidden = status.kind !== 'failed';
    if (status.kind === 'saving') this.words.textContent = 'Saving …';
    if (status.kind === 'failed') this.words.textContent = `Not saved. ${status.message}`;
    if (status.kind === 'saved') {
      const merged = status.merged ? ' Entries from another window were taken in.' : '';
      this.words.textContent = `Saved on this device, ${timeText(status.at)}.${merged}`;
    }
  }
}

/** A field that opens a job file; what is wrong with the file is said beside it. */
export function fileOpener(opened: (job: Job) => Promise<string | undefined>): HTMLElement {
  const input = element('input', { id: 'open-file', type: 'file', accept: '.json,application/json', 'aria-describedby': 'open-file-note' });
  const note = element('span', { class: 'field-note', id: 'open-file-note', role: 'status' });
  input.addEventListener('change', () => void take());
  const take = async (): Promise<void> => {
    const file = input.files?.[0];
    if (!file) return;
    const job = await readJobFile(file);
    const problem = job.ok ? await opened(job.value) : job.error;
    note.textContent = problem ?? '';
    input.setAttribute('aria-invalid', String(problem !== undefined));
    // The same file can be chosen again once it has been mended.
    input.value = '';
  };
  return element('p', { class: 'field' }, element('label', { for: 'open-file' }, 'Open job from a file'), input, note);
}
