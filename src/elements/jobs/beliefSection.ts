import { explain } from '../../domain/diagnosis/explain.ts';
import type { ExplanationStep } from '../../domain/diagnosis/explain.ts';
import { hypothesisLabel, perCent } from '../../domain/diagnosis/labels.ts';
import type { Belief } from '../../domain/diagnosis/types.ts';
import { shape } from '../../domain/drawing/shape.ts';
import { element } from '../dom.ts';
import { drawShape } from '../svg.ts';
import type { Bench } from './bench.ts';
import { laterPart } from './laterOnDemand.ts';
import { fold, paragraph } from './parts.ts';

/** Beliefs shown at once; the rest is one fold away. */
const shownAtOnce = 6;
/** A step that moves the odds by less than this factor is not worth a line. */
const leastFactor = 1.02;

/** Every fault still in question as a bar with its words, each opened to show what moved it. */
export function beliefSection(bench: Bench): Node[] {
  const { beliefs } = bench.session.derived;
  const rest = beliefs.slice(shownAtOnce);
  const restShare = rest.reduce((sum, belief) => sum + belief.probability, 0);
  return [
    paragraph('estimates-note', bench.session.book.estimatesNote),
    ...beliefs.slice(0, shownAtOnce).map((belief) => beliefRow(bench, belief)),
    ...(rest.length > 0
      ? [fold(bench.memory, 'beliefs-rest', 'beliefs-rest', [`${rest.length} others, together ${perCent(restShare)}`], () => rest.map((belief) => beliefRow(bench, belief)))]
      : []),
    fold(bench.memory, 'opinion', 'opinion', ['I know this engine'], () => laterPart(bench, 'opinion')),
  ];
}

function beliefRow(bench: Bench, { hypothesis, probability }: Belief): HTMLElement {
  const label = hypothesisLabel(hypothesis);
  const words = element('span', { class: 'belief-words' }, `${label} – `, element('strong', { class: 'figure' }, perCent(probability)));
  return fold(bench.memory, `belief-${hypothesis.id}`, 'belief', [words, bar(probability)], () => movedBy(bench, hypothesis.id));
}

/** The bar only repeats the figure beside it, so it is silent for those who cannot see it. */
function bar(probability: number): SVGElement {
  return drawShape(
    shape('svg', { class: 'belief-bar', viewBox: '0 0 100 6', preserveAspectRatio: 'none', 'aria-hidden': 'true' }, [
      shape('rect', { class: 'belief-bar-ground', x: 0, y: 0, width: 100, height: 6 }),
      shape('rect', { class: 'belief-bar-share', x: 0, y: 0, width: Math.round(probability * 1000) / 10, height: 6 }),
    ]),
  );
}

function movedBy(bench: Bench, hypothesis: string): Node[] {
  const { diagnosis } = bench.session.derived;
  if (!diagnosis) return [];
  const steps = explain(diagnosis, hypothesis);
  const first = steps[0];
  const start = first ? paragraph('belief-start', `Before anything was known: ${perCent(first.before)}.`) : paragraph('belief-start', 'Nothing has moved it yet: this is how common it is.');
  const moving = steps.filter(({ factor }) => factor >= leastFactor || factor <= 1 / leastFactor);
  return [start, element('ul', { class: 'moved-by' }, ...moving.map((step) => element('li', {}, stepWords(step))))];
}

function stepWords({ label, factor, before, after }: ExplanationStep): string {
  const times = factor >= 1 ? factor : 1 / factor;
  const amount = times >= 1000 ? 'over 1000' : String(Number(times.toPrecision(2)));
  return `${label}: ${amount} times ${factor >= 1 ? 'likelier' : 'less likely'}, ${perCent(before)} to ${perCent(after)}`;
}
