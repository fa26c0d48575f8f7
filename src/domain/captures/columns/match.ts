import { findUnit, findUnits, unitById } from '../../units/table.ts';
import { convertBetween } from '../../units/convert.ts';
import type { Unit, UnitId } from '../../units/types.ts';
import type { LoggedTable, TableColumn } from '../table/types.ts';
import { quantities } from './quantities.data.ts';
import type { CapturedQuantity, QuantityId } from './quantities.data.ts';

/** How far a match can be trusted. `by-hand` was chosen by the reader of the file. */
export type Confidence = 'words-and-unit' | 'words' | 'unit' | 'by-hand';

export interface ColumnMatch {
  /** Place among the columns of the table. */
  readonly column: number;
  readonly quantity: QuantityId;
  /** Bank or cylinder, where the heading names one. */
  readonly index: number | undefined;
  /** Unit the column is taken to be in. */
  readonly unit: UnitId;
  readonly confidence: Confidence;
}

/** What the reader of the file says a column is; `nothing` takes a match away. */
export interface ColumnChoice {
  readonly column: number;
  readonly quantity: QuantityId | 'nothing';
  readonly index?: number;
  readonly unit?: UnitId;
}

/** The words of a heading in small letters: capitals inside a word and digits begin a new one. */
export function wordsOf(heading: string): readonly string[] {
  return heading
    .normalize('NFKC')
    .replace(/\bO2\b/gi, ' oxygen ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/([A-Za-z])(\d)/g, '$1 $2')
    .replace(/(\d)([A-Za-z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .map((word) => (word === 'temp' ? 'temperature' : word === 'volts' || word === 'volt' ? 'voltage' : word === 'amps' ? 'current' : word === 'press' ? 'pressure' : word))
    .filter((word) => word !== '');
}

const indexWords: Readonly<Record<'bank' | 'cylinder', readonly string[]>> = {
  bank: ['bank', 'b', 'bk'],
  cylinder: ['cylinder', 'cyl', 'no', 'nr', 'coil', 'injector'],
};

/** The number behind the word for it, or the last number of the heading. */
function indexIn(words: readonly string[], kind: 'bank' | 'cylinder'): number | undefined {
  const behind = words.findIndex((word, place) => indexWords[kind].includes(word) && /^\d{1,2}$/.test(words[place + 1] ?? ''));
  const found = behind >= 0 ? words[behind + 1] : words.findLast((word) => /^\d{1,2}$/.test(word));
  return found === undefined ? undefined : Number(found);
}

/** The words of the longest set that all stand in the heading, as how many they are; 0 for none. */
function wordScore(words: readonly string[], quantity: CapturedQuantity): number {
  if (quantity.not?.some((word) => words.includes(word))) return 0;
  return Math.max(0, ...quantity.words.filter((set) => set.every((word) => words.includes(word))).map((set) => set.length));
}

interface Candidate extends ColumnMatch {
  readonly score: number;
}

/** Unit of the column in the quantity's dimension. `other` when the unit written there measures something else. */
function unitFor(column: TableColumn, quantity: CapturedQuantity): Unit | 'other' | undefined {
  if (column.unitText === '') return undefined;
  // Counts and states are often written with a word that is no unit; trims and loads with one of plain ratios.
  return findUnit(column.unitText, quantity.dimension) ?? (findUnits(column.unitText).length > 0 ? 'other' : undefined);
}

/** By its unit alone: where no other quantity is written so, and no word speaks against it. */
function unitTells(words: readonly string[], unit: Unit | undefined, { unitTells: tells, not = [] }: CapturedQuantity): boolean {
  return unit !== undefined && tells === true && !not.some((word) => words.includes(word));
}

function confidenceOf(score: number, unit: Unit | undefined): Confidence {
  if (score === 0) return 'unit';
  return unit === undefined ? 'words' : 'words-and-unit';
}

function candidate(table: LoggedTable, place: number, quantity: CapturedQuantity): Candidate | undefined {
  const column = table.columns[place];
  if (column === undefined || place === table.time?.column) return undefined;
  if (column.kind === 'words' && quantity.dimension !== 'count') return undefined;
  const words = wordsOf(column.heading);
  const [score, unit] = [wordScore(words, quantity), unitFor(column, quantity)];
  if (unit === 'other' || (score === 0 && !unitTells(words, unit, quantity))) return undefined;
  return {
    column: place,
    quantity: quantity.id,
    index: quantity.index && indexIn(words, quantity.index),
    unit: unit?.id ?? quantity.unit,
    confidence: confidenceOf(score, unit),
    score: score * 2 + (unit === undefined ? 0 : 1),
  };
}

/**
 * What each column holds, by the words of the trade in its heading and by its unit, never by the names one program gives. Each column
 * gets one quantity at most and each quantity (of a bank or cylinder) one column: the one that fits best, the first of equals. What
 * the reader of the file chose goes before everything.
 */
export function matchColumns(table: LoggedTable, choices: readonly ColumnChoice[] = []): readonly ColumnMatch[] {
  const chosen = choices.flatMap((choice) => chosenMatch(table, choice));
  const handled = new Set(choices.map((choice) => choice.column));
  const candidates = table.columns
    .flatMap((_, place) => (handled.has(place) ? [] : quantities.map((quantity) => candidate(table, place, quantity))))
    .filter((found) => found !== undefined)
    .sort((one, other) => other.score - one.score || one.column - other.column);
  const taken: ColumnMatch[] = [...chosen];
  const key = ({ quantity, index }: ColumnMatch) => `${quantity} ${index ?? ''}`;
  for (const { score: _score, ...match } of candidates) {
    if (taken.some((other) => other.column === match.column || key(other) === key(match))) continue;
    taken.push(match);
  }
  return taken.sort((one, other) => one.column - other.column);
}

function chosenMatch(table: LoggedTable, { column, quantity, index, unit }: ColumnChoice): readonly ColumnMatch[] {
  const known = quantities.find(({ id }) => id === quantity);
  const written = table.columns[column];
  if (known === undefined || written === undefined) return [];
  const own = unitFor(written, known);
  return [{ column, quantity: known.id, index, unit: unit ?? (own === undefined || own === 'other' ? known.unit : own.id), confidence: 'by-hand' }];
}

/** Words that stand for yes. */
const yes = /^(on|yes|true|1|lit|active|flashing|blinking)$/i;

/** The numbers of a matched column in the quantity's own unit. Words of a state become 1 for yes and 0 for anything else. */
export function valuesOf(table: LoggedTable, match: ColumnMatch): Float64Array {
  const column = table.columns[match.column];
  if (column === undefined) return new Float64Array(table.rows).fill(Number.NaN);
  if (column.kind === 'words') {
    const states = column.words.map((word) => (yes.test(word.trim()) ? 1 : word.trim() === '' ? Number.NaN : 0));
    return Float64Array.from(column.codes, (code) => states[code] ?? Number.NaN);
  }
  const [from, to] = [unitById(match.unit), unitById(quantities.find(({ id }) => id === match.quantity)?.unit ?? '')];
  if (from === undefined || to === undefined || from.id === to.id) return column.values;
  return column.values.map((value) => (Number.isNaN(value) ? value : convertBetween(value, from, to)));
}

/** The values of a quantity, of this bank or cylinder where one is asked for. Nothing when no column holds it. */
export function channel(table: LoggedTable, matches: readonly ColumnMatch[], quantity: QuantityId, index?: number): Float64Array | undefined {
  const match = matches.find((one) => one.quantity === quantity && (index === undefined || one.index === index || (index === 1 && one.index === undefined)));
  return match && valuesOf(table, match);
}
