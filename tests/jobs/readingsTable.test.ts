/**
 * The readings as a table. Quoting after RFC 4180 §2, rules 1 to 7; read back by a reader of that grammar written here. Cells that a spreadsheet would
 * run as a formula begin with = + - @, tab or carriage return (the list of the Open Worldwide Application Security Project, recalled).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import { readingsCsv } from '../../src/domain/jobs/readingsTable.ts';
import type { TableFormat } from '../../src/domain/jobs/readingsTable.ts';
import type { JobEventBody, ReadingTaken } from '../../src/domain/jobs/types.ts';
import { engine, finding, goodReading, jobBook, jobOf, reading, renamed, repair } from './jobBook.ts';

const plain: TableFormat = { decimalMark: '.', separator: ',' };
const csv = (format: TableFormat, ...bodies: readonly JobEventBody[]): string => {
  const job = jobOf(...bodies);
  return readingsCsv(job, deriveJob(job.events, jobBook), format);
};
const with_ = (change: Partial<ReadingTaken>): JobEventBody => ({ ...(reading as ReadingTaken), ...change }) as JobEventBody;

/** RFC 4180's grammar: records end in CRLF, quoted fields double their quotation marks. Throws on anything else. */
function parse(text: string, separator: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  // A field, quoted or bare, and what ends it. Sticky, so that nothing is skipped.
  const field = new RegExp(`(?:"((?:[^"]|"")*)"|([^"\\r\\n\\${separator}]*))(\\${separator}|\\r\\n)`, 'y');
  let row: string[] = [];
  while (field.lastIndex < text.length) {
    const at = field.lastIndex;
    const [, quoted, bare = '', end] = field.exec(text) ?? [];
    if (end === undefined) throw new Error(`not in the form of RFC 4180 at ${at}`);
    row.push(quoted === undefined ? bare : quoted.replaceAll('""', '"'));
    if (end === separator) continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

/** The cell under a head, of the first reading. */
function cell(text: string, head: string, separator = ','): string | undefined {
  const [heads = [], first = []] = parse(text, separator);
  return first[heads.indexOf(head)];
}

describe('readingsCsv', () => {
  it('has a row of heads and one for each reading, before and after the repair', () => {
    const rows = parse(csv(plain, engine, reading, finding, repair, goodReading), ',');
    expect(rows).toHaveLength(3);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
    expect(rows.slice(1).map((row) => row[2])).toEqual(['before', 'after']);
    expect(rows[1]).toEqual([
      'Rough when hot', '2026-03-04T09:01:00.000Z', 'before', 'Coil primary resistance, coil on plug', 'coil of cylinder 3', '2.4', '2.4', '2.4', '0.06', 'ohm',
      '0.4', '1', '20', 'Common practice', 'Above the range', '20', '0', '', '0.8', '3', '',
    ]);
  });

  it('without a reading is the row of heads alone', () => {
    expect(csv(plain, engine)).toMatch(/^Job,Taken at \(UTC\),[^\r\n]*\r\n$/);
  });

  it('leaves out what was undone, and carries the title last given', () => {
    const rows = parse(csv(plain, renamed, reading, reading, { kind: 'undone', undoes: 'e2' }), ',');
    expect(rows).toHaveLength(2);
    expect(rows[1]?.[0]).toBe('Blue hatchback');
  });

  it.each([
    { label: 'comma as decimal mark, semicolon between', format: { decimalMark: ',', separator: ';' }, value: '2,4', bare: ';2,4;' },
    { label: 'comma for both: quoted', format: { decimalMark: ',', separator: ',' }, value: '2,4', bare: ',"2,4",' },
    { label: 'tab between', format: { decimalMark: '.', separator: '\t' }, value: '2.4', bare: '\t2.4\t' },
  ] as const)('$label', ({ format, value, bare }) => {
    const text = csv(format, reading);
    expect(cell(text, 'Value', format.separator)).toBe(value);
    expect(text).toContain(bare);
  });

  it.each([
    { label: 'plain', title: 'Coil', written: 'Coil' },
    { label: 'a comma', title: 'a,b', written: '"a,b"' },
    { label: 'a quotation mark', title: 'a "b"', written: '"a ""b"""' },
    { label: 'a line end', title: 'a\r\nb', written: '"a\r\nb"' },
    { label: 'a line feed', title: 'a\nb', written: '"a\nb"' },
    { label: 'only a quotation mark', title: '"', written: '""""' },
    { label: 'a formula', title: '=1+2', written: "'=1+2" },
    { label: 'a formula that fetches', title: '=HYPERLINK("https://elsewhere.example/","x")', written: `"'=HYPERLINK(""https://elsewhere.example/"",""x"")"` },
    { label: 'plus', title: '+1', written: "'+1" },
    { label: 'minus', title: '-1', written: "'-1" },
    { label: 'at', title: '@SUM(A1)', written: "'@SUM(A1)" },
    { label: 'tab', title: '\t=1', written: "'\t=1" },
    { label: 'carriage return', title: '\r=1', written: `"'\r=1"` },
    { label: 'an equals sign inside', title: 'a=b', written: 'a=b' },
    { label: 'not Latin', title: 'катушка 点火', written: 'катушка 点火' },
  ])('text: $label', ({ title, written }) => {
    expect(csv(plain, with_({ title }))).toContain(`,before,${written},`);
  });

  it('a number below zero is a number, and stays one', () => {
    const text = csv(plain, with_({ value: -0.5, corrected: -0.5, text: '-0.5' }));
    expect(cell(text, 'Value')).toBe('-0.5');
    expect(cell(text, 'Typed')).toBe("'-0.5");
  });

  it('an open circuit is the word', () => {
    const text = csv(plain, with_({ value: 'open', corrected: 'open', text: 'OL', verdict: 'above' }));
    expect([cell(text, 'Value'), cell(text, 'Corrected')]).toEqual(['open', 'open']);
  });

  it('whatever was typed can be read back, and nothing of it is run', () => {
    const nasty = fc.string({ unit: fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '"', ',', ';', "'", 'a', '1', ' ') });
    const format = fc.record({ decimalMark: fc.constantFrom('.' as const, ',' as const), separator: fc.constantFrom(',' as const, ';' as const, '\t' as const) });
    const value = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(nasty, nasty, value, format, (title, text, number, chosen) => {
        const [heads = [], row = [], ...more] = parse(csv(chosen, with_({ title, text, value: number })), chosen.separator);
        expect(more).toEqual([]);
        expect(row).toHaveLength(heads.length);
        const typed = row[heads.indexOf('Typed')] ?? '';
        expect([text, `'${text}`]).toContain(typed);
        expect(typed).not.toMatch(/^[=+\-@\t\r]/);
        expect(row[heads.indexOf('Reading')]).not.toMatch(/^[=+\-@\t\r]/);
        expect(Number(row[heads.indexOf('Value')]?.replace(',', '.'))).toBe(number + 0);
      }),
    );
  });
});
