/** A row of a table: from x follows y. Rows stand in order of rising x. */
export type Row = readonly [x: number, y: number];

/** y at x on straight lines between the rows; beyond either end the y of that end. */
export function interpolate(rows: readonly Row[], x: number): number {
  const above = rows.findIndex(([rowX]) => rowX >= x);
  const upper = rows[above] ?? rows.at(-1);
  const lower = rows[above - 1] ?? upper;
  if (upper === undefined || lower === undefined) throw new RangeError('A table needs at least one row.');
  const width = upper[0] - lower[0];
  if (above < 0 || width === 0) return upper[1];
  return lower[1] + ((upper[1] - lower[1]) * (x - lower[0])) / width;
}
