import { testMinutes } from '../../domain/diagnosis/costs.ts';
import { placesOf } from '../../domain/diagnosis/places.ts';
import type { EngineLayout, Place, TestModel } from '../../domain/diagnosis/types.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { asChosen, bestOfEachTest, pick, placeWords } from './chosenTest.ts';
import { makeForm, missing } from './form.ts';
import { button, fold, list, paragraph } from './parts.ts';

/** How many of the other proposals are listed before the mechanic picks freely. */
const proposalsListed = 8;

/** Tests to choose from instead: those the book ranks behind its proposal, and any other; with those not offered, and why. */
export function anotherTest(bench: Bench): Node[] {
  const advice = bench.advice();
  if (!advice) return [];
  const others = bestOfEachTest(advice).slice(0, proposalsListed).map((proposal, index) => {
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
  const tests = book.diagnosis.tests.filter((test) => isAllowed(test, engine));
  const choices = (places: readonly Place[]) => places.map(({ id, label }) => ({ value: id, label }));
  const placesFor = (id: string): readonly Place[] => {
    const test = tests.find((candidate) => candidate.id === id);
    return engine && test ? placesOf(engine, test.placeKind) : [];
  };
  const start = bench.memory.text('any-test.test') ?? tests[0]?.id ?? '';
  const best = tellingPlace(bench, start, placesFor(start));
  const needsPartner = tests.find((test) => test.id === start)?.needsPartner ?? false;
  const form = makeForm(bench.memory, {
    name: 'any-test',
    submit: 'Do this test',
    fields: [
      { name: 'test', label: 'Any test', kind: 'choice', start, choices: tests.map((test) => ({ value: test.id, label: `${test.title} (${testMinutes(test, derived.access)} min)` })) },
      { name: 'place', label: 'Where', kind: 'choice', start: best.place, choices: choices(placesFor(start)) },
      ...(needsPartner
        ? [{ name: 'partner', label: 'Exchanged with', kind: 'choice' as const, start: best.partner, choices: choices(placesFor(start)) }]
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

function isAllowed({ kind, ignition, injection }: TestModel, engine: EngineLayout | undefined): boolean {
  if (kind !== 'look' && kind !== 'test') return false;
  const allows = <Word>(words: readonly Word[], word: Word | undefined): boolean => words.length === 0 || (word !== undefined && words.includes(word));
  return allows(ignition, engine?.ignition) && allows(injection, engine?.injection);
}

/** Where the test would tell most by the advice; where that does not rank it, the first places. */
function tellingPlace(bench: Bench, test: string, places: readonly Place[]): { readonly place: string; readonly partner: string } {
  const best = bench.advice()?.proposals.find((proposal) => proposal.test === test);
  return { place: (best?.place ?? places[0])?.id ?? '', partner: (best?.partner ?? places[1])?.id ?? '' };
}
