import { isPortable } from '../edition.ts';
import { wantScript } from '../wantedScript.ts';
import { fold, paragraph } from './parts.ts';
import type { ScreenMemory } from './parts.ts';

/** Where jobs are shared between bays, a line says how that stands. It comes to life with a script of its own; until then it is empty. */
export function sharedLine(): HTMLElement {
  return document.createElement('shared-jobs-line');
}

/** The way to switch sharing on; none in the edition that is opened from a folder, because it has no server. */
export function sharedFold(memory: ScreenMemory): HTMLElement | undefined {
  if (isPortable()) return undefined;
  return fold(memory, 'shared-jobs', 'shared-fold', ['Jobs shared between bays'], () => {
    const part = document.createElement('shared-jobs');
    part.append(paragraph('lead', 'This part is being fetched ...'));
    void wantScript('assets/shared-jobs.js').then((arrived) => {
      if (!arrived) part.replaceChildren(paragraph('job-problem', 'This part could not be fetched. Reload the page where there is a network.'));
    });
    return [part];
  });
}
