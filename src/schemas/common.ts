import { z } from 'zod';
import { complaintSigns, ignitionArrangements, injectionArrangements, placeKinds } from '../domain/diagnosis/types.ts';
import { illustrationIds } from '../domain/drawing/registry.ts';

/** The name of another entry: the name of its file, in lower case with hyphens. */
export const entryId = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'an id in lower case with hyphens, such as coil-primary-coil-on-plug');

/** A line or paragraph of plain text; no markup. */
export const plainText = z.string().trim().min(1, 'some text');

/** A question answered in one sentence. */
export const sentence = plainText.max(320, 'at most 320 characters');

/** Where a figure or statement comes from: a file in `content/sources`, and the clause, table or page in it. */
export const sourceReference = z.strictObject({
  id: entryId,
  /** Clause, section, table or page. Needed for standards and regulations (checked over the whole book). */
  place: plainText.optional(),
});

export const ignitionArrangement = z.enum(ignitionArrangements);
export const injectionArrangement = z.enum(injectionArrangements);

/** Where a fault can sit, or a test is done. */
export const placeKind = z.enum(placeKinds);

/** What the customer can tell that makes some faults likelier. */
export const complaintSign = z.enum(complaintSigns);

/** Other words people search by. */
export const otherWords = z.array(plainText).default([]);

/** Pictures shown beside the text; ids of `src/domain/drawing/registry.ts`. */
export const drawings = z.array(z.enum(illustrationIds)).default([]);
