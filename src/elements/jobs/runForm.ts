import { meetsFrame } from '../../domain/jobs/similarRun.ts';
import type { FrameRead, ProofRun, YesNoUnknown } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { isRefusal, makeForm, missing, numberWithin, wholeNumber } from './form.ts';
import type { FieldDefinition, FormValues } from './form.ts';
import { misfireField, whichMisfire } from './handOverSection.ts';
import { warmChoices, yesNoUnknown } from './warm.ts';

/** Engine speed that a run is reckoned at until another is typed: an estimate for a drive, common practice. */
export const usualSpeed = 2000;

/** A run after the repair. Where conditions were stored with the code, the form works out whether the run met them. */
export function runForm(bench: Bench): HTMLFormElement {
  const { frame } = bench.session.derived;
  const worked = element('p', { class: 'worked-out', role: 'status' });
  return makeForm(bench.memory, {
    name: 'run',
    submit: 'Keep the run',
    fields: runFields(frame),
    extra: [frame ? worked : undefined],
    live: (values) => {
      if (frame) worked.textContent = workedWords(frame, values);
    },
    take: (values) => {
      const run = readRun(values, frame);
      return isRefusal(run) ? run : () => bench.session.add({ body: run });
    },
  });
}

function runFields(frame: FrameRead | undefined): readonly FieldDefinition[] {
  return [
    { name: 'minutes', label: 'Run for', kind: 'line', unit: 'minutes', keyboard: 'numeric' },
    { name: 'speed', label: 'At about', kind: 'line', unit: 'rpm', keyboard: 'numeric', start: String(frame ? Math.round(frame.speed) : usualSpeed) },
    { name: 'load', label: 'Calculated load (may be left empty)', kind: 'line', unit: '%', keyboard: 'decimal' },
    ...(frame ? [{ name: 'warm', label: 'Engine warmed up in the run', kind: 'choice' as const, start: 'unknown', choices: warmChoices }] : []),
    { name: 'misfires', label: 'Misfires counted in the run', kind: 'line', keyboard: 'numeric', start: '0' },
    similarField(frame),
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
    { ...misfireField, when: (values) => values('result') === 'returned' },
  ];
}

function similarField(frame: FrameRead | undefined): FieldDefinition {
  return {
    name: 'similar',
    label: 'Was it run under the conditions of the fault?',
    kind: 'choice',
    start: frame ? 'worked-out' : 'unknown',
    choices: [
      ...(frame ? [{ value: 'worked-out', label: 'As worked out below' }] : []),
      { value: 'yes', label: 'Yes: within 375 rpm and 20 % load, same warmth' },
      { value: 'no', label: 'No' },
      { value: 'unknown', label: 'Not known' },
    ],
    hint: 'Tolerances as California rule 13 CCR 1968.2(c) has them, from memory.',
  };
}

const similarWords: Readonly<Record<YesNoUnknown, string>> = {
  yes: 'The run met the conditions stored with the code, so it counts.',
  no: 'The run did not meet the conditions stored with the code, so it does not count.',
  unknown: 'It is not known whether the run met the conditions stored with the code. Give load and warmth, or choose above.',
};

function workedWords(frame: FrameRead, values: FormValues): string {
  const conditions = readConditions(values);
  if (isRefusal(conditions)) return `Worked out: ${conditions.message}`;
  const meets = meetsFrame(frame, conditions);
  const overruled = meets === 'no' && values('similar') === 'yes' ? ' Speed and load typed here come before a “yes”: correct them if they are wrong.' : '';
  return `Worked out: ${similarWords[meets]}${overruled}`;
}

interface Conditions {
  readonly speed: number;
  readonly load?: number;
  readonly warm: YesNoUnknown;
}

function readConditions(values: FormValues): Conditions | Refusal {
  const speed = wholeNumber(values('speed'), 'speed', 'The speed', 300);
  if (isRefusal(speed)) return speed;
  const load = numberWithin(values('load'), 'load', 'Calculated load', 0, 100);
  if (isRefusal(load)) return load;
  return { speed, ...(load === undefined ? {} : { load }), warm: yesNoUnknown(values('warm')) };
}

function readRun(values: FormValues, frame: FrameRead | undefined): Omit<ProofRun, 'id' | 'sequence' | 'at'> | Refusal {
  const minutes = wholeNumber(values('minutes'), 'minutes', 'The minutes run', 1);
  if (isRefusal(minutes)) return minutes;
  const conditions = readConditions(values);
  if (isRefusal(conditions)) return conditions;
  const misfires = wholeNumber(values('misfires'), 'misfires', 'Misfires', 0);
  if (isRefusal(misfires)) return misfires;
  const result = values('result');
  if (result !== 'quiet' && result !== 'returned') return missing('result', 'Choose what happened in the run.');
  if (result === 'quiet' && misfires > 0) {
    return missing('result', `${misfires} counted in the run: it did not run without a misfire. Choose “The misfire came back”, or correct the count.`);
  }
  const misfire = whichMisfire(values('misfire'));
  if (result === 'returned' && misfire === undefined) return missing('misfire', 'Choose whether it is the same misfire or another one.');
  const { warm: _warm, ...held } = conditions;
  const similarConditions = frame && values('similar') === 'worked-out' ? meetsFrame(frame, conditions) : yesNoUnknown(values('similar'));
  return {
    kind: 'proof-run',
    minutes,
    revolutions: minutes * conditions.speed,
    misfires,
    similarConditions,
    result,
    ...held,
    ...(result === 'returned' && misfire ? { misfire } : {}),
  };
}
