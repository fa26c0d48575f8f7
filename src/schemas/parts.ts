import { z } from 'zod';
import { entryId, otherWords, plainText, sentence, sourceReference } from './common.ts';

/** `content/parts/<id>.yaml`: a match-and-fit sheet. */
export const partSchema = z.strictObject({
  title: plainText,
  otherWords,
  summary: sentence,
  /** Compare old and new, side by side, before unpacking fully. */
  match: z.array(z.strictObject({ feature: plainText, check: sentence })).min(1),
  /** What to renew with it, and why. */
  renewWith: z.array(z.strictObject({ part: plainText, why: sentence })).default([]),
  fit: z.array(z.strictObject({ text: sentence, caution: entryId.optional() })).min(1),
  /** Figures to ask the engine maker's data for; a general fallback only with its source. */
  askMaker: z.array(z.strictObject({ question: sentence, fallback: sentence.optional(), source: sourceReference.optional() })).min(1),
  /** Before starting the engine. */
  beforeStart: z.array(sentence).min(1),
  cautions: z.array(entryId),
  procedures: z.array(entryId).default([]),
  sources: z.array(sourceReference).min(1),
});
