import { perCent } from '../diagnosis/labels.ts';
import type { Belief, EngineLayout } from '../diagnosis/types.ts';

/** How far each cylinder is suspected: the belief in every fault that sits at it or at the coil, neighbours or bank it belongs to. */
export function suspicionByCylinder(layout: EngineLayout, beliefs: readonly Belief[]): ReadonlyMap<number, number> {
  const suspicion = new Map(layout.firingOrder.map((cylinder) => [cylinder, 0]));
  for (const { hypothesis, probability } of beliefs) {
    const { place } = hypothesis;
    // What concerns the whole engine points at no cylinder.
    if (place === undefined || place.cylinders.length === layout.cylinders) continue;
    for (const cylinder of place.cylinders) suspicion.set(cylinder, Math.min(1, (suspicion.get(cylinder) ?? 0) + probability));
  }
  return suspicion;
}

/** Cylinders whose share lies this close to the highest are named together: companions of one coil stand level. */
const level = 0.01;

/** The shading of the drawing said in words: `Most suspected: cylinder 3, 62 %.` or `Most suspected: cylinders 1 and 4, 81 %.` */
export function suspicionSentence(suspicion: ReadonlyMap<number, number>): string {
  const highest = Math.max(0, ...suspicion.values());
  const named = [...suspicion].filter(([, share]) => share > highest - level).map(([cylinder]) => cylinder).sort((one, other) => one - other);
  if (highest < level || named.length === suspicion.size) return 'No cylinder is suspected more than the others.';
  const last = named.at(-1);
  const cylinders = named.length === 1 ? `cylinder ${last}` : `cylinders ${named.slice(0, -1).join(', ')} and ${last}`;
  return `Most suspected: ${cylinders}, ${perCent(highest)}.`;
}
