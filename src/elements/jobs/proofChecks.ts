import { proofCheckStates } from '../../domain/jobs/types.ts';
import type { ProofCheck, ProofChecked } from '../../domain/jobs/types.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import { fold, paragraph } from './parts.ts';

interface CheckWords {
  readonly title: string;
  readonly procedure: string;
  readonly hint: string;
  readonly states: Readonly<Record<ProofChecked['state'], string>>;
}

const checks: Readonly<Record<ProofCheck, CheckWords>> = {
  trims: {
    title: 'Fuel trims after the repair',
    procedure: 'trims-after-repair',
    hint: 'Engine warm, at idle and at a steady speed.',
    states: { good: 'Back to normal', bad: 'Still off', 'not-yet': 'Not settled yet', 'not-needed': 'Not needed here' },
  },
  monitors: {
    title: 'Monitors of the control unit',
    procedure: 'complete-the-monitors',
    hint: "Each maker asks for another drive before its monitors complete: look it up in the engine maker's data.",
    states: { good: 'Complete', bad: 'Complete, with a fault', 'not-yet': 'Not complete yet', 'not-needed': 'Not needed here' },
  },
  catalyst: {
    title: 'Catalyst after the misfire',
    procedure: 'catalyst-after-misfire',
    hint: 'Unburnt fuel overheats it; look at it above all where the lamp flashed for minutes.',
    states: { good: 'Sound', bad: 'Damaged', 'not-yet': 'Not known yet', 'not-needed': 'Not needed here' },
  },
};

/** The looks that belong to a proof beside the quiet run, each with what was found so far. */
export function proofCheckFolds(bench: Bench): Node[] {
  const done = bench.session.derived.proofChecks;
  return (Object.keys(checks) as ProofCheck[]).map((check) => {
    const { title, states } = checks[check];
    const found = done.get(check);
    const words = `${title}: ${found ? states[found.state].toLowerCase() : 'not looked at'}`;
    return fold(bench.memory, `check-${check}`, 'proof-check', [words], () => checkNodes(bench, check, found));
  });
}

function checkNodes(bench: Bench, check: ProofCheck, found: ProofChecked | undefined): Node[] {
  const { procedure, hint, states } = checks[check];
  const sheet = bench.session.book.procedures[procedure];
  const form = makeForm(bench.memory, {
    name: `check-${check}`,
    submit: 'Keep what was found',
    fields: [
      {
        name: 'state',
        label: 'What was found',
        kind: 'choice',
        start: found?.state ?? '',
        choices: [{ value: '', label: 'Choose' }, ...proofCheckStates.map((state) => ({ value: state, label: states[state] }))],
      },
      { name: 'note', label: 'Note (may be left empty)', kind: 'line', start: found?.note ?? '' },
    ],
    take: (values) => {
      const state = proofCheckStates.find((one) => one === values('state'));
      if (state === undefined) return missing('state', 'Choose what was found.');
      return () => {
        bench.memory.setOpen(`check-${check}`, false);
        return bench.session.add({ body: { kind: 'proof-check', check, state, note: values('note').trim() } });
      };
    },
  });
  return [
    paragraph('lead', hint),
    ...(sheet ? [element('p', { class: 'actions' }, element('a', { class: 'second-action', href: bookAddress(sheet.address) }, sheet.title))] : []),
    form,
  ];
}
