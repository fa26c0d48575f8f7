import { placesOf, sharesCylinder } from './places.ts';
import type { CodeAtPlace, CodeFamilyModel, DiagnosisBook, EngineLayout, Hypothesis, Place } from './types.ts';

/** A code, stored or not, never rules a fault in or out by itself: no chance is taken nearer to 0 or 1 than this. */
export const leastCodeChance = 0.001;

/**
 * The place a code names, or undefined when the engine has no such place (the code is then left out of the reckoning).
 * A code without a number names the only place of its kind. Coils are counted in the order of their places. A number above the
 * count of coils is read as that of a cylinder, since some control units letter coils so.
 */
export function placeOfCode(engine: EngineLayout, family: CodeFamilyModel, number: number | undefined): Place | undefined {
  const places = placesOf(engine, family.placeKind);
  if (number === undefined || family.placeKind === 'engine') return places.length === 1 ? places[0] : undefined;
  const counted = places[number - 1];
  if (counted || family.placeKind !== 'coil') return counted;
  return places.find((place) => place.cylinders.includes(number));
}

/** Chance that a code of this family is stored at a place when the hypothesis is true, held within 0.001 to 0.999. */
export function codeChance(hypothesis: Hypothesis, family: CodeFamilyModel, place: Place): number {
  return clamp(ownChance(hypothesis, family, place) ?? family.falseRate);
}

/**
 * Natural logarithm of the likelihood of all the codes read, as a function of the hypothesis: every place of every family
 * counts, with its code stored or absent, taken as independent given the hypothesis. Codes of families that the book does not
 * hold are left out. An empty list means that the memory was read and held nothing.
 */
export function codeLogLikelihood(
  book: DiagnosisBook,
  engine: EngineLayout,
  codes: readonly CodeAtPlace[],
): (hypothesis: Hypothesis) => number {
  const families = book.codeFamilies.map((family) => readFamily(engine, family, codes));
  const whenUnrelated = families.reduce((sum, { sites }) => sum + sites.reduce((part, site) => part + site.whenUnrelated, 0), 0);
  return (hypothesis) => {
    let sum = whenUnrelated;
    for (const { family, sites } of families) {
      // A fault that does not name the family leaves it at the false rate everywhere.
      if (hypothesis.fault?.codes[family.id] === undefined) continue;
      for (const site of sites) {
        const own = ownChance(hypothesis, family, site.place);
        if (own !== undefined) sum += logChance(own, site.stored) - site.whenUnrelated;
      }
    }
    return sum;
  };
}

interface CodeSite {
  readonly place: Place;
  readonly stored: boolean;
  /** Logarithm of the chance of what was read here when no fault is here. */
  readonly whenUnrelated: number;
}

function readFamily(engine: EngineLayout, family: CodeFamilyModel, codes: readonly CodeAtPlace[]) {
  const ofFamily = codes.filter((code) => code.family === family.id);
  const storedAt = new Set(ofFamily.map((code) => placeOfCode(engine, family, code.number)?.id));
  const sites: readonly CodeSite[] = placesOf(engine, family.placeKind).map((place) => {
    const stored = storedAt.has(place.id);
    return { place, stored, whenUnrelated: logChance(family.falseRate, stored) };
  });
  return { family, sites };
}

/** The fault's own chance for the family where its place meets the code's place; undefined otherwise. */
function ownChance(hypothesis: Hypothesis, family: CodeFamilyModel, place: Place): number | undefined {
  const chance = hypothesis.fault?.codes[family.id];
  if (chance === undefined || !hypothesis.place) return undefined;
  return sharesCylinder(hypothesis.place, place) ? chance : undefined;
}

function logChance(chance: number, stored: boolean): number {
  const held = clamp(chance);
  return Math.log(stored ? held : 1 - held);
}

function clamp(chance: number): number {
  return Math.min(1 - leastCodeChance, Math.max(leastCodeChance, chance));
}
