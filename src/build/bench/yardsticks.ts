import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeLayout } from '../../domain/diagnosis/layout.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { drawFor } from '../../domain/simulation/random.ts';
import { drawSmallModel } from '../../domain/simulation/drawSmallModel.ts';
import { simulate, withWrongWeights } from '../../domain/simulation/simulate.ts';
import type { Cars, Summary } from '../../domain/simulation/simulate.ts';
import { advicePolicy, followPolicy, optimalPolicy } from '../../domain/simulation/smallModel.ts';
import type { Measurement } from './measurement.ts';

const seed = 1;
/** Cars for the advice: enough that the share of wrong findings is known to about one in a hundred. */
const jobs = 500;
/** The fixed order takes some forty tests for each car and is far behind after a few. */
const jobsOfOthers = 150;
const smallModels = 120;

/** What following the advice costs, against the exact optimum on small models and against the other ways to work on drawn cars. */
export function measureYardsticks(folder: string): Measurement[] {
  const book = JSON.parse(readFileSync(join(folder, 'data/job-book.json'), 'utf8')) as JobBook;
  const engine = book.engines.find(({ id }) => id === 'four-inline-1342');
  const layout = engine && makeLayout(engine, 'coil-per-plug', 'port');
  if (!layout?.ok) throw new Error('The book has no four in line with a coil for each plug.');
  return [...againstOptimum(), ...againstOthers({ book: book.diagnosis, engine: layout.value, seed, jobs: jobsOfOthers })];
}

function againstOptimum(): Measurement[] {
  const ratios = Array.from({ length: smallModels }, (_, number) => {
    const model = drawSmallModel(seed, number);
    return followPolicy(model, advicePolicy(model)).minutes / optimalPolicy(model).minutes;
  });
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  const group = `advice over the exact optimum, ${smallModels} small models`;
  return [
    { group, name: 'on average', value: mean, unit: 'times', limit: 1.03 },
    { group, name: 'at worst', value: Math.max(...ratios), unit: 'times', limit: 1.1 },
  ];
}

function againstOthers(cars: Cars): Measurement[] {
  const advice = simulate('advice', { ...cars, jobs });
  const sameCars = simulate('advice', cars);
  const fixed = simulate('fixed-order', cars);
  const parts = simulate('swap-parts', cars);
  const believed = withWrongWeights(cars.book, 3, (fault) => drawFor(seed, 'wrong', fault) < 0.5);
  const misled = simulate('advice', { ...cars, believed });
  const group = `${cars.jobs} drawn cars, four in line`;
  const minutes = (name: string, summary: Summary): Measurement => ({ group, name, value: summary.minutes.mean, unit: 'minutes' });
  return [
    minutes('advice', sameCars),
    minutes('fixed order', fixed),
    minutes('parts swapped', parts),
    minutes('weights wrong threefold', misled),
    { group, name: 'advice / fixed order', value: sameCars.minutes.mean / fixed.minutes.mean, unit: 'times', limit: 0.75 },
    { group, name: 'misled / fixed order', value: misled.minutes.mean / fixed.minutes.mean, unit: 'times', limit: 1 },
    { group, name: 'needless parts, advice', value: sameCars.needlessParts.mean, unit: 'parts', limit: parts.needlessParts.mean / 10 },
    { group, name: 'needless parts, swapped', value: parts.needlessParts.mean, unit: 'parts' },
    { group: `${jobs} drawn cars, four in line`, name: 'wrong findings, advice', value: 100 * advice.wrongFindingShare.mean, unit: '%', limit: 2 },
    { group: `${jobs} drawn cars, four in line`, name: 'tests in a job, advice', value: advice.tests.mean, unit: 'times' },
  ];
}
