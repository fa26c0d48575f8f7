import { z } from 'zod';
import { ignitionArrangement, injectionArrangement, otherWords, plainText, sentence, sourceReference } from './common.ts';

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
});
