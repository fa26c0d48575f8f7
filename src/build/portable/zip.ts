import { promisify } from 'node:util';
import { crc32, deflateRaw, type ZlibOptions } from 'node:zlib';

/** Off the main thread, so that all cores pack. */
const deflate = promisify<Uint8Array, ZlibOptions, Buffer>(deflateRaw);

/**
 * Packs files into a ZIP archive (PKWARE APPNOTE 6.3). The same files always give the same bytes: names are sorted and
 * every date is the first that the format knows, 1 January 1980. No file may be larger than 4 GiB, nor may there be more
 * than 65,535: beyond that the format needs extensions, and a book does not.
 *
 * @param files contents by path, with forward slashes
 */
export async function zipOf(files: ReadonlyMap<string, Uint8Array>): Promise<Buffer> {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  const entries = await Promise.all(sorted.map(([path, content]) => packed(path, content)));
  if (entries.length > 0xffff) throw new Error(`A ZIP archive holds at most 65,535 files, and here are ${entries.length}.`);
  let offset = 0;
  const directory = entries.map((entry) => {
    const record = directoryRecord(entry, offset);
    offset += entry.local.length + entry.data.length;
    return record;
  });
  const list = Buffer.concat(directory);
  return Buffer.concat([...entries.flatMap(({ local, data }) => [local, data]), list, endRecord(entries.length, list.length, offset)]);
}

interface Entry {
  readonly name: Buffer;
  /** What the local header and the directory say alike, from the version needed to the length of the name. */
  readonly common: Buffer;
  readonly local: Buffer;
  readonly data: Buffer;
}

const DEFLATED = 8;
const STORED = 0;
/** 1 January 1980 in the format of MS-DOS: year since 1980, month and day in 7, 4 and 5 bits. */
const FIRST_DAY = (1 << 5) | 1;
const NAME_IS_UTF8 = 0x0800;

async function packed(path: string, content: Uint8Array): Promise<Entry> {
  const name = Buffer.from(path, 'utf8');
  const small = await deflate(content, { level: 9 });
  const [method, data] = small.length < content.length ? [DEFLATED, small] : [STORED, Buffer.from(content)];
  const common = Buffer.alloc(26);
  common.writeUInt16LE(20, 0); // version needed: 2.0, for deflate
  common.writeUInt16LE(NAME_IS_UTF8, 2);
  common.writeUInt16LE(method, 4);
  common.writeUInt16LE(0, 6); // time
  common.writeUInt16LE(FIRST_DAY, 8);
  common.writeUInt32LE(crc32(content), 10);
  common.writeUInt32LE(data.length, 14);
  common.writeUInt32LE(content.length, 18);
  common.writeUInt16LE(name.length, 22);
  return { name, common, data, local: Buffer.concat([signature(0x04034b50), common, name]) };
}

function directoryRecord({ name, common }: Entry, offset: number): Buffer {
  const rest = Buffer.alloc(14);
  rest.writeUInt32LE(offset, 10); // before it: comment, disk and attributes, all nothing
  const madeBy = Buffer.from([20, 0]); // version 2.0, no file system's own attributes
  return Buffer.concat([signature(0x02014b50), madeBy, common, rest, name]);
}

function endRecord(count: number, length: number, offset: number): Buffer {
  const record = Buffer.alloc(18);
  record.writeUInt16LE(count, 4);
  record.writeUInt16LE(count, 6);
  record.writeUInt32LE(length, 8);
  record.writeUInt32LE(offset, 12);
  return Buffer.concat([signature(0x06054b50), record]);
}

function signature(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
}
