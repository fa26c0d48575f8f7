import { pressureAtAltitude, seaLevelPressure } from '../../atmosphere.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { convert } from '../../units/convert.ts';
import { formatValue } from '../../units/format.ts';
import { inOneRow, mostCylinders, parseBanks, parseFiringOrder } from '../cylinders.ts';
import type { ParsedInputs } from '../definition.ts';
import { findPattern, usualLowest } from './compare.ts';
import type { Finding } from './compare.ts';
import { matchWet } from './wet.ts';
import type { WetReading } from './wet.ts';

/** Everything that was given, checked against each other. */
export interface Given {
  readonly readings: readonly number[];
  readonly banks: readonly (readonly number[])[];
  readonly order?: readonly number[];
  /** Outside pressure at the workshop, kPa; absent where nothing was said about it. */
  readonly outside?: number;
  readonly finding: Finding;
  readonly wet: readonly WetReading[];
}

function refuse(input: string, code: string, message: string): Refusal {
  return { input, code, message };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const readings = given.numbers('readings');
  if (readings.length > mostCylinders) {
    return refuse('readings', 'too-many-readings', `${readings.length} readings were given; accepted are 1 to ${mostCylinders}, one for each cylinder.`);
  }
  if (readings.every((reading) => reading === 0)) {
    return refuse('readings', 'no-compression', 'Every reading is zero, so nothing can be compared. Check that the crank turned, that the gauge sealed and holds, and the timing belt or chain.');
  }
  if (given.has('altitude') && given.has('barometer')) {
    return refuse('altitude', 'altitude-and-barometer', 'A height and an outside pressure were both given. Give the pressure read here, or the height, not both.');
  }
  const [low, high] = [given.optionalNumber('low'), given.optionalNumber('high')];
  if (low !== undefined && high !== undefined && low > high) {
    return refuse('low', 'limits-crossed', `The lowest figure, ${formatValue(low, 'psi')}, lies above the highest, ${formatValue(high, 'psi')}. Change them over.`);
  }
  return undefined;
}

function outsidePressure(given: ParsedInputs): number | undefined {
  const altitude = given.optionalNumber('altitude');
  return altitude === undefined ? given.optionalNumber('barometer') : pressureAtAltitude(altitude);
}

/** Readings as they would be at sea level, or as they are where the outside pressure is not known. */
export function atSeaLevel(readings: readonly number[], outside: number | undefined): readonly number[] {
  return outside === undefined ? readings : readings.map((reading) => (reading * seaLevelPressure) / outside);
}

function usualLow(): number {
  const inPsi = convert(usualLowest, 'bar', 'psi');
  return inPsi.ok ? inPsi.value : 0;
}

/** The inputs, read and held against each other. Refuses what single inputs cannot show to be wrong. */
export function readGiven(inputs: ParsedInputs): Result<Given, Refusal> {
  const problem = findProblem(inputs);
  if (problem !== undefined) return failure(problem);
  const readings = inputs.numbers('readings');
  const [orderText, banksText] = [inputs.optionalText('order'), inputs.optionalText('banks')];
  const order = orderText === undefined ? undefined : parseFiringOrder(orderText, 'order', readings.length);
  if (order?.ok === false) return order;
  const banks = banksText === undefined ? success([inOneRow(readings.length)]) : parseBanks(banksText, 'banks', readings.length);
  if (!banks.ok) return banks;
  const outside = outsidePressure(inputs);
  const finding = findPattern(atSeaLevel(readings, outside), inputs.optionalNumber('low') ?? usualLow(), banks.value);
  const wet = matchWet(readings, inputs.optionalNumbers('wet') ?? [], finding);
  if (!wet.ok) return wet;
  const rest = { ...(order === undefined ? {} : { order: order.value }), ...(outside === undefined ? {} : { outside }) };
  return success({ readings, banks: banks.value, finding, wet: wet.value, ...rest });
}
