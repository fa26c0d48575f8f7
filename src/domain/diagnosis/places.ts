import type { EngineLayout, Place, PlaceKind } from './types.ts';

/** Where a fault lies, seen from where a test was done. */
export type Relation = 'here' | 'partner' | 'elsewhere';

/**
 * Every place of a kind on this engine, in the order of their numbers (neighbours: along each bank). Empty where the engine has
 * none: no neighbours with one cylinder.
 */
export function placesOf(engine: EngineLayout, kind: PlaceKind): readonly Place[] {
  switch (kind) {
    case 'cylinder':
      return everyCylinder(engine).map(cylinderPlace);
    case 'coil':
      return coilPlaces(engine);
    case 'neighbours':
      return engine.banks.flatMap(neighboursOf);
    case 'bank':
      return engine.banks.map((cylinders, index) => ({
        kind: 'bank',
        id: `bank-${index + 1}`,
        label: `bank ${index + 1}`,
        cylinders,
      }));
    case 'engine':
      return [{ kind: 'engine', id: 'engine', label: 'the whole engine', cylinders: everyCylinder(engine) }];
  }
}

const placeKinds: readonly PlaceKind[] = ['cylinder', 'coil', 'neighbours', 'bank', 'engine'];

/** The place with this id (such as `cylinder-3`), or undefined when the engine has no such place. */
export function placeById(engine: EngineLayout, id: string): Place | undefined {
  for (const kind of placeKinds) {
    const found = placesOf(engine, kind).find((place) => place.id === id);
    if (found) return found;
  }
  return undefined;
}

export function covers(place: Place, cylinder: number): boolean {
  return place.cylinders.includes(cylinder);
}

/** True when two places have a cylinder in common. */
export function sharesCylinder(one: Place, other: Place): boolean {
  // The whole engine meets everything; answered first because it is asked thousands of times.
  if (one.kind === 'engine' || other.kind === 'engine') return true;
  return one.cylinders.some((cylinder) => other.cylinders.includes(cylinder));
}

/** Where the fault lies seen from the test: at its place, else at the place a part was swapped to, else elsewhere. */
export function relation(faultPlace: Place, testPlace: Place, partnerPlace?: Place): Relation {
  if (sharesCylinder(faultPlace, testPlace)) return 'here';
  if (partnerPlace && sharesCylinder(faultPlace, partnerPlace)) return 'partner';
  return 'elsewhere';
}

function everyCylinder(engine: EngineLayout): readonly number[] {
  return Array.from({ length: engine.cylinders }, (_, index) => index + 1);
}

function cylinderPlace(cylinder: number): Place {
  return { kind: 'cylinder', id: `cylinder-${cylinder}`, label: `cylinder ${cylinder}`, cylinders: [cylinder] };
}

function coilPlaces(engine: EngineLayout): readonly Place[] {
  if (engine.ignition === 'distributor') {
    return [{ kind: 'coil', id: 'coil', label: 'the coil', cylinders: everyCylinder(engine) }];
  }
  if (engine.ignition === 'wasted-spark') {
    return engine.coilPairs.map((pair) => ({
      kind: 'coil',
      id: `coil-${pair[0]}-${pair[1]}`,
      label: `coil for ${pair[0]} and ${pair[1]}`,
      cylinders: pair,
    }));
  }
  return everyCylinder(engine).map((cylinder) => ({
    kind: 'coil',
    id: `coil-${cylinder}`,
    label: `coil of cylinder ${cylinder}`,
    cylinders: [cylinder],
  }));
}

function neighboursOf(bank: readonly number[]): readonly Place[] {
  const places: Place[] = [];
  bank.forEach((cylinder, index) => {
    const next = bank[index + 1];
    if (next === undefined) return;
    const [low, high] = cylinder < next ? [cylinder, next] : [next, cylinder];
    places.push({
      kind: 'neighbours',
      id: `neighbours-${low}-${high}`,
      label: `cylinders ${low} and ${high}`,
      cylinders: [low, high],
    });
  });
  return places;
}
