import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const byHand = 'computed by hand: gap + rate × distance / 1000; the straight line is common practice';
const plug = { gap: '0.8', distance: '20000', wearRate: '0.01' };

export const cases: readonly CalculatorCase[] = [
  { label: '20 000 km at 0.01', inputs: plug, expected: { gapThen: [1, 'mm', 1e-12] }, absent: ['distanceToLimit'], source: byHand },
  { label: 'to a limit of 1.1 mm', inputs: { ...plug, limit: '1.1' }, expected: { gapThen: [1, 'mm', 1e-12], distanceToLimit: [30000, 'km', 1e-6] }, says: /stays within/, source: byHand },
  { label: 'past the limit before the end', inputs: { ...plug, limit: '0.9' }, expected: { distanceToLimit: [10000, 'km', 1e-6] }, says: /before the distance is run/, source: byHand },
  {
    label: 'inches and miles',
    inputs: { gap: '0.035 in', distance: '10000 mi', wearRate: '0.02', limit: '0.043 in' },
    expected: { gapThen: [1.2108688, 'mm', 1e-7], distanceToLimit: [10160, 'km', 1e-6] },
    source: `${byHand}; 25.4 mm and 1.609344 km (NIST SP 811)`,
  },
  {
    label: 'wear typed in thousandths of an inch for 1000 miles',
    inputs: { gap: '0.8 mm', distance: '1609.344 km', wearRate: '1 thou/1000 mi' },
    expected: { gapThen: [0.8254, 'mm', 1e-9] },
    source: `${byHand}; 0.0254 mm in 1609.344 km (NIST SP 811)`,
  },
  { label: 'no distance', inputs: { ...plug, distance: '0' }, expected: { gapThen: [0.8, 'mm', 1e-12] }, source: byHand },
  { label: 'worn out already', inputs: { ...plug, gap: '1.2', limit: '1.1' }, expected: { distanceToLimit: [0, 'km', 0] }, says: /reached the limit/, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'gap', code: 'missing' }, source: contract },
  { label: 'no wear: the limit would never come', inputs: { ...plug, wearRate: '0' }, refusal: { input: 'wearRate', code: 'too-low' }, source: contract },
  { label: 'closed gap', inputs: { ...plug, gap: '0' }, refusal: { input: 'gap', code: 'too-low' }, source: contract },
  { label: 'backwards', inputs: { ...plug, distance: '-5' }, refusal: { input: 'distance', code: 'too-low' }, source: contract },
  { label: 'a gap of metres', inputs: { ...plug, gap: '0.8 m' }, refusal: { input: 'gap', code: 'too-high' }, source: contract },
  { label: 'a gap in volts', inputs: { ...plug, gap: '0.8 V' }, refusal: { input: 'gap', code: 'wrong-dimension' }, source: contract },
  { label: 'two readings of a comma', inputs: { ...plug, distance: '20,000' }, refusal: { input: 'distance', code: 'ambiguous' }, source: contract },
];
