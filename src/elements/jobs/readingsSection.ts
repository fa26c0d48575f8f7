import { readingsCsv } from '../../domain/jobs/readingsTable.ts';
import { reportOf } from '../../domain/jobs/report.ts';
import { element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import type { Bench } from './bench.ts';
import { button, paragraph } from './parts.ts';
import { comparedTable } from './table.ts';

/** What was measured so far, before and after the repair side by side, and the way to a table for a spreadsheet. */
export function readingsSection(bench: Bench): Node[] {
  const { job, derived, book } = bench.session;
  const report = reportOf(job, derived, book, { decimalMark: bench.settings.decimalMark });
  const compared = comparedTable(report.customer.howWeKnow.readings);
  if (!compared) return [paragraph('lead', 'No reading is in the record yet.')];
  const save = button('save-readings', 'second-action', 'Save readings as a table', () => saveTable(bench));
  return [compared, element('p', { class: 'actions' }, save), paragraph('field-hint', 'The last reading of each kind is shown; the saved table holds every one, with limits, sources and meters.')];
}

/** Where the decimal mark is a comma, the cells are parted by semicolons, as spreadsheets there expect. */
function saveTable({ session: { job, derived }, settings: { decimalMark } }: Bench): void {
  const text = readingsCsv(job, derived, { decimalMark, separator: decimalMark === ',' ? ';' : ',' });
  // Spreadsheets take a file without this mark for one in an old alphabet, and spoil the ohm sign.
  downloadText(`\uFEFF${text}`, `readings-${job.id}.csv`, 'text/csv');
}
