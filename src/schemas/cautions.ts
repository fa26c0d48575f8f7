import { z } from 'zod';
import { otherWords, plainText, sentence, sourceReference } from './common.ts';

/** `content/cautions/<id>.yaml`: a way to be hurt, and what keeps it from happening. */
export const cautionSchema = z.strictObject({
  title: plainText,
  otherWords,
  /** The sentence printed at a step, before the action. */
  short: sentence,
  severity: z.enum(['danger', 'warning', 'care']),
  hazard: plainText,
  whoIsAtRisk: plainText,
  /** What to do, in order. */
  do: z.array(sentence).min(1),
  /** When to stop. */
  stopFor: z.array(sentence).min(1),
  /** Whose rules come first: local code, engine maker, licensed trade. */
  defersTo: plainText,
  /** Words in a step that call for this caution (checked over the whole book). */
  hazardWords: z.array(plainText).default([]),
  sources: z.array(sourceReference).min(1),
});
