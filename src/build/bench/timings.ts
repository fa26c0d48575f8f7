import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeCalculators } from '../../domain/calculators/registry.ts';
import { runCalculator } from '../../domain/calculators/run.ts';
import { advise } from '../../domain/diagnosis/advice.ts';
import { makeLayout } from '../../domain/diagnosis/layout.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { medianMilliseconds, type Measurement } from './measurement.ts';

/** One frame at 60 Hz: a result that comes later is seen to lag behind the typing. */
export const RECOMPUTE_LIMIT = 16;
/** The sums themselves, away from the page: a small part of that frame. */
const SUM_LIMIT = 1;
/** An old phone has 50 ms for it, half of the 100 ms that feel immediate; here a fifth of that. */
const ADVICE_LIMIT = 10;

/** Each calculator on its first worked example, from typed text to result. */
export function measureCalculators(): Measurement[] {
  return makeCalculators({}).flatMap((definition) => {
    const inputs = definition.examples[0]?.inputs;
    if (inputs === undefined) return [];
    const value = medianMilliseconds(() => void runCalculator(definition, inputs), 1000);
    return [{ group: 'recompute, Node', name: definition.id, value, unit: 'ms', limit: SUM_LIMIT } as const];
  });
}

/** The first advice on the largest engine of the book, where the most faults and places are in question. */
export function measureAdvice(folder: string): Measurement[] {
  const book = JSON.parse(readFileSync(join(folder, 'data/job-book.json'), 'utf8')) as JobBook;
  const largest = book.engines.toSorted((a, b) => b.cylinders - a.cylinders)[0];
  const ignition = largest?.ignition[0];
  const injection = largest?.injection[0];
  if (largest === undefined || ignition === undefined || injection === undefined) throw new Error('The book has no engine.');
  const layout = makeLayout(largest, ignition, injection);
  if (!layout.ok) throw new Error(layout.error.message);
  const input = { book: book.diagnosis, engine: layout.value, signs: [], evidence: [] };
  const value = medianMilliseconds(() => void advise(input), 50);
  return [{ group: 'advice, Node', name: `${largest.cylinders} cylinders`, value, unit: 'ms', limit: ADVICE_LIMIT }];
}
