import type { CalculatorDefinition } from '../../domain/calculators/definition.ts';
import { presentCalculation } from '../../domain/calculators/present.ts';
import { runCalculator } from '../../domain/calculators/run.ts';
import { bookAddress, element } from '../dom.ts';
import { readChoice } from '../storage/choices.ts';
import { readSettings } from '../storage/settings.ts';
import { wantScript } from '../wantedScript.ts';
import type { keepInJob } from './keepInJob.ts';
import type { showMeterSelect } from './meterSelect.ts';
import type { showWallChart } from './wallChart.ts';

/** The calculator of the page: what it is and what its fields hold now. */
export interface CalculatorOnPage {
  readonly definition: CalculatorDefinition;
  readonly texts: () => Readonly<Record<string, string>>;
}

/** Sent by the form after each result, so that what else is on the page can follow. */
export const calculatedEvent = 'calculator-calculated';

/** Where the scripts that are fetched when wanted leave their functions. */
interface OnDemandGlobal {
  ignitionBenchBookKeepInJob?: typeof keepInJob;
  ignitionBenchBookWallChart?: typeof showWallChart;
  ignitionBenchBookMeterSelect?: typeof showMeterSelect;
}

export const onDemand = globalThis as OnDemandGlobal;

const notFetched = 'That part of the book could not be fetched. Reload the page where there is a network.';

/** The button that puts the result into the job that is open; without an open job there is none. */
export function offerKeeping(calculator: CalculatorOnPage): void {
  const button = document.querySelector<HTMLButtonElement>('[data-keep]');
  const note = document.querySelector<HTMLElement>('[data-keep-note]');
  const [id, engine, , title] = readChoice('open-job').split('\n');
  if (!button || !note || !id) return;
  button.textContent = `Keep in the job: ${title || engine || 'the open one'}`;
  button.hidden = false;
  let kept = '';
  button.addEventListener('click', () => {
    const texts = JSON.stringify(calculator.texts());
    if (texts === kept) return note.replaceChildren('These figures are already in the job. ', jobLink(id));
    void keep(calculator, id).then((problem) => {
      kept = problem === undefined ? texts : kept;
      note.replaceChildren(...(problem === undefined ? ['Kept in the job. ', jobLink(id)] : [problem]));
    });
  });
}

function jobLink(id: string): HTMLElement {
  return element('a', { href: `${bookAddress('jobs/bench/')}?job=${encodeURIComponent(id)}` }, 'Open the job');
}

/** Gives back what went wrong, or nothing. */
async function keep({ definition, texts }: CalculatorOnPage, job: string): Promise<string | undefined> {
  const typed = texts();
  const result = runCalculator(definition, typed);
  if (!result.ok) return `There is no result to keep yet. ${result.error.message}`;
  const outputs = presentCalculation(definition, result.value, { decimalMark: readSettings().decimalMark });
  if (!(await wantScript('assets/keep-in-job.js')) || !onDemand.ignitionBenchBookKeepInJob) return notFetched;
  return onDemand.ignitionBenchBookKeepInJob(job, definition, typed, outputs);
}

/** The fold of the wall chart is filled when it is first opened. */
export function offerWallChart(calculator: CalculatorOnPage): void {
  const fold = document.querySelector<HTMLDetailsElement>('[data-wall-chart]');
  const place = fold?.querySelector<HTMLElement>('[data-wall-chart-place]');
  if (!fold || !place) return;
  let filled = false;
  const fill = async (): Promise<void> => {
    if (!fold.open || filled) return;
    filled = true;
    place.textContent = 'The wall chart is being fetched ...';
    if ((await wantScript('assets/wall-chart.js')) && onDemand.ignitionBenchBookWallChart) {
      return onDemand.ignitionBenchBookWallChart(place, calculator);
    }
    filled = false;
    place.textContent = notFetched;
  };
  fold.addEventListener('toggle', () => void fill());
}

/** Where the accuracy of the meter is asked for, the fold that holds it offers the meters of the shop once it is opened. */
export function offerMeters(calculator: CalculatorOnPage): void {
  const fields = document.querySelector('calculator-form [data-field="meterPercent"]')?.closest<HTMLElement>('.fields');
  const fold = fields?.closest('details');
  if (!fields || !fold) return;
  const show = async (): Promise<void> => {
    // Where it does not arrive the figures are typed by hand, as without it.
    if (await wantScript('assets/meter-select.js')) onDemand.ignitionBenchBookMeterSelect?.(fields, calculator);
  };
  fold.addEventListener('toggle', () => void show(), { once: true });
}
