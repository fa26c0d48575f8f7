/** A number understood: its value and step in the unit typed, and the text after it. */
export interface ReadNumber {
  readonly kind: 'number';
  readonly value: number;
  /** One count of the last digit typed. */
  readonly resolution: number;
  /** The digits as they were typed. */
  readonly digits: string;
  /** What follows the number: the unit, or nothing. */
  readonly rest: string;
  /** Set when a letter stood in place of the decimal mark: `ohm` for `4k7`. */
  readonly letterUnit?: 'ohm' | 'farad' | 'V';
}

export type NumberFailure =
  | { readonly kind: 'not-a-number' }
  | { readonly kind: 'out-of-reach' }
  /** Read as a decimal, and with the comma left out. */
  | { readonly kind: 'ambiguous'; readonly digits: string; readonly decimal: string; readonly whole: string };

/** Digits parted by single gaps or apostrophes into threes, or a plain run of digits, points and commas. */
const NUMBER = /^([+-]?) ?([1-9]\d{0,2}(?:([ '])\d{3})(?:\3\d{3})*(?![\d'])(?:[.,]\d+)?|[\d.,]*\d[.,]?)(?:[eE]([+-]?\d{1,4})(?![\d.,]))?/u;

/** IEC 60062: the multiplier's letter in place of the decimal mark. Volts by the same habit (`3V3`). */
const LETTER_NUMBER = /^([+-]?) ?(\d*)([RrKkMVvpnuµμ])(\d+)(?![\d.,])/u;
const LETTERS: Readonly<Record<string, { readonly exponent: number; readonly unit: 'ohm' | 'farad' | 'V' }>> = {
  R: { exponent: 0, unit: 'ohm' },
  r: { exponent: 0, unit: 'ohm' },
  K: { exponent: 3, unit: 'ohm' },
  k: { exponent: 3, unit: 'ohm' },
  M: { exponent: 6, unit: 'ohm' },
  V: { exponent: 0, unit: 'V' },
  v: { exponent: 0, unit: 'V' },
  p: { exponent: -12, unit: 'farad' },
  n: { exponent: -9, unit: 'farad' },
  u: { exponent: -6, unit: 'farad' },
  µ: { exponent: -6, unit: 'farad' },
  μ: { exponent: -6, unit: 'farad' },
};

/** Reads the number a text begins with. Spaces must already be single and minus signs hyphens. */
export function readNumber(text: string): ReadNumber | NumberFailure {
  const lettered = readLetterNumber(text);
  if (lettered) return lettered;
  const match = NUMBER.exec(text);
  if (!match) return { kind: 'not-a-number' };
  const [whole, sign = '', body = '', gap = '', exponent = '0'] = match;
  const rest = text.slice(whole.length).trim();
  const plain = gap === '' ? withoutSeparators(body) : body.replaceAll(gap, '').replace(',', '.');
  if (plain === undefined) return { kind: 'not-a-number' };
  if (typeof plain !== 'string') {
    return { kind: 'ambiguous', digits: sign + body, decimal: sign + plain.decimal, whole: sign + plain.whole };
  }
  return assemble(`${sign}${plain}`, Number(exponent), whole.trim(), rest);
}

function readLetterNumber(text: string): ReadNumber | NumberFailure | undefined {
  const match = LETTER_NUMBER.exec(text);
  if (!match) return undefined;
  const [whole, sign = '', before = '', letter = '', after = ''] = match;
  const meaning = LETTERS[letter];
  if (!meaning) return undefined;
  const read = assemble(`${sign}${before || '0'}.${after}`, meaning.exponent, whole, text.slice(whole.length).trim());
  return read.kind === 'number' ? { ...read, letterUnit: meaning.unit } : read;
}

/** Value and step from a plain decimal and a power of ten, left to the language to round once. */
function assemble(decimal: string, exponent: number, digits: string, rest: string): ReadNumber | NumberFailure {
  const decimals = decimal.split('.')[1]?.length ?? 0;
  const value = Number(`${decimal}e${exponent}`);
  const resolution = Number(`1e${exponent - decimals}`);
  if (!Number.isFinite(value) || !Number.isFinite(resolution) || resolution === 0) return { kind: 'out-of-reach' };
  return { kind: 'number', value, resolution, digits, rest };
}

type Doubt = { readonly decimal: string; readonly whole: string };

/** A run of digits, points and commas as a plain decimal; both readings where a comma may be either; nothing where it is none. */
function withoutSeparators(body: string): string | Doubt | undefined {
  const marks = body.replace(/\d/gu, '');
  if (marks === '' || marks === '.') return body;
  if (marks === ',') {
    const doubtful = /^[1-9]\d{0,2},\d{3}$/u.test(body);
    return doubtful ? { decimal: body.replace(',', '.'), whole: body.replace(',', '') } : body.replace(',', '.');
  }
  const last = marks.slice(-1);
  const first = marks.slice(0, 1);
  const grouped = last === first ? body : body.slice(0, body.lastIndexOf(last));
  const inThrees = new RegExp(`^[1-9]\\d{0,2}(?:[${first}]\\d{3})+$`, 'u');
  if (!inThrees.test(grouped)) return undefined;
  const fraction = last === first ? '' : body.slice(grouped.length + 1);
  return grouped.replaceAll(first, '') + (fraction === '' ? '' : `.${fraction}`);
}
