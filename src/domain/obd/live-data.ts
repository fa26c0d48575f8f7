import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import type { UnitId } from '../units/types.ts';
import { hasBit, parseBytes, signed, unsigned, withoutHead, writeByte } from './bytes.ts';
import { listedItems, scaledItems, sensorPlaces, sensorPlacesOfFourBanks } from './live-data.data.ts';
import type { ListedItem, ScaledItem, Scaling } from './live-data.data.ts';

/** One scaled value. `not-used` is what the standard lets a sensor say in place of a trim. */
export interface LiveQuantity {
  readonly label: string;
  readonly value: number | 'not-used';
  readonly unit: UnitId;
}

/** An answer of service $01, in figures or in words. */
export type LiveData =
  | { readonly kind: 'quantities'; readonly name: string; readonly quantities: readonly LiveQuantity[] }
  | { readonly kind: 'states'; readonly name: string; readonly states: readonly string[] }
  /** The items that the control unit offers, as two hexadecimal digits. */
  | { readonly kind: 'supported'; readonly name: string; readonly pids: readonly string[] };

export type LiveDataRefusal =
  | 'missing'
  | 'not-hexadecimal'
  | 'half-byte'
  | 'not-a-pid'
  | 'unknown-pid'
  | 'monitor-status'
  | 'wrong-length';

type Refused = Refusal<LiveDataRefusal>;

/** The head of an answer to service $01. */
const answerHead = 0x41;
const pidsInBlock = 32;

/** How one kind of item is read from its bytes. */
interface Reader {
  readonly bytes: number;
  readonly read: (bytes: readonly number[]) => LiveData;
}

/** The value of a part. Bytes are whole, so any fraction comes from the scaling alone. */
function scaled(part: Scaling, bytes: readonly number[]): LiveQuantity {
  const raw = part.signed ? signed(bytes) : unsigned(bytes);
  const value = raw === part.notUsed ? 'not-used' : (raw * part.numerator) / part.denominator + part.offset;
  return { label: part.label, value, unit: part.unit };
}

function scaledReader({ name, parts }: ScaledItem): Reader {
  const starts = parts.map((_, index) => parts.slice(0, index).reduce((sum, { bytes }) => sum + bytes, 0));
  return {
    bytes: parts.reduce((sum, { bytes }) => sum + bytes, 0),
    read: (bytes) => ({
      kind: 'quantities',
      name,
      quantities: parts.map((part, index) => {
        const start = starts[index] ?? 0;
        return scaled(part, bytes.slice(start, start + part.bytes));
      }),
    }),
  };
}

function stateOf(item: ListedItem, byte: number): string {
  const meaning = item.meanings.get(byte);
  if (meaning !== undefined) return meaning;
  const several = item.oneBit && (byte & (byte - 1)) !== 0;
  return several ? `invalid: ${writeByte(byte)} sets more than one bit` : `${writeByte(byte)} has no meaning in the table`;
}

function listedReader(item: ListedItem): Reader {
  return {
    bytes: Math.max(1, item.of.length),
    read: (bytes) => ({
      kind: 'states',
      name: item.name,
      states: bytes.map((byte, index) => [item.of[index], stateOf(item, byte)].filter((word) => word !== undefined).join(': ')),
    }),
  };
}

/** Sensors present, bit 0 first. */
function sensorReader(places: readonly string[], name: string): Reader {
  return { bytes: 1, read: ([byte = 0]) => ({ kind: 'states', name, states: places.filter((_, bit) => hasBit(byte, bit)) }) };
}

const auxiliaryReader: Reader = {
  bytes: 1,
  read: ([byte = 0]) => ({
    kind: 'states',
    name: 'Power take-off',
    states: [hasBit(byte, 0) ? 'active' : 'not active'],
  }),
};

/** Which of the 32 items after `block` are offered: highest bit of the first byte first. */
function supportReader(block: number): Reader {
  const isSet = (bytes: readonly number[], index: number) => hasBit(bytes[Math.floor(index / 8)] ?? 0, 7 - (index % 8));
  return {
    bytes: 4,
    read: (bytes) => ({
      kind: 'supported',
      name: `Items offered from ${writeByte(block + 1)} to ${writeByte(Math.min(block + pidsInBlock, 0xff))}`,
      pids: Array.from({ length: pidsInBlock }, (_, index) => index)
        .filter((index) => block + index + 1 <= 0xff && isSet(bytes, index))
        .map((index) => writeByte(block + index + 1)),
    }),
  };
}

const readers: ReadonlyMap<number, Reader> = new Map([
  ...scaledItems.map((item) => [item.pid, scaledReader(item)] as const),
  ...listedItems.map((item) => [item.pid, listedReader(item)] as const),
  ...[0x00, 0x20, 0x40, 0x60, 0x80, 0xa0, 0xc0, 0xe0].map((block) => [block, supportReader(block)] as const),
  [0x13, sensorReader(sensorPlaces, 'Oxygen sensors fitted, two banks')],
  [0x1d, sensorReader(sensorPlacesOfFourBanks, 'Oxygen sensors fitted, up to four banks')],
  [0x1e, auxiliaryReader],
]);

/** Every item this book can read, in ascending order. */
export const knownPids: readonly number[] = [...readers.keys()].sort((left, right) => left - right);

function refuse(input: string, code: LiveDataRefusal, message: string): { readonly ok: false; readonly error: Refused } {
  return failure({ input, code, message });
}

/** The number of a live-data item: one or two hexadecimal digits, such as `0C`, `$0C`, `0x0c` or `PID 0C`. */
export function parsePid(text: string): Result<number, Refused> {
  const plain = text.normalize('NFKC').toUpperCase().replace(/^\s*PID/u, '').replaceAll(/0X|[\s$]/gu, '');
  if (/^[0-9A-F]{1,2}$/u.test(plain)) return success(Number.parseInt(plain, 16));
  return refuse('pid', 'not-a-pid', `"${text.trim()}" is no item number. Give one or two hexadecimal digits, such as 0C for engine speed.`);
}

function readerOf(pid: number): Result<Reader, Refused> {
  const reader = readers.get(pid);
  if (reader !== undefined) return success(reader);
  const shown = writeByte(pid);
  if (pid === 0x01 || pid === 0x41) {
    return refuse('pid', 'monitor-status', `${shown} is the monitor status. Put its four bytes in the monitor status calculator.`);
  }
  const known = knownPids.map(writeByte).join(' ');
  return refuse('pid', 'unknown-pid', `${shown} is not in this book, so its bytes are not scaled. It knows ${known}.`);
}

/**
 * A live-data answer of service $01: the item's number and its data bytes in hexadecimal, with or without the head of the answer
 * (`41 0C`) before them. Source: SAE J1979 / ISO 15031-5. Refuses: `not-a-pid`, `unknown-pid`, `monitor-status` (01 and 41),
 * `missing`, `not-hexadecimal`, `half-byte`, `wrong-length`.
 */
export function decodeLiveData(pidText: string, bytesText: string): Result<LiveData, Refused> {
  const pid = parsePid(pidText);
  if (!pid.ok) return pid;
  const reader = readerOf(pid.value);
  if (!reader.ok) return reader;
  const typed = parseBytes(bytesText, 'bytes', '1A F8');
  if (!typed.ok) return typed;
  const bytes = withoutHead(typed.value, [answerHead, pid.value], reader.value.bytes);
  if (bytes.length === reader.value.bytes) return success(reader.value.read(bytes));
  const needed = reader.value.bytes === 1 ? '1 byte' : `${reader.value.bytes} bytes`;
  return refuse('bytes', 'wrong-length', `${typed.value.length} bytes were given; ${writeByte(pid.value)} has ${needed}. Leave out the head of the answer and any filling.`);
}
