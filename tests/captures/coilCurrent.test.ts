import { describe, expect, it } from 'vitest';
import { coilsOf, compareCoils } from '../../src/domain/captures/coil/compareCoils.ts';
import { readCoilCurrent } from '../../src/domain/captures/coil/coilCurrent.ts';
import { chargingCurve } from '../../src/domain/captures/coil/ramp.ts';
import { chargesOf, currentOf, kneeTimeOf, record } from './model/coil.ts';
import type { CoilTruth, Scope } from './model/coil.ts';
import { expectTruth } from './model/expectTruth.ts';
import { drawFrom, Tally } from './model/random.ts';
import type { Draw } from './model/random.ts';

const long = 240_000;

/** OpenStax, University Physics Volume 2, section 14.4 and the ignition-like numbers worked out from its formula by hand. */
const published = [
  { label: '2.0 V, 4.0 Ω, 4.0 H at two time constants: printed 0.43 A', volts: 2, ohms: 4, millihenries: 4000, ms: 2000, amperes: 0.432332 },
  { label: '12 V, 0.5 Ω, 2.5 mH, 2 ms', volts: 12, ohms: 0.5, millihenries: 2.5, ms: 2, amperes: 7.91232 },
  { label: '14 V, 0.6 Ω, 3.0 mH, 3 ms', volts: 14, ohms: 0.6, millihenries: 3, ms: 3, amperes: 10.52773 },
  { label: '12 V, 3.0 Ω, 8.0 mH, 5 ms', volts: 12, ohms: 3, millihenries: 8, ms: 5, amperes: 3.38658 },
];

describe('the law of charging', () => {
  it.each(published)('$label', ({ volts, ohms, millihenries, ms, amperes }) => {
    const gradient = new Float64Array(3);
    expect(chargingCurve(ms, Float64Array.of(volts / millihenries, ohms / millihenries, 0), gradient)).toBeCloseTo(amperes, 4);
    // The test's own model, written with the time constant, agrees.
    expect(currentOf({ voltage: volts, resistance: ohms, inductance: millihenries, dwell: ms }, ms)).toBeCloseTo(amperes, 4);
  });
});

function anyCoil(draw: Draw): CoilTruth {
  return { voltage: draw.between(11, 14.5), resistance: draw.between(0.4, 1.2), inductance: draw.between(1.5, 5), dwell: draw.between(2, 5) };
}

function anyScope(draw: Draw): Scope {
  return {
    interval: draw.pick([0.005, 0.01, 0.02]),
    noise: draw.between(0.02, 0.15),
    step: draw.pick([0, 0.02, 0.04]),
    offset: draw.between(-0.5, 0.5),
    lost: draw.pick([0, 0, 0.01]),
  };
}

type Kind = 'plain' | 'limiting' | 'saturation';

/** Draws coils and records one charge of each. The voltage and the clamp's scale are known with a stated uncertainty of their own. */
function recover(kind: Kind, cases: number) {
  const tallies = { dwell: new Tally(), peak: new Tally(), inductance: new Tally(), resistance: new Tally(), kneeTime: new Tally(), kneeCurrent: new Tally() };
  let [refused, wrongKnee] = [0, 0];
  for (let seed = 1; seed <= cases; seed += 1) {
    const draw = drawFrom(seed);
    const base = anyCoil(draw);
    const top = currentOf(base, base.dwell);
    const level = draw.between(0.65, 0.9) * top;
    const coil = kind === 'limiting' ? { ...base, limit: level } : kind === 'saturation' ? { ...base, saturation: level } : base;
    const [deviation, scaleDeviation] = [0.1, 0.01];
    const scale = 1 + scaleDeviation * draw.normal();
    const charge = chargesOf([{ at: 3.3, coil }]);
    const read = readCoilCurrent(record((time) => scale * charge(time), 3.3 + coil.dwell + 10, anyScope(draw), draw));
    if (!read.ok) {
      refused += 1;
      continue;
    }
    const [found] = coilsOf(read.value, { voltage: { value: coil.voltage + deviation * draw.normal(), standardUncertainty: deviation }, clampScale: scaleDeviation });
    if (found === undefined || found.knee?.kind !== (kind === 'plain' ? undefined : kind)) {
      wrongKnee += 1;
      continue;
    }
    const end = currentOf(coil, coil.dwell);
    tallies.dwell.add(coil.dwell, found.dwell);
    tallies.peak.add(end, found.peak, end);
    if (found.inductance && found.resistance) {
      tallies.inductance.add(coil.inductance, found.inductance, coil.inductance);
      tallies.resistance.add(coil.resistance, found.resistance, coil.resistance);
    }
    if (found.knee) {
      tallies.kneeTime.add(kneeTimeOf(coil, level), found.knee.afterStart);
      tallies.kneeCurrent.add(level, found.knee.current, level);
    }
  }
  return { ...tallies, refused, wrongKnee };
}

describe('coil current: what was put in comes out', () => {
  it('plain charges: dwell, top, inductance, resistance', () => {
    const cases = 1000;
    const found = recover('plain', cases);
    expect(found.refused).toBe(0);
    expect(found.wrongKnee).toBeLessThanOrEqual(cases / 500);
    expectTruth(found.dwell, 'dwell, ms', { usual: 0.02, largest: 0.08, cases: 990 });
    expectTruth(found.peak, 'top, share', { usual: 0.025, largest: 0.05, cases: 990 });
    expectTruth(found.inductance, 'inductance, share', { usual: 0.04, largest: 0.12, cases: 990 });
    expectTruth(found.resistance, 'resistance, share', { usual: 0.08, largest: 0.5, cases: 990 });
  }, long);

  it('charges whose current the driver holds: the knee as well', () => {
    const cases = 1000;
    const found = recover('limiting', cases);
    expect(found.refused + found.wrongKnee).toBeLessThanOrEqual(cases / 100);
    expectTruth(found.dwell, 'dwell, ms', { usual: 0.03, largest: 0.25, cases: 990 });
    expectTruth(found.peak, 'top, share', { usual: 0.025, largest: 0.06, cases: 990 });
    expectTruth(found.inductance, 'inductance, share', { usual: 0.06, largest: 0.5, cases: 990 });
    expectTruth(found.kneeTime, 'knee, ms', { usual: 0.05, largest: 0.3, cases: 990 });
    expectTruth(found.kneeCurrent, 'current at the knee, share', { usual: 0.03, largest: 0.1, cases: 990 });
  }, long);

  it('charges whose core fills: the knee as well', () => {
    const cases = 1000;
    const found = recover('saturation', cases);
    expect(found.refused + found.wrongKnee).toBeLessThanOrEqual(cases / 50);
    expectTruth(found.dwell, 'dwell, ms', { usual: 0.03, largest: 0.25, cases: 980 });
    expectTruth(found.peak, 'top, share', { usual: 0.025, largest: 0.06, cases: 980 });
    expectTruth(found.inductance, 'inductance, share', { usual: 0.06, largest: 0.5, cases: 980 });
    expectTruth(found.kneeTime, 'knee, ms', { usual: 0.05, largest: 0.6, cases: 980 });
    expectTruth(found.kneeCurrent, 'current at the knee, share', { usual: 0.04, largest: 0.3, cases: 980 });
  }, long);
});

/** One coil of four has a fault, the others scatter by a few percent as windings do. */
const faults = [
  { label: 'sound', expected: 'alike', change: (coil: CoilTruth) => coil },
  { label: 'shorted turns: half the inductance', expected: 'shorted-turns', change: (coil: CoilTruth) => ({ ...coil, inductance: coil.inductance / 2, dwell: coil.dwell }) },
  { label: 'shorted turns: a quarter of the final current at once', expected: 'shorted-turns', change: (coil: CoilTruth) => ({ ...coil, jump: 0.25 }) },
  { label: 'half an ohm too much', expected: 'added-resistance', change: (coil: CoilTruth) => ({ ...coil, resistance: coil.resistance + 0.5 }) },
  { label: 'a third of the supply lost', expected: 'low-supply', change: (coil: CoilTruth) => ({ ...coil, voltage: coil.voltage * 0.67 }) },
  { label: 'switched off a third too soon', expected: 'cut-short', change: (coil: CoilTruth) => ({ ...coil, dwell: coil.dwell * 0.66 }) },
] as const;

const order = [1, 3, 4, 2];

function engineTrace(seed: number, change: (coil: CoilTruth) => CoilTruth, faulty: number, skip?: number) {
  const draw = drawFrom(seed);
  const own = order.map(() => ({ voltage: 13.8, resistance: 0.6 * draw.between(0.97, 1.03), inductance: 3 * draw.between(0.97, 1.03), dwell: 3.5 }));
  const charges = Array.from({ length: 40 }, (_, number) => {
    const cylinder = order[number % 4] ?? 0;
    const coil = { ...(own[number % 4] as CoilTruth), dwell: 3.5 + 0.02 * draw.normal() };
    return { at: 5 + number * 20 + 0.05 * draw.normal(), coil: cylinder === faulty ? change(coil) : coil };
  }).filter((_, number) => number !== skip);
  const scope: Scope = { interval: 0.02, noise: 0.06, step: 0.04, offset: 0.2 };
  return record(chargesOf(charges), 820, scope, draw);
}

describe('coil current: causes told apart', () => {
  for (const { label, expected, change } of faults) {
    it(label, () => {
      for (let seed = 1; seed <= 10; seed += 1) {
        const faulty = order[seed % 4] ?? 1;
        const read = readCoilCurrent(engineTrace(seed, change, faulty), { firingOrder: order });
        expect(read.ok).toBe(true);
        if (!read.ok) continue;
        const verdicts = compareCoils(coilsOf(read.value));
        for (const { cylinder, finding } of verdicts) {
          expect(finding, `seed ${seed}, cylinder ${cylinder}`).toBe(cylinder === faulty ? expected : 'alike');
        }
      }
    }, long);
  }

  it('a charge that does not come is counted at its cylinder', () => {
    const read = readCoilCurrent(engineTrace(7, (coil) => coil, 1, 14), { firingOrder: order });
    expect(read.ok && [...read.value.assignment.missing]).toEqual([[4, 1]]);
    expect(read.ok && coilsOf(read.value).map((coil) => coil.charges)).toEqual([10, 10, 10, 9]);
  });
});

describe('coil current: many charges together', () => {
  it('the mean over twelve charges is as sure as it says', () => {
    const [inductance, resistance, dwell] = [new Tally(), new Tally(), new Tally()];
    for (let seed = 1; seed <= 1500; seed += 1) {
      const draw = drawFrom(seed);
      const coil = anyCoil(draw);
      const dwells = Array.from({ length: 12 }, () => coil.dwell + 0.03 * draw.normal());
      const charges = dwells.map((own, number) => ({ at: 3 + 15 * number, coil: { ...coil, dwell: own } }));
      const scope = { ...anyScope(draw), interval: 0.02 };
      const read = readCoilCurrent(record(chargesOf(charges), 190, scope, draw));
      if (!read.ok) throw new Error(`seed ${seed}: ${read.error.message}`);
      const [found] = coilsOf(read.value, { voltage: { value: coil.voltage, standardUncertainty: 0 } });
      if (!found?.inductance || !found.resistance) throw new Error(`seed ${seed}: no coil`);
      expect(found.charges).toBe(12);
      inductance.add(coil.inductance, found.inductance, coil.inductance);
      resistance.add(coil.resistance, found.resistance, coil.resistance);
      // The dwell varies by order of the control unit; what is meant is the order's mean.
      dwell.add(coil.dwell, found.dwell);
    }
    expectTruth(inductance, 'inductance, share', { usual: 0.012, largest: 0.04, cases: 1500 });
    expectTruth(resistance, 'resistance, share', { usual: 0.05, largest: 0.2, cases: 1500 });
    expectTruth(dwell, 'dwell, ms', { usual: 0.025, largest: 0.05, cases: 1500 });
  }, long);
});

describe('coil current: a top beyond the range', () => {
  it('is called at least that, and not taken for a driver that limits', () => {
    const tally = new Tally();
    for (let seed = 1; seed <= 500; seed += 1) {
      const draw = drawFrom(seed);
      const coil = { ...anyCoil(draw), dwell: 4 };
      const ceiling = draw.between(0.6, 0.85) * currentOf(coil, coil.dwell);
      const scope: Scope = { interval: 0.01, noise: draw.between(0.02, 0.1), step: 0.02, offset: 0, ceiling };
      const read = readCoilCurrent(record(chargesOf([{ at: 3.3, coil }]), 20, scope, draw));
      if (!read.ok) throw new Error(`seed ${seed}: ${read.error.message}`);
      const [event] = read.value.events;
      expect([event?.peakAtLeast, event?.knee], `seed ${seed}`).toEqual([true, undefined]);
      // What lies below the ceiling still tells the winding.
      if (event) tally.add(coil.voltage / coil.inductance, event.slope, coil.voltage / coil.inductance);
    }
    expect(tally.usual).toBeLessThan(0.06);
    expect(tally.coverage).toBeGreaterThanOrEqual(0.92);
  }, long);
});

describe('coil current: what cannot be read is refused by name', () => {
  const quiet: Scope = { interval: 0.01, noise: 0.05, step: 0, offset: 0 };
  const one = chargesOf([{ at: 3, coil: { voltage: 13, resistance: 0.6, inductance: 3, dwell: 3 } }]);
  const cases = [
    { label: 'noise alone', trace: record(() => 0, 50, quiet, drawFrom(1)), code: 'no-event' },
    { label: 'nothing at all', trace: { times: Float64Array.from({ length: 100 }, (_, n) => n), values: new Float64Array(100) }, code: 'no-signal' },
    { label: 'too short', trace: record(one, 0.3, quiet, drawFrom(1)), code: 'too-few-samples' },
    { label: 'one reading every half millisecond', trace: record(one, 100, { ...quiet, interval: 0.5 }, drawFrom(1)), code: 'sampled-too-slowly' },
    { label: 'times that stand still', trace: { times: new Float64Array(100), values: Float64Array.from({ length: 100 }, (_, n) => n) }, code: 'times-do-not-rise' },
  ];
  it.each(cases)('$label', ({ trace, code }) => {
    const read = readCoilCurrent(trace);
    expect(read.ok ? 'read' : read.error.code).toBe(code);
    if (!read.ok) expect(read.error.message.length).toBeGreaterThan(40);
  });
});
