import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chart, OutputValue } from '../../src/domain/calculators/definition.ts';
import { chartsOf } from '../../src/domain/calculators/definition.ts';
import { calculatorById } from '../../src/domain/calculators/registry.ts';
import { parseInputs, runCalculator } from '../../src/domain/calculators/run.ts';

type Inputs = Readonly<Record<string, string>>;

function outputsOf(id: string, inputs: Inputs): Readonly<Record<string, OutputValue>> {
  const calculator = calculatorById(id);
  const result = calculator === undefined ? undefined : runCalculator(calculator, inputs);
  if (result?.ok !== true) throw new Error(`${id} refused ${JSON.stringify(inputs)}: ${JSON.stringify(result)}`);
  return result.value.outputs;
}

function value(id: string, output: string, inputs: Inputs): number {
  const found = outputsOf(id, inputs)[output];
  if (typeof found === 'object' && 'value' in found) return found.value;
  throw new Error(`${id} gives no number ${output}: ${JSON.stringify(found)}`);
}

function expectNear(left: number, right: number, relative = 1e-9): void {
  expect(Math.abs(left - right)).toBeLessThanOrEqual(relative * Math.max(Math.abs(left), Math.abs(right), 1e-30));
}

function chartOf(id: string, inputs: Inputs): Chart {
  const calculator = calculatorById(id);
  const parsed = calculator === undefined ? undefined : parseInputs(calculator, inputs);
  const chart = calculator !== undefined && parsed?.ok === true ? chartsOf(calculator, parsed.value)[0] : undefined;
  if (chart === undefined) throw new Error(`${id} draws nothing for ${JSON.stringify(inputs)}`);
  return chart;
}

/** A decimal with so many places between two ends, as a person would type it. */
function decimal(low: number, high: number, places: number): fc.Arbitrary<number> {
  const scale = 10 ** places;
  return fc.integer({ min: Math.ceil(low * scale), max: Math.floor(high * scale) }).map((steps) => steps / scale);
}

describe('outside pressure', () => {
  it('falls with every metre, and its factor is its share of that at sea level', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500, max: 10_999 }), (altitude) => {
        const here = value('standard-atmosphere', 'pressure', { altitude: `${altitude} m` });
        expect(value('standard-atmosphere', 'pressure', { altitude: `${altitude + 1} m` })).toBeLessThan(here);
        expectNear(value('standard-atmosphere', 'factor', { altitude: `${altitude} m` }), here / 101.325);
      }),
    );
  });

  it('is the same in metres and feet', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1600, max: 36_000 }), (feet) => {
        const metres = (feet * 0.3048).toFixed(4);
        expectNear(value('standard-atmosphere', 'pressure', { altitude: `${feet} ft` }), value('standard-atmosphere', 'pressure', { altitude: `${metres} m` }));
      }),
    );
  });

  it('is drawn with the place marked on the line', () => {
    const chart = chartOf('standard-atmosphere', { altitude: '2000 m' });
    expect(chart.marks).toHaveLength(1);
    expect(Math.abs((chart.marks[0]?.y ?? 0) - 79.501)).toBeLessThan(1e-3);
    const ys = chart.series[0]?.points.map(({ y }) => y) ?? [];
    expect(ys).toEqual([...ys].sort((one, two) => two - one));
  });
});

describe('oxygen cell', () => {
  it('gives its own voltage and oxygen back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 250, max: 1200 }), fc.integer({ min: -100, max: 1200 }), (temperature, millivolts) => {
        const typed = { temperature: String(temperature) };
        const pressure = value('oxygen-cell', 'oxygenPressure', { ...typed, voltage: String(millivolts) });
        fc.pre(pressure <= 1);
        const back = value('oxygen-cell', 'voltage', { ...typed, oxygenPressure: pressure.toExponential() });
        expect(Math.abs(back - millivolts)).toBeLessThan(1e-6);
      }),
    );
  });

  it('gives more voltage for less oxygen, and more for each power of ten when hotter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 250, max: 1199 }), fc.integer({ min: 1, max: 20 }), (temperature, power) => {
        const at = (celsius: number, exponent: number) => value('oxygen-cell', 'voltage', { temperature: String(celsius), oxygenPressure: `1e-${exponent}` });
        expect(at(temperature, power + 1)).toBeGreaterThan(at(temperature, power));
        expect(at(temperature + 1, power)).toBeGreaterThan(at(temperature, power));
      }),
    );
  });
});

describe('air-fuel ratio', () => {
  it('falls as ethanol rises, and lambda times equivalence ratio is one', () => {
    fc.assert(
      fc.property(decimal(0, 99, 1), decimal(5, 40, 1), (percent, actual) => {
        const inputs = { ethanolPercent: String(percent), actual: String(actual) };
        const ratio = value('air-fuel-ratio', 'stoichiometric', inputs);
        expect(value('air-fuel-ratio', 'stoichiometric', { ethanolPercent: String(percent + 1) })).toBeLessThan(ratio);
        expectNear(value('air-fuel-ratio', 'lambda', inputs) * value('air-fuel-ratio', 'equivalenceRatio', inputs), 1);
        expectNear(value('air-fuel-ratio', 'lambda', inputs) * ratio, actual);
      }),
    );
  });

  it('does not change when every count of atoms is doubled', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 2 }), (carbon, hydrogen, oxygen) => {
        const atoms = (times: number) => ({ carbon: String(times * carbon), hydrogen: String(times * hydrogen), oxygen: String(times * oxygen) });
        fc.pre(carbon + hydrogen / 4 - oxygen / 2 > 0);
        expectNear(value('air-fuel-ratio', 'stoichiometric', atoms(1)), value('air-fuel-ratio', 'stoichiometric', atoms(2)));
      }),
    );
  });
});

describe('lambda from exhaust gas', () => {
  /** The oxygen of CO2, CO and O2 together stays below that of air, or the gas is refused. */
  const gas = fc
    .record({ co: decimal(0, 6, 2), co2: decimal(8, 15, 1), o2: decimal(0, 4, 2), hc: fc.integer({ min: 0, max: 3000 }) })
    .filter(({ co, co2, o2 }) => co2 + co / 2 + o2 < 20.9);
  const texts = ({ co, co2, o2, hc }: { co: number; co2: number; o2: number; hc: number }) => ({ co: String(co), co2: String(co2), o2: String(o2), hc: String(hc) });

  it('rises with oxygen and with NO, and falls with unburnt fuel', () => {
    fc.assert(
      fc.property(gas, (read) => {
        const here = value('exhaust-lambda', 'lambda', texts(read));
        expect(value('exhaust-lambda', 'lambda', texts({ ...read, o2: read.o2 + 0.1 }))).toBeGreaterThan(here);
        expect(value('exhaust-lambda', 'lambda', { ...texts(read), no: '1000' })).toBeGreaterThan(here);
        expect(value('exhaust-lambda', 'lambda', texts({ ...read, hc: read.hc + 100 }))).toBeLessThan(here);
      }),
    );
  });

  it('reads HC alike as hexane, propane and methane, and CO in percent or ppm', () => {
    fc.assert(
      fc.property(gas, (read) => {
        const hexane = outputsOf('exhaust-lambda', texts(read));
        for (const [hcAs, times] of [['propane', 2], ['methane', 6]] as const) {
          const other = outputsOf('exhaust-lambda', { ...texts({ ...read, hc: read.hc * times }), hcAs });
          expect(other['pattern']).toBe(hexane['pattern']);
        }
        const inPpm = { ...texts(read), co: `${Math.round(read.co * 10_000)} ppm` };
        expectNear(value('exhaust-lambda', 'lambda', inPpm), value('exhaust-lambda', 'lambda', texts(read)));
      }),
    );
  });

  /** Lambda, CO, CO2 and O2 of a whole burn, worked out apart from the code: fuel CH1.7261O0.0176, water-gas constant 3.5, N2/O2 3.773. */
  it.each([
    [0.8, 7.731, 10.643, 0],
    [0.9, 3.734, 13.228, 0],
    [1, 0, 15.704, 0],
    [1.1, 0, 14.19, 2.019],
    [1.3, 0, 11.897, 5.078],
  ])('draws the gas of lambda %d as it burns', (lambda, co, co2, o2) => {
    const chart = chartOf('exhaust-lambda', { co: '0.1', co2: '15', o2: '0.2', hc: '30' });
    const at = (name: string) => chart.series.find((series) => series.name === name)?.points.find(({ x }) => Math.abs(x - lambda) < 1e-9)?.y ?? Number.NaN;
    expect(Math.abs(at('CO') - co)).toBeLessThan(6e-4);
    expect(Math.abs(at('CO2') - co2)).toBeLessThan(6e-4);
    expect(Math.abs(at('O2') - o2)).toBeLessThan(6e-4);
  });
});

describe('air flow', () => {
  it('and volumetric efficiency give each other back, whatever the units', () => {
    fc.assert(
      fc.property(decimal(0.6, 6, 1), fc.integer({ min: 600, max: 7000 }), fc.integer({ min: 20, max: 250 }), fc.integer({ min: -20, max: 80 }), decimal(0.2, 1.2, 2), (litres, rpm, kilopascals, celsius, efficiency) => {
        const engine = { displacement: `${litres} l`, speed: `${rpm} rpm`, pressure: `${kilopascals} kPa`, temperature: `${celsius} C` };
        const flow = value('air-flow', 'massFlow', { ...engine, volumetricEfficiency: String(efficiency) });
        const otherUnits = { displacement: `${litres * 1000} cc`, speed: `${rpm} rpm`, pressure: `${kilopascals * 10} mbar`, temperature: `${celsius + 273.15} K` };
        expectNear(value('air-flow', 'volumetricEfficiency', { ...otherUnits, massFlow: `${flow} g/s` }), efficiency);
        expect(value('air-flow', 'massFlow', { ...engine, temperature: `${celsius + 1} C` })).toBeLessThan(value('air-flow', 'massFlow', engine));
      }),
    );
  });
});

describe('fuel pressure', () => {
  it('across the injector grows as the manifold falls, and is the same in bar, psi and kPa', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 600 }), fc.integer({ min: 20, max: 100 }), (rail, manifold) => {
        const across = value('fuel-pressure', 'acrossInjector', { rail: `${rail} kPa`, manifoldPressure: `${manifold} kPa` });
        expect(value('fuel-pressure', 'acrossInjector', { rail: `${rail} kPa`, manifoldPressure: `${manifold + 1} kPa` })).toBeLessThan(across);
        expectNear(value('fuel-pressure', 'acrossInjector', { rail: `${rail / 100} bar`, manifoldPressure: `${manifold * 10} hPa` }), across);
        expectNear(value('fuel-pressure', 'acrossInjector', { rail: `${rail / 6.894757293168361} psi`, manifoldPressure: `${manifold} kPa` }), across);
      }),
    );
  });

  it('is never worked out for direct injection, in whatever unit it is typed', () => {
    const calculator = calculatorById('fuel-pressure');
    fc.assert(
      fc.property(fc.integer({ min: 16, max: 500 }), fc.constantFrom(['bar', 1], ['MPa', 0.1], ['psi', 14.5038]), (bar, [unit, each]) => {
        const result = calculator === undefined ? undefined : runCalculator(calculator, { rail: `${bar * Number(each)} ${unit}` });
        expect(result).toMatchObject({ ok: false, error: { code: 'direct-injection-pressure' } });
        expect(result?.ok === false ? result.error.message : '').toMatch(/never open/);
      }),
    );
  });
});

describe('injector', () => {
  it('gives the rated flow back, and doubles its flow at four times the pressure', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 2000 }), fc.integer({ min: 100, max: 350 }), (flow, pressure) => {
        const at = (now: number) => value('injector', 'flow', { ratedFlow: String(flow), ratedPressure: String(pressure), pressure: String(now) });
        expectNear(at(pressure), flow);
        expectNear(at(4 * pressure), 2 * flow);
      }),
    );
  });

  it('is open all the time when the pulse is the longest there is time for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 9000 }), fc.integer({ min: 1, max: 4 }), (speed, pulses) => {
        const rest = { speed: String(speed), pulsesPerCycle: String(pulses) };
        const longest = value('injector', 'longestPulse', { pulseWidth: '1', ...rest });
        expectNear(value('injector', 'dutyCycle', { pulseWidth: String(longest), ...rest }), 100);
      }),
    );
  });
});

describe('injector balance', () => {
  const drops = fc.array(fc.integer({ min: 10, max: 80 }), { minLength: 3, maxLength: 12 });

  it('has deviations that cancel, and the worst is the largest of them', () => {
    fc.assert(
      fc.property(drops, (list) => {
        fc.pre(new Set(list).size > 1);
        const outputs = outputsOf('injector-balance', { drops: list.join(' ') });
        const deviations = (outputs['deviations'] as { values: readonly number[] }).values;
        expect(Math.abs(deviations.reduce((sum, one) => sum + one, 0))).toBeLessThan(1e-9);
        const worst = value('injector-balance', 'worst', { drops: list.join(' ') });
        expectNear(Math.abs(deviations[worst - 1] ?? 0), Math.max(...deviations.map(Math.abs)));
      }),
    );
  });

  it('does not change when every drop is read in another unit', () => {
    fc.assert(
      fc.property(drops, (list) => {
        const inKilopascals = outputsOf('injector-balance', { drops: `${list.join(' ')} kPa` });
        const inBar = outputsOf('injector-balance', { drops: `${list.map((drop) => drop / 100).join(' ')} bar` });
        expect(inBar['verdict']).toBe(inKilopascals['verdict']);
        expect(inBar['worst']).toEqual(inKilopascals['worst']);
      }),
    );
  });

  it('marks the odd bars with their word, and no other', () => {
    const marked = (list: string) => chartOf('injector-balance', { drops: list }).series[0]?.points.map(({ odd }) => odd);
    expect(marked('42 44 43 43')).toEqual([undefined, undefined, undefined, undefined]);
    expect(marked('42 30 43 41')).toEqual([undefined, 'low', undefined, undefined]);
    expect(marked('40 41 55 42')).toEqual([undefined, undefined, 'high', undefined]);
  });
});

describe('manifold vacuum', () => {
  it('is the same from a gauge and from live data, in any unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 80 }), fc.integer({ min: 85, max: 105 }), (manifold, barometer) => {
        const fromData = outputsOf('manifold-vacuum', { manifoldPressure: `${manifold} kPa`, barometer: `${barometer} kPa` });
        const fromGauge = outputsOf('manifold-vacuum', { vacuum: `${barometer - manifold} kPa`, barometer: `${barometer * 10} hPa` });
        for (const name of ['vacuum', 'seaLevelEquivalent', 'expectedLow']) {
          expectNear((fromData[name] as { value: number }).value, (fromGauge[name] as { value: number }).value);
        }
        expect(fromData['verdict']).toBe(fromGauge['verdict']);
      }),
    );
  });

  it('asks for less the higher the car stands', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4999 }), (altitude) => {
        const low = (metres: number) => value('manifold-vacuum', 'expectedLow', { vacuum: '10', altitude: `${metres} m` });
        expect(low(altitude + 1)).toBeLessThan(low(altitude));
      }),
    );
  });
});
