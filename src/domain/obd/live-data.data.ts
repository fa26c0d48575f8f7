import type { UnitId } from '../units/types.ts';

/*
 * Scaling of live data, service $01: SAE J1979 / ISO 15031-5. The paid text was not seen; formulas were compared with public
 * transcriptions, enumerations are recalled. A value is raw × numerator / denominator + offset, raw being the bytes as one
 * number, highest byte first.
 */

export interface Scaling {
  readonly label: string;
  /** How many bytes it takes, after those of the parts before it. */
  readonly bytes: number;
  readonly numerator: number;
  readonly denominator: number;
  readonly offset: number;
  readonly unit: UnitId;
  readonly signed?: true;
  /** The one raw number that stands for "not used" instead of a value. */
  readonly notUsed?: number;
}

export interface ScaledItem {
  readonly pid: number;
  readonly name: string;
  readonly parts: readonly Scaling[];
}

type Row = readonly [pids: readonly (readonly [pid: number, name: string])[], part: Omit<Scaling, 'label'>];

const part = (bytes: number, numerator: number, denominator: number, offset: number, unit: UnitId): Omit<Scaling, 'label'> => ({
  bytes,
  numerator,
  denominator,
  offset,
  unit,
});

const share = part(1, 100, 255, 0, '%');
const trim = part(1, 100, 128, -100, '%');
const celsius = part(1, 1, 1, -40, 'C');
const kilopascal = part(1, 1, 1, 0, 'kPa');
const count2 = (unit: UnitId) => part(2, 1, 1, 0, unit);

const rows: readonly Row[] = [
  [[[0x04, 'Calculated load'], [0x11, 'Throttle position, absolute'], [0x45, 'Throttle position, relative'], [0x47, 'Throttle position B, absolute'], [0x48, 'Throttle position C, absolute']], share],
  [[[0x49, 'Accelerator pedal position D'], [0x4a, 'Accelerator pedal position E'], [0x4b, 'Accelerator pedal position F'], [0x4c, 'Throttle position commanded']], share],
  [[[0x2c, 'Exhaust gas recirculation commanded'], [0x2e, 'Evaporative purge commanded'], [0x2f, 'Fuel level'], [0x52, 'Ethanol in the fuel']], share],
  [[[0x05, 'Coolant temperature'], [0x0f, 'Intake air temperature'], [0x46, 'Outside air temperature'], [0x5c, 'Engine oil temperature']], celsius],
  [[[0x06, 'Short fuel trim, bank 1'], [0x07, 'Long fuel trim, bank 1'], [0x08, 'Short fuel trim, bank 2'], [0x09, 'Long fuel trim, bank 2'], [0x2d, 'Exhaust gas recirculation error']], trim],
  [[[0x0a, 'Fuel pressure, gauge']], part(1, 3, 1, 0, 'kPa')],
  [[[0x0b, 'Intake manifold pressure, absolute'], [0x33, 'Barometric pressure']], kilopascal],
  [[[0x0c, 'Engine speed']], part(2, 1, 4, 0, 'rpm')],
  [[[0x0d, 'Road speed']], part(1, 1, 1, 0, 'km/h')],
  [[[0x0e, 'Ignition advance before top dead centre, cylinder 1']], part(1, 1, 2, -64, 'deg')],
  [[[0x10, 'Mass air flow']], part(2, 1, 100, 0, 'g/s')],
  [[[0x1f, 'Run time since start']], count2('s')],
  [[[0x21, 'Distance with the engine lamp on'], [0x31, 'Distance since codes were cleared']], count2('km')],
  [[[0x22, 'Fuel rail pressure, relative to the manifold']], part(2, 79, 1000, 0, 'kPa')],
  [[[0x23, 'Fuel rail pressure, gauge'], [0x59, 'Fuel rail pressure, absolute']], part(2, 10, 1, 0, 'kPa')],
  [[[0x30, 'Warm-ups since codes were cleared']], part(1, 1, 1, 0, 'count')],
  [[[0x32, 'Evaporative system vapour pressure']], { ...part(2, 1, 4, 0, 'Pa'), signed: true }],
  [[[0x3c, 'Catalyst temperature, bank 1 sensor 1'], [0x3d, 'Catalyst temperature, bank 2 sensor 1'], [0x3e, 'Catalyst temperature, bank 1 sensor 2'], [0x3f, 'Catalyst temperature, bank 2 sensor 2']], part(2, 1, 10, -40, 'C')],
  [[[0x42, 'Control unit supply voltage']], part(2, 1, 1000, 0, 'V')],
  [[[0x43, 'Absolute load']], part(2, 100, 255, 0, '%')],
  [[[0x44, 'Lambda commanded']], part(2, 2, 65536, 0, '1')],
  [[[0x4d, 'Run time with the engine lamp on'], [0x4e, 'Time since codes were cleared']], count2('min')],
  [[[0x5e, 'Engine fuel rate']], part(2, 1, 20, 0, 'l/h')],
];

/** Places of the sensors where PID 13 lists them, in the order of 14 to 1B, 24 to 2B and 34 to 3B. */
export const sensorPlaces = [
  'bank 1 sensor 1',
  'bank 1 sensor 2',
  'bank 1 sensor 3',
  'bank 1 sensor 4',
  'bank 2 sensor 1',
  'bank 2 sensor 2',
  'bank 2 sensor 3',
  'bank 2 sensor 4',
] as const;

/** The same where PID 1D lists them instead. */
export const sensorPlacesOfFourBanks = [
  'bank 1 sensor 1',
  'bank 1 sensor 2',
  'bank 2 sensor 1',
  'bank 2 sensor 2',
  'bank 3 sensor 1',
  'bank 3 sensor 2',
  'bank 4 sensor 1',
  'bank 4 sensor 2',
] as const;

const lambda: Scaling = { label: 'Lambda', ...part(2, 2, 65536, 0, '1') };

const sensorGroups: readonly { readonly first: number; readonly kind: string; readonly parts: readonly Scaling[] }[] = [
  {
    first: 0x14,
    kind: 'narrow-band',
    parts: [
      { label: 'Voltage', ...part(1, 1, 200, 0, 'V') },
      { label: 'Short trim', ...trim, notUsed: 0xff },
    ],
  },
  { first: 0x24, kind: 'wide-band, voltage', parts: [lambda, { label: 'Voltage', ...part(2, 8, 65536, 0, 'V') }] },
  { first: 0x34, kind: 'wide-band, current', parts: [lambda, { label: 'Current', ...part(2, 1, 256, -128, 'mA') }] },
];

const sensors: readonly ScaledItem[] = sensorGroups.flatMap(({ first, kind, parts }) =>
  sensorPlaces.map((place, index) => ({ pid: first + index, name: `Oxygen sensor, ${place}, ${kind}`, parts })),
);

/** Every item that is one scaled value or two. */
export const scaledItems: readonly ScaledItem[] = [
  ...rows.flatMap(([pids, scaling]) => pids.map(([pid, name]) => ({ pid, name, parts: [{ label: name, ...scaling }] }))),
  ...sensors,
];

/** What a byte that names one of several states stands for. */
export interface ListedItem {
  readonly pid: number;
  readonly name: string;
  /** What the bytes name one by one: systems of the engine, or nothing where there is one byte. */
  readonly of: readonly string[];
  readonly meanings: ReadonlyMap<number, string>;
  /** Only one bit of the byte may be set. */
  readonly oneBit: boolean;
}

const petrolFuels = ['petrol', 'methanol', 'ethanol', 'diesel', 'liquefied petroleum gas', 'compressed natural gas', 'propane', 'electric'];
const bifuels = ['petrol', 'methanol', 'ethanol', 'liquefied petroleum gas', 'compressed natural gas', 'propane', 'electric'];

export const listedItems: readonly ListedItem[] = [
  {
    pid: 0x03,
    name: 'Fuel system status',
    of: ['System 1', 'System 2'],
    oneBit: true,
    meanings: new Map([
      [0x00, 'no status: engine off or system not fitted'],
      [0x01, 'open loop, not yet warm'],
      [0x02, 'closed loop on the oxygen sensor'],
      [0x04, 'open loop by driving condition, such as power or overrun'],
      [0x08, 'open loop because of a fault'],
      [0x10, 'closed loop with an oxygen sensor fault'],
    ]),
  },
  {
    pid: 0x12,
    name: 'Secondary air, where it goes',
    of: [],
    oneBit: true,
    meanings: new Map([
      [0x01, 'upstream of the catalyst'],
      [0x02, 'downstream of the catalyst inlet'],
      [0x04, 'to the outside, or off'],
      [0x08, 'pump commanded on for a test'],
    ]),
  },
  {
    pid: 0x1c,
    name: 'Rules the car was built to',
    of: [],
    oneBit: false,
    meanings: new Map(
      ['OBD II (California)', 'OBD (US federal)', 'OBD and OBD II', 'OBD I', 'none', 'EOBD', 'EOBD and OBD II', 'EOBD and OBD', 'EOBD, OBD and OBD II', 'JOBD', 'JOBD and OBD II', 'JOBD and EOBD', 'JOBD, EOBD and OBD II'].map((name, index) => [index + 1, name]),
    ),
  },
  {
    pid: 0x51,
    name: 'Fuel',
    of: [],
    oneBit: false,
    meanings: new Map([
      ...petrolFuels.map((name, index) => [index + 1, name] as const),
      // Recalled, and the order of these is not certain.
      ...bifuels.map((name, index) => [index + 9, `two fuels, now ${name} (order of these recalled, not certain)`] as const),
    ]),
  },
];
