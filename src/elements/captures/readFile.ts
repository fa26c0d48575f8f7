import Papa from 'papaparse';
import { tableBuilder } from '../../domain/captures/table/builder.ts';
import { sniffDelimiter } from '../../domain/captures/table/headings.ts';
import type { LoggedTable } from '../../domain/captures/table/types.ts';
import { failure } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

/** Bytes of the file that are in memory as text at a time. */
const sliceSize = 1 << 20;
/** Bytes looked at to tell encoding and delimiter. */
const headSize = 1 << 16;

/** By its mark at the start; without one UTF-8, or the old Windows alphabet where the bytes are no UTF-8. */
function encodingOf(head: Uint8Array): string {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  try {
    // The last character may be cut in two, which a stream forgives.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** Rows of the whole file, if all are as long as those at its start; a little more, so that no column has to grow at the very end. */
function expectedRows(text: string, headLength: number, size: number): number {
  return 1.1 * (size / Math.max(1, headLength)) * text.split('\n').length;
}

/**
 * Reads a table out of a file, slice by slice, straight into its columns: the whole text is never in memory. `progress` is told the share
 * of the file read, 0 to 1, and the rows so far.
 */
export async function readFile(file: Blob, wish: { readonly decimalMark?: '.' | ',' }, progress: (share: number, rows: number) => void): Promise<Result<LoggedTable, Refusal>> {
  const head = new Uint8Array(await file.slice(0, headSize).arrayBuffer());
  const encoding = encodingOf(head);
  const text = new TextDecoder(encoding).decode(head, { stream: true });
  const delimiter = sniffDelimiter(text);
  const builder = tableBuilder({ ...wish, expectedRows: expectedRows(text, head.length, file.size) });
  let rows = 0;
  return new Promise((resolve) => {
    Papa.parse<string[], File>(file as File, {
      delimiter,
      encoding,
      chunkSize: sliceSize,
      skipEmptyLines: false,
      chunk: ({ data, meta }, parser) => {
        for (const row of data) {
          if (builder.add(row)) continue;
          parser.abort();
          break;
        }
        rows += data.length;
        progress(Math.min(1, meta.cursor / file.size), rows);
      },
      complete: () => resolve(builder.finish()),
      error: (error) => resolve(failure({ input: 'file', code: 'not-read', message: `The file could not be read: ${error.message} Copy it onto this device and choose it again.` })),
    });
  });
}
