import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { element } from '../dom.ts';

export interface SmallPicture {
  readonly width: number;
  readonly height: number;
  /** JPEG in Base64, without the `data:` head. */
  readonly jpeg: string;
}

/** Longest sides and qualities tried, the best first, until the picture is small enough. */
const longestSides = [1000, 700, 500];
const qualities = [0.85, 0.75, 0.65, 0.55, 0.45, 0.35];
/** Characters of Base64: what a job file can carry of several pictures and still be sent by post. */
const mostCharacters = 150_000;
const head = 'data:image/jpeg;base64,';

/**
 * A chosen picture drawn onto a canvas and written anew: turned as its file says, at most 1000 pixels long, at most 150 kB of Base64.
 * Only the pixels pass through, so nothing else of the file is left. Gives back what is wrong where it cannot be read or written.
 */
export async function makeSmall(file: Blob): Promise<Result<SmallPicture, string>> {
  const bitmap = await decode(file);
  if (bitmap === undefined) {
    return failure('This file could not be read as a picture. Choose a photograph in a common format, such as JPEG or PNG. Nothing was changed.');
  }
  const small = longestSides.reduce<SmallPicture | undefined>((found, longest) => found ?? writeWithin(bitmap, longest), undefined);
  bitmap.close();
  return small ? success(small) : failure('This browser could not write the picture small enough. Take it smaller and choose it again. Nothing was changed.');
}

async function decode(file: Blob): Promise<ImageBitmap | undefined> {
  try {
    return await createImageBitmap(file);
  } catch {
    return undefined;
  }
}

function writeWithin(bitmap: ImageBitmap, longest: number): SmallPicture | undefined {
  const scale = Math.min(1, longest / Math.max(bitmap.width, bitmap.height));
  const width = Math.max(1, Math.round(bitmap.width * scale));
  const height = Math.max(1, Math.round(bitmap.height * scale));
  const canvas = element('canvas', { width, height });
  const brush = canvas.getContext('2d');
  if (!brush) return undefined;
  // JPEG has no see-through; without a ground it would turn black.
  brush.fillStyle = '#fff';
  brush.fillRect(0, 0, width, height);
  brush.drawImage(bitmap, 0, 0, width, height);
  for (const quality of qualities) {
    const address = canvas.toDataURL('image/jpeg', quality);
    const jpeg = address.startsWith(head) ? pictureOnly(address.slice(head.length)) : undefined;
    if (jpeg !== undefined && jpeg.length <= mostCharacters) return { width, height, jpeg };
  }
  return undefined;
}

/**
 * The JPEG without what a writer may add to it (marker segments APP1 to APP15 and comments: ITU-T T.81, annex B, from memory), so that it
 * does not depend on the browser what is left. Undefined where it is not built as a JPEG is.
 */
function pictureOnly(base64: string): string | undefined {
  const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
  const kept: number[] = [0xff, 0xd8];
  let at = kept.length;
  while (bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === startOfScan) return toBase64([Uint8Array.from(kept), bytes.subarray(at)]);
    const end = at + 2 + (bytes[at + 2] ?? 0) * 256 + (bytes[at + 3] ?? 0);
    if (!isAddition(marker)) kept.push(...bytes.subarray(at, end));
    at = end;
  }
  return undefined;
}

const startOfScan = 0xda;

function isAddition(marker: number): boolean {
  return (marker >= 0xe1 && marker <= 0xef) || marker === 0xfe;
}

function toBase64(parts: readonly Uint8Array[]): string {
  const characters = parts.flatMap((part) => Array.from(part, (byte) => String.fromCharCode(byte)));
  return btoa(characters.join(''));
}
