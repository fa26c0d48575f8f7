import type { CaptureReport } from '../../domain/captures/report/types.ts';
import { bookAddress, element } from '../dom.ts';
import { makeChoice } from '../reading/fields.ts';
import { readChoice } from '../storage/choices.ts';
import { wantScript } from '../wantedScript.ts';
import type { CaptureNoted, OfferedOutcome } from './keepCapture.ts';
import { capturesOnDemand } from './onDemand.ts';
import type { KeepingFunctions } from './onDemand.ts';

const notFetched = 'That part of the book could not be fetched. Reload the page where there is a network.';

async function keepingFunctions(): Promise<KeepingFunctions | undefined> {
  return (await wantScript('assets/captures-keep.js')) ? capturesOnDemand.ignitionBenchBookCaptures : undefined;
}

/** What can be done with a result in the job that is open: keep it, and write findings down as outcomes of tests. */
export function keepingNodes(report: CaptureReport, noted: CaptureNoted): Node[] {
  const [id, engine, , title] = readChoice('open-job').split('\n');
  if (!id) return [element('p', { class: 'quiet no-print' }, 'Open a job, and the result can be kept in it and its findings written down as tests.')];
  const note = element('p', { class: 'field-note', role: 'status', 'data-keep-note': true });
  const offers = element('div', { class: 'capture-offers', 'data-capture-offers': true });
  const button = element('button', { type: 'button', 'data-keep': true }, `Keep in the job: ${title || engine || 'the open one'}`);
  button.addEventListener('click', () => void once(button, note, id, (keeping) => keeping.writeIntoJob(id, keeping.captureBody(report, noted))));
  if (report.outcomes.length > 0) void fillOffers(offers, note, id, report, noted);
  return [element('p', { class: 'actions' }, button), note, offers];
}

/** Does what a button asks for, once: a second press must not write the same entry twice. */
async function once(button: HTMLButtonElement, note: HTMLElement, id: string, work: (keeping: KeepingFunctions) => Promise<string | undefined>): Promise<void> {
  button.disabled = true;
  const keeping = await keepingFunctions();
  const problem = keeping === undefined ? notFetched : await work(keeping);
  button.disabled = problem === undefined;
  note.replaceChildren(...(problem === undefined ? ['Written into the job. ', jobLink(id)] : [problem]));
}

function jobLink(id: string): HTMLElement {
  return element('a', { href: `${bookAddress('jobs/bench/')}?job=${encodeURIComponent(id)}` }, 'Open the job');
}

async function fillOffers(place: HTMLElement, note: HTMLElement, id: string, report: CaptureReport, noted: CaptureNoted): Promise<void> {
  const keeping = await keepingFunctions();
  const source = noted.inputs[0]?.text ?? '';
  const offers = keeping && (await keeping.offerOutcomes(id, report.outcomes, `From a record: ${source}`.slice(0, 400)));
  if (offers === undefined) return note.replaceChildren(notFetched);
  if (!offers.ok) return note.replaceChildren(offers.error);
  if (offers.value.length === 0) return;
  place.replaceChildren(element('h3', {}, 'Write a finding into the job'), element('p', { class: 'quiet' }, 'It then counts as evidence, like any other test.'), ...offers.value.map((offer, index) => offerNode(offer, index, id)));
}

function offerNode(offer: OfferedOutcome, index: number, id: string): HTMLElement {
  const [only] = offer.places;
  const words = `Write it down as the test “${offer.test}”, outcome “${offer.outcome.replace(/\.$/, '')}”`;
  const button = element('button', { type: 'button', 'data-write-outcome': true }, offer.places.length === 1 ? `${words}, ${only?.label ?? ''}` : words);
  const where = offer.places.length > 1 ? makeChoice('offer', { name: `place-${index}`, label: 'Where', value: only?.id ?? '', options: offer.places.map((place) => ({ value: place.id, label: place.label })) }) : undefined;
  const note = element('p', { class: 'field-note', role: 'status' });
  button.addEventListener('click', () => {
    const body = offer.bodyAt(where?.querySelector('select')?.value ?? only?.id ?? '');
    if (body) void once(button, note, id, (keeping) => keeping.writeIntoJob(id, body));
  });
  return element('div', { class: 'capture-offer' }, where, button, note);
}
