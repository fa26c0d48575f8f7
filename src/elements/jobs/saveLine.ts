import { element } from '../dom.ts';
import { backupReminder, readSavedToFile } from '../storage/backups.ts';
import { downloadJob } from './download.ts';
import { FileReminder } from './fileReminder.ts';
import { sharedLine } from './sharedFold.ts';
import { now, timeText } from './identity.ts';
import { button } from './parts.ts';
import type { JobSession } from './session.ts';

/** The line that says whether the job is safe, with the ways out when it is not. */
export class SaveLine {
  readonly node: HTMLElement;
  private readonly words = element('span', { class: 'save-words', role: 'status' });
  private readonly stageReminder = new FileReminder();
  private readonly reminder = element('p', { class: 'save-reminder' });
  private readonly again: HTMLButtonElement;
  private readonly session: () => JobSession | undefined;

  constructor(session: () => JobSession | undefined) {
    this.session = session;
    this.again = button('save-again', 'second-action', 'Try again', () => void session()?.save());
    const download = button('save-to-file', 'second-action', 'Save job to a file', () => {
      const open = session();
      if (!open) return;
      downloadJob(open.job);
      this.stageReminder.filed(open);
      this.show();
    });
    this.again.hidden = true;
    this.node = element('div', { class: 'save-line' }, this.words, this.again, download, this.stageReminder.node, this.reminder, sharedLine());
    addEventListener('beforeunload', (event) => {
      if (this.wouldBeLost()) event.preventDefault();
    });
  }

  show(): void {
    const session = this.session();
    if (!session) return;
    const { status, job } = session;
    this.stageReminder.show(session);
    this.node.classList.toggle('is-failed', status.kind === 'failed');
    this.again.hidden = status.kind !== 'failed';
    if (status.kind === 'saving') this.words.textContent = 'Saving …';
    if (status.kind === 'failed') {
      this.words.textContent = `Not saved. ${status.message}`;
      // The words above say the same, and more urgently.
      this.reminder.textContent = '';
    }
    if (status.kind === 'saved') {
      const merged = status.merged ? ' Entries from another window were taken in.' : '';
      this.words.textContent = `Saved on this device, ${timeText(status.at)}.${merged}`;
      this.reminder.textContent = backupReminder(job, readSavedToFile(job.id), now()) ?? '';
    }
    this.reminder.hidden = this.reminder.textContent === '';
  }

  /** Entries that stand neither on the device nor in a file. The browser then asks before the page is left: no line on a page can. */
  private wouldBeLost(): boolean {
    const session = this.session();
    return session?.status.kind === 'failed' && readSavedToFile(session.job.id)?.entries !== session.job.events.length;
  }
}
