import { element } from '../dom.ts';
import { wantScript } from '../wantedScript.ts';
import type { readingForm } from './readingForm.ts';

type ReadingForm = typeof readingForm;

/** Where the script of the reading field leaves its function: most of a job is worked without a reading, so it comes when wanted. */
interface ReadingGlobal {
  ignitionBenchBookReadingForm?: ReadingForm;
}

const place = globalThis as ReadingGlobal;

/** Called by the script of the reading field. */
export function offerReadingForm(form: ReadingForm): void {
  place.ignitionBenchBookReadingForm = form;
}

/** The reading field, at once where its script is here, otherwise in place of a waiting line as soon as it has arrived. */
export function readingFormOnDemand(...wanted: Parameters<ReadingForm>): HTMLElement {
  if (place.ignitionBenchBookReadingForm) return place.ignitionBenchBookReadingForm(...wanted);
  const waiting = element('p', { class: 'lead', role: 'status' }, 'The reading field is being fetched ...');
  void wantScript('assets/bench-reading.js').then((arrived) => {
    const made = arrived ? place.ignitionBenchBookReadingForm?.(...wanted) : undefined;
    if (made) waiting.replaceWith(made);
    else waiting.textContent = 'The reading field could not be fetched. Choose what you found below, or reload the page where there is a network.';
  });
  return waiting;
}
