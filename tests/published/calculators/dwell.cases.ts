import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const arithmetic = 'computed by hand: 360 degrees of the crank take 60 000 ms at 1 rpm';

export const cases: readonly CalculatorCase[] = [
  { label: '1 ms at 3000', inputs: { cylinders: '4', speed: '3000', time: '1.0' }, expected: { angle: [18, 'deg', 1e-9], distributorAngle: [9, 'deg', 1e-9] }, source: arithmetic },
  { label: '3.5 ms at 6000', inputs: { cylinders: '4', speed: '6000', time: '3.5' }, expected: { angle: [126, 'deg', 1e-9], share: [17.5, '%', 1e-9] }, source: arithmetic },
  { label: '10 degrees at 800', inputs: { cylinders: '4', speed: '800', angle: '10' }, expected: { time: [2.083333, 'ms', 1e-6], angle: [10, 'deg', 0] }, source: arithmetic },
  { label: '1.5 ms of burning at 2000', inputs: { cylinders: '4', speed: '2000', time: '1.5' }, expected: { angle: [18, 'deg', 1e-9] }, source: arithmetic },
  { label: 'spacing of six at 6000', inputs: { cylinders: '6', speed: '6000', time: '1' }, expected: { eventSpacing: [3.333333, 'ms', 1e-6], eventRate: [300, 'Hz', 1e-9] }, source: arithmetic },
  { label: 'rate of eight at 4500', inputs: { cylinders: '8', speed: '4500', time: '1' }, expected: { eventRate: [300, 'Hz', 1e-9] }, source: arithmetic },
  { label: 'one distributor coil', inputs: { cylinders: '4', speed: '3000', time: '4.0', arrangement: 'distributor' }, expected: { distributorAngle: [36, 'deg', 1e-9], share: [40, '%', 1e-9] }, source: `${arithmetic}; 36 of a sector of 90` },
  { label: 'a plug coil', inputs: { cylinders: '4', speed: '6000', time: '3', arrangement: 'coil-per-plug' }, expected: { share: [15, '%', 1e-9] }, source: arithmetic },
  { label: 'a coil for two plugs', inputs: { cylinders: '4', speed: '6000', time: '3', arrangement: 'wasted-spark' }, expected: { share: [30, '%', 1e-9] }, source: arithmetic },
  { label: 'seconds', inputs: { cylinders: '4', speed: '3000', time: '0.001 s' }, expected: { angle: [18, 'deg', 1e-9] }, source: arithmetic },
  { label: 'firing frequency of four at idle', inputs: { cylinders: '4', speed: '750', time: '1' }, expected: { eventRate: [25, 'Hz', 1e-9], eventSpacing: [40, 'ms', 1e-9] }, source: 'computed: speed × cylinders / 120' },
  { label: 'just fits', inputs: { cylinders: '4', speed: '3000', time: '10', arrangement: 'distributor' }, expected: { share: [100, '%', 1e-9] }, source: arithmetic },
  { label: 'a whole cycle as an angle', inputs: { cylinders: '4', speed: '7777', angle: '720' }, expected: { share: [100, '%', 1e-9] }, source: arithmetic },
  { label: 'three cylinders', inputs: { cylinders: '3', speed: '2000', time: '2' }, expected: { eventSpacing: [20, 'ms', 1e-9] }, source: arithmetic },
  { label: 'neither time nor angle', inputs: { cylinders: '4', speed: '3000' }, refusal: { input: 'time', code: 'missing' }, source: contract },
  { label: 'both', inputs: { cylinders: '4', speed: '3000', time: '1', angle: '18' }, refusal: { input: 'angle', code: 'time-and-angle' }, source: contract },
  { label: 'does not fit', inputs: { cylinders: '4', speed: '3000', time: '10.1', arrangement: 'distributor' }, refusal: { input: 'time', code: 'longer-than-period' }, source: contract },
  { label: 'angle does not fit', inputs: { cylinders: '4', speed: '3000', angle: '400', arrangement: 'wasted-spark' }, refusal: { input: 'angle', code: 'longer-than-period' }, source: contract },
  { label: 'pairs of three', inputs: { cylinders: '3', speed: '3000', time: '1', arrangement: 'wasted-spark' }, refusal: { input: 'arrangement', code: 'wasted-spark-odd' }, source: contract },
  { label: 'standing still', inputs: { cylinders: '4', speed: '0', time: '1' }, refusal: { input: 'speed', code: 'too-low' }, source: contract },
  { label: 'no cylinders', inputs: { cylinders: '0', speed: '800', time: '1' }, refusal: { input: 'cylinders', code: 'too-low' }, source: contract },
  { label: 'half a cylinder', inputs: { cylinders: '4.5', speed: '800', time: '1' }, refusal: { input: 'cylinders', code: 'not-whole' }, source: contract },
  { label: 'more than two turns', inputs: { cylinders: '4', speed: '800', angle: '721' }, refusal: { input: 'angle', code: 'too-high' }, source: contract },
  { label: 'an ignition that is none', inputs: { cylinders: '4', speed: '800', time: '1', arrangement: 'magneto' }, refusal: { input: 'arrangement', code: 'not-a-choice' }, source: contract },
  { label: 'a length', inputs: { cylinders: '4', speed: '800', time: '1 mm' }, refusal: { input: 'time', code: 'wrong-dimension' }, source: contract },
];
