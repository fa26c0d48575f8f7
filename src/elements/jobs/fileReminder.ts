import { stages, stageTitles } from '../../domain/jobs/types.ts';
import type { Stage } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import { isPortable } from '../edition.ts';
import { readChoice, writeChoice } from '../storage/choices.ts';
import type { JobSession } from './session.ts';

const kept = 'job-in-file';

/** Where jobs are listed: what holds for a job that is worked from a folder. Nothing in the edition that is served. */
export function belongsInFile(): HTMLElement | undefined {
  if (!isPortable()) return undefined;
  return element(
    'p',
    { class: 'save-warning' },
    'This book was opened from a folder. A job worked here belongs in a file: the browser may forget what it keeps, and another computer does not have it. ' +
      'Save the job to a file after every stage, and open it from that file where you carry on.',
  );
}

/**
 * In the portable edition: asks for the job to be saved to a file, again after every stage. The stage that the file
 * has is remembered for the job last saved.
 */
export class FileReminder {
  readonly node = element('p', { class: 'file-reminder', role: 'status' });

  constructor() {
    this.node.hidden = !isPortable();
  }

  show({ job, derived }: JobSession): void {
    const [id, stage] = readChoice(kept).split('\n');
    const filed = id === job.id ? stages.find((one) => one === stage) : undefined;
    const isDue = filed !== derived.stage;
    this.node.classList.toggle('save-warning', isDue);
    const words = isDue ? reminder(filed, derived.stage) : `The job was saved to a file at this stage, ${stageTitles[derived.stage]}.`;
    // Said aloud only when it changes.
    if (this.node.textContent !== words) this.node.textContent = words;
  }

  /** The job has just been handed over as a file. */
  filed(session: JobSession): void {
    writeChoice(kept, `${session.job.id}\n${session.derived.stage}`);
    this.show(session);
  }
}

function reminder(filed: Stage | undefined, now: Stage): string {
  if (filed === undefined) return 'Opened from a folder: the browser may forget what it keeps. Save this job to a file now, and after every stage.';
  return `The file has this job as far as ${stageTitles[filed]}; it now stands at ${stageTitles[now]}. Save it to a file again.`;
}
