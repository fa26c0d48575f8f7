import { shape } from '../../drawing/shape.ts';
import type { Shape } from '../../drawing/shape.ts';
import type { BankTrims, MapCell } from '../logged/trims.ts';
import { penOf } from './format.ts';
import type { CaptureAnswers, ReportTable } from './types.ts';

const width = 340;
const left = 44;
const rowHeight = 38;
const top = 34;
/** Beyond this a total is worth looking into. Common practice. */
const usualBand = 10;

function span(from: number, to: number): string {
  if (from === 0) return `to ${to}`;
  return Number.isFinite(to) ? `${from}–${to}` : `${from} on`;
}

/** The parts of the map that were driven in: edges that no visited cell has are left out. */
function visited({ map }: BankTrims): { readonly speeds: readonly MapCell[]; readonly loads: readonly MapCell[]; readonly cells: readonly MapCell[] } {
  const cells = map.filter(({ seconds }) => seconds > 0);
  const firstOf = (pick: (cell: MapCell) => number) => [...new Map(cells.map((cell) => [pick(cell), cell])).values()].sort((one, other) => pick(one) - pick(other));
  return { cells, speeds: firstOf(({ speedFrom }) => speedFrom), loads: firstOf(({ loadFrom }) => loadFrom) };
}

/** The trims by speed across and load down, each cell with its mean total and how long it was visited. */
export function trimMapDrawing(bank: BankTrims, answers: CaptureAnswers): Shape {
  const { cells, speeds, loads } = visited(bank);
  const pen = penOf(answers);
  const wide = (width - left) / Math.max(1, speeds.length);
  const height = top + rowHeight * loads.length + 18;
  const place = (cell: MapCell) => ({
    x: left + wide * speeds.findIndex(({ speedFrom }) => speedFrom === cell.speedFrom),
    y: top + rowHeight * loads.findIndex(({ loadFrom }) => loadFrom === cell.loadFrom),
  });
  return shape('svg', { class: 'chart-drawing', viewBox: `0 0 ${width} ${height}`, role: 'img' }, [
    shape('title', {}, `Fuel trims of bank ${bank.bank} by engine speed, rpm, across and load, percent, down: mean total in percent, and seconds spent there.`),
    shape('text', { class: 'chart-label', x: 2, y: 12 }, 'Load, %'),
    shape('text', { class: 'chart-label', x: width, y: 12, 'text-anchor': 'end' }, 'Engine speed, rpm'),
    ...speeds.map(({ speedFrom, speedTo }, column) => shape('text', { class: 'chart-tick', x: left + wide * (column + 0.5), y: top - 6, 'text-anchor': 'middle' }, speeds.length > 5 ? String(speedFrom) : span(speedFrom, speedTo))),
    ...loads.map(({ loadFrom, loadTo }, row) => shape('text', { class: 'chart-tick', x: left - 4, y: top + rowHeight * (row + 0.5) + 4, 'text-anchor': 'end' }, span(loadFrom, loadTo))),
    ...cells.flatMap((cell) => {
      const { x, y } = place(cell);
      const isFar = Math.abs(cell.mean ?? 0) > usualBand;
      return [
        shape('rect', { class: isFar ? 'map-cell is-far' : 'map-cell', x: x + 1, y: y + 1, width: wide - 2, height: rowHeight - 2 }),
        shape('text', { class: isFar ? 'chart-note strong' : 'chart-note', x: x + wide / 2, y: y + 16, 'text-anchor': 'middle' }, pen.signed(cell.mean)),
        shape('text', { class: 'chart-tick', x: x + wide / 2, y: y + 31, 'text-anchor': 'middle' }, `${pen.number(cell.seconds, 0)} s`),
      ];
    }),
  ]);
}

/** The same figures as a table, for the ear and for copying. */
export function trimMapTable(bank: BankTrims, answers: CaptureAnswers): ReportTable {
  const pen = penOf(answers);
  return {
    caption: `Trims of bank ${bank.bank} by speed and load`,
    head: ['Speed, rpm', 'Load, %', 'Mean total, %', 'Scatter, %', 'Time there, s'],
    rows: visited(bank).cells.map((cell) => [span(cell.speedFrom, cell.speedTo), span(cell.loadFrom, cell.loadTo), pen.signed(cell.mean), pen.number(cell.deviation, 1), pen.number(cell.seconds, 0)]),
  };
}
