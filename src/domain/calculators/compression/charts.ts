import type { Chart } from '../definition.ts';
import { compare, lowestShare } from './compare.ts';
import type { Given } from './given.ts';

/** One bar for each cylinder in this sequence, the odd ones marked with their word, and beside it the bar with oil. */
function chartInSequence(title: string, label: string, sequence: readonly number[], given: Given, low: number | undefined): Chart {
  const { readings, finding, wet } = given;
  const points = sequence.map((cylinder, index) => ({
    x: index + 1,
    y: readings[cylinder - 1] ?? 0,
    label: String(cylinder),
    ...(finding.odd.includes(cylinder) ? { odd: finding.word } : {}),
  }));
  const oiled = sequence.flatMap((cylinder, index) => {
    const reading = wet.find((one) => one.cylinder === cylinder);
    return reading === undefined ? [] : [{ x: index + 1, y: reading.wet, label: 'oil' }];
  });
  const limit = (lowestShare / 100) * compare(readings).highest;
  return {
    title,
    x: { label, unit: 'count' },
    y: { label: 'Pressure', unit: 'psi' },
    series: [{ name: 'Dry', kind: 'bars', points }, ...(oiled.length === 0 ? [] : [{ name: 'With oil', kind: 'bars', points: oiled } as const])],
    marks: [],
    levels: [{ y: limit, label: `${lowestShare} % of the highest` }, ...(low === undefined ? [] : [{ y: low, label: 'Maker’s lowest' }])],
  };
}

/** The cylinders as they stand in the engine and, where the firing order is known, as they fire. */
export function charts(given: Given, low: number | undefined): readonly Chart[] {
  const { banks, order } = given;
  const places = banks.length > 1 ? 'Cylinder, bank by bank' : 'Cylinder';
  return [
    chartInSequence('Compression by cylinder', places, banks.flat(), given, low),
    ...(order === undefined ? [] : [chartInSequence('Compression in firing order', 'Cylinder, in firing order', order, given, low)]),
  ];
}
