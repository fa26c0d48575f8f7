import { z } from 'zod';
import { entryId, plainText, sourceReference } from './common.ts';

/** `content/calculators/<id>.mdx`: prose for a calculator. The body says what the result means and where the model ends. */
export const calculatorSchema = z.strictObject({
  whenToUse: plainText,
  /** Limits of the model, one each. */
  limits: z.array(plainText).min(1),
  procedures: z.array(entryId).default([]),
  ranges: z.array(entryId).default([]),
  sources: z.array(sourceReference).min(1),
});
