/*
 * JPEG marker segments: ITU-T T.81 (1992), annex B; each starts FF xx with a length of two bytes, highest first.
 * Exif: JEITA CP-3451, an APP1 segment `Exif 00 00` and a TIFF block; orientation is tag 0112, the GPS block tag 8825. From memory.
 */

interface TagEntry {
  readonly tag: number;
  readonly type: number;
  readonly count: number;
  readonly value: readonly number[];
}

const shortType = 3;
const longType = 4;
const asciiType = 2;
const rationalType = 5;

function entryBytes({ tag, type, count, value }: TagEntry): number[] {
  const padded = [...value, 0, 0, 0, 0].slice(0, 4);
  return [tag >> 8, tag & 0xff, 0, type, 0, 0, 0, count, ...padded];
}

/** A TIFF block, highest byte first: orientation (6: turned a quarter), and north 52° as where it was taken. */
function tiffBytes(): number[] {
  const firstAt = 8;
  const gpsAt = firstAt + 2 + 2 * 12 + 4;
  const degreesAt = gpsAt + 2 + 2 * 12 + 4;
  const orientation = entryBytes({ tag: 0x0112, type: shortType, count: 1, value: [0, 6] });
  const gps = entryBytes({ tag: 0x8825, type: longType, count: 1, value: [0, 0, 0, gpsAt] });
  const north = entryBytes({ tag: 1, type: asciiType, count: 2, value: [0x4e, 0] });
  const latitude = entryBytes({ tag: 2, type: rationalType, count: 3, value: [0, 0, 0, degreesAt] });
  const rational = (value: number): number[] => [0, 0, 0, value, 0, 0, 0, 1];
  const head = [0x4d, 0x4d, 0, 42, 0, 0, 0, firstAt];
  return [...head, 0, 2, ...orientation, ...gps, 0, 0, 0, 0, 0, 2, ...north, ...latitude, 0, 0, 0, 0, ...rational(52), ...rational(30), ...rational(15)];
}

/** The same JPEG with an Exif block as a camera writes it. */
export function withExif(jpeg: Buffer): Buffer {
  const body = [...Buffer.from('Exif\0\0', 'latin1'), ...tiffBytes()];
  const length = body.length + 2;
  return Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xe1, length >> 8, length & 0xff, ...body]), jpeg.subarray(2)]);
}

/** The markers of a JPEG up to its picture data, such as `e0 db c0 c4 da`. */
export function markersOf(jpeg: Buffer): string[] {
  const markers: string[] = [];
  for (let at = 2; at + 4 <= jpeg.length && jpeg[at] === 0xff; at += 2 + jpeg.readUInt16BE(at + 2)) {
    markers.push((jpeg[at + 1] ?? 0).toString(16));
    if (jpeg[at + 1] === 0xda) break;
  }
  return markers;
}
