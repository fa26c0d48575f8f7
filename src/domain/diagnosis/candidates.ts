import type { DiagnosisInput } from './belief.ts';
import { testMinutes } from './costs.ts';
import type { WeighedTest } from './decision.ts';
import type { ChanceList, PreparedTest, TestSite } from './likelihood.ts';
import { prepareTest } from './likelihood.ts';
import { placesOf, relation, sharesCylinder } from './places.ts';
import type { AccessState, Belief, EngineLayout, Evidence, Place, SpecialTool, TestModel } from './types.ts';

/** At how many of the most suspected places a test is weighed. */
export const placesWeighed = 3;

export interface AdviceOptions {
  /** Ids of tests that cannot be done in this shop. */
  readonly toolsMissing?: readonly string[];
  /** Tools that this shop has not got: tests that need one are not offered. */
  readonly toolsNotHad?: readonly SpecialTool[];
  /** How far the car is opened up already. */
  readonly open?: readonly AccessState[];
  /** Tests that cannot be done at a place of this engine (a plug that will not come out). */
  readonly impossible?: readonly { readonly test: string; readonly place: string }[];
  /** At most so many proposals, best first. All when left out. */
  readonly limit?: number;
}

export interface NotOffered {
  readonly test: string;
  readonly why: string;
}

/** A test at a place, laid out for reckoning: `listOf` follows the order of the beliefs. */
export interface Candidate extends WeighedTest {
  readonly test: TestModel;
  readonly site: TestSite;
}

/** Chances of the outcomes under the belief at this position. */
export function chancesAt(candidate: Candidate, belief: number): ChanceList | undefined {
  return candidate.lists[candidate.listOf[belief] ?? 0];
}

interface Bay {
  readonly input: DiagnosisInput;
  readonly beliefs: readonly Belief[];
  /** Positions of the beliefs by fault. */
  readonly byFault: ReadonlyMap<string, readonly number[]>;
  readonly options: AdviceOptions;
}

/** Every look and test that can be done now and has not been done yet; and every other one with the reason why not. */
export function candidatesFor(
  input: DiagnosisInput,
  beliefs: readonly Belief[],
  options: AdviceOptions,
): { readonly candidates: readonly Candidate[]; readonly notOffered: readonly NotOffered[] } {
  const bay: Bay = { input, beliefs, byFault: positionsByFault(beliefs), options };
  const candidates: Candidate[] = [];
  const notOffered: NotOffered[] = [];
  for (const test of input.book.tests) {
    if (test.kind !== 'look' && test.kind !== 'test') continue;
    const offered = offer(bay, test);
    if (typeof offered === 'string') notOffered.push({ test: test.id, why: offered });
    else candidates.push(...offered);
  }
  return { candidates, notOffered };
}

function positionsByFault(beliefs: readonly Belief[]): ReadonlyMap<string, readonly number[]> {
  const positions = new Map<string, number[]>();
  beliefs.forEach(({ hypothesis: { fault } }, index) => {
    if (!fault) return;
    const known = positions.get(fault.id);
    if (known) known.push(index);
    else positions.set(fault.id, [index]);
  });
  return positions;
}

/** The candidates of one test, or the sentence that says why there are none. */
function offer(bay: Bay, test: TestModel): readonly Candidate[] | string {
  const { input, options } = bay;
  if (!fitsArrangement(test, input.engine)) {
    return test.notPossible ?? 'It cannot be done on this ignition or injection arrangement.';
  }
  const lacking = test.needs.some((tool) => options.toolsNotHad?.includes(tool)) || options.toolsMissing?.includes(test.id);
  if (lacking) return 'It needs a tool that this shop has not got.';
  const places = bySuspicion(bay, placesOf(input.engine, test.placeKind));
  if (places.length === 0) return 'This engine has no place where it could be done.';
  const sites = places.flatMap((place) => siteOf(bay, test, place, places));
  if (sites.length === 0) return 'It needs a second cylinder to exchange parts with, and there is none.';
  if (test.showsEveryPlace && input.evidence.some((evidence) => evidence.kind === 'test' && evidence.test === test.id)) {
    return 'Already done: one run shows every place, and the same again is no news.';
  }
  const open = sites.filter(({ place }) => !options.impossible?.some((no) => no.test === test.id && no.place === place.id));
  if (open.length === 0) return 'It was marked as not possible on this engine.';
  const undone = open.filter((site) => !input.evidence.some((evidence) => isDone(evidence, test, site)));
  if (undone.length === 0) return 'Already done.';
  const prepared = prepareTest(test);
  return undone.slice(0, placesWeighed).map((site) => layOut(bay, prepared, site));
}

/** The chances once each, and which of them every belief goes by: only faults that the test names differ from the others. */
function layOut(bay: Bay, prepared: PreparedTest, site: TestSite): Candidate {
  const { test, otherwise, byFault } = prepared;
  const lists: ChanceList[] = [otherwise];
  const listOf = new Uint8Array(bay.beliefs.length);
  const numberOf = new Map<ChanceList, number>([[otherwise, 0]]);
  for (const [fault, named] of byFault) {
    for (const index of bay.byFault.get(fault) ?? []) {
      const place = bay.beliefs[index]?.hypothesis.place;
      if (!place) continue;
      const list = named[relation(place, site.place, site.partner)];
      const known = numberOf.get(list) ?? lists.push(list) - 1;
      numberOf.set(list, known);
      listOf[index] = known;
    }
  }
  const doneElsewhere = bay.input.evidence.some((evidence) => evidence.kind === 'test' && evidence.test === test.id);
  return { test, site, minutes: testMinutes(test, bay.options.open, doneElsewhere), lists, listOf };
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

