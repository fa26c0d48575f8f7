import type { Dimension, Unit, UnitId } from './types.ts';

/** Id, symbol, name said in full, factor to the base unit, other ways people type it, and an offset for temperature scales. */
type Row = readonly [
  id: UnitId,
  symbol: string,
  name: string,
  factor: number,
  aliases: readonly string[],
  offset?: number,
];

/** The base unit is the row with factor 1; it is chosen so that the metric factors are whole numbers and convert without loss. */
function group(dimension: Dimension, source: string, rows: readonly Row[]): readonly Unit[] {
  return rows.map(([id, symbol, name, factor, aliases, offset = 0]) => ({
    id,
    symbol,
    name,
    dimension,
    factor,
    offset,
    aliases,
    source,
  }));
}

/** NIST Special Publication 811 (2008), appendix B.8 for the conversion factors and section 4 for the SI prefixes. */
const NIST = 'nist-sp-811';
/** Plain arithmetic on a definition: no factor has to be looked up. */
const COMPUTED = 'computed';

const METRES_PER_FOOT = 0.3048;
const KILOGRAMS_PER_POUND = 0.45359237;
/** Standard acceleration of free fall, m/s², exact by definition: a kilogram-force is this many newtons. */
const STANDARD_GRAVITY = 9.80665;
const NEWTONS_PER_POUND_FORCE = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;
const NEWTON_METRES_PER_POUND_FOOT = NEWTONS_PER_POUND_FORCE * METRES_PER_FOOT;
/** A square inch is 0.0254² m². */
const PASCALS_PER_PSI = NEWTONS_PER_POUND_FORCE / (0.0254 * 0.0254);

export const units: readonly Unit[] = [
  ...group('resistance', NIST, [
    ['mohm', 'mΩ', 'milliohm', 1, ['milliohm', 'milliohms', 'mohms']],
    ['ohm', 'Ω', 'ohm', 1e3, ['ohms', 'R']],
    ['kohm', 'kΩ', 'kilohm', 1e6, ['k', 'kilohm', 'kilohms', 'kiloohm', 'kiloohms', 'kohms', 'kR']],
    ['Mohm', 'MΩ', 'megohm', 1e9, ['M', 'meg', 'megohm', 'megohms', 'megaohm', 'megaohms', 'Mohms', 'MR']],
  ]),
  ...group('resistance-per-length', NIST, [
    ['ohm/km', 'Ω/km', 'ohm per kilometre', 1, ['ohms/km', 'ohm per km', 'ohms per km']],
    ['mohm/m', 'mΩ/m', 'milliohm per metre', 1, ['milliohm/m', 'milliohms per metre', 'mohm per m']],
    ['ohm/m', 'Ω/m', 'ohm per metre', 1e3, ['ohms/m', 'ohm per m', 'ohms per metre', 'ohm per metre']],
    ['kohm/m', 'kΩ/m', 'kilohm per metre', 1e6, ['k/m', 'kilohm/m', 'kilohms per metre', 'kohm per m', 'kohm per metre']],
  ]),
  ...group('voltage', NIST, [
    ['mV', 'mV', 'millivolt', 1, ['millivolt', 'millivolts']],
    ['V', 'V', 'volt', 1e3, ['volt', 'volts', 'Vdc', 'Vac']],
    ['kV', 'kV', 'kilovolt', 1e6, ['kilovolt', 'kilovolts']],
  ]),
  ...group('current', NIST, [
    ['uA', 'µA', 'microampere', 1, ['microamp', 'microamps', 'microampere', 'microamperes']],
    ['mA', 'mA', 'milliampere', 1e3, ['milliamp', 'milliamps', 'milliampere', 'milliamperes']],
    ['A', 'A', 'ampere', 1e6, ['amp', 'amps', 'ampere', 'amperes']],
  ]),
  ...group('inductance', NIST, [
    ['uH', 'µH', 'microhenry', 1, ['microhenry', 'microhenries', 'microhenrys']],
    ['mH', 'mH', 'millihenry', 1e3, ['millihenry', 'millihenries', 'millihenrys']],
    ['H', 'H', 'henry', 1e6, ['henry', 'henries', 'henrys']],
  ]),
  ...group('capacitance', NIST, [
    ['pF', 'pF', 'picofarad', 1, ['picofarad', 'picofarads']],
    ['nF', 'nF', 'nanofarad', 1e3, ['nanofarad', 'nanofarads']],
    ['uF', 'µF', 'microfarad', 1e6, ['microfarad', 'microfarads', 'mfd']],
    ['farad', 'F', 'farad', 1e12, ['farads']],
  ]),
  ...group('time', NIST, [
    ['us', 'µs', 'microsecond', 1, ['usec', 'microsecond', 'microseconds']],
    ['ms', 'ms', 'millisecond', 1e3, ['msec', 'millisecond', 'milliseconds']],
    ['s', 's', 'second', 1e6, ['sec', 'secs', 'second', 'seconds']],
    ['min', 'min', 'minute', 60e6, ['mins', 'minute', 'minutes']],
    ['h', 'h', 'hour', 3600e6, ['hr', 'hrs', 'hour', 'hours']],
  ]),
  ...group('angle', NIST, [
    ['deg', '°', 'degree', 1, ['degree', 'degrees', 'degs', 'crank deg', 'deg crank', '° crank']],
    ['rad', 'rad', 'radian', 180 / Math.PI, ['radian', 'radians']],
  ]),
  ...group('road-speed', NIST, [
    ['km/h', 'km/h', 'kilometre per hour', 1, ['kmh', 'kph', 'kmph', 'km per hour', 'kilometres per hour']],
    ['mph', 'mph', 'mile per hour', 1.609344, ['mi/h', 'miles per hour', 'mile/h', 'miles/h']],
  ]),
  ...group('rotation', NIST, [
    ['rpm', 'rpm', 'revolution per minute', 1, ['rev/min', 'r/min', '1/min', 'revs', 'revs/min', 'rev per min', 'revs per minute']],
  ]),
  ...group('frequency', NIST, [
    ['Hz', 'Hz', 'hertz', 1, ['hertz', '1/s', 'cps']],
    ['kHz', 'kHz', 'kilohertz', 1e3, ['kilohertz']],
  ]),
  ...group('pressure', NIST, [
    ['Pa', 'Pa', 'pascal', 1, ['pascal', 'pascals']],
    ['hPa', 'hPa', 'hectopascal', 1e2, ['hectopascal', 'hectopascals']],
    ['kPa', 'kPa', 'kilopascal', 1e3, ['kilopascal', 'kilopascals']],
    ['mbar', 'mbar', 'millibar', 1e2, ['millibar', 'millibars', 'mb']],
    ['bar', 'bar', 'bar', 1e5, ['bars']],
    ['MPa', 'MPa', 'megapascal', 1e6, ['megapascal', 'megapascals']],
    ['psi', 'psi', 'pound per square inch', PASCALS_PER_PSI, ['lb/in2', 'lbf/in2', 'lb/sq in', 'psig', 'pounds', 'lbs/in2']],
    // The conventional inch and millimetre of mercury; the columns at 0 °C differ in the seventh digit.
    ['inHg', 'inHg', 'inch of mercury', 3386.389, ['in Hg', 'inches Hg', 'inches of mercury', '"Hg']],
    ['mmHg', 'mmHg', 'millimetre of mercury', 133.322387415, ['mm Hg', 'millimetres of mercury']],
    ['atm', 'atm', 'standard atmosphere', 101325, ['atmosphere', 'atmospheres']],
    ['kgf/cm2', 'kgf/cm²', 'kilogram-force per square centimetre', STANDARD_GRAVITY * 1e4, ['kg/cm2', 'kp/cm2', 'kgf/sq cm']],
  ]),
  ...group('pressure-rate', NIST, [
    ['kPa/min', 'kPa/min', 'kilopascal per minute', 1, ['kPa per min', 'kPa per minute']],
    ['bar/min', 'bar/min', 'bar per minute', 100, ['bar per min', 'bar per minute']],
    ['psi/min', 'psi/min', 'pound per square inch per minute', PASCALS_PER_PSI / 1000, ['psi per min', 'psi per minute']],
  ]),
  ...group('temperature', NIST, [
    ['C', '°C', 'degree Celsius', 1, ['deg C', 'degrees C', 'celsius', 'degrees celsius', 'centigrade', 'degree C']],
    ['F', '°F', 'degree Fahrenheit', 5 / 9, ['deg F', 'degrees F', 'fahrenheit', 'degrees fahrenheit', 'degree F'], -32],
    ['K', 'K', 'kelvin', 1, ['kelvin', 'kelvins', 'deg K'], -273.15],
  ]),
  ...group('temperature-difference', NIST, [
    ['Kdiff', 'K', 'kelvin', 1, ['kelvin', 'kelvins', 'deg']],
    ['Cdiff', '°C', 'degree Celsius of difference', 1, ['C', 'deg C', 'degrees C', 'celsius']],
    ['Fdiff', '°F', 'degree Fahrenheit of difference', 5 / 9, ['F', 'deg F', 'degrees F', 'fahrenheit']],
  ]),
  ...group('length', NIST, [
    ['mm', 'mm', 'millimetre', 1, ['millimetre', 'millimetres', 'millimeter', 'millimeters']],
    ['cm', 'cm', 'centimetre', 10, ['centimetre', 'centimetres', 'centimeter', 'centimeters']],
    ['m', 'm', 'metre', 1e3, ['M', 'metre', 'metres', 'meter', 'meters']],
    ['km', 'km', 'kilometre', 1e6, ['kilometre', 'kilometres', 'kilometer', 'kilometers', 'kms']],
    ['thou', 'thou', 'thousandth of an inch', 0.0254, ['mil', 'mils', 'thousandths']],
    ['in', 'in', 'inch', 25.4, ['inch', 'inches', '"', '″', 'ins']],
    ['ft', 'ft', 'foot', 304.8, ['foot', 'feet', "'", '′']],
    ['mi', 'mi', 'mile', 1609344, ['mile', 'miles']],
  ]),
  ...group('area', NIST, [
    ['mm2', 'mm²', 'square millimetre', 1, ['sq mm', 'square mm', 'mm^2', 'square millimetres']],
    ['cm2', 'cm²', 'square centimetre', 100, ['sq cm', 'square cm', 'cm^2', 'square centimetres']],
    ['m2', 'm²', 'square metre', 1e6, ['sq m', 'square m', 'm^2', 'square metres']],
  ]),
  ...group('volume', NIST, [
    ['ml', 'ml', 'millilitre', 1, ['millilitre', 'millilitres', 'milliliter', 'milliliters']],
    ['cm3', 'cm³', 'cubic centimetre', 1, ['cc', 'ccm', 'cm^3', 'cu cm', 'cubic centimetres']],
    ['l', 'l', 'litre', 1e3, ['litre', 'litres', 'liter', 'liters', 'ltr', 'dm3']],
    ['m3', 'm³', 'cubic metre', 1e6, ['m^3', 'cu m', 'cubic metres']],
  ]),
  ...group('volume-flow', NIST, [
    ['ml/min', 'ml/min', 'millilitre per minute', 1, ['cc/min', 'cm3/min', 'ccm', 'ml per min', 'cc per minute']],
    ['l/h', 'l/h', 'litre per hour', 1000 / 60, ['lph', 'l/hr', 'litres per hour']],
    ['l/min', 'l/min', 'litre per minute', 1e3, ['lpm', 'litres per minute']],
  ]),
  ...group('mass', NIST, [
    ['g', 'g', 'gram', 1, ['gram', 'grams', 'gramme', 'grammes']],
    ['kg', 'kg', 'kilogram', 1e3, ['kilogram', 'kilograms', 'kilo', 'kilos', 'kgs']],
    ['lb', 'lb', 'pound', KILOGRAMS_PER_POUND * 1e3, ['lbs', 'pound', 'pounds']],
  ]),
  ...group('mass-flow', NIST, [
    ['g/s', 'g/s', 'gram per second', 1, ['g/sec', 'gram/s', 'grams per second', 'gps']],
    ['kg/h', 'kg/h', 'kilogram per hour', 1000 / 3600, ['kg/hr', 'kilograms per hour']],
    ['lb/min', 'lb/min', 'pound per minute', (KILOGRAMS_PER_POUND * 1e3) / 60, ['lbs/min', 'pounds per minute']],
  ]),
  ...group('density', NIST, [
    ['kg/m3', 'kg/m³', 'kilogram per cubic metre', 1, ['kg/m^3', 'kg per m3', 'kilograms per cubic metre']],
    ['kg/l', 'kg/l', 'kilogram per litre', 1e3, ['kg per litre', 'kilograms per litre', 'g/ml']],
    ['g/cm3', 'g/cm³', 'gram per cubic centimetre', 1e3, ['g/cc', 'g/cm^3', 'grams per cubic centimetre']],
  ]),
  ...group('force', NIST, [
    ['N', 'N', 'newton', 1, ['newton', 'newtons']],
    ['lbf', 'lbf', 'pound-force', NEWTONS_PER_POUND_FORCE, ['lb', 'lbs', 'pound', 'pounds', 'pound force']],
    ['kgf', 'kgf', 'kilogram-force', STANDARD_GRAVITY, ['kg', 'kp', 'kilogram force']],
  ]),
  ...group('torque', NIST, [
    ['N m', 'N m', 'newton metre', 1, ['Nm', 'newton metre', 'newton metres', 'newton meters']],
    ['lbf ft', 'lbf ft', 'pound-force foot', NEWTON_METRES_PER_POUND_FOOT, ['ft lbf', 'lb ft', 'ft lb', 'lbs ft', 'ft lbs', 'foot pounds', 'pound feet']],
    ['lbf in', 'lbf in', 'pound-force inch', NEWTON_METRES_PER_POUND_FOOT / 12, ['in lbf', 'lb in', 'in lb', 'lbs in', 'in lbs', 'inch pounds', 'pound inches']],
    ['kgf m', 'kgf m', 'kilogram-force metre', STANDARD_GRAVITY, ['m kgf', 'kg m', 'm kg', 'kp m', 'm kp']],
  ]),
  ...group('energy', NIST, [
    ['mJ', 'mJ', 'millijoule', 1, ['millijoule', 'millijoules']],
    ['J', 'J', 'joule', 1e3, ['joule', 'joules']],
    ['kJ', 'kJ', 'kilojoule', 1e6, ['kilojoule', 'kilojoules']],
  ]),
  ...group('power', NIST, [
    ['W', 'W', 'watt', 1, ['watt', 'watts']],
    ['kW', 'kW', 'kilowatt', 1e3, ['kilowatt', 'kilowatts']],
    ['hp', 'hp', 'horsepower', NEWTON_METRES_PER_POUND_FOOT * 550, ['bhp', 'horsepower']],
    ['metric-hp', 'PS', 'metric horsepower', STANDARD_GRAVITY * 75, ['cv', 'ch', 'pk', 'metric hp', 'metric horsepower']],
  ]),
  ...group('ratio', COMPUTED, [
    ['ppm', 'ppm', 'part per million', 1, ['parts per million']],
    ['%', '%', 'percent', 1e4, ['percent', 'per cent', 'pc', 'pct', '% vol', 'vol %']],
    ['1', '', 'as a plain number', 1e6, [':1', 'to 1', 'lambda', 'ratio']],
  ]),
  ...group('count', COMPUTED, [['count', '', 'counted', 1, ['counts', 'off', 'times', 'rev', 'revs', 'revolutions', 'misfires']]]),
  ...group('misfire-rate', COMPUTED, [
    ['per 1000 rev', 'per 1000 rev', 'per 1000 revolutions', 1, ['/1000 rev', 'per 1000 revs', 'per 1000 revolutions', 'misfires per 1000 rev', 'per thousand revolutions']],
    ['per rev', 'per rev', 'per revolution', 1e3, ['/rev', 'per revolution', 'misfires per rev']],
  ]),
  ...group('wear-rate', COMPUTED, [
    ['mm/1000 km', 'mm/1000 km', 'millimetre in 1000 kilometres', 1, ['mm per 1000 km', 'mm in 1000 km', 'mm per thousand kilometres']],
    // 0.0254 mm in 1609.344 km.
    ['thou/1000 mi', 'thou/1000 mi', 'thousandth of an inch in 1000 miles', 0.0254 / 1.609344, ['thou per 1000 mi', 'thou per 1000 miles', 'thou/1000 miles']],
  ]),
];

/** The dimension in a mechanic's words, with its article: "12 V is *a voltage*". */
export const dimensionWords: Readonly<Record<Dimension, string>> = {
  resistance: 'a resistance',
  'resistance-per-length': 'a resistance per length',
  voltage: 'a voltage',
  current: 'a current',
  inductance: 'an inductance',
  capacitance: 'a capacitance',
  time: 'a time',
  angle: 'an angle',
  'road-speed': 'a road speed',
  rotation: 'a speed of rotation',
  frequency: 'a frequency',
  pressure: 'a pressure',
  'pressure-rate': 'a change of pressure with time',
  temperature: 'a temperature',
  'temperature-difference': 'a temperature difference',
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  'volume-flow': 'a flow of volume',
  mass: 'a mass',
  'mass-flow': 'a flow of mass',
  density: 'a density',
  force: 'a force',
  torque: 'a torque',
  energy: 'an energy',
  power: 'a power',
  ratio: 'a ratio',
  count: 'a plain count',
  'misfire-rate': 'a misfire rate',
  'wear-rate': 'a rate of wear',
};

/**
 * Decimals a workshop shows for a value in this unit where no uncertainty and no caller decides.
 * Common practice: a gap to the hundredth of a millimetre, a compression to the whole psi. Units not named get three significant digits.
 */
export const customaryDecimals: Readonly<Record<UnitId, number>> = {
  us: 0,
  min: 1,
  deg: 1,
  'km/h': 0,
  mph: 0,
  rpm: 0,
  Pa: 0,
  hPa: 0,
  kPa: 0,
  mbar: 0,
  bar: 1,
  MPa: 2,
  psi: 0,
  inHg: 1,
  mmHg: 0,
  'kgf/cm2': 1,
  C: 0,
  F: 0,
  K: 0,
  Kdiff: 0,
  Cdiff: 0,
  Fdiff: 0,
  mm: 2,
  thou: 0,
  km: 0,
  in: 3,
  'ml/min': 0,
  'N m': 1,
  'lbf ft': 1,
  'lbf in': 0,
  ppm: 0,
  '%': 1,
  count: 0,
  'per 1000 rev': 1,
};
