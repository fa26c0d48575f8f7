import { z } from 'zod';
import { longest, mostFigures } from '../domain/figures/types.ts';
import { entryId, ignitionArrangement, injectionArrangement, otherWords, plainText, sentence, sourceReference } from './common.ts';

/** The engine maker's limits for one range of the book, as the shop entered them. */
const makerFigure = z.strictObject({
  /** Id of a range of the book. */
  range: entryId,
  /** Limits in `unit`. One end may be left open. */
  low: z.number().optional(),
  high: z.number().optional(),
  /** Id of the unit table; of the same kind as that of the range. */
  unit: plainText,
  /** The temperature the limits hold at, °C. As the range of the book when left out. */
  referenceTemperature: z.number().min(-40).max(150).optional(),
  /** Where the figure was read: document, edition, page. */
  from: plainText.max(longest.from),
  enteredBy: plainText.max(longest.enteredBy),
  /** The day it was entered. */
  enteredOn: z.string(),
});

/** `content/engines/<id>.yaml`: a layout of cylinders with a firing order. No named vehicle. */
export const engineSchema = z.strictObject({
  title: plainText,
  otherWords,
  cylinders: z.number().int().min(1).max(16),
  form: z.enum(['inline', 'vee', 'flat']),
  /** Cylinder numbers along each bank from the front (the end away from the gearbox). */
  banks: z.array(z.array(z.number().int().min(1)).min(1)).min(1),
  firingOrder: z.array(z.number().int().min(1)).min(1),
  /** Arrangements met on this layout; the job asks which. */
  ignition: z.array(ignitionArrangement).min(1),
  injection: z.array(injectionArrangement).min(1),
  /** Even firing, so that companions can be worked out from the order. */
  evenFire: z.boolean().default(true),
  numbering: sentence,
  source: sourceReference,
  note: plainText.optional(),
  /** For an engine of the shop's own: the limits of its maker. They come before the book's general figures and are marked wherever they are used. */
  makerFigures: z.array(makerFigure).max(mostFigures).default([]),
});
