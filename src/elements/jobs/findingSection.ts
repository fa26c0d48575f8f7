import { judgeFinding } from '../../domain/diagnosis/finding.ts';
import { hypothesisLabel, perCent } from '../../domain/diagnosis/labels.ts';
import { describeEvent } from '../../domain/jobs/describe.ts';
import type { DerivedJob } from '../../domain/jobs/reduce.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import { list, paragraph } from './parts.ts';

/** Faults offered as the finding. */
const offered = 5;

/** A finding is refused, with reasons, until belief and a telling test carry it. */
export function findingForm(bench: Bench): Node[] {
  const { derived } = bench.session;
  const candidates = derived.beliefs.filter(({ hypothesis }) => hypothesis.fault !== undefined).slice(0, offered);
  const reasons = element('div', { class: 'finding-reasons', role: 'status' });
  const judge = (hypothesis: string) => (derived.diagnosis ? judgeFinding(derived.diagnosis, hypothesis) : undefined);
  const form = makeForm(bench.memory, {
    name: 'finding',
    submit: 'Write down the finding',
    fields: [
      {
        name: 'hypothesis',
        label: 'What is wrong',
        kind: 'choice',
        start: candidates[0]?.hypothesis.id ?? '',
        choices: candidates.map(({ hypothesis, probability }) => ({ value: hypothesis.id, label: `${hypothesisLabel(hypothesis)}, ${perCent(probability)}` })),
      },
    ],
    extra: [reasons],
    live: (values) => {
      const judged = judge(values('hypothesis'));
      const lacking = list('still-missing', judged?.missing ?? []);
      const words = judged?.allowed ? paragraph('finding-carried', 'Belief and tests carry this finding.') : paragraph('still-missing-head', 'Not yet a finding:');
      reasons.replaceChildren(words, ...(lacking ? [lacking] : []), ...togetherNodes(judged?.together ?? []));
    },
    take: (values) => {
      const found = candidates.find(({ hypothesis }) => hypothesis.id === values('hypothesis'));
      const judged = found && judge(found.hypothesis.id);
      if (!found || !judged) return missing('hypothesis', 'Choose what is wrong.');
      if (!judged.allowed) return { input: 'hypothesis', code: 'not-carried', message: judged.missing.join(' ') };
      const supportedBy = judged.supportedBy.flatMap((index) => supportWords(derived, index));
      const body = { kind: 'finding-made' as const, hypothesis: found.hypothesis.id, label: hypothesisLabel(found.hypothesis), belief: judged.belief, supportedBy };
      return () => bench.session.add({ body });
    },
  });
  return [form];
}

/** Renewing the part answers these too, so their belief counts with it. */
function togetherNodes(together: readonly string[]): Node[] {
  return together.length === 0 ? [] : [paragraph('together', `Counted with it, because the same part puts it right: ${together.join('; ')}.`)];
}

function supportWords(derived: DerivedJob, index: number): readonly string[] {
  const event = derived.live.find((candidate) => candidate.id === derived.evidenceEvents[index]);
  if (!event) return [];
  const { title, lines } = describeEvent(event);
  return [`${title}: ${lines[0] ?? ''}`.slice(0, 400)];
}
