import { advise } from '../../domain/diagnosis/advice.ts';
import type { Advice, Proposal } from '../../domain/diagnosis/advice.ts';
import { perCent } from '../../domain/diagnosis/labels.ts';
import { placeById, placesOf } from '../../domain/diagnosis/places.ts';
import type { Place, TestModel } from '../../domain/diagnosis/types.ts';
import type { DerivedJob } from '../../domain/jobs/reduce.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench, ChosenTest } from './bench.ts';
import { makeForm, missing } from './form.ts';
import { outcomeSection } from './outcomeSection.ts';
import { button, fold, list, paragraph } from './parts.ts';
import { cautionNodes } from './shared.ts';

/** How many of the other proposals are listed before the mechanic picks freely. */
const proposalsListed = 8;

/** The test to be done now: the one proposed, or the one the mechanic picked. */
export function testSection(bench: Bench): Node[] {
  const { derived } = bench.session;
  if (!derived.diagnosis) return [];
  const advice = advise(derived.diagnosis, derived.notPossible);
  const first = advice.proposals[0];
  const chosen = bench.chosen ?? (first && asChosen(first));
  const another = fold(bench.memory, 'another-test', 'another', ['Another test'], () => anotherTest(bench, advice));
  if (!chosen) return [paragraph('lead', 'No test left would tell more about this fault. Choose one yourself, or look beyond the book.'), another];
  const proposal = advice.proposals.find((candidate) => candidate.test === chosen.test && candidate.place.id === chosen.place);
  return [...chosenTest(bench, derived, chosen, proposal), another];
}

function asChosen({ test, place, partner }: Proposal): ChosenTest {
  return partner ? { test, place: place.id, partner: partner.id } : { test, place: place.id };
}

function chosenTest(bench: Bench, derived: DerivedJob, chosen: ChosenTest, proposal: Proposal | undefined): Node[] {
  const { book } = bench.session;
  const test = book.diagnosis.tests.find((candidate) => candidate.id === chosen.test);
  const engine = derived.engine?.layout;
  const place = engine && placeById(engine, chosen.place);
  if (!test || !engine || !place) return [paragraph('lead', 'This test is not in this edition of the book. Choose another.')];
  const partner = chosen.partner === undefined ? undefined : placeById(engine, chosen.partner);
  const at = { test, place, ...(partner ? { partner } : {}) };
  const picked = bench.chosen === undefined ? undefined : button('back-to-proposal', 'second-action', 'Back to the proposed test', () => pick(bench, undefined));
  const address = book.procedures[test.id]?.address;
  return [
    element('p', { class: 'test-name' }, element('strong', {}, test.title), `, ${placeWords(place, partner)}`),
    element('p', { class: 'test-minutes' }, element('span', { class: 'figure' }, String(test.minutes)), ' minutes'),
    paragraph('because', proposal ? reasonWords(proposal) : 'Your own choice; the book does not rank it among the telling tests now.'),
    ...cautionNodes(book, test.cautions),
    element(
      'p',
      { class: 'actions' },
      address === undefined ? undefined : element('a', { class: 'second-action', id: 'open-procedure', href: bookAddress(address) }, 'Open the procedure'),
      picked,
    ),
    ...(proposal ? [whatItWouldTell(bench, proposal)] : []),
    ...outcomeSection(bench, at),
    fold(bench.memory, 'not-possible', 'not-possible', ['Not possible here'], () => [notPossibleForm(bench, test, place)]),
  ];
}

function placeWords(place: Place, partner: Place | undefined): string {
  return partner ? `${place.label} with ${partner.label}` : place.label;
}

function reasonWords({ because, lostTo }: Proposal): string {
  return lostTo === undefined ? because : `${because} ${lostTo}`;
}

function whatItWouldTell(bench: Bench, proposal: Proposal): HTMLElement {
  return fold(bench.memory, 'would-tell', 'would-tell', ['What each outcome would lead to'], () =>
    proposal.outcomes.map(({ label, probability, leading }) => {
      const then = leading.map((leader) => `${leader.label} ${perCent(leader.probability)}`).join('; ');
      return paragraph('would-lead', `${label} (${perCent(probability)} likely): then ${then}.`);
    }),
  );
}

function pick(bench: Bench, chosen: ChosenTest | undefined): undefined {
  bench.choose(chosen);
  bench.memory.setOpen('another-test', false);
  bench.draw();
  document.getElementById('do-now-heading')?.focus();
}

function anotherTest(bench: Bench, advice: Advice): Node[] {
  // Each test once, at its most telling place; the form below takes any place.
  const best = advice.proposals.filter((proposal, index, all) => all.findIndex(({ test }) => test === proposal.test) === index);
  const others = best.slice(0, proposalsListed).map((proposal, index) => {
    const label = `${proposal.title}, ${placeWords(proposal.place, proposal.partner)}: ${proposal.minutes} min`;
    const why = proposal.lostTo ?? 'The proposed test.';
    return element('li', {}, button(`pick-${index}`, 'choice', label, () => pick(bench, asChosen(proposal))), paragraph('because', why));
  });
  const titles = bench.session.book.diagnosis.tests;
  const refused = advice.notOffered.map(({ test, why }) => `${titles.find((candidate) => candidate.id === test)?.title ?? test}: ${why}`);
  return [
    element('ol', { class: 'proposals' }, ...others),
    anyTestForm(bench),
    ...(refused.length > 0 ? [fold(bench.memory, 'not-offered', 'not-offered', ['Tests not offered, and why'], () => [list('reasons', refused) ?? ''].filter((node) => node instanceof Node))] : []),
  ];
}

/** Any test of the book that this engine allows, at any of its places, in any order. */
function anyTestForm(bench: Bench): HTMLFormElement {
  const { derived, book } = bench.session;
  const engine = derived.engine?.layout;
  const tests = book.diagnosis.tests.filter(
    (test) =>
      (test.kind === 'look' || test.kind === 'test') &&
      (test.ignition.length === 0 || (engine !== undefined && test.ignition.includes(engine.ignition))) &&
      (test.injection.length === 0 || (engine !== undefined && test.injection.includes(engine.injection))),
  );
  const choices = (places: readonly Place[]) => places.map(({ id, label }) => ({ value: id, label }));
  const placesFor = (id: string): readonly Place[] => {
    const test = tests.find((candidate) => candidate.id === id);
    return engine && test ? placesOf(engine, test.placeKind) : [];
  };
  const start = bench.memory.text('any-test.test') ?? tests[0]?.id ?? '';
  const needsPartner = tests.find((test) => test.id === start)?.needsPartner ?? false;
  const form = makeForm(bench.memory, {
    name: 'any-test',
    submit: 'Do this test',
    fields: [
      { name: 'test', label: 'Any test', kind: 'choice', start, choices: tests.map(({ id, title, minutes }) => ({ value: id, label: `${title} (${minutes} min)` })) },
      { name: 'place', label: 'Where', kind: 'choice', start: placesFor(start)[0]?.id ?? '', choices: choices(placesFor(start)) },
      ...(needsPartner
        ? [{ name: 'partner', label: 'Exchanged with', kind: 'choice' as const, start: placesFor(start)[1]?.id ?? '', choices: choices(placesFor(start)) }]
        : []),
    ],
    take: (values) => {
      const test = tests.find((candidate) => candidate.id === values('test'));
      if (!test || placesFor(test.id).length === 0) return missing('test', 'This engine has no place where this test could be done. Choose another.');
      const place = values('place');
      if (!test.needsPartner) return () => pick(bench, { test: test.id, place });
      if (values('partner') === place) return missing('partner', 'Choose another place to exchange with.');
      return () => pick(bench, { test: test.id, place, partner: values('partner') });
    },
  });
  form.addEventListener('change', (event) => {
    if (!(event.target instanceof HTMLSelectElement) || event.target.dataset['field'] !== 'test') return;
    // The places depend on the test; those chosen for the last one are forgotten.
    const test = event.target.value;
    bench.memory.forget('any-test');
    bench.memory.setText('any-test.test', test);
    bench.draw();
  });
  return form;
}

function notPossibleForm(bench: Bench, test: TestModel, place: Place): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'not-possible',
    submit: 'Leave it out',
    fields: [
      {
        name: 'where',
        label: 'Left out',
        kind: 'choice',
        start: 'here',
        choices: [
          { value: 'here', label: `At ${place.label} only` },
          { value: 'everywhere', label: 'Everywhere: the tool is not there' },
        ],
      },
      { name: 'reason', label: 'Why not', kind: 'line', hint: 'Such as: plug seized, tool not in the shop.' },
    ],
    take: (values) => {
      const reason = values('reason').trim();
      if (reason === '') return missing('reason', 'Say why, so that the sheet can say it too.');
      const at = values('where') === 'everywhere' ? {} : { place: { id: place.id, label: place.label } };
      return () => {
        bench.choose(undefined);
        bench.memory.setOpen('not-possible', false);
        return bench.session.add({ body: { kind: 'test-not-possible', test: test.id, title: test.title, reason, ...at } });
      };
    },
  });
}
