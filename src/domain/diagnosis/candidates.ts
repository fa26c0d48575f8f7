import type { DiagnosisInput } from './belief.ts';
import type { ChanceList, PreparedTest, TestSite } from './likelihood.ts';
import { chancesUnder, prepareTest } from './likelihood.ts';
import { mutualInformation } from './information.ts';
import { placesOf, sharesCylinder } from './places.ts';
import type { Belief, EngineLayout, Evidence, Place, TestModel } from './types.ts';

/** At how many of the most suspected places a test is weighed. */
export const placesWeighed = 3;

/** A test expected to tell less than this many bits tells nothing that a mechanic could notice, and is not offered. */
export const leastBits = 0.001;

export interface AdviceOptions {
  /** Ids of tests that need a tool this shop has not got. */
  readonly toolsMissing?: readonly string[];
  /** Tests that cannot be done at a place of this engine (a plug that will not come out). */
  readonly impossible?: readonly { readonly test: string; readonly place: string }[];
  /** At most so many proposals, best first. All when left out. */
  readonly limit?: number;
}

export interface NotOffered {
  readonly test: string;
  readonly why: string;
}

/** A test at a place, weighed. */
export interface Candidate {
  readonly prepared: PreparedTest;
  readonly site: TestSite;
  readonly bits: number;
  readonly bitsPerMinute: number;
  /** Outcome chances under each belief, in the order of the beliefs. */
  readonly chances: readonly ChanceList[];
}

interface Bay {
  readonly input: DiagnosisInput;
  readonly beliefs: readonly Belief[];
  readonly probabilities: readonly number[];
  readonly options: AdviceOptions;
}

/** Every look and test worth doing now, with its worth; and every other one with the reason why not. */
export function weighCandidates(
  input: DiagnosisInput,
  beliefs: readonly Belief[],
  options: AdviceOptions,
): { readonly candidates: readonly Candidate[]; readonly notOffered: readonly NotOffered[] } {
  const bay: Bay = { input, beliefs, probabilities: beliefs.map((belief) => belief.probability), options };
  const candidates: Candidate[] = [];
  const notOffered: NotOffered[] = [];
  for (const test of input.book.tests) {
    if (test.kind !== 'look' && test.kind !== 'test') continue;
    const offered = weighTest(bay, test);
    if (typeof offered === 'string') notOffered.push({ test: test.id, why: offered });
    else candidates.push(...offered);
  }
  return { candidates, notOffered };
}

/** The candidates of one test, or the sentence that says why there are none. */
function weighTest(bay: Bay, test: TestModel): readonly Candidate[] | string {
  const { input, options } = bay;
  if (!fitsArrangement(test, input.engine)) {
    return test.notPossible ?? 'It cannot be done on this ignition or injection arrangement.';
  }
  if (options.toolsMissing?.includes(test.id)) return 'It needs a tool that this shop has not got.';
  const places = bySuspicion(bay, placesOf(input.engine, test.placeKind));
  if (places.length === 0) return 'This engine has no place where it could be done.';
  const sites = places.flatMap((place) => siteOf(bay, test, place, places));
  if (sites.length === 0) return 'It needs a second cylinder to exchange parts with, and there is none.';
  const open = sites.filter(({ place }) => !options.impossible?.some((no) => no.test === test.id && no.place === place.id));
  if (open.length === 0) return 'It was marked as not possible on this engine.';
  const undone = open.filter((site) => !input.evidence.some((evidence) => isDone(evidence, test, site)));
  if (undone.length === 0) return 'Already done.';
  const prepared = prepareTest(test);
  const weighed = undone.slice(0, placesWeighed).map((site) => weighSite(bay, prepared, site));
  const worthwhile = weighed.filter((candidate) => candidate.bits >= leastBits);
  if (worthwhile.length > 0) return worthwhile;
  return 'It would tell nothing new: every fault still in question expects the same outcome.';
}

function weighSite(bay: Bay, prepared: PreparedTest, site: TestSite): Candidate {
  const chances = bay.beliefs.map(({ hypothesis }) => chancesUnder(prepared, site, hypothesis));
  const bits = mutualInformation(bay.probabilities, chances);
  return { prepared, site, bits, bitsPerMinute: bits / prepared.test.minutes, chances };
}

/** An empty list of arrangements sets no limit. */
function fitsArrangement(test: TestModel, engine: EngineLayout): boolean {
  const ignitionFits = test.ignition.length === 0 || test.ignition.includes(engine.ignition);
  const injectionFits = test.injection.length === 0 || test.injection.includes(engine.injection);
  return ignitionFits && injectionFits;
}

/** Most suspected first: by the belief in all faults that share a cylinder with the place. Equals keep their order. */
function bySuspicion(bay: Bay, places: readonly Place[]): readonly Place[] {
  const suspicion = new Map<string, number>();
  for (const place of places) {
    let sum = 0;
    for (const { hypothesis, probability } of bay.beliefs) {
      if (hypothesis.place && sharesCylinder(hypothesis.place, place)) sum += probability;
    }
    suspicion.set(place.id, sum);
  }
  return [...places].sort((one, other) => (suspicion.get(other.id) ?? 0) - (suspicion.get(one.id) ?? 0));
}

/** The place with the partner it needs: the least suspected that is fit for an exchange. Empty when there is none. */
function siteOf(bay: Bay, test: TestModel, place: Place, places: readonly Place[]): readonly TestSite[] {
  if (!test.needsPartner) return [{ place, partner: undefined }];
  const partner = places.findLast((candidate) => canExchange(bay.input.engine, place, candidate));
  return partner ? [{ place, partner }] : [];
}

/** Exchanging with the companion on the same coil would leave that coil on both sides and tell less. */
function canExchange(engine: EngineLayout, place: Place, other: Place): boolean {
  if (sharesCylinder(place, other)) return false;
  const isOn = (pair: readonly number[], side: Place): boolean => pair.some((cylinder) => side.cylinders.includes(cylinder));
  return !engine.coilPairs.some((pair) => isOn(pair, place) && isOn(pair, other));
}

/** An exchange of A with B is the same work as one of B with A. */
function isDone(evidence: Evidence, test: TestModel, site: TestSite): boolean {
  if (evidence.kind !== 'test' || evidence.test !== test.id) return false;
  if (evidence.place === site.place.id) return true;
  return evidence.partner === site.place.id && evidence.place === site.partner?.id;
}

