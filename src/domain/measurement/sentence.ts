import { formatNumber, formatValue, shortestDecimals } from '../units/format.ts';
import type { FormatOptions } from '../units/format.ts';
import { RULED_OUT, SURE } from './judge.ts';
import type { Judgement, Limits, VerdictWord } from './types.ts';

export interface SentenceOptions {
  readonly decimalMark?: '.' | ',';
}

const words: Readonly<Record<VerdictWord, string>> = {
  inside: 'Inside the range',
  below: 'Below the range',
  above: 'Above the range',
  'too-close-to-call': 'Too close to call',
};

/** The verdict as people see it. */
export function verdictWord(verdict: VerdictWord): string {
  return words[verdict];
}

/** The limits in words: `0.3 to 1.0 Ω`, `9.6 V or more`, `0.2 V or less`. Both ends are written to the same decimal. */
export function limitsText(limits: Limits, options: SentenceOptions = {}): string {
  const { low, high, unit } = limits;
  const format = limitFormat(limits, options);
  if (low !== undefined && high !== undefined) return `${formatNumber(low, format)} to ${formatValue(high, unit, format)}`;
  if (low !== undefined) return `${formatValue(low, unit, format)} or more`;
  return high === undefined ? 'no limit' : `${formatValue(high, unit, format)} or less`;
}

/**
 * Why the verdict is what it is, with the numbers: `0.527 Ω at 20 °C, give or take 0.041 Ω, lies between 0.3 Ω and 1.0 Ω.`
 * Where it is too close to call, a second sentence says what would settle it, going by what adds most to the doubt.
 */
export function verdictSentence(judgement: Judgement, limits: Limits, options: SentenceOptions = {}): string {
  const { corrected } = judgement;
  if (corrected === 'open') return openSentence(limits, options);
  const subject = subjectText(corrected, judgement.expandedUncertainty, limits, options);
  switch (judgement.verdict) {
    case 'inside':
      return `${subject} ${insideText(limits, options)}.`;
    case 'below':
      return `${subject} is below ${limitText(limits.low, limits, options)}.${sideInDoubt(judgement)}`;
    case 'above':
      return `${subject} is above ${limitText(limits.high, limits, options)}.${sideInDoubt(judgement)}`;
    case 'too-close-to-call':
      return `${subject} ${doubtText(judgement, limits, options)}; ${chanceText(judgement)}. ${whatSettlesIt(judgement)}`;
  }
}

function openSentence(limits: Limits, options: SentenceOptions): string {
  if (limits.high === undefined) return `The circuit is open: more than the meter can show, and ${limitsText(limits, options)} is wanted.`;
  return `The circuit is open: no current passes, where ${limitText(limits.high, limits, options)} is the most allowed.`;
}

/** Such as `0.527 Ω at 20 °C, give or take 0.041 Ω,`. The give-or-take is two standard uncertainties. */
function subjectText(value: number, expanded: number, limits: Limits, options: SentenceOptions): string {
  const { variation, referenceTemperature, unit } = limits;
  const reference = variation === 'copper' ? referenceTemperature : undefined;
  const at = reference === undefined ? '' : ` at ${formatValue(reference, 'C', asGiven(reference, options))}`;
  if (expanded === 0) return `${formatValue(value, unit, asGiven(value, options))}${at}`;
  const format = { ...options, uncertainty: expanded };
  return `${formatValue(value, unit, format)}${at}, give or take ${formatValue(expanded, unit, format)},`;
}

function insideText(limits: Limits, options: SentenceOptions): string {
  const { low, high } = limits;
  if (low !== undefined && high !== undefined) {
    return `lies between ${limitText(low, limits, options)} and ${limitText(high, limits, options)}`;
  }
  return low === undefined
    ? `is not above ${limitText(high, limits, options)}`
    : `is not below ${limitText(low, limits, options)}`;
}

/** Where a doubtful value may be. */
function doubtText(judgement: Judgement, limits: Limits, options: SentenceOptions): string {
  const { low, high } = limits;
  if (low === undefined || high === undefined) return `may be on either side of ${limitText(low ?? high, limits, options)}`;
  const { probabilityBelow: below, probabilityAbove: above } = judgement;
  const oneSided = Math.min(below, above) <= RULED_OUT && Math.max(below, above) > RULED_OUT;
  const places = oneSided ? `inside or ${below > above ? 'below' : 'above'}` : 'below, inside or above';
  return `may be ${places} the range of ${limitsText(limits, options)}`;
}

function chanceText(judgement: Judgement): string {
  return `about ${Math.round(judgement.probabilityInside * 100)} chances in 100 that it is inside`;
}

/** A range much narrower than the doubt: surely outside, but on which side is not known. */
function sideInDoubt(judgement: Judgement): string {
  const surer = Math.max(judgement.probabilityBelow, judgement.probabilityAbove);
  return surer >= SURE ? '' : ' The doubt is wider than the range itself, so it may also lie on the other side.';
}

const settling: Readonly<Record<Judgement['contributions'][number]['from'], string>> = {
  meter: 'The meter adds most to the doubt: read again on a finer range or with a better meter.',
  leads: 'The leads add most to the doubt: zero the meter with the leads touching, or use short clean leads, and read again.',
  temperature:
    'The temperature adds most to the doubt: measure it on the part itself, or let the part stand until it is as warm as the shop, and read again.',
};

function whatSettlesIt(judgement: Judgement): string {
  const largest = judgement.contributions[0];
  return largest ? settling[largest.from] : 'Read again.';
}

function limitText(limit: number | undefined, limits: Limits, options: SentenceOptions): string {
  return limit === undefined ? 'no limit' : formatValue(limit, limits.unit, limitFormat(limits, options));
}

/** Both ends to the same decimal, so that 0.3 and 1 read as 0.3 and 1.0. */
function limitFormat(limits: Limits, options: SentenceOptions): FormatOptions {
  return { ...options, decimals: Math.max(shortestDecimals(limits.low ?? 0), shortestDecimals(limits.high ?? 0)) };
}

/** A figure without an uncertainty: as it was given, and no longer than anyone reads. */
function asGiven(value: number, options: SentenceOptions): FormatOptions {
  return { ...options, decimals: Math.min(shortestDecimals(value), 6) };
}
