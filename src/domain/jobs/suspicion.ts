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

/** The shading of the drawing said in words: `Most suspected: cylinder 3, 62 %.` */
export function suspicionSentence(suspicion: ReadonlyMap<number, number>): string {
  const [most] = [...suspicion].sort(([, one], [, other]) => other - one);
  return most === undefined || most[1] < 0.01 ? 'No cylinder is suspected more than the others.' : `Most suspected: cylinder ${most[0]}, ${perCent(most[1])}.`;
}
