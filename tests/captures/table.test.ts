import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable, tableBuilder } from '../../src/domain/captures/table/builder.ts';
import { clockSeconds } from '../../src/domain/captures/table/clock.ts';
import { sniffDelimiter, splitHeading } from '../../src/domain/captures/table/headings.ts';
import { oddNumber, plainDecimal } from '../../src/domain/captures/table/number.ts';
import type { LoggedTable } from '../../src/domain/captures/table/types.ts';

/** Rows of an unquoted text: all these cases need. */
function rowsOf(text: string): readonly (readonly string[])[] {
  const delimiter = sniffDelimiter(text);
  return text.split('\n').map((line) => line.split(delimiter));
}

function read(text: string): LoggedTable {
  const table = readTable(rowsOf(text));
  if (!table.ok) throw new Error(table.error.message);
  return table.value;
}

function summary({ columns, time }: LoggedTable) {
  return {
    headings: columns.map(({ heading, unitText }) => [heading, unitText]),
    values: columns.map((column) => (column.kind === 'numbers' ? [...column.values] : [...column.codes].map((code) => column.words[code]))),
    seconds: time && [...time.seconds],
  };
}

const forms = [
  {
    label: 'commas, units in brackets, a remark above',
    text: 'Drive of Tuesday\nTime (s),Engine speed (rpm),Lamp\n0.0,800,off\n0.1,810,on',
    expected: { headings: [['Time', 's'], ['Engine speed', 'rpm'], ['Lamp', '']], values: [[0, 0.1], [800, 810], ['off', 'on']], seconds: [0, 0.1] },
  },
  {
    label: 'semicolons, decimal commas, units in a second row, milliseconds',
    text: 't;Speed;Trim\nms;1/min;%\n500;800;3,5\n1500;810;-4,25',
    expected: { headings: [['t', 'ms'], ['Speed', '1/min'], ['Trim', '%']], values: [[500, 1500], [800, 810], [3.5, -4.25]], seconds: [0.5, 1.5] },
  },
  {
    label: 'tabs, clock times, units behind the numbers, no heading',
    text: '12:00:59.5\t12.5 V\n12:01:00.0\t12.6 V\n12:01:00.5\t12.75 V',
    expected: { headings: [['Column 1', 's'], ['Column 2', 'V']], values: [[43259.5, 43260, 43260.5], [12.5, 12.6, 12.75]], seconds: [43259.5, 43260, 43260.5] },
  },
  {
    label: 'square brackets, microseconds, exponents',
    text: 'Time [us]\tCurrent [A]\n0\t1e-3\n10\t2.5E+0\n20\t-3e0',
    expected: { headings: [['Time', 'us'], ['Current', 'A']], values: [[0, 10, 20], [0.001, 2.5, -3]], seconds: [0, 1e-5, 2e-5] },
  },
  {
    label: 'bars, thousands with spaces, readings not taken',
    text: 'seconds|distance\n1|1 234\n2|n/a\n3|12 345.5',
    expected: { headings: [['seconds', ''], ['distance', '']], values: [[1, 2, 3], [1234, Number.NaN, 12345.5]], seconds: [1, 2, 3] },
  },
];

describe('tables of many kinds', () => {
  it.each(forms)('$label', ({ text, expected }) => {
    const table = read(text);
    const found = summary(table);
    expect(found.headings).toEqual(expected.headings);
    expect(found.values).toEqual(expected.values);
    expect(found.seconds?.map((value) => Number(value.toPrecision(12)))).toEqual(expected.seconds);
    expect(table.problems).toEqual([]);
  });

  it('commas that may part thousands everywhere are said to be unsure, and can be set', () => {
    const rows = [['time', 'count'], ['1', '1,234'], ['2', '2,345']];
    const [left, set] = [readTable(rows), readTable(rows, { decimalMark: '.' })];
    expect(left.ok && [left.value.decimalMark, left.value.decimalMarkUnsure]).toEqual([',', true]);
    expect(set.ok && summary(set.value).values[1]).toEqual([1234, 2345]);
  });

  it('a clock that passes midnight goes on', () => {
    expect(summary(read('time\tx\n23:59:59\t1\n00:00:01\t2\n00:00:02\t3')).seconds).toEqual([86399, 86401, 86402]);
  });
});

describe('broken files keep what can be read', () => {
  const text = 'Time (s),Speed (rpm)\n0,800\n1,eight\n\n2,820,7\n3\n1,840\n5,850';
  const table = read(text);
  it('every problem names its line and what was expected', () => {
    expect(table.problems.map(({ line, column, found }) => [line, column, found])).toEqual([
      [3, 'Speed', '"eight"'],
      [5, undefined, '3 cells'],
      [6, undefined, '1 cells'],
      [7, 'Time', 'a time before the one above'],
    ]);
    expect(table.problems.every(({ expected }) => expected.length > 5)).toBe(true);
  });
  it('and the rest is there', () => {
    expect(table.rows).toBe(6);
    expect(summary(table).values).toEqual([[0, 1, 2, 3, 1, 5], [800, Number.NaN, 820, Number.NaN, 840, 850]]);
  });
  it('many problems are counted but not all kept', () => {
    const rows = [['time', 'a'], ...Array.from({ length: 1000 }, (_, row) => [String(row), row < 300 ? '1' : 'oops'])];
    const many = readTable(rows);
    expect(many.ok && [many.value.problemCount, many.value.problems.length, many.value.problems[0]?.line]).toEqual([700, 50, 302]);
  });

  const refusals = [
    { label: 'nothing', rows: [], code: 'empty' },
    { label: 'blank lines', rows: [[''], [' ']], code: 'empty' },
    { label: 'a letter', rows: [['Dear', 'Sir'], ['I', 'write']], code: 'no-numbers' },
    { label: 'one row', rows: [['time', 'speed'], ['1', '2']], code: 'too-few-rows' },
  ];
  it.each(refusals)('refused by name: $label', ({ rows, code }) => {
    const refused = readTable(rows);
    expect(refused.ok ? 'read' : refused.error.code).toBe(code);
  });
});

describe('long tables', () => {
  it('a hundred thousand rows come back as they went in', () => {
    const builder = tableBuilder();
    builder.add(['t', 'x']);
    for (let row = 0; row < 100_000; row += 1) builder.add([(row / 1000).toFixed(3), ((row * 7919) % 1000).toString()]);
    const table = builder.finish();
    if (!table.ok) throw new Error(table.error.message);
    const [time, x] = table.value.columns;
    if (time?.kind !== 'numbers' || x?.kind !== 'numbers') throw new Error('not numbers');
    expect(time.values.every((value, row) => value === row / 1000)).toBe(true);
    expect(x.values.every((value, row) => value === (row * 7919) % 1000)).toBe(true);
  });

  it('rows beyond the limit are left out and said to be', () => {
    const builder = tableBuilder({ mostRows: 2000 });
    let taken = true;
    for (let number = 0; taken && number < 2100; number += 1) taken = builder.add([String(number), '1']);
    const table = builder.finish();
    expect(taken).toBe(false);
    expect(table.ok && table.value.rows).toBe(2000);
    expect(table.ok && table.value.problems[0]).toMatchObject({ line: 2001, found: 'more rows' });
  });
});

describe('numbers in cells', () => {
  it('plain decimals are the nearest double, as the language itself reads them', () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.integer({ min: 0, max: 6 }), (whole, decimals) => {
        const text = (whole / 10 ** decimals).toFixed(decimals);
        expect(plainDecimal(text, '.')).toBe(Number(text));
        expect(plainDecimal(text.replace('.', ','), ',')).toBe(Number(text));
      }),
      { numRuns: 2000 },
    );
  });
  it.each(['', '-', '.', '1.2.3', '1e3', '12a', ' 1', '1,5', '0x10', '--1', '12345678901234567890'])('"%s" is no plain decimal', (text) => {
    expect(plainDecimal(text, '.')).toBeNaN();
  });
  it.each([
    ['1e3', '.', 1000, ''], ['1,5E-2', ',', 0.015, ''], ['−3', '.', -3, ''], [' 12.5 V', '.', 12.5, 'V'], ['1,234.5', '.', 1234.5, ''], ['1.234,5', ',', 1234.5, ''], ['1,234', '.', 1234, ''],
  ] as const)('"%s" with the mark %s', (text, mark, value, rest) => {
    expect(oddNumber(text, mark)).toEqual({ value, rest });
  });
  it.each(['1/min', 'on', '12 apples', '4k7'])('"%s" is no number of a table', (text) => {
    expect(oddNumber(text, '.')).toBeUndefined();
  });
});

describe('clock times', () => {
  it.each([
    ['12:34:56.789', 45296.789], ['02:05.5', 125.5], ['1:02:03', 3723], ['00:00:00', 0], ['12:34:56,25', 45296.25],
  ] as const)('%s', (text, seconds) => expect(clockSeconds(text)).toBeCloseTo(seconds, 9));
  it.each(['12:60:00', '1:99', 'noon', '12', '1.5', '2024-13-01 00:00:00'])('"%s" is none', (text) => expect(clockSeconds(text)).toBeNaN());
  it('dates count in days, leap days too, as the language itself counts them', () => {
    for (const text of ['2024-02-29T12:00:00', '2023-03-01T00:00:01', '1999-12-31T23:59:59']) {
      expect(clockSeconds(text)).toBe(Date.parse(`${text}Z`) / 1000);
    }
  });
});

describe('headings', () => {
  it.each([
    ['Engine speed (rpm)', 'Engine speed', 'rpm'], ['Coolant [°C]', 'Coolant', '°C'], ['Current/A', 'Current', 'A'], ['Pressure, kPa', 'Pressure', 'kPa'], ['Bank 1/2', 'Bank 1/2', ''], ['Long trim B1 (%)', 'Long trim B1', '%'], ['Speed', 'Speed', ''],
  ] as const)('%s', (text, heading, unitText) => expect(splitHeading(text)).toEqual({ heading, unitText }));
  it.each([
    ['a;b;c\n1,5;2,5;3,5\n1;2;3', ';'], ['a\tb\n1,5\t2', '\t'], ['a,b\n1,2\n3,4', ','], ['a|b\n1|2', '|'], ['"x,y";"z"\n1;2', ';'], ['alone\n1\n2', ','],
  ])('%j is parted by %j', (text, delimiter) => expect(sniffDelimiter(text)).toBe(delimiter));
});
