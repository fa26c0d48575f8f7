import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';

/** Most cylinders an engine in this book has. */
export const mostCylinders = 16;

/** Separators between cylinder numbers: dashes of every kind, blanks, commas, plus signs, full stops. */
const separators = /[\s\p{Pd},;.+\u2212]+/u;

function refuse(input: string, code: string, message: string): { readonly ok: false; readonly error: Refusal } {
  return failure({ input, code, message });
}

/** Numbers parted by dashes or blanks; up to nine cylinders may also be typed as one run of digits, `1342`. */
function readNumbers(text: string): readonly number[] | undefined {
  const words = text.normalize('NFKC').split(separators).filter((word) => word !== '');
  const [only = ''] = words;
  const numbers = words.length === 1 && /^\d{3,9}$/u.test(only) ? [...only] : words;
  return numbers.every((word) => /^\d{1,2}$/u.test(word)) ? numbers.map(Number) : undefined;
}

/** What keeps these numbers from naming each cylinder from 1 on once, or nothing. */
function numberingProblem(numbers: readonly number[]): string | undefined {
  const count = numbers.length;
  if (count < 1 || count > mostCylinders) return `names ${count} cylinders; accepted are 1 to ${mostCylinders}`;
  const twice = numbers.find((number, index) => numbers.indexOf(number) !== index);
  if (twice !== undefined) return `names cylinder ${twice} twice`;
  const missing = Array.from({ length: count }, (_, index) => index + 1).find((number) => !numbers.includes(number));
  return missing === undefined ? undefined : `names ${count} cylinders but not cylinder ${missing}`;
}

/**
 * A firing order such as `1-3-4-2`, `1 3 4 2` or `1342`. Refuses `not-an-order` what is no list of numbers and `order-wrong` one that
 * does not name each cylinder from 1 on once, or has another count than `cylinders` where that is given.
 */
export function parseFiringOrder(text: string, input: string, cylinders?: number): Result<readonly number[], Refusal> {
  const hint = 'Write it as 1-3-4-2, each cylinder once.';
  const numbers = readNumbers(text);
  if (numbers === undefined) return refuse(input, 'not-an-order', `"${text.trim()}" is no firing order. ${hint}`);
  const problem = numberingProblem(numbers);
  if (problem !== undefined) return refuse(input, 'order-wrong', `The firing order ${numbers.join('-')} ${problem}. ${hint}`);
  if (cylinders !== undefined && numbers.length !== cylinders) {
    return refuse(input, 'order-wrong', `The firing order ${numbers.join('-')} has ${numbers.length} cylinders, but the engine has ${cylinders}. ${hint}`);
  }
  return success(numbers);
}

/**
 * The banks of an engine, front to back, parted by a stroke: `1-3-5 / 2-4-6`. Refuses `banks-wrong` what does not name each of the
 * cylinders once.
 */
export function parseBanks(text: string, input: string, cylinders: number): Result<readonly (readonly number[])[], Refusal> {
  const hint = `Write the banks front to back with a stroke between, such as 1-3-5 / 2-4-6, each of the ${cylinders} cylinders once.`;
  const banks = text.split(/[/|]/u).map(readNumbers);
  const known = banks.filter((bank) => bank !== undefined && bank.length > 0) as readonly (readonly number[])[];
  if (known.length !== banks.length) return refuse(input, 'banks-wrong', `"${text.trim()}" does not name banks. ${hint}`);
  const all = known.flat();
  const problem = all.length === cylinders ? numberingProblem(all) : `name ${all.length} cylinders, not ${cylinders}`;
  return problem === undefined ? success(known) : refuse(input, 'banks-wrong', `The banks "${text.trim()}": ${problem}. ${hint}`);
}

/** Do these two stand side by side in a bank? */
export function areNeighbours(one: number, other: number, banks: readonly (readonly number[])[]): boolean {
  return banks.some((bank) => bank.includes(one) && bank.includes(other) && Math.abs(bank.indexOf(one) - bank.indexOf(other)) === 1);
}

/** Cylinders 1 to `count` in one row. */
export function inOneRow(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index + 1);
}

/** `cylinder 3`, `cylinders 2 and 3`, `cylinders 1, 2 and 4`. */
export function nameCylinders(cylinders: readonly number[]): string {
  const last = cylinders.at(-1);
  if (cylinders.length < 2) return `cylinder ${last ?? ''}`.trim();
  return `cylinders ${cylinders.slice(0, -1).join(', ')} and ${last ?? ''}`;
}
