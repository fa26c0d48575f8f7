import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { findForbiddenKey, isObject, list, number, object, oneOf, text } from '../shape.ts';
import type { Shape } from '../shape.ts';
import { meterQuantities } from './meters.data.ts';
import { longestName, mostMeters, mostRanges, problemWithMeter } from './meters.ts';
import type { UserMeter } from './meters.ts';

/** What stands in `type` of every file of meters. */
export const metersType = 'ignition-bench-book/meters';
/** The version written today. A file of a newer version is refused untouched. */
export const metersVersion = 1;
export const metersFileName = 'my-meters.json';
/** Files above this are refused unread: a hundred meters are some tens of kilobytes. */
export const largestMetersFile = 1024 * 1024;
/** Deeper nesting than any part of the file has. */
const deepest = 8;

export type MetersFileCode =
  | 'too-large'
  | 'not-json'
  | 'not-meters'
  | 'newer-version'
  | 'unknown-version'
  | 'forbidden-key'
  | 'too-deep'
  | 'wrong-field';

/** The meters as the text of a file. */
export function exportMeters(meters: readonly UserMeter[]): string {
  return `${JSON.stringify({ type: metersType, version: metersVersion, meters }, undefined, 2)}\n`;
}

/**
 * Meters from the text of a file, all of it checked before any of it is used.
 * Refuses what is no such file, what a newer book wrote, and anything out of shape, naming the place.
 */
export function importMeters(content: string): Result<readonly UserMeter[], Refusal<MetersFileCode>> {
  // A character takes at least one byte, so text longer than the limit is certainly too large.
  if (content.length > largestMetersFile) return refuse('file', 'too-large', 'This file is larger than 1 MB. A file of meters is far smaller; choose the right file.');
  try {
    return readMetersFile(JSON.parse(content.replace(/^\uFEFF/, '')) as unknown);
  } catch (error) {
    const why = error instanceof Error ? ` (${error.message})` : '';
    return refuse('file', 'not-json', `This file holds no meters, or it was cut short: it cannot be read as JSON${why}.`);
  }
}

function readMetersFile(value: unknown): Result<readonly UserMeter[], Refusal<MetersFileCode>> {
  if (!isObject(value) || value['type'] !== metersType) {
    return refuse('type', 'not-meters', `This is not a file of meters of this book: "type" must be "${metersType}".`);
  }
  const found = findForbiddenKey(value, deepest, 'the file');
  if (found !== undefined) return refuse(found.at, found.code, `This file is damaged or hostile: ${found.at} ${found.problem}. Nothing was taken from it.`);
  const { version } = value;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuse('version', 'unknown-version', `"version" must be ${metersVersion}; found ${JSON.stringify(version) ?? 'nothing'}.`);
  }
  if (version > metersVersion) {
    const message = `This file was written by a newer book (version ${version}; this book reads up to ${metersVersion}). Nothing was changed: update the book, then open it again.`;
    return refuse('version', 'newer-version', message);
  }
  return checkFile(value);
}

const quantities = meterQuantities.map(({ dimension }) => dimension);
const range = object(
  { quantity: oneOf(quantities), unit: text(20), percent: number(), counts: number() },
  { upTo: number(), resolution: number() },
);
const meter: Shape<UserMeter> = object({
  id: text(64, { matches: /^[A-Za-z0-9][A-Za-z0-9-]*$/, saying: 'letters, digits and hyphens' }),
  name: text(longestName),
  ranges: list(range, mostRanges),
});
const file = object({ type: oneOf([metersType]), version: number(), meters: list(meter, mostMeters) });

function checkFile(value: unknown): Result<readonly UserMeter[], Refusal<MetersFileCode>> {
  const checked = file(value, 'the file');
  if (!checked.ok) return wrongField(checked.at, checked.problem);
  const { meters } = checked.value;
  const ids = new Set<string>();
  for (const [index, one] of meters.entries()) {
    if (ids.has(one.id)) return wrongField(`meters[${index}].id`, 'stands twice in the file');
    ids.add(one.id);
    const problem = problemWithMeter(one);
    if (problem) return wrongField(`meters[${index}].${problem.input}`, `is not right: ${problem.message}`);
  }
  return success(meters);
}

function wrongField(at: string, problem: string): Result<never, Refusal<MetersFileCode>> {
  return refuse(at, 'wrong-field', `This file is damaged or was changed by hand: ${at} ${problem.replace(/\.$/, '')}. Nothing was taken from it.`);
}

function refuse(input: string, code: MetersFileCode, message: string): Result<never, Refusal<MetersFileCode>> {
  return failure({ input, code, message });
}

/** What taking meters in did to those that were here. */
export interface MergedMeters {
  readonly meters: readonly UserMeter[];
  /** Names of the meters that are new here, and of those that the file had otherwise and that were replaced. */
  readonly added: readonly string[];
  readonly replaced: readonly string[];
}

/** Both lists in one. A meter with the id of one here takes its place; the others are put at the end. None here is dropped. */
export function mergeMeters(here: readonly UserMeter[], incoming: readonly UserMeter[]): MergedMeters {
  const known = new Map(here.map((one) => [one.id, one]));
  const differs = (one: UserMeter): boolean => JSON.stringify(inOrder(one)) !== JSON.stringify(inOrder(known.get(one.id)));
  const changed = incoming.filter(differs);
  const meters = new Map([...here, ...incoming].map((one) => [one.id, one]));
  return {
    meters: [...meters.values()],
    added: changed.filter((one) => !known.has(one.id)).map(({ name }) => name),
    replaced: changed.filter((one) => known.has(one.id)).map(({ name }) => name),
  };
}

/** The parts of a meter in a fixed order, so that equal meters give equal text. */
function inOrder(one: UserMeter | undefined): readonly unknown[] {
  return one === undefined ? [] : [one.name, ...one.ranges.map(({ quantity, unit, upTo, percent, counts, resolution }) => [quantity, unit, upTo, percent, counts, resolution])];
}
