import type { ComparedReading } from '../../domain/jobs/report.ts';
import { element } from '../dom.ts';

/** A table that scrolls sideways by itself where it is too wide; undefined where it would be empty. */
export function table(className: string, heads: readonly string[], rows: readonly (readonly string[])[]): HTMLElement | undefined {
  if (rows.length === 0) return undefined;
  const cells = (tag: 'th' | 'td', words: readonly string[]): HTMLElement[] =>
    words.map((word) => element(tag, tag === 'th' ? { scope: 'col' } : {}, word));
  const made = element(
    'table',
    { class: className },
    element('thead', {}, element('tr', {}, ...cells('th', heads))),
    element('tbody', {}, ...rows.map((row) => element('tr', {}, ...cells('td', row)))),
  );
  return element('div', { class: 'table-scroll', tabindex: 0, role: 'region', 'aria-label': heads.join(', ') }, made);
}

/** The same quantity before and after the repair, side by side. */
export function comparedTable(readings: readonly ComparedReading[]): HTMLElement | undefined {
  const words = (side: ComparedReading['before']): string => (side ? `${side.reading}, ${side.verdict}` : '–');
  const rows = readings.map((reading) => [reading.title, words(reading.before), words(reading.after), `${reading.limits} (${reading.source})`]);
  return table('sheet-table', ['Measured', 'Before', 'After', 'Should be'], rows);
}
