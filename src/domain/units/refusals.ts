import type { Refusal } from '../result.ts';
import { unitList } from './convert.ts';
import { dimensionWords } from './table.data.ts';
import type { PressureKind } from './pressure.ts';
import { findUnits, unitById } from './table.ts';
import type { NumberFailure, ReadNumber } from './number.ts';
import type { Dimension, InputTextCode, Unit, UnitId } from './types.ts';

interface Asked {
  readonly input: string;
  readonly label: string;
  readonly dimension?: Dimension;
  readonly unit?: UnitId;
  readonly acceptOpen?: boolean;
}

type AskedQuantity = Asked & { readonly dimension: Dimension };
type Refused = Refusal<InputTextCode>;

function refusal(asked: Asked, code: InputTextCode, message: string): Refused {
  return { input: asked.input, code, message: `${asked.label}: ${message}` };
}

/** Such as `Type a number, with a unit if it is not in Ω: mΩ, Ω, kΩ or MΩ, or OL for an open circuit.` */
function accepted(asked: Asked): string {
  if (asked.dimension === undefined || asked.unit === undefined) return 'Type a number with its unit, such as 165 psi.';
  const symbol = unitById(asked.unit)?.symbol ?? asked.unit;
  const units = unitList(asked.dimension);
  const open = asked.acceptOpen ? ', or OL for an open circuit' : '';
  if (symbol === units || symbol === '') return `Type a plain number${symbol === units && symbol !== '' ? `, in ${symbol}` : ''}${open}.`;
  return `Type a number, with a unit if it is not in ${symbol} (${units})${open}.`;
}

/** What was typed, cut to a length that fits a message. */
function quoted(text: string): string {
  return text.length > 40 ? `"${text.slice(0, 39)}…"` : `"${text}"`;
}

function notANumber(typed: string, asked: Asked): Refused {
  return refusal(asked, 'not-a-number', `${quoted(typed)} is not a number. ${accepted(asked)}`);
}

function outOfReach(typed: string, asked: Asked): Refused {
  return refusal(asked, 'not-a-number', `${quoted(typed)} is too large or too small to be a reading. ${accepted(asked)}`);
}

function unknownUnit(unit: string, asked: Asked): Refused {
  return refusal(asked, 'unknown-unit', `${quoted(unit)} is not a unit known here. ${accepted(asked)}`);
}

function twoUnits(first: string, second: string, asked: Asked): Refused {
  return refusal(asked, 'unknown-unit', `${quoted(`${first} ${second}`)} has two units. Type one number with one unit.`);
}

function wrongDimension(typed: string, found: readonly Unit[], asked: AskedQuantity): Refused {
  const kinds = [...new Set(found.map((unit) => dimensionWords[unit.dimension]))].join(' or ') || 'something else';
  return refusal(asked, 'wrong-dimension', `${quoted(typed)} is ${kinds}; ${dimensionWords[asked.dimension]} is wanted. ${accepted(asked)}`);
}

const toWanted: Readonly<Record<PressureKind, string>> = {
  gauge: 'is an absolute pressure; gauge pressure is wanted, which counts from the air outside. Take off the barometer, about 101 kPa at sea level, and type that.',
  absolute: 'is a gauge pressure; absolute pressure is wanted, which counts from nothing. Add the barometer, about 101 kPa at sea level, and type that.',
};

function wrongPressure(typed: string, wanted: PressureKind, asked: Asked): Refused {
  return refusal(asked, 'wrong-pressure', `${quoted(typed)} ${toWanted[wanted]}`);
}

function severalNumbers(typed: string, asked: Asked): Refused {
  return refusal(asked, 'not-a-number', `${quoted(typed)} holds more than one number. Type one number with one unit.`);
}

/** Why the text after the number is no unit for this field. */
function unit(read: ReadNumber, asked: AskedQuantity): Refused {
  const typed = `${read.digits} ${read.rest}`;
  const found = findUnits(read.rest);
  if (found.length > 0) return wrongDimension(typed, found, asked);
  const parts = read.rest.split(/[ ;,]+/u).filter((part) => part !== '');
  if (parts.some((part) => /^[+-]?\d/u.test(part))) return severalNumbers(typed, asked);
  const allKnown = parts.length > 1 && parts.every((part) => findUnits(part).length > 0);
  return allKnown ? twoUnits(read.digits, read.rest, asked) : unknownUnit(read.rest, asked);
}

function ambiguous(failed: Extract<NumberFailure, { kind: 'ambiguous' }>, asked: Asked): Refused {
  return refusal(
    asked,
    'ambiguous',
    `"${failed.digits}" can be read two ways: ${failed.decimal} or ${failed.whole}. ` +
      `Type ${failed.decimal}, with a point, for the small one, or ${failed.whole}, without the comma, for the large one.`,
  );
}

/** In a list a comma may also be meant to part values: `150,155` is a decimal, a large number or two readings. */
function ambiguousInList(digits: string, asked: Asked): Refused {
  const apart = digits.split(',').join('; ');
  return refusal(
    asked,
    'ambiguous',
    `"${digits}" can be read as one number or as several. For several values type ${apart}; ` +
      `for one number type ${digits.replaceAll(',', '')}, or put a point where the decimals begin.`,
  );
}

/** Every way a typed text is turned down. Each message says what was found, what is accepted and how to put it right. */
export const refuse = {
  missing: (asked: Asked): Refused => refusal(asked, 'missing', `nothing was typed. ${accepted(asked)}`),
  openNotAccepted: (typed: string, asked: Asked): Refused =>
    refusal(asked, 'open-not-accepted', `${quoted(typed)} means an open circuit; a number is needed here. ${accepted(asked)}`),
  mixedUnits: (typed: string, asked: Asked): Refused =>
    refusal(
      asked,
      'unknown-unit',
      `in ${quoted(typed)} some values have a unit and some have none. Put the unit after every value, or once at the end for all.`,
    ),
  unitOfNoKind: (typed: string, asked: Asked): Refused =>
    refusal(asked, 'unknown-unit', `${quoted(typed)} is not a unit known here. Type a number with a unit such as ohm, psi, C or N m.`),
  number: (failed: NumberFailure, typed: string, asked: Asked): Refused => {
    if (failed.kind === 'ambiguous') return ambiguous(failed, asked);
    return failed.kind === 'out-of-reach' ? outOfReach(typed, asked) : notANumber(typed, asked);
  },
  ambiguousInList,
  outOfReach,
  unknownUnit,
  twoUnits,
  wrongDimension,
  wrongPressure,
  unit,
} as const;
