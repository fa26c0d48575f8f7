import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import Papa from 'papaparse';
import { matchColumns } from '../../domain/captures/columns/match.ts';
import { reportCapture } from '../../domain/captures/report/report.ts';
import { tableBuilder } from '../../domain/captures/table/builder.ts';
import { median, type Measurement } from './measurement.ts';

const rows = 1_000_000;
/** As the page's worker reads a file. */
const sliceSize = 1 << 20;
const runs = 7;
/** Reading, columns and analysis together against the library that parts the text into cells, alone, in the same mode. */
const LIMIT = 1.5;

/** One second of coil current, a reading each microsecond: a charge of 3 ms every 40 ms, with the steps of a converter. */
function coilCurrentText(): string {
  const lines = ['Time (s),Coil current (A)'];
  for (let row = 0; row < rows; row += 1) {
    const since = ((row / 1000) % 40) - 1;
    const current = since > 0 && since < 3 ? 15 * (1 - Math.exp(-since / 5)) : 0;
    lines.push(`${(row / 1e6).toFixed(6)},${(current + ((row * 7919) % 100) / 5000).toFixed(3)}`);
  }
  return lines.join('\n');
}

/** Gives the rows of a text slice by slice. */
function eachSlice(text: string, take: (slice: readonly (readonly string[])[]) => void): void {
  const chunk = ({ data }: Papa.ParseResult<string[]>): void => take(data);
  Papa.parse<string[]>(text, { delimiter: ',', chunkSize: sliceSize, skipEmptyLines: false, chunk } as Papa.ParseConfig<string[]> & { chunk: typeof chunk });
}

function readAndAnalyse(text: string): void {
  const builder = tableBuilder({ expectedRows: rows });
  eachSlice(text, (slice) => {
    for (const row of slice) builder.add(row);
  });
  const table = builder.finish();
  if (!table.ok) throw new Error(table.error.message);
  const report = reportCapture('coil-current', { table: table.value, matches: matchColumns(table.value), answers: { firingOrder: [1, 3, 4, 2] } });
  if (!report.ok) throw new Error(report.error.message);
}

/** So that no run pays for what the one before left lying about. */
function collectGarbage(): void {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
}

/** Of the processor, collecting of garbage included: what else the machine does at the time does not count. */
function milliseconds(work: () => void): number {
  collectGarbage();
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** A table of a million rows and two columns. The two are timed in turns. */
export function measureCaptures(): Measurement[] {
  const text = coilCurrentText();
  const pairs = Array.from({ length: runs + 1 }, () => {
    let cells = 0;
    const alone = milliseconds(() => eachSlice(text, (slice) => (cells += slice.length)));
    if (cells !== rows + 1) throw new Error(`The library gave ${cells} rows.`);
    return { alone, whole: milliseconds(() => readAndAnalyse(text)) };
  }).slice(1);
  const group = `${rows} rows of coil current, processor time, Node`;
  const alone = median(pairs.map((pair) => pair.alone));
  const whole = median(pairs.map((pair) => pair.whole));
  return [
    { group, name: 'CSV library alone', value: alone, unit: 'ms' },
    { group, name: 'read and analysed', value: whole, unit: 'ms' },
    { group, name: 'against the library alone', value: median(pairs.map((pair) => pair.whole / pair.alone)), unit: 'times', limit: LIMIT },
  ];
}
