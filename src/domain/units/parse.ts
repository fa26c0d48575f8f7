import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { convertBetween, convertStep } from './convert.ts';
import { readNumber } from './number.ts';
import type { ReadNumber } from './number.ts';
import { splitPressureKind } from './pressure.ts';
import type { PressureKind } from './pressure.ts';
import { refuse } from './refusals.ts';
import { findUnit, findUnits, unitById } from './table.ts';
import type { Dimension, InputTextCode, ParsedText, TypedValue, Unit, UnitId } from './types.ts';

/** What a field asks for. */
export interface ExpectedInput {
  /** The field's name, given back in a refusal. */
  readonly input: string;
  /** What a mechanic calls it; every message starts with it. */
  readonly label: string;
  readonly dimension: Dimension;
  /** Unit taken when none is typed, and the unit of the answer. */
  readonly unit: UnitId;
  /** May the meter have shown an open circuit? */
  readonly acceptOpen?: boolean;
  /** For pressures: which kind is wanted. A text that names the other kind is refused; one that names none is taken as wanted. */
  readonly pressure?: PressureKind;
}

/** A quantity of which nothing was asked: the number as typed and every unit it may be in, at most one of each dimension. */
export interface TypedQuantity {
  readonly value: number;
  readonly resolution: number;
  readonly units: readonly Unit[];
}

type Refused = Refusal<InputTextCode>;

/**
 * Reads what a person typed: `0.62 ohm`, `0,62 Ω`, `620 mohm`, `4k7`, `9.4k`, `22 °C`, `−3`, `1e3`, `1 234.5`, `OL`.
 * The answer is in the unit asked for. `1,234`, which may be a decimal or a thousand, is refused with both readings.
 * Refuses an empty text, one that is no number, a unit that is unknown or measures something else, and an open circuit where
 * none is accepted. Never yields NaN or infinity.
 */
export function parseInputText(text: string, expected: ExpectedInput): Result<ParsedText, Refused> {
  const typed = plainMarks(text);
  if (typed === '') return failure(refuse.missing(expected));
  if (isOpenCircuit(typed, expected)) {
    return expected.acceptOpen ? success({ kind: 'open' }) : failure(refuse.openNotAccepted(typed, expected));
  }
  const pressed = pressureAsWanted(typed, expected);
  return pressed.ok ? readValue(pressed.value, expected) : pressed;
}

/** The text without its word for absolute or gauge, where that word is the one wanted. */
function pressureAsWanted(typed: string, expected: ExpectedInput): Result<string, Refused> {
  if (expected.dimension !== 'pressure') return success(typed);
  const { text, kind } = splitPressureKind(typed);
  if (kind === undefined || expected.pressure === undefined || kind === expected.pressure) return success(text);
  return failure(refuse.wrongPressure(typed, expected.pressure, expected));
}

/**
 * Reads several values parted by spaces or semicolons. A unit may follow each value, or stand once at the end and then holds for all.
 * Inside a list a space always parts values, so thousands are typed without gaps. An empty text is refused as missing.
 */
export function parseList(text: string, expected: ExpectedInput): Result<readonly TypedValue[], Refused> {
  const pressed = pressureAsWanted(plainMarks(text), expected);
  if (!pressed.ok) return pressed;
  const pieces = listPieces(pressed.value);
  if (pieces.length === 0) return failure(refuse.missing(expected));
  const shared = sharedUnit(pieces);
  if (shared === 'mixed') return failure(refuse.mixedUnits(text, expected));
  const values: TypedValue[] = [];
  for (const piece of pieces) {
    if (isOpenCircuit(piece.number, expected)) return failure(refuse.openNotAccepted(piece.number, expected));
    if (COMMAS_BETWEEN_THREES.test(piece.number)) return failure(refuse.ambiguousInList(piece.number, expected));
    const read = readValue(`${piece.number} ${shared ?? piece.unit}`.trim(), expected);
    if (!read.ok) return read;
    values.push(read.value);
  }
  return success(values);
}

/**
 * Reads a quantity of any dimension, such as `165 psi`, in the unit typed: for a converter that takes what it is given.
 * A bare number is a plain ratio. Refuses what is no number or has no known unit.
 */
export function parseQuantity(
  text: string,
  asked: { readonly input: string; readonly label: string },
): Result<TypedQuantity, Refused> {
  const typed = plainMarks(text);
  if (typed === '') return failure(refuse.missing(asked));
  const read = readNumber(typed);
  if (read.kind !== 'number') return failure(refuse.number(read, typed, asked));
  const units = read.letterUnit === undefined ? findUnits(read.rest || '1') : findUnits(read.rest || read.letterUnit);
  if (units.length === 0) return failure(refuse.unitOfNoKind(read.rest, asked));
  return success({ value: read.value, resolution: read.resolution, units });
}

function readValue(typed: string, expected: ExpectedInput): Result<TypedValue, Refused> {
  const read = readNumber(typed);
  if (read.kind !== 'number') return failure(refuse.number(read, typed, expected));
  const asked = unitById(expected.unit);
  if (!asked) return failure(refuse.unknownUnit(expected.unit, expected));
  const unit = typedUnit(read, asked, expected);
  return unit.ok ? inAskedUnit(read, unit.value, asked, typed, expected) : unit;
}

/** The unit typed; where a letter stood for the decimal mark (`4k7`), the plain unit of what that letter belongs to. */
function typedUnit(read: ReadNumber, asked: Unit, expected: ExpectedInput): Result<Unit, Refused> {
  if (read.letterUnit !== undefined) {
    const unit = unitById(read.letterUnit);
    if (!unit || unit.dimension !== expected.dimension) return failure(refuse.wrongDimension(read.digits, unit ? [unit] : [], expected));
    const repeated = read.rest === '' || findUnit(read.rest, expected.dimension)?.id === unit.id;
    return repeated ? success(unit) : failure(refuse.twoUnits(read.digits, read.rest, expected));
  }
  if (read.rest === '') return success(asked);
  const unit = findUnit(read.rest, expected.dimension);
  return unit ? success(unit) : failure(refuse.unit(read, expected));
}

function inAskedUnit(
  read: ReadNumber,
  unit: Unit,
  asked: Unit,
  typed: string,
  expected: ExpectedInput,
): Result<TypedValue, Refused> {
  const value = convertBetween(read.value, unit, asked);
  const resolution = convertStep(read.resolution, unit, asked);
  if (!Number.isFinite(value) || !Number.isFinite(resolution) || resolution === 0) return failure(refuse.outOfReach(typed, expected));
  return success({ kind: 'value', value: value === 0 ? 0 : value, resolution, unit: asked.id, typedUnit: unit.id });
}

/** Full-width signs become plain ones, every kind of space one space, every kind of minus a hyphen. */
function plainMarks(text: string): string {
  return text
    .replace(/[\uFF01-\uFF5E]/gu, (sign) => String.fromCodePoint((sign.codePointAt(0) ?? 0) - 0xfee0))
    .replace(/[\u2212\u2010-\u2014\uFE63]/gu, '-')
    .replace(/[’‘ʼ]/gu, "'")
    .replace(/\s+/gu, ' ')
    .trim();
}

const OPEN_IN_LETTERS = /^(o[./]?l\.?|\.ol|open|open[ -]circuit|over[ -]?load|over[ -]limit|inf|infinite|infinity|∞)$/i;
/** A display's `OL` copied with a nought; taken so only where an open circuit is expected, for `0 L` is also no litres. */
const OPEN_WITH_NOUGHT = /^(0[./]?l\.?|\.0l)$/i;

/** A display may show its unit after the letters: `OL MΩ`. */
function isOpenCircuit(typed: string, expected: ExpectedInput): boolean {
  const space = typed.lastIndexOf(' ');
  const unitFollows = space > 0 && findUnit(typed.slice(space + 1), expected.dimension) !== undefined;
  const word = unitFollows ? typed.slice(0, space) : typed;
  return OPEN_IN_LETTERS.test(word) || (expected.acceptOpen === true && OPEN_WITH_NOUGHT.test(word));
}

const COMMAS_BETWEEN_THREES = /^[+-]?[1-9]\d{0,2}(,\d{3})+$/u;

interface Piece {
  readonly number: string;
  readonly unit: string;
}

/** Words that start like a number begin a piece; the words after it are its unit. A comma before a space parts values too. */
function listPieces(text: string): readonly Piece[] {
  const pieces: { number: string; unit: string }[] = [];
  for (const part of text.split(/;|,(?= |$)/u)) {
    const words = part.replace(/([+-]) (?=[\d.,])/gu, '$1').trim().split(' ').filter((word) => word !== '');
    words.forEach((word, index) => {
      const piece = pieces.at(-1);
      const begins = index === 0 || /^[+-]?[.,]?\d/u.test(word) || OPEN_IN_LETTERS.test(word);
      if (begins || !piece) pieces.push(splitWord(word));
      else piece.unit = `${piece.unit} ${word}`.trim();
    });
  }
  return pieces;
}

/** `150psi` is a number with its unit; a word that is no number stays whole, to be refused with its own message. */
function splitWord(word: string): { number: string; unit: string } {
  const read = readNumber(word);
  if (read.kind !== 'number' || read.rest === '' || read.letterUnit !== undefined) return { number: word, unit: '' };
  return { number: read.digits, unit: read.rest };
}

/** A unit after the last value alone holds for all; units after some only are refused; otherwise each has its own. */
function sharedUnit(pieces: readonly Piece[]): string | undefined | 'mixed' {
  const withUnit = pieces.filter((piece) => piece.unit !== '').length;
  if (withUnit === 0 || withUnit === pieces.length) return undefined;
  const last = pieces.at(-1);
  return withUnit === 1 && last && last.unit !== '' ? last.unit : 'mixed';
}
