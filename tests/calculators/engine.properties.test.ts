import fc from 'fast-check';
import { mean as referenceMean } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import type { OutputValue } from '../../src/domain/calculators/definition.ts';
import { chartsOf } from '../../src/domain/calculators/definition.ts';
import { calculatorById } from '../../src/domain/calculators/registry.ts';
import { parseInputs, runCalculator } from '../../src/domain/calculators/run.ts';

function outputsOf(id: string, inputs: Readonly<Record<string, string>>): Readonly<Record<string, OutputValue>> {
  const calculator = calculatorById(id);
  const result = calculator === undefined ? undefined : runCalculator(calculator, inputs);
  if (result?.ok !== true) throw new Error(`${id} refused ${JSON.stringify(inputs)}: ${JSON.stringify(result)}`);
  return result.value.outputs;
}

function chartsFor(id: string, inputs: Readonly<Record<string, string>>) {
  const calculator = calculatorById(id);
  const parsed = calculator === undefined ? undefined : parseInputs(calculator, inputs);
  if (calculator === undefined || parsed?.ok !== true) throw new Error(`${id} cannot read ${JSON.stringify(inputs)}`);
  return chartsOf(calculator, parsed.value);
}

function number(output: OutputValue | undefined): number {
  if (typeof output === 'object' && 'value' in output) return output.value;
  throw new Error(`no number: ${JSON.stringify(output)}`);
}

function firstOf(output: OutputValue | undefined): number {
  if (typeof output === 'object' && 'unit' in output && 'values' in output) return output.values[0] ?? Number.NaN;
  throw new Error(`no list: ${JSON.stringify(output)}`);
}

function expectNear(one: number, other: number): void {
  expect(Math.abs(one - other)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(one), Math.abs(other), 1));
}

const readings = fc.array(fc.integer({ min: 20, max: 300 }), { minLength: 2, maxLength: 12 });
const orders = fc.integer({ min: 1, max: 16 }).chain((count) => {
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  return fc.shuffledSubarray(numbers, { minLength: count, maxLength: count });
});

describe('compression', () => {
  it('compares the same in psi, bar and kPa, and agrees with a reference mean', () => {
    fc.assert(
      fc.property(readings, (psi) => {
        // NIST SP 811: 1 psi = 6.894757 kPa.
        const [inPsi, inKilopascal, inBar] = [1, 6.894757, 0.06894757].map((factor, unit) =>
          outputsOf('compression', { readings: psi.map((value) => `${(value * factor).toFixed(9)} ${['psi', 'kPa', 'bar'][unit] ?? ''}`).join('; ') }),
        );
        for (const other of [inKilopascal, inBar]) {
          expect(Math.abs(number(inPsi?.['lowestOverHighest']) - number(other?.['lowestOverHighest']))).toBeLessThan(1e-5);
          expect(other?.['lowestCylinder']).toEqual(inPsi?.['lowestCylinder']);
        }
        const below = (100 * (referenceMean(psi) - Math.min(...psi))) / referenceMean(psi);
        expectNear(number(inPsi?.['lowestBelowMean']), below);
      }),
    );
  });

  it('gives a ratio that no height changes, and sea-level readings that grow with it', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 5000 }), (psi, altitude) => {
        const text = psi.join(' ');
        const [low, high] = [altitude, altitude + 100].map((height) => outputsOf('compression', { readings: text, altitude: String(height) }));
        expect(low?.['lowestOverHighest']).toEqual(outputsOf('compression', { readings: text })['lowestOverHighest']);
        const [atLow, atHigh] = [low?.['seaLevel'], high?.['seaLevel']].map(firstOf);
        expect(atLow).toBeGreaterThan(psi[0] ?? 0);
        expect(atHigh).toBeGreaterThan(atLow ?? 0);
      }),
    );
  });

  it('expects more from a higher ratio and a higher index', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 290 }), fc.integer({ min: 100, max: 166 }), (tenths, hundredths) => {
        const at = (ratio: number, index: number) =>
          number(outputsOf('compression', { readings: '180 180', compressionRatio: (ratio / 10).toFixed(1), polytropicIndex: (index / 100).toFixed(2) })['expectedGauge']);
        expect(at(tenths + 1, hundredths)).toBeGreaterThan(at(tenths, hundredths));
        expect(at(tenths, hundredths + 1)).toBeGreaterThan(at(tenths, hundredths));
      }),
    );
  });

  it('draws every cylinder once in place and once in firing order, with the same bars and marks', () => {
    fc.assert(
      fc.property(orders, fc.infiniteStream(fc.integer({ min: 20, max: 300 })), (order, stream) => {
        const psi = order.map(() => stream.next().value);
        const [inPlace, inOrder] = chartsFor('compression', { readings: psi.join(' '), order: order.join('-') });
        const points = (chart: typeof inPlace) => (chart?.series[0]?.points ?? []).map(({ y, label, odd }) => ({ y, label, odd }));
        expect(points(inOrder).map(({ label }) => label)).toEqual(order.map(String));
        const byLabel = (one: { label?: string | undefined }, other: { label?: string | undefined }) => Number(one.label) - Number(other.label);
        expect(points(inOrder).sort(byLabel)).toEqual(points(inPlace).sort(byLabel));
      }),
    );
  });

  it('marks one low cylinder by a word, on both charts', () => {
    const charts = chartsFor('compression', { readings: '180 175 130 178', order: '1-3-4-2' });
    expect(charts).toHaveLength(2);
    for (const { series } of charts) expect(series[0]?.points.filter(({ odd }) => odd === 'low').map(({ label }) => label)).toEqual(['3']);
  });
});

describe('leak-down', () => {
  it('falls as the cylinder holds more, whatever the unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 150 }), fc.integer({ min: 0, max: 99 }), (supply, share) => {
        const at = (percent: number, unit: string, factor: number) =>
          number(outputsOf('leak-down', { supply: `${(supply * factor).toFixed(9)} ${unit}`, cylinder: `${((supply * percent * factor) / 100).toFixed(9)} ${unit}` })['leakage']);
        expect(at(share + 1, 'psi', 1)).toBeLessThan(at(share, 'psi', 1));
        expect(Math.abs(at(share, 'kPa', 6.894757) - (100 - share))).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('dwell', () => {
  it('time to angle and back gives the time again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 9000 }), fc.integer({ min: 1, max: 1300 }), (speed, hundredths) => {
        const inputs = { cylinders: '4', speed: String(speed) };
        const there = number(outputsOf('dwell', { ...inputs, time: String(hundredths / 100) })['angle']);
        const back = number(outputsOf('dwell', { ...inputs, angle: there.toFixed(12) })['time']);
        expect(Math.abs(back - hundredths / 100)).toBeLessThan(1e-9);
      }),
    );
  });

  it('ignitions fill the second', () => {
    fc.assert(
      fc.property(fc.integer({ min: 300, max: 9000 }), fc.integer({ min: 1, max: 16 }), (speed, cylinders) => {
        const outputs = outputsOf('dwell', { speed: String(speed), cylinders: String(cylinders), time: '0.1' });
        expectNear(number(outputs['eventSpacing']) * number(outputs['eventRate']), 1000);
      }),
    );
  });
});

describe('firing order', () => {
  it('pairs every cylinder of an even number once, and reads the order backwards and turned to the same pairs', () => {
    fc.assert(
      fc.property(orders, fc.nat({ max: 15 }), (order, turn) => {
        const pairs = outputsOf('firing-order', { order: order.join('-') })['companions'] as readonly string[];
        const named = pairs.flatMap((pair) => pair.split('+').map(Number));
        expect(named.sort((one, other) => one - other)).toEqual(order.length % 2 === 0 ? [...order].sort((one, other) => one - other) : []);
        const start = turn % order.length;
        const turned = [...order.slice(start), ...order.slice(0, start)];
        for (const other of [turned, [...order].reverse()]) expect(outputsOf('firing-order', { order: other.join(' ') })['companions']).toEqual(pairs);
      }),
    );
  });
});

describe('torque', () => {
  it('converts there and back, and an adapter lowers the setting', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), fc.integer({ min: 100, max: 1000 }), fc.integer({ min: 1, max: 500 }), (tenths, handle, extension) => {
        const torque = tenths / 10;
        const feet = number(outputsOf('torque', { torque: String(torque) })['poundFeet']);
        expect(Math.abs(number(outputsOf('torque', { torque: `${feet.toFixed(12)} lbf ft` })['newtonMetres']) - torque)).toBeLessThan(1e-9);
        const setting = number(outputsOf('torque', { torque: String(torque), handle: String(handle), extension: String(extension) })['setting']);
        expect(setting).toBeLessThan(torque);
        // The hand pulls with the same force on the longer lever.
        expectNear((setting / handle) * (handle + extension), torque);
      }),
    );
  });
});

describe('similar conditions', () => {
  it('inside the window shown it is always similar, a little outside never surely', () => {
    fc.assert(
      fc.property(fc.integer({ min: 800, max: 6000 }), fc.integer({ min: 5, max: 100 }), fc.integer({ min: -375, max: 375 }), fc.integer({ min: -20, max: 20 }), (speed, load, offSpeed, offPercent) => {
        const stored = { speed: String(speed), load: String(load), warm: 'yes', nowWarm: 'yes' };
        const now = (rpm: number, percent: number) => outputsOf('similar-conditions', { ...stored, nowSpeed: String(rpm), nowLoad: percent.toFixed(6) })['similar'];
        expect(now(speed + offSpeed, load * (1 + (0.999 * offPercent) / 100))).toBe(true);
        expect(now(speed + 376, load)).toBe(false);
        expect(now(speed, load * 1.21)).not.toBe(true);
      }),
    );
  });
});

describe('misfire rate', () => {
  it('marks the leading cylinder by a word in place and in firing order', () => {
    const charts = chartsFor('misfire-rate', { cylinders: '4', revolutions: '200', counts: '1 0 19 0', order: '1-3-4-2' });
    expect(charts.map(({ series }) => series[0]?.points.map(({ label }) => label))).toEqual([
      ['1', '2', '3', '4'],
      ['1', '3', '4', '2'],
    ]);
    for (const { series } of charts) expect(series[0]?.points.filter(({ odd }) => odd === 'high').map(({ label }) => label)).toEqual(['3']);
  });

  it('marks nobody where all miss alike', () => {
    const [chart] = chartsFor('misfire-rate', { cylinders: '4', revolutions: '200', counts: '10 11 9 10' });
    expect(chart?.series[0]?.points.some(({ odd }) => odd !== undefined)).toBe(false);
  });
});
