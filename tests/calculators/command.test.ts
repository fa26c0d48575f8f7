import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import process from 'node:process';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

function calculate(...words: readonly string[]) {
  const run = spawnSync(process.execPath, ['src/build/commands/calculate.ts', ...words], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status: run.status, out: run.stdout, err: run.stderr };
}

describe('calculate on the command line', { timeout: 30_000 }, () => {
  it('prints the contract’s JSON, unrounded', () => {
    const { status, out, err } = calculate(
      'coil-resistance',
      'reading=0.92 ohm',
      'leadResistance=0,20 Ω',
      'readingTemperature=80',
      'low=0.5',
      'high=0.8',
    );
    expect(err).toBe('');
    expect(status).toBe(0);
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual(['calculator', 'outputs', 'notes']);
    expect(answer.calculator).toBe('coil-resistance');
    // 0.72 / (1 + 0.00393 × 60), by hand.
    expect(Math.abs(answer.outputs.corrected.value - 0.72 / 1.2358)).toBeLessThan(1e-12);
    expect(answer.outputs.corrected.unit).toBe('ohm');
    expect(answer.outputs.verdict).toBe('inside');
    expect(answer.notes.length).toBeGreaterThan(0);
  });

  it('prints lists and truth values as they are', () => {
    const answer = JSON.parse(calculate('misfire-rate', 'cylinders=4', 'revolutions=200', 'counts=1 0 19 0').out);
    expect(answer.outputs.shares).toEqual({ values: [5, 0, 95, 0], unit: '%' });
    expect(answer.outputs.floorReached).toBe(true);
  });

  it('gives the meaning that the book holds, and none for a code it does not', () => {
    const known = JSON.parse(calculate('trouble-code', 'code=PO303').out);
    expect(known.outputs).toMatchObject({ code: 'P0303', bytes: '03 03', owner: 'standard' });
    expect(known.outputs.meaning).toMatch(/cylinder 3/i);
    expect(known.outputs.lookFirst.length).toBeGreaterThan(0);
    const unknown = JSON.parse(calculate('trouble-code', 'code=P0FFF').out);
    expect(unknown.outputs).not.toHaveProperty('meaning');
    expect(unknown.notes.join(' ')).toMatch(/not in this book/);
  });

  it('prints a refusal as JSON and exits 2', () => {
    const { status, out } = calculate('coil-resistance', 'reading=1,234');
    expect(status).toBe(2);
    expect(JSON.parse(out)).toMatchObject({
      calculator: 'coil-resistance',
      refusal: { input: 'reading', code: 'ambiguous' },
    });
    expect(JSON.parse(out).refusal.message).toMatch(/1\.234.*1234/);
  });

  it.each([
    ['an unknown calculator', ['coil-resistence'], /coil-resistance.*plug-gap/s],
    ['no calculator', [], /coil-resistance/],
    ['an unknown input', ['plug-gap', 'width=1'], /gap.*compressionRatio\?/s],
    ['a word that is no input', ['plug-gap', '1mm'], /name=value/],
    ['an input given twice', ['plug-gap', 'gap=1', 'gap=2'], /twice/],
    ['a hidden name', ['plug-gap', '__proto__=1'], /gap/],
  ])('exits 64 and says what is known for %s', (_, words, known) => {
    const { status, out, err } = calculate(...words);
    expect(status).toBe(64);
    expect(out).toBe('');
    expect(err).toMatch(known);
  });

  it('lists every calculator with inputs, units and outputs', () => {
    const { status, out } = calculate('--list');
    expect(status).toBe(0);
    const list = JSON.parse(out) as {
      calculator: string;
      inputs: { name: string; unit?: string; default?: string }[];
      outputs: { name: string }[];
    }[];
    expect(list.map(({ calculator }) => calculator).sort()).toEqual(
      [
        'coil-resistance',
        'fuel-trim',
        'misfire-rate',
        'plug-gap',
        'proof-run',
        'trouble-code',
        'battery-state',
        'coil-charge',
        'coil-output',
        'lead-resistance',
        'meter-reading',
        'plug-wear',
        'thermistor',
        'voltage-drop',
        'winding-temperature',
        'oxygen-cell',
        'air-fuel-ratio',
        'exhaust-lambda',
        'air-flow',
        'fuel-pressure',
        'injector',
        'injector-balance',
        'manifold-vacuum',
        'standard-atmosphere',
        'compression',
        'dwell',
        'firing-order',
        'leak-down',
        'live-data',
        'misfire-record',
        'monitor-status',
        'similar-conditions',
        'torque',
        'unit-converter',
      ].sort(),
    );
    const coil = list.find(({ calculator }) => calculator === 'coil-resistance');
    expect(coil?.inputs.find(({ name }) => name === 'meterPercent')).toMatchObject({ unit: '%', default: '0.8' });
    expect(coil?.outputs.map(({ name }) => name).sort()).toEqual([
      'corrected',
      'expandedUncertainty',
      'probabilityInside',
      'verdict',
    ]);
  });
});
