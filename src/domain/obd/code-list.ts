import { normaliseCode } from './normalise.ts';

/** A piece of text that looks like a code but is none, and why. */
export interface RefusedCode {
  readonly text: string;
  readonly message: string;
}

export interface CodeList {
  /** In standard form, in the order they were written, each once. */
  readonly codes: readonly string[];
  readonly refused: readonly RefusedCode[];
}

interface Word {
  readonly text: string;
  /** What stands between the word before and this one. */
  readonly gap: string;
}

/** A number followed by one of these is a measured value and not a code. */
const unitWords = new Set(
  (
    'rpm rev revs r min mins km kmh mi mile miles mph h hr hrs hour hours s sec ms ohm ohms kohm ω kω mω v mv kv volt volts ' +
    'a ma amp amps pa hpa kpa mpa bar mbar psi inhg hz khz kg g ml l cc mm cm m c f deg nm count counts times misfires'
  ).split(' '),
);

function wordsIn(text: string): Word[] {
  return [...text.matchAll(/([^\p{L}\p{N}]*)([\p{L}\p{N}]+)/gu)].map((match) => ({
    gap: match[1] ?? '',
    text: match[2] ?? '',
  }));
}

function countDigits(text: string): number {
  return text.replaceAll(/\D/g, '').length;
}

/**
 * A word that people would read as a trouble code, right or wrong. Letters may stand in for digits (`PO301`), but enough true
 * digits must be there: `coil1`, `B1S1` and `N52B30` are no codes.
 */
function looksLikeCode(word: string): boolean {
  const digits = countDigits(word);
  if (/^P[O0-9IL]{4}$/i.test(word)) return digits >= 2;
  if (/^[PCBU][O0-9IL][0-9A-Z]{2,5}$/i.test(word)) return digits >= 3;
  return /^[A-Z]\d{4}$/i.test(word);
}

/** Codes run together without a blank, such as `P0303P0171`. */
function splitJoined(word: string): readonly string[] {
  const parts = word.match(/[PCBU][O0-3][0-9A-FOIL]{3}/gi) ?? [];
  return parts.length > 1 && parts.join('') === word ? parts : [word];
}

/**
 * `P 0303` and `P-0303`: a lone letter, one blank or dash, then the digits. Without a leading zero only P counts, and only where no
 * unit follows: `C 2500` is more likely coil C.
 */
function isSpacedCode(letter: Word, digits: Word, after: Word | undefined): boolean {
  if (!/^[\s\p{Pd}]{1,3}$/u.test(digits.gap) || !/^[PCBU]$/i.test(letter.text)) return false;
  if (!/^[O0-9][O0-9A-FIL]{3}$/i.test(digits.text) || countDigits(digits.text) < 3) return false;
  return /^[O0]/i.test(digits.text) || (/^P$/i.test(letter.text) && !isMeasured(after));
}

function isMeasured(next: Word | undefined): boolean {
  return next !== undefined && /^\s*$/.test(next.gap) && unitWords.has(next.text.toLowerCase());
}

/** Four bare digits that start with zero, at the start of an entry: `0303 misfire`. Numbers inside a sentence are left alone. */
function isBareCode(word: Word, startsEntry: boolean, after: Word | undefined): boolean {
  return (
    startsEntry &&
    /^[O0]\d{3}$/i.test(word.text) &&
    !isMeasured(after) &&
    !/^[.:]\d/.test((after?.gap ?? '') + (after?.text ?? ''))
  );
}

function codeLikeTexts(text: string): string[] {
  const words = wordsIn(text);
  const found: string[] = [];
  let startsEntry = true;
  for (let index = 0; index < words.length; index += 1) {
    const [word, next, after] = [words[index], words[index + 1], words[index + 2]];
    if (word === undefined) continue;
    startsEntry = startsEntry || index === 0 || /[\n,;/|+&•]/.test(word.gap);
    if (next !== undefined && isSpacedCode(word, next, after)) {
      found.push(word.text + next.text);
      index += 1;
    } else if (isBareCode(word, startsEntry, next)) found.push(word.text);
    else {
      const parts = splitJoined(word.text).filter(looksLikeCode);
      found.push(...parts);
      startsEntry = parts.length > 0;
    }
  }
  return found;
}

/**
 * Every trouble code in a piece of text, however it was written: `P0303, p0353 / PO301`, one to a line, or inside a sentence.
 * Plain words and numbers (`2500 rpm`) give no code. What looks like a code and is none is told apart in `refused`.
 * A failure-type byte after a code (`P0303-00`) is left out. Never throws.
 */
export function parseCodeList(text: string): CodeList {
  const codes = new Set<string>();
  const refused = new Map<string, RefusedCode>();
  for (const typed of codeLikeTexts(text.normalize('NFKC'))) {
    const result = normaliseCode(typed);
    if (result.ok) codes.add(result.value);
    else refused.set(typed, { text: typed, message: result.error.message });
  }
  return { codes: [...codes], refused: [...refused.values()] };
}
