import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';

/** The letters of the systems, in the order of the two top bits of a code's first byte (SAE J2012, ISO 15031-6). */
export const systemLetters = ['P', 'C', 'B', 'U'] as const;

export type CodeRefusalCode = 'missing' | 'wrong-length' | 'wrong-letter' | 'wrong-first-digit' | 'not-hexadecimal';

const example = 'A code is a letter P, C, B or U, a digit 0 to 3 and three characters 0 to 9 or A to F, such as P0303.';
/** A code in standard form. */
export const normalForm = /^[PCBU][0-3][0-9A-F]{3}$/;

/** The digits of a code with the letters that are typed for digits put right: O for 0, I and L for 1. */
function digitsFrom(text: string): string {
  return text.replaceAll('O', '0').replaceAll(/[IL]/g, '1');
}

function refuse(code: CodeRefusalCode, message: string): Result<never, Refusal<CodeRefusalCode>> {
  return failure({ input: 'code', code, message });
}

/** Full-width forms made plain, blanks and dashes out, upper case. */
function squeeze(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[\s\p{Pd}]/gu, '');
}

/**
 * One trouble code in its standard form, such as `P0303`.
 *
 * Accepts either case, blanks and dashes, the letter O typed for zero, I or l for 1, and bare digits (`0303` is P0303).
 * Refuses: `missing`, `wrong-letter`, `wrong-length`, `wrong-first-digit`, `not-hexadecimal`. Source: SAE J2012.
 */
export function normaliseCode(text: string): Result<string, Refusal<CodeRefusalCode>> {
  const typed = squeeze(text);
  if (typed === '') return refuse('missing', `No code was given. ${example}`);
  const bare = /^[0-9OIL]/.test(typed);
  const letter = bare ? 'P' : typed.charAt(0);
  const digits = digitsFrom(bare ? typed : typed.slice(1));
  return checkParts(text.trim(), letter, digits);
}

function checkParts(typed: string, letter: string, digits: string): Result<string, Refusal<CodeRefusalCode>> {
  if (!systemLetters.some((known) => known === letter)) {
    return refuse('wrong-letter', `"${typed}" does not start with P, C, B or U. ${example}`);
  }
  if (digits.length !== 4) {
    return refuse(
      'wrong-length',
      `"${typed}" has ${digits.length} characters where a code has 4 after its letter. ${example}`,
    );
  }
  const wrong = /[^0-9A-F]/.exec(digits);
  if (wrong !== null) {
    return refuse('not-hexadecimal', `"${typed}" holds "${wrong[0]}", which stands in no code. ${example}`);
  }
  if (!/^[0-3]/.test(digits)) {
    return refuse(
      'wrong-first-digit',
      `"${typed}" has ${digits.charAt(0)} where a code can only have 0, 1, 2 or 3. ${example}`,
    );
  }
  return success(letter + digits);
}
