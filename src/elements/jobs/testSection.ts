import { testMinutes } from '../../domain/diagnosis/costs.ts';
import type { Advice, Proposal } from '../../domain/diagnosis/advice.ts';
import { placeById } from '../../domain/diagnosis/places.ts';
import { bookAddress, element } from '../dom.ts';
import { accessTicks } from './accessTicks.ts';
import type { Bench, ChosenTest } from './bench.ts';
import { asChosen, bestOfEachTest, pick, placeWords } from './chosenTest.ts';
import { laterPart } from './laterOnDemand.ts';
import { notPossibleForm } from './notPossibleForm.ts';
import { outcomeSection } from './outcomeSection.ts';
import type { TestAtPlace } from './outcomeSection.ts';
import { button, fold, paragraph } from './parts.ts';
import { cautionNodes } from './shared.ts';
import { whatIf } from './whatIf.ts';

/** The test to be done now: the one proposed, or the one the mechanic picked. */
export function testSection(bench: Bench): Node[] {
  const advice = bench.advice();
  if (!advice) return [];
  const first = advice.proposals[0];
  const chosen = bench.chosen ?? (first && asChosen(first));
  const another = fold(bench.memory, 'another-test', 'another', ['Another test'], () => laterPart(bench, 'anotherTest'));
  if (!chosen) return [paragraph('lead', 'No test left would tell more about this fault. Choose one yourself, or look beyond the book.'), accessTicks(bench), another];
  const proposal = advice.proposals.find((candidate) => candidate.test === chosen.test && candidate.place.id === chosen.place);
  const at = atPlace(bench, chosen, proposal);
  if (!at) return [paragraph('lead', 'This test is not in this edition of the book. Choose another.'), another];
  return [...chosenTest(bench, at, proposal), another];
}

function atPlace({ session: { book, derived } }: Bench, chosen: ChosenTest, proposal: Proposal | undefined): TestAtPlace | undefined {
  const test = book.diagnosis.tests.find((candidate) => candidate.id === chosen.test);
  const engine = derived.engine?.layout;
  const place = engine && placeById(engine, chosen.place);
  if (!test || !place) return undefined;
  const partner = chosen.partner === undefined ? undefined : placeById(engine, chosen.partner);
  return { test, place, minutes: proposal?.minutes ?? testMinutes(test, derived.access), ...(partner ? { partner } : {}) };
}

function chosenTest(bench: Bench, at: TestAtPlace, proposal: Proposal | undefined): Node[] {
  const { book } = bench.session;
  const { test, place, partner } = at;
  const picked = bench.chosen === undefined ? undefined : button('back-to-proposal', 'second-action', 'Back to the proposed test', () => pick(bench, undefined));
  const address = book.procedures[test.id]?.address;
  return [
    element('p', { class: 'test-name' }, element('strong', {}, test.title), `, ${placeWords(place, partner)}`),
    element('p', { class: 'test-minutes' }, element('span', { class: 'figure' }, String(at.minutes)), ' minutes', worthWords(proposal)),
    paragraph('because', proposal ? reasonWords(proposal) : 'Your own choice; the book does not rank it among the telling tests now.'),
    ...cautionNodes(book, test.cautions),
    element(
      'p',
      { class: 'actions' },
      address === undefined ? undefined : element('a', { class: 'second-action', id: 'open-procedure', href: bookAddress(address) }, 'Open the procedure'),
      picked,
    ),
    ...(bench.chosen === undefined ? runnerUp(bench.advice()) : []),
    accessTicks(bench),
    ...(proposal ? [whatIf(bench, proposal)] : []),
    ...outcomeSection(bench, at),
    fold(bench.memory, 'not-possible', 'not-possible', ['Not possible here'], () => [notPossibleForm(bench, test, place)]),
  ];
}

/** What the test is expected to save against fitting parts by chance; below half a minute there is nothing to name. */
function worthWords(proposal: Proposal | undefined): string {
  const worth = proposal?.worthMinutes;
  if (worth === undefined || worth < 0.5) return '';
  const minutes = Math.round(worth);
  return `; expected to save about ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
}

function reasonWords({ because, lostTo }: Proposal): string {
  return lostTo === undefined ? because : `${because} ${lostTo}`;
}

/** The test that came second and why it did, so that the proposal can be judged. */
function runnerUp(advice: Advice | undefined): Node[] {
  const second = advice && bestOfEachTest(advice)[1];
  if (!second) return [];
  return [element('p', { class: 'runner-up' }, 'Runner-up: ', element('strong', {}, second.title), `, ${placeWords(second.place, second.partner)}. ${second.lostTo ?? ''}`)];
}
