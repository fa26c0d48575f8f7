import fc from 'fast-check';
import { poissonDistribution } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import type { OutputValue } from '../../src/domain/calculators/definition.ts';
import { calculatorById, calculators } from '../../src/domain/calculators/registry.ts';
import { parseInputs, runCalculator } from '../../src/domain/calculators/run.ts';

function outputsOf(id: string, inputs: Readonly<Record<string, string>>): Readonly<Record<string, OutputValue>> {
  const calculator = calculatorById(id);
  const result = calculator === undefined ? undefined : runCalculator(calculator, inputs);
  if (result?.ok !== true) throw new Error(`${id} refused ${JSON.stringify(inputs)}: ${JSON.stringify(result)}`);
  return result.value.outputs;
}

function number(output: OutputValue | undefined): number {
  if (typeof output === 'object' && 'value' in output) return output.value;
  throw new Error(`no number: ${JSON.stringify(output)}`);
}

function expectSame(left: OutputValue | undefined, right: OutputValue | undefined): void {
  const [one, two] = [number(left), number(right)];
  expect(Math.abs(one - two)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(one), Math.abs(two), 1e-9));
}

describe('the unit of entry does not matter', () => {
  it('coil resistance in ohm, milliohm and kilohm; temperature in °C and K', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 20_000 }), fc.integer({ min: -30, max: 130 }), (milliohms, celsius) => {
        const rest = { meterResolution: '0.01 ohm', low: '0.3', high: '1.2' };
        const first = outputsOf('coil-resistance', {
          reading: `${milliohms / 1000} ohm`,
          readingTemperature: `${celsius} C`,
          ...rest,
        });
        const second = outputsOf('coil-resistance', {
          reading: `${milliohms} mohm`,
          readingTemperature: `${celsius + 273.15} K`,
          ...rest,
        });
        expectSame(first['corrected'], second['corrected']);
        expectSame(first['expandedUncertainty'], second['expandedUncertainty']);
        expect(first['verdict']).toBe(second['verdict']);
      }),
    );
  });

  it('plug gap in millimetres, thousandths of an inch and inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 100 }), fc.integer({ min: 10, max: 120 }), (thou, ratio) => {
        const rest = { compressionRatio: String(ratio / 10 + 1) };
        const inInches = outputsOf('plug-gap', { gap: `${thou / 1000} in`, ...rest });
        expectSame(inInches['breakdown'], outputsOf('plug-gap', { gap: `${thou} thou`, ...rest })['breakdown']);
        expectSame(
          inInches['breakdown'],
          outputsOf('plug-gap', { gap: `${(thou * 0.0254).toFixed(6)} mm`, ...rest })['breakdown'],
        );
      }),
    );
  });
});

describe('shape of the answers', () => {
  it('a wider gap or more pressure never asks for less voltage, and the widest gap gives its voltage back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 200 }), fc.integer({ min: 10, max: 140 }), (hundredths, tenths) => {
        const ratio = tenths / 10;
        const at = (gap: number, compressionRatio: number) =>
          number(
            outputsOf('plug-gap', { gap: `${gap / 100} mm`, compressionRatio: String(compressionRatio) })['breakdown'],
          );
        const here = at(hundredths, ratio);
        expect(at(hundredths + 1, ratio)).toBeGreaterThan(here);
        expect(at(hundredths, ratio + 0.1)).toBeGreaterThan(here);
        const back = outputsOf('plug-gap', {
          gap: '1',
          compressionRatio: String(ratio),
          available: `${here.toFixed(9)} kV`,
        });
        expect(Math.abs(number(back['largestGap']) - hundredths / 100)).toBeLessThan(1e-6);
      }),
    );
  });

  it('a proof run leaves the doubt that was accepted, by a reference Poisson distribution', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.integer({ min: 500, max: 999 }), (rate, thousandths) => {
        const inputs = { rateBefore: String(rate / 10), confidence: String(thousandths / 1000) };
        const expectedMisfires = (number(outputsOf('proof-run', inputs)['revolutions']) / 1000) * (rate / 10);
        const chanceOfNone = poissonDistribution(expectedMisfires)?.[0] ?? Number.NaN;
        expect(Math.abs(chanceOfNone - (1 - thousandths / 1000))).toBeLessThan(1e-9);
      }),
    );
  });

  it('referring a winding there and back gives the reading again', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 99_999 }), fc.integer({ min: -40, max: 150 }), (milliohms, celsius) => {
        const reading = milliohms / 1000;
        const there = number(
          outputsOf('coil-resistance', { reading: String(reading), referenceTemperature: String(celsius) })[
            'corrected'
          ],
        );
        const back = number(
          outputsOf('coil-resistance', { reading: there.toFixed(12), readingTemperature: String(celsius) })[
            'corrected'
          ],
        );
        expect(Math.abs(back - reading)).toBeLessThan(1e-9 * reading + 1e-11);
      }),
    );
  });
});

describe('anything may be typed', () => {
  it.each(calculators.map((calculator) => [calculator.id, calculator] as const))(
    '%s gives finite figures or a refusal that names a field',
    (_, calculator) => {
      const figure = fc.oneof(
        fc.string({ maxLength: 12 }),
        fc.double().map(String),
        fc.constantFrom('OL', '0', '-1', '1e308', '1e-308', '4k7', '1,234', ' '),
      );
      const texts = fc.record(Object.fromEntries(calculator.inputs.map(({ name }) => [name, figure])), {
        requiredKeys: [],
      });
      fc.assert(
        fc.property(texts, (inputs) => {
          const result = runCalculator(calculator, inputs as Readonly<Record<string, string>>);
          if (!result.ok) {
            expect(calculator.inputs.map(({ name }) => name)).toContain(result.error.input);
            expect(result.error.message.length).toBeGreaterThan(10);
            return;
          }
          for (const output of Object.values(result.value.outputs)) {
            if (typeof output !== 'object' || !('unit' in output)) continue;
            for (const value of 'value' in output ? [output.value] : output.values)
              expect(Number.isFinite(value)).toBe(true);
          }
          const parsed = parseInputs(calculator, inputs as Readonly<Record<string, string>>);
          if (parsed.ok) calculator.chart?.(parsed.value);
        }),
        { numRuns: 300 },
      );
    },
  );

  it('a name from the object’s own workings is an unknown input', () => {
    const calculator = calculatorById('plug-gap');
    if (calculator === undefined) throw new Error('no plug-gap');
    for (const name of ['toString', 'constructor', '__proto__']) {
      expect(
        runCalculator(
          calculator,
          Object.fromEntries([
            ['gap', '1'],
            [name, '1'],
          ]),
        ),
      ).toMatchObject({ ok: false, error: { input: name, code: 'unknown-input' } });
    }
  });
});
