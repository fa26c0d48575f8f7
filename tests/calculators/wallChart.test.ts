/** A wall chart is the form worked once a row: its figures are held against formulas from outside, and a refused row says why. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CalculatorDefinition } from '../../src/domain/calculators/definition.ts';
import { calculatorAddress, inputWords } from '../../src/domain/calculators/inputWords.ts';
import { calculatorById, calculators } from '../../src/domain/calculators/registry.ts';
import { runCalculator } from '../../src/domain/calculators/run.ts';
import { fewestRows, mostRows, usualSpan, variableInputs, wallChartOf } from '../../src/domain/calculators/wallChart.ts';
import type { WallChart, WallChartTexts } from '../../src/domain/calculators/wallChart.ts';

function calculator(id: string): CalculatorDefinition {
  const found = calculatorById(id);
  if (!found) throw new Error(`no calculator ${id}`);
  return found;
}

function chart(id: string, texts: WallChartTexts, options = {}): WallChart {
  const made = wallChartOf(calculator(id), texts, options);
  if (!made.ok) throw new Error(`${made.error.input}: ${made.error.message}`);
  return made.value;
}

const gaps: WallChartTexts = { varied: 'gap', from: '0.5 mm', to: '1.5 mm', rows: '11', fixed: {} };

describe('the rows', () => {
  it('hold the published curve: 24.22 x + 6.08 √x kV in open air, x in cm (Naidu and Kamaraju)', () => {
    const { rows, columns } = chart('plug-gap', gaps);
    expect(rows.map(({ value }) => value.replace(/\s/u, ' '))).toEqual(Array.from({ length: 11 }, (_, index) => `${(0.5 + index / 10).toFixed(1)} mm`));
    expect(columns[0]).toMatch(/Voltage/);
    rows.forEach((row, index) => {
      const x = (0.5 + index / 10) / 10;
      const kilovolts = 24.22 * x + 6.08 * Math.sqrt(x);
      expect(row.kind === 'worked' && Math.abs(Number.parseFloat(row.cells[0] ?? '') - kilovolts)).toBeLessThan(0.051);
    });
  });

  it('take the other inputs from the form, and say them with those that stand in', () => {
    const { rows, fixed } = chart('proof-run', { varied: 'rateBefore', from: '10', to: '50', rows: '3', fixed: { confidence: '0.99', rateBefore: '7' } });
    // −ln(1 − 0.99) per misfire rate of 10, 30, 50 in 1000 revolutions (Poisson), shown to the next whole revolution: one too few proves too little.
    const revolutions = rows.map((row) => (row.kind === 'worked' ? Number.parseInt(row.cells[0] ?? '', 10) : NaN));
    expect(revolutions).toEqual([10, 30, 50].map((rate) => Math.ceil(-Math.log(0.01) / (rate / 1000))));
    expect(fixed.map(({ name }) => name)).not.toContain('rateBefore');
    expect(fixed.find(({ name }) => name === 'confidence')?.text).toMatch(/^0\.99/);
    expect(fixed.some(({ text }) => text.endsWith('(usual)'))).toBe(true);
  });

  it('say why a row cannot be worked out, in words, and the chart leaves it out', () => {
    const { rows, chart: drawn } = chart('coil-resistance', { varied: 'leadResistance', from: '0', to: '1', rows: '11', fixed: { reading: '0.5' } });
    const refused = rows.filter((row) => row.kind === 'refused');
    expect(refused).toHaveLength(5);
    expect(refused[0]).toMatchObject({ value: expect.stringMatching(/^0\.6/), why: expect.stringContaining('more than the whole reading') });
    expect(drawn?.series[0]?.points).toHaveLength(6);
  });

  it('read units and either decimal mark, and write the mark asked for', () => {
    const { rows, title } = chart('plug-gap', { ...gaps, from: '20 thou', to: '1,27', rows: '3' }, { decimalMark: ',' });
    expect(rows.map(({ value }) => Number.parseFloat(value.replace(',', '.')))).toEqual([0.508, 0.889, 1.27]);
    expect(title).toMatch(/plug gap from 0,508\smm to 1,270\smm/u);
  });

  it('round a step that does not end to what tells the rows apart, and keep both ends', () => {
    const { rows } = chart('plug-gap', { ...gaps, from: '0.6', to: '1.2', rows: '12' });
    expect(rows.map(({ value }) => value.replace(/\s.*/u, ''))).toEqual(Array.from({ length: 12 }, (_, index) => (0.6 + (0.6 * index) / 11).toFixed(3)));
  });

  it('never draw the varied input over itself', () => {
    for (const definition of calculators) {
      const { varied, from, to } = usualSpan(definition);
      const made = wallChartOf(definition, { varied, from, to, rows: '5', fixed: definition.table.rows[0] ?? {} });
      const [axis, output] = made.ok && made.value.chart ? [made.value.varied, made.value.chart.y.label] : ['', 'nothing drawn'];
      expect(axis, definition.id).not.toBe(output);
    }
  });

  it('may run downwards, and over whole numbers only where nothing else makes sense', () => {
    const { rows } = chart('misfire-rate', { varied: 'cylinders', from: '6', to: '2', rows: '9', fixed: { revolutions: '200', counts: '20' } });
    expect(rows.map(({ value }) => value)).toEqual(['6', '5', '4', '3', '2']);
  });
});

describe('what is refused', () => {
  const cases: readonly { label: string; texts: Partial<WallChartTexts>; input: string; code: string }[] = [
    { label: 'an input that is none', texts: { varied: 'colour' }, input: 'varied', code: 'not-a-choice' },
    { label: 'no start', texts: { from: ' ' }, input: 'from', code: 'missing' },
    { label: 'no end', texts: { to: '' }, input: 'to', code: 'missing' },
    { label: 'a start read two ways', texts: { from: '1,234' }, input: 'from', code: 'ambiguous' },
    { label: 'an end in volts', texts: { to: '12 V' }, input: 'to', code: 'wrong-dimension' },
    { label: 'an end out of range', texts: { to: '-1' }, input: 'to', code: 'too-low' },
    { label: 'no span', texts: { to: '0.5 mm' }, input: 'to', code: 'no-span' },
    { label: 'two rows', texts: { rows: '2' }, input: 'rows', code: 'out-of-range' },
    { label: 'forty-one rows', texts: { rows: '41' }, input: 'rows', code: 'out-of-range' },
    { label: 'half a row', texts: { rows: '3.5' }, input: 'rows', code: 'out-of-range' },
    { label: 'no rows', texts: { rows: '' }, input: 'rows', code: 'out-of-range' },
    { label: 'a fixed input that cannot be read', texts: { fixed: { compressionRatio: 'high' } }, input: 'compressionRatio', code: 'not-a-number' },
  ];
  it.each(cases)('$label', ({ texts, input, code }) => {
    expect(wallChartOf(calculator('plug-gap'), { ...gaps, ...texts })).toMatchObject({ ok: false, error: { input, code } });
  });

  it('a fixed input that is missing, told once', () => {
    expect(wallChartOf(calculator('coil-resistance'), { varied: 'readingTemperature', from: '0', to: '100', rows: '5', fixed: {} })).toMatchObject({ ok: false, error: { input: 'reading', code: 'missing' } });
  });

  it('an open circuit as an end', () => {
    expect(wallChartOf(calculator('coil-resistance'), { varied: 'reading', from: 'OL', to: '1', rows: '5', fixed: {} })).toMatchObject({ ok: false, error: { input: 'from' } });
  });
});

describe('for every calculator', () => {
  const able = calculators.filter((one) => variableInputs(one).length > 0).map((one) => ({ id: one.id, definition: one }));

  it.each(able)('$id: each row is what the form gives for that value', ({ definition }) => {
    const { varied, from, to } = usualSpan(definition);
    const fixed = definition.table.rows[0] ?? {};
    const start = from || fixed[varied] || (definition.inputs.find(({ name }) => name === varied)?.default ?? '1');
    fc.assert(
      fc.property(fc.integer({ min: fewestRows, max: mostRows }), (rows) => {
        const made = wallChartOf(definition, { varied, from: start, to: to || '2', rows: String(rows), fixed });
        if (!made.ok) throw new Error(`${made.error.input}: ${made.error.message}`);
        expect(made.value.rows.length).toBeGreaterThan(0);
        expect(made.value.rows.length).toBeLessThanOrEqual(rows);
        for (const row of made.value.rows) {
          const typed = row.value.replace(/[^\d.\u2212-].*$/u, '').replace('\u2212', '-');
          // Thousands are parted by gaps; such a row is left to the others.
          if (/\d\u202f\d/u.test(row.value)) continue;
          expect(runCalculator(definition, { ...fixed, [varied]: typed }).ok).toBe(row.kind === 'worked');
        }
      }),
      { numRuns: 10 },
    );
  });

  it.each(able)('$id: inputs in words keep what was typed, and the address leads back to it', ({ definition }) => {
    const texts = definition.examples[0]?.inputs ?? {};
    const words = inputWords(definition, texts);
    for (const [name, text] of Object.entries(texts)) {
      const choice = definition.inputs.find((input) => input.name === name)?.choices?.find(({ value }) => value === text);
      expect(words.find((one) => one.name === name)?.text).toContain(choice?.label ?? text.trim());
    }
    const address = new URL(calculatorAddress(definition, texts), 'http://book.example/');
    expect(address.pathname).toBe(`/calculators/${definition.id}/`);
    expect(Object.fromEntries(address.searchParams)).toEqual(texts);
  });
});
