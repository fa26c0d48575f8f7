import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { normalForm, systemLetters } from './normalise.ts';
import type { CodeRefusalCode } from './normalise.ts';

export { normaliseCode } from './normalise.ts';
export type { CodeRefusalCode } from './normalise.ts';
export { parseCodeList } from './code-list.ts';
export type { CodeList, RefusedCode } from './code-list.ts';

export type CodeSystem = 'powertrain' | 'chassis' | 'body' | 'network';

const systems: Readonly<Record<string, CodeSystem>> = { P: 'powertrain', C: 'chassis', B: 'body', U: 'network' };

/** Areas of powertrain codes by the third character; 7 to 9 and A to F are groups (SAE J2012). */
const powertrainAreas: Readonly<Record<string, string>> = {
  '0': 'fuel and air metering, auxiliary emission controls',
  '1': 'fuel and air metering',
  '2': 'fuel and air metering, injector circuit',
  '3': 'ignition system or misfire',
  '4': 'auxiliary emission controls',
  '5': 'speed and idle control',
  '6': 'computer and outputs',
  '7': 'transmission',
  '8': 'transmission',
  '9': 'transmission',
};

/** Who gives a code its meaning: the standard, the engine or vehicle maker, or nobody yet. */
export type CodeOwner = 'standard' | 'maker' | 'reserved';

function requireNormal(code: string): void {
  if (!normalForm.test(code))
    throw new RangeError(`${code} is not a code in standard form; pass it through normaliseCode first.`);
}

/**
 * The two bytes that carry a code over the diagnostic bus: two bits of letter, two of first digit, then three half-bytes.
 * Takes a code as `normaliseCode` gives it. Source: SAE J2012, SAE J1979 service $03.
 */
export function encodeCode(code: string): [number, number] {
  requireNormal(code);
  const letter = systemLetters.findIndex((known) => known === code.charAt(0));
  const first = letter * 64 + Number(code.charAt(1)) * 16 + Number.parseInt(code.charAt(2), 16);
  return [first, Number.parseInt(code.slice(3), 16)];
}

function twoHexadecimal(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}

/** Bytes as they are written on paper: `03 0C`. */
export function writeBytes(bytes: readonly number[]): string {
  return bytes.map(twoHexadecimal).join(' ');
}

/**
 * The code in two bytes written in hexadecimal: `03 0C`, `030c`, `0x03 0x0C`. `00 00` gives P0000, which is an empty slot and no fault.
 * Refuses: `missing`, `not-hexadecimal`, `wrong-length`.
 */
export function decodeBytes(text: string): Result<string, Refusal<CodeRefusalCode>> {
  const hint = 'Give two bytes in hexadecimal, such as 03 01.';
  const digits = text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/0X|[\s,;:$\p{Pd}]/gu, '');
  const refuseBytes = (code: CodeRefusalCode, message: string) =>
    failure({ input: 'bytes', code, message: `${message} ${hint}` });
  if (digits === '') return refuseBytes('missing', 'No bytes were given.');
  const wrong = /[^0-9A-F]/.exec(digits);
  if (wrong !== null)
    return refuseBytes('not-hexadecimal', `"${text.trim()}" holds "${wrong[0]}", which is not a hexadecimal digit.`);
  if (digits.length !== 4)
    return refuseBytes('wrong-length', `"${text.trim()}" has ${digits.length} hexadecimal digits; a code has 4.`);
  const first = Number.parseInt(digits.slice(0, 2), 16);
  const letter = systemLetters[first >> 6] ?? 'P';
  return success(`${letter}${(first >> 4) & 3}${digits.slice(1)}`);
}

/** Two zero bytes fill an unused place in an answer; they are no fault (SAE J1979). */
export function isEmptySlot(code: string): boolean {
  return code === 'P0000';
}

/**
 * Which system and, for powertrain codes that follow the standard's grouping, which area a code belongs to.
 * Only P0, P1 and P2 codes are grouped by the third character; groups that differ between them are left out.
 * Takes a code as `normaliseCode` gives it. Source: SAE J2012.
 */
export function codeArea(code: string): { readonly system: CodeSystem; readonly area?: string } {
  requireNormal(code);
  const system = systems[code.charAt(0)] ?? 'powertrain';
  const area = powertrainArea(code);
  return area === undefined ? { system } : { system, area };
}

function powertrainArea(code: string): string | undefined {
  const third = code.charAt(2);
  if (/^P0[A-F]/.test(code)) return 'hybrid drive';
  if (/^P[01]/.test(code)) return powertrainAreas[third];
  if (/^P2[0-4678]/.test(code)) return powertrainAreas[third];
  return /^P34/.test(code) ? 'cylinder deactivation' : undefined;
}

/** Whose meaning a code has. Takes a code as `normaliseCode` gives it. Source: SAE J2012, editions from about 2007. */
export function codeOwner(code: string): CodeOwner {
  requireNormal(code);
  if (/^(P1|P3[0-3]|[BCU][12])/.test(code)) return 'maker';
  return /^[BC]3/.test(code) ? 'reserved' : 'standard';
}
