/** What is typed into the bench, understood. Readings after the parser's and the judge's own contracts; copper by IEC 60028 (α = 0.00393/K). */
import { describe, expect, it } from 'vitest';
import { noteCodes } from '../../src/domain/jobs/codes.ts';
import { judgeTypedReading } from '../../src/domain/jobs/reading.ts';
import type { ReadingTexts } from '../../src/domain/jobs/reading.ts';
import { coilRange, jobBook } from './jobBook.ts';

const empty: ReadingTexts = { reading: '', temperature: '', leads: '', meterPercent: '', meterCounts: '', makerLow: '', makerHigh: '', makerTemperature: '' };
const judge = (texts: Partial<ReadingTexts>, unit: 'C' | 'F' = 'C') => judgeTypedReading({ ...empty, ...texts }, coilRange, unit);

describe('judgeTypedReading', () => {
  it.each([
    { label: 'plain', texts: { reading: '0.62' }, verdict: 'inside', corrected: 0.62 },
    { label: 'comma', texts: { reading: '0,62 Ω' }, verdict: 'inside', corrected: 0.62 },
    { label: 'another unit', texts: { reading: '620 mohm' }, verdict: 'inside', corrected: 0.62 },
    { label: 'leads taken off', texts: { reading: '0.82', leads: '0.2' }, verdict: 'inside', corrected: 0.62 },
    // 1.2 / (1 + 0.00393 × 80) = 0.9130, IEC 60028
    { label: 'hot winding referred to 20 °C', texts: { reading: '1.20', temperature: '100' }, verdict: 'inside', corrected: 0.913 },
    { label: 'high', texts: { reading: '2.40' }, verdict: 'above', corrected: 2.4 },
    { label: 'open', texts: { reading: 'OL' }, verdict: 'above', corrected: 'open' },
    { label: "maker's figure first", texts: { reading: '0.90', makerLow: '0.5', makerHigh: '0.7' }, verdict: 'above', corrected: 0.9 },
  ])('$label', ({ texts, verdict, corrected }) => {
    const result = judge(texts);
    if (!result.ok) throw new Error(result.error.message);
    expect(result.value.body.verdict).toBe(verdict);
    if (typeof corrected === 'number') expect(result.value.body.corrected).toBeCloseTo(corrected, 3);
    else expect(result.value.body.corrected).toBe(corrected);
  });

  it('a temperature without a unit is in the unit set for the book', () => {
    // 212 °F is 100 °C.
    const fahrenheit = judge({ reading: '1.2', temperature: '212' }, 'F');
    expect(fahrenheit.ok && fahrenheit.value.body.temperature).toBeCloseTo(100, 9);
  });

  it('keeps which figure it was judged by', () => {
    const book = judge({ reading: '0.6' });
    const maker = judge({ reading: '0.6', makerHigh: '0.7' });
    expect(book.ok && book.value.body.limits).toEqual({ low: 0.4, high: 1, referenceTemperature: 20, sourceId: 'common-practice', sourceLabel: 'Common practice' });
    expect(maker.ok && maker.value.body.limits).toEqual({ high: 0.7, referenceTemperature: 20, sourceId: 'engine-maker', sourceLabel: "the engine maker's figure, as typed" });
  });

  it.each([
    { label: 'nothing typed', texts: {}, input: 'reading' },
    { label: 'words', texts: { reading: 'good' }, input: 'reading' },
    { label: 'leads not a number', texts: { reading: '1', leads: 'x' }, input: 'leads' },
    { label: "maker's ends swapped", texts: { reading: '1', makerLow: '2', makerHigh: '1' }, input: 'makerHigh' },
    { label: 'open leads', texts: { reading: '1', leads: 'OL' }, input: 'leads' },
  ])('refuses $label at its field', ({ texts, input }) => {
    expect(judge(texts)).toMatchObject({ ok: false, error: { input } });
  });
});

describe('noteCodes', () => {
  it('gives codes their meaning and keeps what is none apart', () => {
    const noted = noteCodes('p0303, P1399 and P03G3', jobBook);
    expect(noted.codes).toEqual([
      { code: 'P0303', title: 'Misfire, cylinder 3', family: 'misfire-cylinder', number: 3 },
      { code: 'P1399', title: 'not in this edition of the book' },
    ]);
    expect(noted.refused).toEqual(['P03G3']);
  });

  it('a code never takes a meaning from the language itself', () => {
    expect(noteCodes('P0303', { ...jobBook, codes: {} }).codes).toEqual([{ code: 'P0303', title: 'not in this edition of the book' }]);
  });
});
