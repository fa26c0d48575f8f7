import { z } from 'zod';
import { partCosts } from '../domain/diagnosis/types.ts';
import { entryId, otherWords, plainText, sentence, sourceReference } from './common.ts';

/** `content/parts/<id>.yaml`: a match-and-fit sheet. */
export const partSchema = z.strictObject({
  title: plainText,
  otherWords,
  summary: sentence,
  /** Compare old and new, side by side, before unpacking fully. */
  match: z.array(z.strictObject({ feature: plainText, check: sentence })).min(1),
  /** What to renew with it, and why. */
  renewWith: z
    .array(
      z.strictObject({
        part: plainText,
        why: sentence,
        /** Extra minutes when it is done together with the repair. An estimate, common practice. */
        minutesNow: z.number().int().min(0).max(600),
        /** Minutes of a visit of its own, opening and closing up again included. An estimate, common practice. */
        minutesLater: z.number().int().min(0).max(600),
        /** What the part costs, in steps. */
        partCost: z.enum(partCosts),
      }),
    )
    .default([]),
  fit: z.array(z.strictObject({ text: sentence, caution: entryId.optional() })).min(1),
  /** Figures to ask the engine maker's data for; a general fallback only with its source. */
  askMaker: z.array(z.strictObject({ question: sentence, fallback: sentence.optional(), source: sourceReference.optional() })).min(1),
  /** Before starting the engine. */
  beforeStart: z.array(sentence).min(1),
  cautions: z.array(entryId),
  procedures: z.array(entryId).default([]),
  sources: z.array(sourceReference).min(1),
});
