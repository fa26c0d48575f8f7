import { believe } from '../diagnosis/belief.ts';
import type { DiagnosisInput } from '../diagnosis/belief.ts';
import { candidatesFor } from '../diagnosis/candidates.ts';
import { judgeFinding } from '../diagnosis/finding.ts';
import { noneOfTheseId } from '../diagnosis/prior.ts';
import { rankTests } from '../diagnosis/ranking.ts';
import { repairName } from '../diagnosis/repairs.ts';
import type { Belief } from '../diagnosis/types.ts';
import type { Action, Policy } from './play.ts';

/** The book's own advice, followed to the letter. */
export const adviceFollowed: Policy = (input, open) => {
  const { next, tests, beliefs } = rankTests(input, { open });
  const best = tests[0]?.candidate;
  const top = beliefs[0]?.hypothesis;
  if (next === 'finding' && top) return { kind: 'repair', hypothesis: top, finding: true };
  return next === 'test' && best ? { kind: 'test', test: best.test, site: best.site } : { kind: 'beyond' };
};

/**
 * Parts fitted new, the likeliest first, until the engine runs well or a fault outside the book has become likelier than not. It reasons
 * from the same weights and codes, so only the lack of testing sets it apart.
 */
export const partsSwapped: Policy = (input) => {
  const fitted = new Set(input.evidence.flatMap((evidence) => (evidence.kind === 'failed-repair' ? [`${evidence.fault}@${evidence.place}`] : [])));
  const beliefs = believe(input);
  const unknown = beliefs.find(({ hypothesis }) => hypothesis.id === noneOfTheseId)?.probability ?? 0;
  const likeliest = beliefs.find(({ hypothesis }) => hypothesis.fault && !fitted.has(hypothesis.id));
  if (!likeliest || unknown >= givenUp) return { kind: 'beyond' };
  return { kind: 'repair', hypothesis: likeliest.hypothesis, finding: false };
};

/** A garage gives up on its own means when a fault it does not know is likelier than all it knows. */
const givenUp = 0.5;

/**
 * The customary round: look, read, then exchange coil, plug and injector, then compression, fuel and air; what is not named follows
 * the cheapest first. Common practice, no source.
 */
const customaryRound: readonly string[] = [
  'first-look',
  'read-the-freeze-frame',
  'misfire-counters',
  'swap-coils',
  'swap-plugs',
  'swap-leads',
  'swap-injectors',
  'compression-dry',
  'leak-down',
  'fuel-trims',
  'smoke-test',
  'fuel-pressure',
];

/** The same belief and the same rule for a finding, but tests in a fixed order, each at its most suspected place. */
export const fixedOrder: Policy = (input) => {
  const beliefs = believe(input);
  const finding = findingNow(input, beliefs);
  if (finding) return finding;
  const top = beliefs[0];
  if (top?.hypothesis.id === noneOfTheseId && top.probability >= givenUp) return { kind: 'beyond' };
  const times = (id: string): number => input.evidence.filter((evidence) => evidence.kind === 'test' && evidence.test === id).length;
  const rank = (id: string): number => (customaryRound.includes(id) ? customaryRound.indexOf(id) : customaryRound.length);
  const [next] = candidatesFor(input, beliefs, {}).candidates.toSorted(
    (one, other) => times(one.test.id) - times(other.test.id) || rank(one.test.id) - rank(other.test.id) || one.test.minutes - other.test.minutes,
  );
  return next ? { kind: 'test', test: next.test, site: next.site } : { kind: 'beyond' };
};

function findingNow(input: DiagnosisInput, beliefs: readonly Belief[]): Action | undefined {
  const top = beliefs[0]?.hypothesis;
  if (!top || repairName(top) === undefined || input.evidence.at(-1)?.kind === 'failed-repair') return undefined;
  return judgeFinding(input, top.id).allowed ? { kind: 'repair', hypothesis: top, finding: true } : undefined;
}
