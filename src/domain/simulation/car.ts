import { codeChance } from '../diagnosis/codes.ts';
import { chancesUnder, prepareTest } from '../diagnosis/likelihood.ts';
import type { TestSite } from '../diagnosis/likelihood.ts';
import { placesOf } from '../diagnosis/places.ts';
import { hypothesesOf, priorOf } from '../diagnosis/prior.ts';
import type { CodeAtPlace, DiagnosisBook, EngineLayout, Hypothesis, TestModel } from '../diagnosis/types.ts';
import { drawFor, drawIndex } from './random.ts';

/** A car with one fault, drawn from the book's own weights, as the garage cannot see it. */
export interface Car {
  readonly number: number;
  readonly truth: Hypothesis;
  readonly codes: readonly CodeAtPlace[];
  /** What the test would show on this car; the same each time it is asked. */
  readonly outcome: (test: TestModel, site: TestSite) => string;
}

/** A car of the given number. `book` is nature's: a policy may be given another to reason with. */
export function drawCar(book: DiagnosisBook, engine: EngineLayout, seed: number, number: number): Car {
  const hypotheses = hypothesesOf(book, engine);
  const prior = priorOf(hypotheses);
  const pick = (name: string): Hypothesis => {
    const found = hypotheses[drawIndex(prior, drawFor(seed, number, name))];
    if (!found) throw new Error('A book without hypotheses has no cars.');
    return found;
  };
  const truth = pick('fault');
  // A fault that the book does not hold leaves such codes as any other would.
  const model = truth.fault ? truth : pick('codes of an unknown fault');
  return {
    number,
    truth,
    codes: drawCodes(book, engine, model, (family, place) => drawFor(seed, number, 'code', family, place)),
    outcome: (test, site) => {
      const chances = chancesUnder(prepareTest(test), site, truth);
      const drawn = drawIndex(chances, drawFor(seed, number, test.id, site.place.id, site.partner?.id ?? ''));
      return test.outcomes[drawn]?.id ?? '';
    },
  };
}

function drawCodes(book: DiagnosisBook, engine: EngineLayout, truth: Hypothesis, draw: (family: string, place: string) => number): readonly CodeAtPlace[] {
  return book.codeFamilies.flatMap((family) =>
    placesOf(engine, family.placeKind).flatMap((place, index) => {
      if (draw(family.id, place.id) >= codeChance(truth, family, place)) return [];
      const code = { code: `${family.id} ${place.id}`, family: family.id };
      return [family.placeKind === 'engine' ? code : { ...code, number: index + 1 }];
    }),
  );
}
