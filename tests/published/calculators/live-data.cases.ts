import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const scaling = 'SAE J1979 service $01: formula compared with public transcriptions, value computed from it';
const listed = 'SAE J1979 service $01: enumeration recalled';

/** Items, bytes and value pairs, unit. Values printed to six decimals where they do not end. */
type Row = readonly [pids: string, unit: string, ...answers: (readonly [bytes: string, value: number])[]];

const percent: readonly (readonly [string, number])[] = [['00', 0], ['7F', 49.803922], ['80', 50.196078], ['FF', 100]];
const celsius: readonly (readonly [string, number])[] = [['00', -40], ['7F', 87], ['80', 88], ['FF', 215]];

const rows: readonly Row[] = [
  ['04 11 45 47 48', '%', ...percent, ['0D', 5.098039], ['26', 14.901961]],
  ['49 4A 4B 4C', '%', ...percent, ['1A', 10.196078], ['33', 20]],
  ['2C 2E 2F 52', '%', ...percent, ['BF', 74.901961]],
  ['05', 'C', ...celsius, ['28', 0], ['7B', 83]],
  ['0F 46', 'C', ...celsius, ['3B', 19], ['3C', 20]],
  ['5C', 'C', ...celsius, ['82', 90]],
  ['06 07 08 09', '%', ['00', -100], ['70', -12.5], ['7F', -0.78125], ['80', 0], ['90', 12.5], ['A0', 25], ['FF', 99.21875]],
  ['2D', '%', ['00', -100], ['80', 0], ['FF', 99.21875]],
  ['0A', 'kPa', ['00', 0], ['64', 300], ['FF', 765]],
  ['0B 33', 'kPa', ['00', 0], ['1E', 30], ['4B', 75], ['65', 101], ['FF', 255]],
  ['0C', 'rpm', ['00 00', 0], ['0C 80', 800], ['1A F8', 1726], ['7F FF', 8191.75], ['FF FF', 16383.75]],
  ['0D', 'km/h', ['00', 0], ['7F', 127], ['80', 128], ['FF', 255]],
  ['0E', 'deg', ['00', -64], ['7F', -0.5], ['80', 0], ['94', 10], ['FF', 63.5]],
  ['10', 'g/s', ['00 00', 0], ['01 90', 4], ['7F FF', 327.67], ['FF FF', 655.35]],
  ['1F', 's', ['00 00', 0], ['02 58', 600], ['FF FF', 65535]],
  ['21 31', 'km', ['00 00', 0], ['00 64', 100], ['01 2C', 300], ['FF FF', 65535]],
  ['22', 'kPa', ['00 00', 0], ['10 00', 323.584], ['FF FF', 5177.265]],
  ['23 59', 'kPa', ['00 00', 0], ['05 DC', 15000], ['0A F0', 28000], ['FF FF', 655350]],
  ['30', 'count', ['00', 0], ['28', 40], ['FF', 255]],
  ['32', 'Pa', ['00 00', 0], ['7F FF', 8191.75], ['80 00', -8192], ['FF FF', -0.25]],
  ['3C 3D 3E 3F', 'C', ['00 00', -40], ['01 90', 0], ['1D 4C', 710], ['FF FF', 6513.5]],
  ['42', 'V', ['00 00', 0], ['2E E0', 12], ['37 DC', 14.3], ['FF FF', 65.535]],
  ['43', '%', ['00 00', 0], ['00 7F', 49.803922], ['00 FF', 100], ['01 32', 120], ['FF FF', 25700]],
  ['44', '1', ['00 00', 0], ['73 33', 0.899994], ['80 00', 1], ['FF FF', 1.999969]],
  ['4D 4E', 'min', ['00 00', 0], ['00 78', 120], ['05 A0', 1440], ['FF FF', 65535]],
  ['5E', 'l/h', ['00 00', 0], ['00 14', 1], ['FF FF', 3276.75]],
];

/** Narrow-band sensors, 14 to 1B: bytes, voltage, short trim or none. */
const narrow: readonly (readonly [bytes: string, volts: number, trim: number | undefined])[] = [
  ['00 80', 0, 0],
  ['5A 80', 0.45, 0],
  ['12 FF', 0.09, undefined],
  ['7F 7F', 0.635, -0.78125],
  ['B4 8C', 0.9, 9.375],
  ['FF 00', 1.275, -100],
];

/** Wide-band sensors by voltage, 24 to 2B: bytes, lambda, voltage. */
const wideVoltage = [
  ['00 00 00 00', 0, 0],
  ['80 00 66 66', 1, 3.199951],
  ['7F FF 80 00', 0.999969, 4],
  ['FF FF FF FF', 1.999969, 7.999878],
] as const;

/** Wide-band sensors by current, 34 to 3B: bytes, lambda, current. */
const wideCurrent = [
  ['00 00 00 00', 0, -128],
  ['80 00 80 00', 1, 0],
  ['73 33 7F 80', 0.899994, -0.5],
  ['8C CD 80 80', 1.100006, 0.5],
  ['FF FF FF FF', 1.999969, 127.996094],
] as const;

const eight = (first: number) => Array.from({ length: 8 }, (_, index) => (first + index).toString(16).toUpperCase());

/** Items whose answer is words: item, bytes, words. */
const words: readonly (readonly [pid: string, bytes: string, values: readonly string[]])[] = [
  ['00', 'BE 1F A8 13', ['01', '03', '04', '05', '06', '07', '0C', '0D', '0E', '0F', '10', '11', '13', '15', '1C', '1F', '20']],
  ['20', '80 00 00 01', ['21', '40']],
  ['40', '00 00 00 00', []],
  ['40', 'FF FF FF FF', Array.from({ length: 32 }, (_, index) => (0x41 + index).toString(16).toUpperCase())],
  ['E0', '00 00 00 03', ['FF']],
  ['13', '03', ['bank 1 sensor 1', 'bank 1 sensor 2']],
  ['13', '33', ['bank 1 sensor 1', 'bank 1 sensor 2', 'bank 2 sensor 1', 'bank 2 sensor 2']],
  ['1D', '0F', ['bank 1 sensor 1', 'bank 1 sensor 2', 'bank 2 sensor 1', 'bank 2 sensor 2']],
  ['1D', '80', ['bank 4 sensor 2']],
  ['1E', '01', ['active']],
  ['1E', '00', ['not active']],
  ['03', '02 00', ['System 1: closed loop on the oxygen sensor', 'System 2: no status: engine off or system not fitted']],
  ['03', '01 01', ['System 1: open loop, not yet warm', 'System 2: open loop, not yet warm']],
  ['03', '04 02', ['System 1: open loop by driving condition, such as power or overrun', 'System 2: closed loop on the oxygen sensor']],
  ['03', '08 10', ['System 1: open loop because of a fault', 'System 2: closed loop with an oxygen sensor fault']],
  ['03', '03 06', ['System 1: invalid: 03 sets more than one bit', 'System 2: invalid: 06 sets more than one bit']],
  ['03', 'FF 20', ['System 1: invalid: FF sets more than one bit', 'System 2: 20 has no meaning in the table']],
  ['12', '01', ['upstream of the catalyst']],
  ['12', '02', ['downstream of the catalyst inlet']],
  ['12', '04', ['to the outside, or off']],
  ['12', '08', ['pump commanded on for a test']],
  ['12', '0C', ['invalid: 0C sets more than one bit']],
  ['1C', '01', ['OBD II (California)']],
  ['1C', '02', ['OBD (US federal)']],
  ['1C', '03', ['OBD and OBD II']],
  ['1C', '04', ['OBD I']],
  ['1C', '05', ['none']],
  ['1C', '06', ['EOBD']],
  ['1C', '07', ['EOBD and OBD II']],
  ['1C', '08', ['EOBD and OBD']],
  ['1C', '09', ['EOBD, OBD and OBD II']],
  ['1C', '0A', ['JOBD']],
  ['1C', '0B', ['JOBD and OBD II']],
  ['1C', '0C', ['JOBD and EOBD']],
  ['1C', '0D', ['JOBD, EOBD and OBD II']],
  ['1C', 'C0', ['C0 has no meaning in the table']],
  ['51', '01', ['petrol']],
  ['51', '02', ['methanol']],
  ['51', '03', ['ethanol']],
  ['51', '04', ['diesel']],
  ['51', '05', ['liquefied petroleum gas']],
  ['51', '06', ['compressed natural gas']],
  ['51', '07', ['propane']],
  ['51', '08', ['electric']],
];

const narrowCases = eight(0x14).flatMap((pid) =>
  narrow.map(([bytes, volts, trim]): CalculatorCase => ({
    label: `${pid}: ${bytes}`,
    inputs: { pid, bytes },
    expected: { voltage: [volts, 'V', 5e-7], ...(trim === undefined ? {} : { trim: [trim, '%', 5e-7] as const }) },
    absent: trim === undefined ? ['trim', 'value'] : ['value'],
    ...(trim === undefined ? { says: /not used for trim/ } : {}),
    source: scaling,
  })),
);

function wideCases(first: number, name: 'voltage' | 'current', unit: string, answers: readonly (readonly [string, number, number])[]) {
  return eight(first).flatMap((pid) =>
    answers.map(([bytes, lambda, second]): CalculatorCase => ({
      label: `${pid}: ${bytes}`,
      inputs: { pid, bytes },
      expected: { lambda: [lambda, '1', 5e-7], [name]: [second, unit, 5e-7] },
      absent: ['value', 'trim'],
      source: scaling,
    })),
  );
}

export const cases: readonly CalculatorCase[] = [
  ...rows.flatMap(([pids, unit, ...answers]) =>
    pids.split(' ').flatMap((pid) =>
      answers.map(([bytes, value]): CalculatorCase => ({
        label: `${pid}: ${bytes}`,
        inputs: { pid, bytes },
        expected: { value: [value, unit, 5e-7] },
        absent: ['values'],
        source: scaling,
      })),
    ),
  ),
  ...narrowCases,
  ...wideCases(0x24, 'voltage', 'V', wideVoltage),
  ...wideCases(0x34, 'current', 'mA', wideCurrent),
  ...words.map(([pid, bytes, values]): CalculatorCase => ({ label: `${pid}: ${bytes}`, inputs: { pid, bytes }, expected: { values }, absent: ['value'], source: listed })),
  { label: 'two fuels are said to be uncertain', inputs: { pid: '51', bytes: '09' }, expected: { values: ['two fuels, now petrol (order of these recalled, not certain)'] }, source: listed },
  { label: 'names', inputs: { pid: '0C', bytes: '1A F8' }, expected: { name: 'Engine speed' }, source: scaling },
  { label: 'place of a sensor', inputs: { pid: '19', bytes: '5A 80' }, expected: { name: 'Oxygen sensor, bank 2 sensor 2, narrow-band', values: ['Voltage 0.45\u00a0V', 'Short trim 0\u00a0%'] }, says: /1D/, source: 'SAE J1979 PID 13: 18 to 1B are bank 2, sensors 1 to 4' },
  { label: 'not used, in words', inputs: { pid: '14', bytes: '12 FF' }, expected: { values: ['Voltage 0.09\u00a0V', 'Short trim not used'] }, source: 'SAE J1979: FF in the second byte of 14 to 1B' },
  { label: 'FF is a trim elsewhere', inputs: { pid: '07', bytes: 'FF' }, expected: { value: [99.21875, '%', 0] }, source: scaling },
  { label: 'with the head of the answer', inputs: { pid: '0C', bytes: '41 0C 1A F8' }, expected: { value: [1726, 'rpm', 0] }, source: 'SAE J1979: an answer starts with 40 hexadecimal plus the service, and the item' },
  { label: 'item typed with a mark', inputs: { pid: '$0c', bytes: '0x1A 0xF8' }, expected: { value: [1726, 'rpm', 0] }, source: contract },
  { label: 'item typed short', inputs: { pid: 'PID 5', bytes: '7b' }, expected: { value: [83, 'C', 0] }, source: contract },
  { label: 'another block follows', inputs: { pid: '00', bytes: 'BE 1F A8 13' }, says: /20 is offered/, source: scaling },
  { label: 'no other block', inputs: { pid: '00', bytes: 'BE 1F A8 12' }, says: /no further block/, source: scaling },
  { label: 'an invalid state is said', inputs: { pid: '03', bytes: '03 00' }, says: /misread/, source: listed },
  { label: 'monitor status', inputs: { pid: '01', bytes: '81 07 65 04' }, refusal: { input: 'pid', code: 'monitor-status' }, source: contract },
  { label: 'monitor status of this cycle', inputs: { pid: '41', bytes: '00 07 65 04' }, refusal: { input: 'pid', code: 'monitor-status' }, source: contract },
  { label: 'an item the book does not know', inputs: { pid: '7F', bytes: '00' }, refusal: { input: 'pid', code: 'unknown-pid' }, source: contract },
  { label: 'no item number', inputs: { pid: 'rpm', bytes: '1A F8' }, refusal: { input: 'pid', code: 'not-a-pid' }, source: contract },
  { label: 'three digits', inputs: { pid: '10C', bytes: '1A F8' }, refusal: { input: 'pid', code: 'not-a-pid' }, source: contract },
  { label: 'too few bytes', inputs: { pid: '0C', bytes: '1A' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'too many bytes', inputs: { pid: '05', bytes: '7B 00' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'head of another item', inputs: { pid: '0C', bytes: '41 0D 1A F8' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'half a byte', inputs: { pid: '0C', bytes: '1A F' }, refusal: { input: 'bytes', code: 'half-byte' }, source: contract },
  { label: 'no hexadecimal', inputs: { pid: '0C', bytes: '1A GG' }, refusal: { input: 'bytes', code: 'not-hexadecimal' }, source: contract },
  { label: 'bytes forgotten', inputs: { pid: '0C' }, refusal: { input: 'bytes', code: 'missing' }, source: contract },
  { label: 'only marks', inputs: { pid: '0C', bytes: '$' }, refusal: { input: 'bytes', code: 'missing' }, source: contract },
];
