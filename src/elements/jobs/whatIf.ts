import type { Proposal, ProposedOutcome } from '../../domain/diagnosis/advice.ts';
import { perCent } from '../../domain/diagnosis/labels.ts';
import type { Bench } from './bench.ts';
import { fold, list, paragraph } from './parts.ts';

/** Each outcome as a fold that shows what would follow. Looking writes nothing into the record. */
export function whatIf(bench: Bench, proposal: Proposal): HTMLElement {
  return fold(bench.memory, 'would-tell', 'would-tell', ['What if … (what each outcome would lead to)'], () => [
    paragraph('field-hint', 'Only to look: nothing is written down. The chances are estimates.'),
    ...proposal.outcomes.map((outcome) => oneOutcome(bench, outcome)),
  ]);
}

function oneOutcome(bench: Bench, { id, label, probability, leading, then }: ProposedOutcome): HTMLElement {
  return fold(bench.memory, `what-if-${id}`, 'what-if', [`What if: ${label.replace(/\.$/, '')} (${perCent(probability)} likely)`], () => [
    paragraph('list-head', 'It would then be'),
    list('then-leading', leading.map((leader) => `${leader.label}: ${perCent(leader.probability)}`)) ?? '',
    paragraph('then-next', then),
  ].filter((node) => node instanceof Node));
}
