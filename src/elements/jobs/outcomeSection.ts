import { outcomesFromJudgement } from '../../domain/diagnosis/evidence.ts';
import type { OutcomeChances, Place, TestModel } from '../../domain/diagnosis/types.ts';
import type { PlaceNoted, TestDone } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import type { NewEvent } from './session.ts';
import { newId } from './identity.ts';
import { isRefusal, numberWithin } from './form.ts';
import { filledFold, paragraph } from './parts.ts';
import { readingFormOnDemand } from './readingOnDemand.ts';

export interface TestAtPlace {
  readonly test: TestModel;
  readonly place: Place;
  readonly partner?: Place;
  /** What the book reckons for it as the car stands. */
  readonly minutes: number;
}

/** What was found: a reading, judged while it is typed, where the test has one; and every outcome as a choice. */
export function outcomeSection(bench: Bench, at: TestAtPlace): Node[] {
  const said = saidWithIt(bench, at);
  return [
    element('h3', { class: 'outcomes-heading' }, 'I did it: what was found'),
    ...readingPart(bench, at, said),
    said.node,
    element('div', { class: 'outcomes' }, ...at.test.outcomes.map((outcome) => outcomeButton(bench, at, outcome.id, said))),
  ];
}

/** What is kept with whichever outcome is chosen. */
interface SaidWithIt {
  readonly node: HTMLElement;
  /** The note, and the minutes where they were typed; or what is wrong with them. */
  read(): { readonly note: string; readonly minutes?: number } | Refusal;
  /** Says what is wrong, at its field. */
  refuse(refusal: Refusal): void;
}

function saidWithIt(bench: Bench, at: TestAtPlace): SaidWithIt {
  const area = element('textarea', { id: 'outcome-note', rows: 2 });
  const minutes = element('input', { id: 'outcome-minutes', type: 'text', inputmode: 'numeric', autocomplete: 'off' });
  const note = extraField(bench, area, 'note', 'Note', 'Kept with the outcome you choose below.');
  const time = extraField(bench, minutes, 'minutes', 'Minutes it took', `The book reckons ${at.minutes}, and counts them where this is left empty.`);
  const folded = filledFold(bench.memory, 'outcome-said', 'outcome-said', 'Add a note, or the minutes it took', [note, time]);
  // What was typed stays in sight.
  if (area.value !== '' || minutes.value !== '') folded.setAttribute('open', '');
  return {
    node: folded,
    read: () => {
      const taken = numberWithin(minutes.value, 'minutes', 'Minutes it took', 0, 10_000);
      if (isRefusal(taken)) return taken;
      return { note: area.value.trim(), ...(taken === undefined ? {} : { minutes: taken }) };
    },
    refuse: ({ input, message }) => {
      const field = input === 'minutes' ? minutes : area;
      const words = (input === 'minutes' ? time : note).querySelector('.field-note');
      if (words) words.textContent = message;
      field.setAttribute('aria-invalid', 'true');
      folded.setAttribute('open', '');
      field.focus();
    },
  };
}

function extraField(bench: Bench, control: HTMLInputElement | HTMLTextAreaElement, name: string, label: string, hint: string): HTMLElement {
  const key = `outcome.${name}`;
  const words = element('span', { class: 'field-note', id: `${control.id}-words`, role: 'status' });
  control.value = bench.memory.text(key) ?? '';
  control.setAttribute('aria-describedby', `${control.id}-hint ${words.id}`);
  control.addEventListener('input', () => {
    bench.memory.setText(key, control.value);
    control.removeAttribute('aria-invalid');
    words.textContent = '';
  });
  return element('p', { class: 'field' }, element('label', { for: control.id }, label), control, element('span', { class: 'field-hint', id: `${control.id}-hint` }, hint), words);
}

function outcomeButton(bench: Bench, at: TestAtPlace, outcomeId: string, said: SaidWithIt): HTMLElement {
  const outcome = at.test.outcomes.find((candidate) => candidate.id === outcomeId);
  const made = element(
    'button',
    { type: 'button', class: 'outcome', id: `outcome-${outcomeId}` },
    element('strong', {}, outcome?.label ?? outcomeId),
    element('span', { class: 'outcome-meaning' }, outcome?.meaning ?? ''),
  );
  made.addEventListener('click', () => {
    const typed = said.read();
    const refused = isRefusal(typed) ? typed : record(bench, [testDone(at, { [outcomeId]: 1 }, typed)]);
    if (refused) said.refuse(refused);
  });
  return made;
}

/** The reading is kept even where it decides no outcome; then the outcome is chosen below it. */
function readingPart(bench: Bench, at: TestAtPlace, said: SaidWithIt): Node[] {
  const { test, place } = at;
  if (test.ranges.length === 0) return [];
  const where = { test: test.id, place: noted(place) };
  return [
    readingFormOnDemand(bench, `reading-${test.id}`, test.ranges, where, 'Keep this reading', (reading) => {
      const outcomes = outcomesFromJudgement(test, reading.judgement);
      const id = newId();
      const kept: NewEvent = { body: reading.body, id };
      if (Object.keys(outcomes).length === 0) return bench.session.add(kept);
      const typed = said.read();
      if (!isRefusal(typed)) return record(bench, [kept, testDone(at, outcomes, typed, id)]);
      said.refuse(typed);
      return typed;
    }),
    paragraph('or-choose', 'Or choose what you found:'),
  ];
}

function noted({ id, label }: Place): PlaceNoted {
  return { id, label };
}

function testDone({ test, place, partner }: TestAtPlace, outcomes: OutcomeChances, typed: { readonly note: string; readonly minutes?: number }, reading?: string): NewEvent {
  const body: Omit<TestDone, 'id' | 'sequence' | 'at'> = {
    kind: 'test-done',
    test: test.id,
    title: test.title,
    place: noted(place),
    ...(partner ? { partner: noted(partner) } : {}),
    outcomes,
    outcome: outcomeWords(test, outcomes),
    ...typed,
    ...(reading === undefined ? {} : { reading }),
  };
  return { body };
}

/** The outcome said in words; a doubtful reading names each outcome that still has a share worth naming. */
function outcomeWords(test: TestModel, outcomes: OutcomeChances): string {
  const shares = test.outcomes
    .map(({ id, label }) => ({ label, share: outcomes[id] ?? 0 }))
    .filter(({ share }) => share >= 0.05)
    .sort((one, other) => other.share - one.share);
  if (shares.length === 1) return shares[0]?.label ?? '';
  return shares.map(({ label, share }) => `${label} (${Math.round(share * 100)} %)`).join('; ').slice(0, 400);
}

function record(bench: Bench, events: readonly NewEvent[]): Refusal | undefined {
  const before = bench.chosen;
  const remember = bench.memory.forget('outcome');
  bench.choose(undefined);
  const refused = bench.session.add(...events);
  if (refused === undefined) return undefined;
  remember();
  bench.choose(before);
  return refused;
}
