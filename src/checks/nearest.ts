/** Single-letter insertions, deletions, replacements and swaps of neighbours between two words (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const replaced = (previous[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      const swap = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      const swapped = swap ? (beforePrevious[column - 2] ?? 0) + 1 : Infinity;
      current.push(Math.min(replaced, swapped, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    [beforePrevious, previous] = [previous, current];
  }
  return previous[b.length] ?? 0;
}

/** The word that was probably meant: the one that begins with what was written, or differs in at most a third of its letters. */
export function nearest(word: string, choices: Iterable<string>): string | undefined {
  const written = word.toLowerCase();
  let best: string | undefined;
  let bestDistance = Infinity;
  for (const choice of choices) {
    const begun = written.length >= 3 && choice.toLowerCase().startsWith(written);
    const distance = begun ? 1 : editDistance(written, choice.toLowerCase());
    if (distance < bestDistance) [best, bestDistance] = [choice, distance];
  }
  return best !== undefined && bestDistance <= Math.max(1, Math.ceil(best.length / 3)) ? best : undefined;
}

/** `; the nearest is "low"`, or nothing when no choice is near. */
export function nearestClause(word: string, choices: Iterable<string>): string {
  const near = nearest(word, choices);
  return near === undefined ? '' : `; the nearest is "${near}"`;
}
