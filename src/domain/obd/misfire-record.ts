import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import type { UnitId } from '../units/types.ts';
import { parseBytes, signed, unsigned, withoutHead, writeByte } from './bytes.ts';
import type { BytesRefusal } from './bytes.ts';
import { recordScalings } from './misfire-record.data.ts';

export type MisfireTest = 'average' | 'cycle' | 'maker' | 'unknown';
export type RecordVerdict = 'pass' | 'fail' | 'not run';

/** One misfire record of service $06. */
export interface MisfireRecord {
  /** Left out for the record of the engine as a whole. */
  readonly cylinder?: number;
  readonly test: MisfireTest;
  readonly testId: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: UnitId;
  /** False where the scaling id is not in the table: the numbers are then as they came. */
  readonly scaled: boolean;
  readonly verdict: RecordVerdict;
  /** The upper limit is the highest number there is, so that no count can fail. */
  readonly withoutLimit: boolean;
}

export type MisfireRecordRefusal = BytesRefusal | 'wrong-length' | 'not-a-misfire-record' | 'limits-crossed';

type Refused = Refusal<MisfireRecordRefusal>;

const recordLength = 9;
/** Monitor of the engine as a whole; the cylinders follow it. */
const generalMonitor = 0xa1;
/** The digital annex of newer editions goes to cylinder 16. */
const lastMonitor = 0xb1;
const averageTest = 0x0b;
const cycleTest = 0x0c;
const firstMakerTest = 0x80;
const lastMakerTest = 0xfe;
const firstSignedScaling = 0x81;
const lastSignedScaling = 0xfe;
const highestCount = 0xffff;

function testOf(id: number): MisfireTest {
  if (id === averageTest) return 'average';
  if (id === cycleTest) return 'cycle';
  return id >= firstMakerTest && id <= lastMakerTest ? 'maker' : 'unknown';
}

/** Value, low and high, scaled by the id that the record carries; as raw counts where the id is not in the table. */
function numbersOf(scalingId: number, pairs: readonly (readonly number[])[]) {
  const isSigned = scalingId >= firstSignedScaling && scalingId <= lastSignedScaling;
  const scaling = recordScalings.get(scalingId);
  const { factor, offset, unit } = scaling ?? { factor: 1, offset: 0, unit: 'count' };
  const [value = 0, low = 0, high = 0] = pairs.map((pair) => (isSigned ? signed(pair) : unsigned(pair)) * factor + offset);
  return { value, low, high, unit, scaled: scaling !== undefined };
}

/** A test that has not run since codes were cleared answers with zeros throughout; that is no pass. */
function verdictOf(bytes: readonly number[], { value, low, high }: { value: number; low: number; high: number }): RecordVerdict {
  if (bytes.every((byte) => byte === 0)) return 'not run';
  return value >= low && value <= high ? 'pass' : 'fail';
}

function readRecord(bytes: readonly number[]): Result<MisfireRecord, Refused> {
  const [monitor = 0, testId = 0, scalingId = 0, ...rest] = bytes;
  if (monitor < generalMonitor || monitor > lastMonitor) {
    const message = `${writeByte(monitor)} is not the monitor of a misfire. Misfire records start with A1 (engine) or A2 to B1 (cylinders 1 to 16).`;
    return failure({ input: 'bytes', code: 'not-a-misfire-record', message });
  }
  const numbers = numbersOf(scalingId, [rest.slice(0, 2), rest.slice(2, 4), rest.slice(4, 6)]);
  if (numbers.low > numbers.high) {
    const message = `The low limit ${numbers.low} lies above the high limit ${numbers.high}. Check the bytes: value, low and high take two each.`;
    return failure({ input: 'bytes', code: 'limits-crossed', message });
  }
  const cylinder = monitor - generalMonitor;
  return success({
    ...(cylinder === 0 ? {} : { cylinder }),
    test: testOf(testId),
    testId,
    ...numbers,
    verdict: verdictOf(rest, numbers),
    withoutLimit: unsigned(rest.slice(4, 6)) === highestCount && scalingId < firstSignedScaling,
  });
}

/**
 * One record of service $06 about misfire, as it comes on a CAN bus: monitor, test and scaling, then value, low and high limit of
 * two bytes each; the head of the answer (46) may stand before it. Source: SAE J1979 section 6.6 and appendices D and E.
 * Refuses: `missing`, `not-hexadecimal`, `half-byte`, `wrong-length`, `not-a-misfire-record`, `limits-crossed`.
 */
export function decodeMisfireRecord(text: string): Result<MisfireRecord, Refused> {
  const typed = parseBytes(text, 'bytes', 'A2 0C 24 00 03 00 00 FF FF');
  if (!typed.ok) return typed;
  const bytes = withoutHead(typed.value, [0x46], recordLength);
  if (bytes.length === recordLength) return readRecord(bytes);
  const message = `${typed.value.length} bytes were given; one record has ${recordLength}. Give one record at a time, such as A2 0C 24 00 03 00 00 FF FF.`;
  return failure({ input: 'bytes', code: 'wrong-length', message });
}

/** What each new driving cycle weighs in the average of test 0B. */
export const weightOfCycle = 0.1;

/**
 * The average that test 0B keeps, after driving cycles with these misfire counts, oldest first: a tenth of the new count and nine
 * tenths of the average before, which starts at `start`. Unrounded; how a control unit rounds is not fixed. Source: SAE J1979.
 */
export function weightedAverage(counts: readonly number[], start = 0): number {
  return counts.reduce((average, count) => weightOfCycle * count + (1 - weightOfCycle) * average, start);
}
