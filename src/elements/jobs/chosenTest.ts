import type { Advice, Proposal } from '../../domain/diagnosis/advice.ts';
import type { Place } from '../../domain/diagnosis/types.ts';
import type { Bench, ChosenTest } from './bench.ts';

/** Each test once, at its most telling place, in the order of the book. */
export function bestOfEachTest({ proposals }: Advice): readonly Proposal[] {
  return proposals.filter((proposal, index, all) => all.findIndex(({ test }) => test === proposal.test) === index);
}

export function asChosen({ test, place, partner }: Proposal): ChosenTest {
  return partner ? { test, place: place.id, partner: partner.id } : { test, place: place.id };
}

export function placeWords(place: Place, partner: Place | undefined): string {
  return partner ? `${place.label} with ${partner.label}` : place.label;
}

/** Takes a test as the one to be done now; without one, the proposed test is taken again. */
export function pick(bench: Bench, chosen: ChosenTest | undefined): undefined {
  bench.choose(chosen);
  bench.memory.setOpen('another-test', false);
  bench.draw();
  document.getElementById('do-now-heading')?.focus();
}
