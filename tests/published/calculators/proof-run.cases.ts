import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const poisson = 'computed by hand: −ln(1 − c)/rate, Poisson chance of no event e^(−M); ln 20 = 2.995732274';

export const cases: readonly CalculatorCase[] = [
  { label: 'rule of three: one in 1000, 95 % sure', inputs: { rateBefore: '1' }, expected: { revolutions: [2995.732274, 'count', 1e-6], minutes: [1.497866137, 'min', 1e-9] }, source: poisson },
  { label: 'five in 1000', inputs: { rateBefore: '5', confidence: '95 %', speed: '2000 rpm' }, expected: { revolutions: [599.1464547, 'count', 1e-6], minutes: [0.299573227, 'min', 1e-9] }, source: poisson },
  { label: 'rare, 99 % sure', inputs: { rateBefore: '0.05', confidence: '0.99', speed: '2500' }, expected: { revolutions: [92103.40372, 'count', 1e-4], minutes: [36.84136149, 'min', 1e-7] }, source: poisson },
  { label: '90 % sure at 1500', inputs: { rateBefore: '20', confidence: '0.9', speed: '1500' }, expected: { revolutions: [115.1292546, 'count', 1e-6], minutes: [0.076752836, 'min', 1e-9] }, source: poisson },
  { label: 'every firing of a four, even chance', inputs: { rateBefore: '2000', confidence: '0.5' }, expected: { revolutions: [0.34657359, 'count', 1e-8] }, source: poisson },
  { label: 'rate per revolution', inputs: { rateBefore: '0.005 per rev' }, expected: { revolutions: [599.1464547, 'count', 1e-6] }, source: poisson },
  { label: 'rounded up for people', inputs: { rateBefore: '5' }, says: /at least 600 revolutions/, source: contract },
  { label: 'certainty', inputs: { rateBefore: '5', confidence: '1' }, refusal: { input: 'confidence', code: 'too-high' }, source: contract },
  { label: 'percent without its sign', inputs: { rateBefore: '5', confidence: '95' }, refusal: { input: 'confidence', code: 'too-high' }, source: contract },
  { label: 'no certainty', inputs: { rateBefore: '5', confidence: '0' }, refusal: { input: 'confidence', code: 'too-low' }, source: contract },
  { label: 'no misfires before', inputs: { rateBefore: '0' }, refusal: { input: 'rateBefore', code: 'too-low' }, source: contract },
  { label: 'more than any engine fires', inputs: { rateBefore: '9000' }, refusal: { input: 'rateBefore', code: 'too-high' }, source: contract },
  { label: 'engine standing', inputs: { rateBefore: '5', speed: '0' }, refusal: { input: 'speed', code: 'too-low' }, source: contract },
  { label: 'road speed', inputs: { rateBefore: '5', speed: '50 km/h' }, refusal: { input: 'speed', code: 'wrong-dimension' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'rateBefore', code: 'missing' }, source: contract },
];
