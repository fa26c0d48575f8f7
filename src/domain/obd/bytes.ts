import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';

export type BytesRefusal = 'missing' | 'not-hexadecimal' | 'half-byte';

/** Marks that people and tools put before or between bytes: `0x41`, `$41`, `41-0C`. */
const marks = /0X|[,;:$\p{Pd}]/gu;

/**
 * Bytes written in hexadecimal, each with two digits, with or without gaps: `1A F8`, `1af8`, `0x1A 0xF8`.
 * `example` is shown in a refusal: `missing`, `not-hexadecimal`, `half-byte` (a byte with one digit could be read two ways).
 */
export function parseBytes(text: string, input: string, example: string): Result<readonly number[], Refusal<BytesRefusal>> {
  const refuse = (code: BytesRefusal, message: string) =>
    failure({ input, code, message: `${message} Give bytes in hexadecimal, two digits each, such as ${example}.` });
  const words = text.normalize('NFKC').toUpperCase().replaceAll(marks, ' ').split(/\s+/u).filter((word) => word !== '');
  if (words.length === 0) return refuse('missing', 'No bytes were given.');
  const wrong = /[^0-9A-F]/u.exec(words.join(''));
  if (wrong !== null) return refuse('not-hexadecimal', `"${text.trim()}" holds "${wrong[0]}", which is not a hexadecimal digit.`);
  const half = words.find((word) => word.length % 2 === 1);
  if (half !== undefined) return refuse('half-byte', `"${half}" is not a whole number of bytes.`);
  return success(words.flatMap((word) => word.match(/../gu) ?? []).map((pair) => Number.parseInt(pair, 16)));
}

/** A byte as two hexadecimal digits: `0C`. */
export function writeByte(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}

/** Several bytes as one unsigned number, highest first. */
export function unsigned(bytes: readonly number[]): number {
  return bytes.reduce((sum, byte) => sum * 256 + byte, 0);
}

/** Several bytes as one number in two's complement, highest first. */
export function signed(bytes: readonly number[]): number {
  const value = unsigned(bytes);
  const range = 256 ** bytes.length;
  return value >= range / 2 ? value - range : value;
}

/** Is this bit, counted from 0 at the lowest, set? */
export function hasBit(byte: number, bit: number): boolean {
  return ((byte >> bit) & 1) === 1;
}

/**
 * The data of an answer: the bytes as they are, or less the head of the answer (`41 0C`) where exactly that stands before them.
 */
export function withoutHead(bytes: readonly number[], head: readonly number[], length: number): readonly number[] {
  const hasHead = bytes.length === length + head.length && head.every((byte, index) => bytes[index] === byte);
  return hasHead ? bytes.slice(head.length) : bytes;
}
