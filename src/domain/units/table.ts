import { units } from './table.data.ts';
import type { Dimension, Unit, UnitId } from './types.ts';

const byId: ReadonlyMap<UnitId, Unit> = new Map(units.map((unit) => [unit.id, unit]));

/** The unit with exactly this id, or nothing. */
export function unitById(id: UnitId): Unit | undefined {
  return byId.get(id);
}

/** Every unit of a dimension, in the order people should see them. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return units.filter((unit) => unit.dimension === dimension);
}

/**
 * The unit of this dimension that a person means by `text`: its id, symbol, name or an alias, spaces, dots and hyphens left aside.
 * Case counts only where it must (`mΩ` and `MΩ`). Nothing, when no unit fits or several do.
 */
export function findUnit(text: string, dimension: Dimension): Unit | undefined {
  return bestMatch(plainSpelling(text), unitsOf(dimension));
}

/** Every unit the text may stand for, at most one of each dimension: `K` is a temperature and a temperature difference. */
export function findUnits(text: string): readonly Unit[] {
  const dimensions = [...new Set(units.map((unit) => unit.dimension))];
  return dimensions.map((dimension) => findUnit(text, dimension)).filter((unit) => unit !== undefined);
}

/** Brings the many marks for one thing together: the ohm sign to omega, `℃` to `°C`, `²` to `2`, `N·m` and `ft-lb` to letters alone. */
function plainSpelling(text: string): string {
  return text
    .replaceAll('º', '°')
    .normalize('NFKC')
    .replace(/[\s.·⋅∙•*^_‐‑–-]/gu, '')
    .replace(/^°(?=[CFK])/iu, '')
    .replaceAll('μ', 'u')
    .replace(/Ω|ω/gu, 'ohm');
}

const spellings: ReadonlyMap<Unit, readonly string[]> = new Map(
  units.map((unit) => [unit, [...new Set([unit.id, unit.symbol, unit.name, ...unit.aliases].map(plainSpelling))]]),
);

/**
 * From the strictest comparison to the loosest: as written, the first letter as written, case left aside.
 * A lone m or M is never guessed at: between milli and mega lies a factor of a thousand million.
 */
const comparisons: readonly ((text: string) => string)[] = [
  (text) => text,
  (text) => text.slice(0, 1) + text.slice(1).toLowerCase(),
  (text) => (text === 'M' || text === 'm' ? text : text.toLowerCase()),
];

function bestMatch(spelling: string, candidates: readonly Unit[]): Unit | undefined {
  if (spelling === '') return undefined;
  for (const form of comparisons) {
    const matches = candidates.filter((unit) => spellings.get(unit)?.some((own) => form(own) === form(spelling)));
    if (matches.length > 0) return matches.length === 1 ? matches[0] : undefined;
  }
  return undefined;
}
