import { outcomesFromJudgement } from '../../domain/diagnosis/evidence.ts';
import type { OutcomeChances, Place, TestModel } from '../../domain/diagnosis/types.ts';
import type { PlaceNoted, TestDone } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import type { NewEvent } from './session.ts';
import { newId } from './identity.ts';
import { paragraph } from './parts.ts';
import { readingFormOnDemand } from './readingOnDemand.ts';

export interface TestAtPlace {
  readonly test: TestModel;
  readonly place: Place;
  readonly partner?: Place;
}

/** What was found: a reading, judged while it is typed, where the test has one; and every outcome as a choice. */
export function outcomeSection(bench: Bench, at: TestAtPlace): Node[] {
  const note = noteField(bench);
  return [
    element('h3', { class: 'outcomes-heading' }, 'I did it: what was found'),
    ...readingPart(bench, at, note),
    note,
    element('div', { class: 'outcomes' }, ...at.test.outcomes.map((outcome) => outcomeButton(bench, at, outcome.id, note))),
  ];
}

function noteField(bench: Bench): HTMLElement {
  const area = element('textarea', { id: 'outcome-note', rows: 2, 'aria-describedby': 'outcome-note-hint' }, bench.memory.text('outcome.note') ?? '');
  area.addEventListener('input', () => bench.memory.setText('outcome.note', area.value));
  return element(
    'p',
    { class: 'field' },
    element('label', { for: 'outcome-note' }, 'Note (may be left empty)'),
    area,
    element('span', { class: 'field-hint', id: 'outcome-note-hint' }, 'Kept with the outcome you choose below.'),
    element('span', { class: 'field-note', role: 'status' }),
  );
}

function outcomeButton(bench: Bench, at: TestAtPlace, outcomeId: string, note: HTMLElement): HTMLElement {
  const outcome = at.test.outcomes.find((candidate) => candidate.id === outcomeId);
  const made = element(
    'button',
    { type: 'button', class: 'outcome', id: `outcome-${outcomeId}` },
    element('strong', {}, outcome?.label ?? outcomeId),
    element('span', { class: 'outcome-meaning' }, outcome?.meaning ?? ''),
  );
  made.addEventListener('click', () => {
    const refused = record(bench, [testDone(at, { [outcomeId]: 1 }, noteText(note))]);
    const hint = note.querySelector('.field-note');
    if (refused && hint) hint.textContent = refused.message;
  });
  return made;
}

function noteText(note: HTMLElement): string {
  return note.querySelector('textarea')?.value.trim() ?? '';
}

/** The reading is kept even where it decides no outcome; then the outcome is chosen below it. */
function readingPart(bench: Bench, at: TestAtPlace, note: HTMLElement): Node[] {
  const { test, place } = at;
  if (test.ranges.length === 0) return [];
  const where = { test: test.id, place: noted(place) };
  return [
    readingFormOnDemand(bench, `reading-${test.id}`, test.ranges, where, 'Keep this reading', (reading) => {
      const outcomes = outcomesFromJudgement(test, reading.judgement);
      const id = newId();
      const kept: NewEvent = { body: reading.body, id };
      if (Object.keys(outcomes).length === 0) return bench.session.add(kept);
      return record(bench, [kept, testDone(at, outcomes, noteText(note), id)]);
    }),
    paragraph('or-choose', 'Or choose what you found:'),
  ];
}

function noted({ id, label }: Place): PlaceNoted {
  return { id, label };
}

function testDone({ test, place, partner }: TestAtPlace, outcomes: OutcomeChances, note: string, reading?: string): NewEvent {
  const body: Omit<TestDone, 'id' | 'sequence' | 'at'> = {
    kind: 'test-done',
    test: test.id,
    title: test.title,
    place: noted(place),
    ...(partner ? { partner: noted(partner) } : {}),
    outcomes,
    outcome: outcomeWords(test, outcomes),
    note,
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
