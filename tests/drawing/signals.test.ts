import { describe, expect, it } from 'vitest';
import { illustrations, type IllustrationId } from '../../src/domain/drawing/registry.ts';
import type { Shape } from '../../src/domain/drawing/shape.ts';
import { primaryTrace, resistanceRamp, secondaryTrace, shortedRamp, soundRamp } from '../../src/domain/drawing/traces.data.ts';
import { allShapes, cornersOf, wordsIn } from './shapes.ts';

/** The curves of a picture; `y` grows downwards. */
function curves(id: IllustrationId): readonly (readonly { readonly x: number; readonly y: number }[])[] {
  return illustrations[id]().panels.flatMap(allShapes).filter(({ tag }) => tag === 'polyline').map(cornersOf);
}

function labels(id: IllustrationId): readonly Shape[] {
  return illustrations[id]().panels.flatMap(wordsIn);
}

/** Points that stand higher than both their neighbours. */
function crests(points: readonly { readonly x: number; readonly y: number }[]): readonly { readonly x: number; readonly y: number }[] {
  return points.filter(({ y }, index) => y < (points[index - 1]?.y ?? -Infinity) && y < (points[index + 1]?.y ?? -Infinity));
}

// What each shape must show is common practice, as the procedures of the book tell it; no source.
describe('the shapes of the traces', () => {
  it.each([
    { name: 'secondary', trace: secondaryTrace },
    { name: 'primary', trace: primaryTrace },
  ])('$name: the highest point is the line that starts the spark, and the burn lies between it and rest', ({ trace }) => {
    const top = Math.min(...trace.map(({ y }) => y));
    const peak = trace.findIndex(({ y }) => y === top);
    const burn = trace.slice(peak + 4);
    const rest = trace[0]?.y ?? Number.NaN;
    expect(burn.length).toBeGreaterThan(3);
    expect(burn.every(({ y }) => y > top + 30 && y < rest - 20)).toBe(true);
  });

  it.each(['secondary-voltage', 'primary-voltage'] as const)('%s: time runs forward, and at least four swings die away', (id) => {
    const [trace = [], ringing = []] = curves(id);
    const xs = [...trace, ...ringing].map(({ x }) => x);
    expect(xs).toEqual(xs.toSorted((one, other) => one - other));
    const swings = crests(ringing).map(({ y }) => y);
    expect(swings.length).toBeGreaterThanOrEqual(4);
    expect(swings).toEqual(swings.toSorted((one, other) => one - other));
  });

  it('a coil with shorted turns jumps at the start where a sound one leaves zero in a slope', () => {
    const rise = (ramp: typeof soundRamp): number => ((ramp[1]?.y ?? 0) - (ramp[2]?.y ?? 0)) / ((ramp[2]?.x ?? 0) - (ramp[1]?.x ?? 0));
    expect(rise(shortedRamp)).toBeGreaterThan(10 * rise(soundRamp));
  });

  it('resistance in the circuit flattens the ramp to a lower top than that of a sound coil', () => {
    const top = (ramp: typeof soundRamp): number => Math.min(...ramp.map(({ y }) => y));
    expect(top(resistanceRamp)).toBeGreaterThan(top(soundRamp) + 20);
  });

  it('the crank signal makes one wave for each tooth and none where the tooth is missing', () => {
    const [waves = []] = curves('crank-signal');
    const middles = crests(waves).map(({ x }) => x);
    const steps = middles.slice(1).map((x, index) => Math.round((x - (middles[index] ?? 0)) / 18));
    expect(steps.filter((step) => step === 2)).toHaveLength(1);
    expect(steps.filter((step) => step !== 1)).toHaveLength(1);
  });

  it('the weak cylinder is low in every round, stands at its number, and the others are alike', () => {
    const [trace = []] = curves('relative-compression');
    const humps = crests(trace.filter(({ x }) => x > 60));
    expect(humps).toHaveLength(12);
    const highest = Math.min(...humps.map(({ y }) => y));
    const low = humps.filter(({ y }) => y > highest + 20);
    const fours = labels('relative-compression').filter(({ text }) => text === '4').map(({ attributes }) => Number(attributes['x']));
    expect(low.map(({ x }) => Math.round(x))).toEqual(fours.map(Math.round));
    expect(humps.filter(({ y }) => Math.abs(y - highest) < 0.2)).toHaveLength(9);
  });
});

describe('swaps', () => {
  it.each([
    { id: 'swap-coils', part: 'coil' },
    { id: 'swap-injectors', part: 'injector' },
  ] as const)('$id: after the swap each part is over the other cylinder', ({ id, part }) => {
    const parts = labels(id).filter(({ text }) => text?.startsWith(`${part} `)).map(({ text }) => text);
    expect(parts).toEqual([`${part} A`, `${part} B`, `${part} B`, `${part} A`, `${part} B`, `${part} A`]);
  });
});
