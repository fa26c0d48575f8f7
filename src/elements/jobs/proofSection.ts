import { perCent } from '../../domain/diagnosis/labels.ts';
import { proofConfidence } from '../../domain/jobs/proof.ts';
import type { ProofState } from '../../domain/jobs/proof.ts';
import type { ProofRun, YesNoUnknown } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { isRefusal, makeForm, missing, wholeNumber } from './form.ts';
import { button, fold, list, paragraph } from './parts.ts';
import { codesForm } from './takeInForms.ts';

/** Engine speed that a run is reckoned at until another is typed: an estimate for a drive, common practice. */
const usualSpeed = 2000;

/** What proof still lacks, and the next thing to do for it. */
export function proofSection(bench: Bench): Node[] {
  const { proof, live } = bench.session.derived;
  const repairAt = live.findLastIndex((event) => event.kind === 'repair-done');
  const cleared = live.slice(repairAt + 1).some((event) => event.kind === 'codes-cleared');
  const lacking = list('still-missing', proof.missing);
  return [
    ...(lacking ? [paragraph('still-missing-head', 'Still missing for proof:'), lacking] : []),
    ...(cleared ? [] : [button('codes-cleared', 'main-action', 'Codes are cleared', () => bench.session.add({ body: { kind: 'codes-cleared' } }))]),
    ...(proof.rateBefore === undefined ? [countForm(bench)] : []),
    runSection(bench, proof),
    fold(bench.memory, 'reread', 'reread', ['Codes read again after the run'], () => codesForm(bench, 'codes-reread')),
    fold(bench.memory, 'unproven', 'unproven', ['Hand over without proof'], () => [handOverForm(bench, false)]),
  ];
}

/** How often it misfired while the fault was there: without it no run can be called long enough. */
export function countForm(bench: Bench): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'count',
    submit: 'Keep the count',
    fields: [
      { name: 'misfires', label: 'Misfires counted before the repair', kind: 'line', keyboard: 'numeric', hint: 'By the counters of the control unit, or by ear over a minute at a known speed.' },
      { name: 'revolutions', label: 'In so many revolutions', kind: 'line', keyboard: 'numeric', start: '1000' },
      { name: 'how', label: 'How it was counted', kind: 'line' },
    ],
    take: (values) => {
      const misfires = wholeNumber(values('misfires'), 'misfires', 'Misfires', 1);
      if (isRefusal(misfires)) return misfires;
      const revolutions = wholeNumber(values('revolutions'), 'revolutions', 'Revolutions', 1);
      if (isRefusal(revolutions)) return revolutions;
      return () => bench.session.add({ body: { kind: 'misfires-counted', misfires, revolutions, how: values('how').trim() } });
    },
  });
}

function runSection(bench: Bench, proof: ProofState): HTMLElement {
  const needed = proof.revolutionsNeeded;
  const minutes = needed === undefined ? undefined : Math.ceil(Math.max(0, needed - proof.revolutionsRun) / usualSpeed);
  const aim =
    needed === undefined || minutes === undefined
      ? 'Run it at the speed, load and warmth at which it misfired.'
      : `${needed} quiet revolutions leave ${perCent(1 - proofConfidence)} of doubt; about ${minutes} more minutes at ${usualSpeed} rpm. ` +
        'Run it at the speed, load and warmth at which it misfired.';
  return element('div', { class: 'proof-run' }, paragraph('lead', aim), runForm(bench));
}

const similarChoices: readonly { readonly value: YesNoUnknown; readonly label: string }[] = [
  { value: 'yes', label: 'Yes: within 375 rpm and 20 % load, same warmth' },
  { value: 'no', label: 'No' },
  { value: 'unknown', label: 'Not known' },
];

function runForm(bench: Bench): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'run',
    submit: 'Keep the run',
    fields: [
      { name: 'minutes', label: 'Run for', kind: 'line', unit: 'minutes', keyboard: 'numeric' },
      { name: 'speed', label: 'At about', kind: 'line', unit: 'rpm', keyboard: 'numeric', start: String(usualSpeed) },
      { name: 'misfires', label: 'Misfires counted in the run', kind: 'line', keyboard: 'numeric', start: '0' },
      {
        name: 'similar',
        label: 'Was it run under the conditions of the fault?',
        kind: 'choice',
        start: 'unknown',
        choices: similarChoices,
        hint: 'Tolerances as California rule 13 CCR 1968.2(c) has them, from memory.',
      },
      {
        name: 'result',
        label: 'What happened',
        kind: 'choice',
        start: '',
        choices: [
          { value: '', label: 'Choose' },
          { value: 'quiet', label: 'It ran without a misfire' },
          { value: 'returned', label: 'The misfire came back' },
        ],
      },
    ],
    take: (values) => {
      const run = readRun(values);
      return isRefusal(run) ? run : () => bench.session.add({ body: run });
    },
  });
}

function readRun(values: (name: string) => string): Omit<ProofRun, 'id' | 'sequence' | 'at'> | ReturnType<typeof missing> {
  const minutes = wholeNumber(values('minutes'), 'minutes', 'The minutes run', 1);
  if (isRefusal(minutes)) return minutes;
  const speed = wholeNumber(values('speed'), 'speed', 'The speed', 300);
  if (isRefusal(speed)) return speed;
  const misfires = wholeNumber(values('misfires'), 'misfires', 'Misfires', 0);
  if (isRefusal(misfires)) return misfires;
  const result = values('result');
  if (result !== 'quiet' && result !== 'returned') return missing('result', 'Choose what happened in the run.');
  if (result === 'quiet' && misfires > 0) {
    return missing('result', `${misfires} counted in the run: it did not run without a misfire. Choose “The misfire came back”, or correct the count.`);
  }
  const similarConditions = similarChoices.find((choice) => choice.value === values('similar'))?.value ?? 'unknown';
  return { kind: 'proof-run', minutes, revolutions: minutes * speed, misfires, similarConditions, result };
}

/** Handing over: proven, or with the reason why not written on the sheet. */
export function handOverForm(bench: Bench, proven: boolean): HTMLFormElement {
  return makeForm(bench.memory, {
    name: proven ? 'hand-over' : 'hand-over-unproven',
    submit: proven ? 'Hand over as proven' : 'Hand over as not proven',
    fields: [
      { name: 'to', label: 'Handed over to (may be left empty)', kind: 'line' },
      ...(proven ? [] : [{ name: 'reason', label: 'Why without proof', kind: 'text' as const, hint: 'It is printed on the sheet.' }]),
    ],
    take: (values) => {
      const to = values('to').trim();
      if (proven) return () => bench.session.add({ body: { kind: 'handed-over', to } });
      const unproven = values('reason').trim();
      if (unproven === '') return missing('reason', 'Say why the repair is handed over without proof.');
      return () => bench.session.add({ body: { kind: 'handed-over', to, unproven } });
    },
  });
}
