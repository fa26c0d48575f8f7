import fc from 'fast-check';
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { OutputValue } from '../../src/domain/calculators/definition.ts';
import { calculatorById } from '../../src/domain/calculators/registry.ts';
import { runCalculator } from '../../src/domain/calculators/run.ts';

type Texts = Readonly<Record<string, string>>;

function outputsOf(id: string, inputs: Texts): Readonly<Record<string, OutputValue>> {
  const calculator = calculatorById(id);
  const result = calculator === undefined ? undefined : runCalculator(calculator, inputs);
  if (result?.ok !== true) throw new Error(`${id} refused ${JSON.stringify(inputs)}: ${JSON.stringify(result)}`);
  return result.value.outputs;
}

function figure(id: string, name: string, inputs: Texts): number {
  const output = outputsOf(id, inputs)[name];
  if (typeof output === 'object' && 'value' in output) return output.value;
  throw new Error(`no ${name}: ${JSON.stringify(output)}`);
}

function expectNear(found: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.max(Math.abs(wanted), 1e-9));
}

/** Whole numbers as tenths, hundredths …: typed without the noise of binary fractions. */
const scaled = (min: number, max: number, divisor: number) => fc.integer({ min, max }).map((whole) => whole / divisor);

describe('coil charging', () => {
  const volts = scaled(60, 160, 10);
  const ohms = scaled(2, 40, 10);
  const millihenries = scaled(5, 100, 10);

  it('reaches the current it predicts at the time it predicts', () => {
    fc.assert(
      fc.property(volts, ohms, millihenries, fc.integer({ min: 1, max: 95 }), (supply, resistance, inductance, share) => {
        const coil = { supplyVoltage: `${supply}`, resistance: `${resistance}`, inductance: `${inductance}` };
        const target = ((supply / resistance) * share) / 100;
        const time = figure('coil-charge', 'timeToTarget', { ...coil, targetCurrent: target.toFixed(12) });
        expectNear(figure('coil-charge', 'current', { ...coil, chargeTime: time.toFixed(12) }), target, 1e-8);
      }),
    );
  });

  it('gains current with time and voltage and never passes the final one', () => {
    fc.assert(
      fc.property(volts, ohms, millihenries, scaled(1, 80, 10), (supply, resistance, inductance, time) => {
        const at = (v: number, t: number) =>
          outputsOf('coil-charge', { supplyVoltage: `${v}`, resistance: `${resistance}`, inductance: `${inductance}`, chargeTime: `${t}` });
        const value = (outputs: Readonly<Record<string, OutputValue>>, name: string) => (outputs[name] as { value: number }).value;
        const here = at(supply, time);
        expect(value(here, 'current')).toBeLessThanOrEqual(value(here, 'finalCurrent'));
        expect(value(at(supply, time + 1), 'current')).toBeGreaterThanOrEqual(value(here, 'current'));
        expect(value(at(supply + 1, time), 'current')).toBeGreaterThan(value(here, 'current'));
        expectNear(value(here, 'energy'), (inductance * value(here, 'current') ** 2) / 2);
      }),
    );
  });

  it('does not mind the unit of entry', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 4000 }), fc.integer({ min: 500, max: 9000 }), (milliohms, microhenries) => {
        const rest = { supplyVoltage: '12', chargeTime: '3 ms' };
        expectNear(
          figure('coil-charge', 'current', { ...rest, resistance: `${milliohms} mohm`, inductance: `${microhenries} uH` }),
          figure('coil-charge', 'current', { ...rest, resistance: `${milliohms / 1000}`, inductance: `${microhenries / 1000} mH`, chargeTime: '3000 us' }),
        );
      }),
    );
  });
});

describe('sensors and windings give their input back', () => {
  it('thermistor: temperature to resistance to temperature, falling as it warms', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 100_000 }), fc.integer({ min: 3000, max: 4500 }), scaled(-400, 1400, 10), (nominal, beta, celsius) => {
        const sensor = { nominalResistance: `${nominal}`, beta: `${beta}` };
        const resistance = figure('thermistor', 'resistance', { ...sensor, temperature: `${celsius}` });
        expect(figure('thermistor', 'resistance', { ...sensor, temperature: `${celsius + 1}` })).toBeLessThan(resistance);
        const back = figure('thermistor', 'temperature', { ...sensor, resistance: resistance.toFixed(12) });
        expect(Math.abs(back - celsius)).toBeLessThan(1e-7);
      }),
    );
  });

  it('winding: hot and cold changed over leads back, and a warmer one reads more', () => {
    fc.assert(
      fc.property(scaled(10, 500, 100), fc.integer({ min: 100, max: 140 }), scaled(-100, 400, 10), (cold, percent, celsius) => {
        const hot = (cold * percent) / 100;
        const there = figure('winding-temperature', 'temperature', { coldResistance: `${cold}`, hotResistance: hot.toFixed(9), coldTemperature: `${celsius}` });
        expect(there).toBeGreaterThanOrEqual(celsius - 1e-9);
        const back = figure('winding-temperature', 'temperature', { coldResistance: hot.toFixed(9), hotResistance: `${cold}`, coldTemperature: there.toFixed(12) });
        expect(Math.abs(back - celsius)).toBeLessThan(1e-4);
      }),
    );
  });

  it('plug wear: after the distance to the limit the gap is at the limit', () => {
    fc.assert(
      fc.property(scaled(50, 100, 100), scaled(1, 50, 1000), scaled(1, 60, 100), (gap, rate, growth) => {
        const limit = (gap + growth).toFixed(4);
        const left = figure('plug-wear', 'distanceToLimit', { gap: `${gap}`, distance: '0', wearRate: `${rate}`, limit });
        expectNear(figure('plug-wear', 'gapThen', { gap: `${gap}`, distance: left.toFixed(9), wearRate: `${rate}` }), Number(limit));
      }),
    );
  });
});

describe('voltage drop', () => {
  const amperes = scaled(1, 1000, 10);
  const metres = scaled(1, 100, 10);

  it('is in proportion to current and length, and doubles with a return', () => {
    fc.assert(
      fc.property(amperes, metres, fc.constantFrom('0.5', '1.5', '2', '4', '25'), (current, length, area) => {
        const drop = (inputs: Texts) => figure('voltage-drop', 'drop', { area, ...inputs });
        const here = drop({ current: `${current}`, length: `${length}` });
        expectNear(drop({ current: `${2 * current}`, length: `${length}` }), 2 * here);
        expectNear(drop({ current: `${current}`, length: `${2 * length}` }), 2 * here);
        expectNear(drop({ current: `${current}`, length: `${length}`, returnPath: 'yes' }), 2 * here);
        expect(drop({ current: `${current}`, length: `${length}`, temperature: '60' })).toBeGreaterThan(here);
      }),
    );
  });

  it('the sure size keeps within the drop allowed, and no size is below the copper needed', () => {
    fc.assert(
      fc.property(scaled(1, 600, 10), metres, scaled(5, 100, 100), fc.integer({ min: -20, max: 120 }), (current, length, allowed, temperature) => {
        const run = { current: `${current}`, length: `${length}`, temperature: `${temperature}` };
        const { areaNeeded, nextSize, sureSize } = outputsOf('voltage-drop', { ...run, allowed: `${allowed}` });
        const value = (output: OutputValue | undefined) => (output as { value: number } | undefined)?.value;
        const [needed, next, sure] = [value(areaNeeded) ?? Number.NaN, value(nextSize), value(sureSize)];
        if (next !== undefined) expect(next).toBeGreaterThanOrEqual(needed * (1 - 1e-9));
        if (sure === undefined || next === undefined) return;
        expect(sure).toBeGreaterThanOrEqual(next);
        expect(figure('voltage-drop', 'drop', { ...run, area: `${sure}` })).toBeLessThanOrEqual(allowed * (1 + 1e-9));
      }),
    );
  });

  it('a thinner gauge always loses more', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 39 }), (awg) => {
        const run = { current: '1', length: '1' };
        expect(figure('voltage-drop', 'drop', { ...run, awg: `${awg + 1}` })).toBeGreaterThan(figure('voltage-drop', 'drop', { ...run, awg: `${awg}` }));
      }),
    );
  });
});

describe('battery', () => {
  it('is fuller the higher it rests or the denser its acid, from 0 to 100 %', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1100, max: 1319 }), fc.integer({ min: 1000, max: 1350 }), (hundredths, points) => {
        const byVoltage = (volts: number) => figure('battery-state', 'stateOfCharge', { openCircuitVoltage: `${volts / 100}` });
        const byGravity = (gravity: number) => figure('battery-state', 'stateOfCharge', { specificGravity: `${gravity / 1000}` });
        for (const [low, high] of [[byVoltage(hundredths), byVoltage(hundredths + 1)], [byGravity(points), byGravity(points + 1)]] as const) {
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeGreaterThanOrEqual(low);
          expect(high).toBeLessThanOrEqual(100);
        }
      }),
    );
  });

  it('need not hold up as well in the cold', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 119 }), (fahrenheit) => {
        const least = (degrees: number) => figure('battery-state', 'loadMinimum', { loadVoltage: '9', temperature: `${degrees} F` });
        expect(least(fahrenheit + 1)).toBeGreaterThanOrEqual(least(fahrenheit) - 1e-12);
      }),
    );
  });
});

describe('meter reading', () => {
  const meter = { meterPercent: '0.5', meterCounts: '2' };

  it('is the same in millivolts, volts and kilovolts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20_000 }), (millivolts) => {
        const inVolts = outputsOf('meter-reading', { ...meter, reading: `${millivolts / 1000} V`, meterResolution: '0.01', low: '9.6', high: '12600 mV' });
        const inMillivolts = outputsOf('meter-reading', { ...meter, reading: `${millivolts} mV`, meterResolution: '10', low: '9.6 V', high: '0.0126 kV' });
        const value = (output: OutputValue | undefined) => (output as { value: number }).value;
        expectNear(value(inVolts['expandedUncertainty']), value(inMillivolts['expandedUncertainty']) / 1000);
        expectNear(value(inVolts['acceptFrom']), value(inMillivolts['acceptFrom']) / 1000);
        expect(Math.abs(value(inVolts['probabilityInside']) - value(inMillivolts['probabilityInside']))).toBeLessThan(1e-9);
        expect(inVolts['verdict']).toBe(inMillivolts['verdict']);
      }),
    );
  });

  it('agrees with a reference error function, and passes exactly what lies past the guard band', () => {
    fc.assert(
      fc.property(fc.integer({ min: 900, max: 1020 }), fc.integer({ min: 500, max: 999 }), (hundredths, thousandths) => {
        const reading = hundredths / 100;
        const outputs = outputsOf('meter-reading', { meterPercent: '0', meterCounts: '3', meterResolution: '0.01', reading: `${reading} V`, low: '9.6', confidence: `${thousandths / 1000}` });
        const value = (output: OutputValue | undefined) => (output as { value: number }).value;
        const [chance, from] = [value(outputs['probabilityInside']), value(outputs['acceptFrom'])];
        const reference = (1 + erf((reading - 9.6) / value(outputs['standardUncertainty']) / Math.SQRT2)) / 2;
        expect(Math.abs(chance - reference)).toBeLessThan(1e-9);
        if (Math.abs(reading - from) > 1e-9) expect(outputs['verdict'] === 'inside').toBe(reading > from);
      }),
    );
  });
});

describe('coil output and leads', () => {
  it('four times the energy lifts the same capacitance to twice the voltage', () => {
    fc.assert(
      fc.property(scaled(10, 1000, 10), fc.integer({ min: 20, max: 300 }), (energy, capacitance) => {
        const limit = (millijoules: number) => figure('coil-output', 'capacitanceLimit', { clampVoltage: '400', turnsRatio: '85', energy: `${millijoules}`, capacitance: `${capacitance}` });
        expectNear(limit(4 * energy), 2 * limit(energy));
      }),
    );
  });

  it('two leads end to end read as much as one of both lengths', () => {
    fc.assert(
      fc.property(scaled(1, 200, 100), scaled(1, 200, 100), fc.integer({ min: 0, max: 25_000 }), (one, other, perMetre) => {
        const expected = (length: number) => figure('lead-resistance', 'expected', { length: `${length}`, resistancePerMetre: `${perMetre}` });
        expect(Math.abs(expected(one) + expected(other) - expected(one + other))).toBeLessThan(1e-6);
      }),
    );
  });
});
