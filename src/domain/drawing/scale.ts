/** Round numbers that split a range into about `count` steps: 1, 2 or 5 times a power of ten. */
export function niceTicks(from: number, to: number, count: number): readonly number[] {
  if (!(to > from)) return [from];
  const rough = (to - from) / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)));
}

/** A range widened to hold every value, with zero where it is near. */
export function niceRange(values: readonly number[]): { readonly from: number; readonly to: number } {
  const known = values.filter(Number.isFinite);
  if (known.length === 0) return { from: 0, to: 1 };
  const least = Math.min(...known);
  const most = Math.max(...known);
  const spread = most - least || Math.abs(most) || 1;
  const from = least >= 0 && least < spread ? 0 : least - spread * 0.08;
  const to = most <= 0 && -most < spread ? 0 : most + spread * 0.08;
  return { from, to };
}
