/**
 * Gauge pressure counts from the air outside; absolute pressure from nothing. The same unit serves both, so the word must be kept
 * apart from it: `2.4 bar g`, `35 kPa abs`, `psig`, `bar(a)`.
 */
export type PressureKind = 'absolute' | 'gauge';

const afterUnit = /^(.*\b(?:kpa|hpa|mpa|mbar|bar|psi|pa))\s*\(?(a|g)\)?$/i;
const inWords = /^(.*?)\s*\(?\b(abs(?:olute)?|gauge|gage)\)?$/i;

export interface PressureText {
  /** The text without the word for the kind. */
  readonly text: string;
  readonly kind?: PressureKind;
}

/** Parts the word for the kind of pressure from a typed text; a text without one is given back as it is. */
export function splitPressureKind(text: string): PressureText {
  const found = inWords.exec(text) ?? afterUnit.exec(text);
  const [, rest, word] = found ?? [];
  if (rest === undefined || word === undefined || rest.trim() === '') return { text };
  return { text: rest.trim(), kind: word.toLowerCase().startsWith('a') ? 'absolute' : 'gauge' };
}
