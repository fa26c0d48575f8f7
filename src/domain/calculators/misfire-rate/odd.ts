import { companions } from '../../diagnosis/layout.ts';
import { multipleCodeAbovePercent, total } from '../../obd/misfire.ts';
import { areNeighbours, inOneRow, nameCylinders } from '../cylinders.ts';

/** A cylinder stands out when it has more than so many times the mean of its fellows. This book's own choice, common practice at best. */
const timesItsFellows = 2;

/**
 * Cylinders that stand out, numbered from 1: more than a tenth of all misfires, the share from which the rule counts a cylinder, and
 * more than twice the mean of the others.
 */
export function oddCylinders(counts: readonly number[]): readonly number[] {
  const all = total(counts);
  const fellows = counts.length - 1;
  if (fellows === 0) return [];
  const isOdd = (count: number) => 100 * count > multipleCodeAbovePercent * all && count * fellows > timesItsFellows * (all - count);
  return counts.flatMap((count, index) => (isOdd(count) ? [index + 1] : []));
}

function followsInOrder(one: number, other: number, order: readonly number[]): boolean {
  const apart = Math.abs(order.indexOf(one) - order.indexOf(other));
  return apart === 1 || apart === order.length - 1;
}

/** What two cylinders that stand out have in common, from where they stand and, if known, when they fire. Common practice. */
function pairNote(one: number, other: number, cylinders: number, order: readonly number[] | undefined): readonly string[] {
  const pair = order === undefined ? undefined : companions(order).find((both) => both.includes(one) && both.includes(other));
  return [
    ...(pair === undefined ? [] : [`${one} and ${other} are companions in this firing order, if it fires evenly: with one coil for two plugs they share it, so look at that coil first.`]),
    ...(order !== undefined && cylinders > 2 && pair === undefined && followsInOrder(one, other, order)
      ? [`${one} and ${other} fire one after the other: where plug leads run side by side, see whether one fires the other.`]
      : []),
    ...(areNeighbours(one, other, [inOneRow(cylinders)]) ? [`${one} and ${other} are next to each other by number: if they stand side by side in the engine, a compression test is worth its time.`] : []),
  ];
}

/** Which cylinders stand out, and what two of them share. */
export function oddNotes(counts: readonly number[], order: readonly number[] | undefined): readonly string[] {
  const odd = oddCylinders(counts);
  const [one, other] = odd;
  if (one === undefined) return [];
  const named = `${nameCylinders(odd).replace(/^c/u, 'C')}: high, more than twice the mean of the others.`;
  return [named, ...(other === undefined || odd.length > 2 ? [] : pairNote(one, other, counts.length, order))];
}
