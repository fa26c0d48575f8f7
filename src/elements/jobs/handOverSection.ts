import type { ReturnedMisfire } from '../../domain/jobs/types.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import { fold, paragraph } from './parts.ts';

/** Handing over a proven repair; afterwards, what to do when the car comes back. */
export function handOverSection(bench: Bench): Node[] {
  const { handedOver } = bench.session.derived.proof;
  if (!handedOver) return [paragraph('lead', 'The repair is proven. Print the sheet and hand the car over.'), handOverForm(bench, true)];
  const words =
    handedOver.unproven === undefined ? 'Handed over, repair proven. Print the sheet for the customer.' : `Handed over without proof: ${handedOver.unproven}`;
  return [paragraph('handed-over', words), fold(bench.memory, 'came-back', 'came-back', ['The car is back with a misfire'], () => [cameBackForm(bench)])];
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

/** Whether it is the misfire of before decides what the earlier tests are still worth. */
export const misfireField = {
  name: 'misfire',
  label: 'Which misfire',
  kind: 'choice',
  start: '',
  choices: [
    { value: '', label: 'Choose' },
    { value: 'same', label: 'The same as before: same cylinder, same kind' },
    { value: 'different', label: 'Another one: another cylinder, or another in kind' },
  ],
  hint: 'Another one means a second fault behind the first: what was tested before the repair then no longer counts.',
} as const;

export function whichMisfire(value: string): ReturnedMisfire | undefined {
  return value === 'same' || value === 'different' ? value : undefined;
}

function cameBackForm(bench: Bench): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'came-back',
    submit: 'Take it in again',
    fields: [{ name: 'text', label: 'What the customer says now', kind: 'text' }, misfireField],
    take: (values) => {
      const text = values('text').trim();
      if (text === '') return missing('text', 'Write what the customer says now.');
      const misfire = whichMisfire(values('misfire'));
      if (misfire === undefined) return missing('misfire', 'Choose whether it is the same misfire or another one.');
      return () => bench.session.add({ body: { kind: 'came-back', text, misfire } });
    },
  });
}
