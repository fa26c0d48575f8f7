import { z } from 'zod';
import { entryId, otherWords, plainText, sentence, sourceReference } from './common.ts';

/** A standard trouble code. */
export const code = z.string().regex(/^[PCBU][0-3][0-9A-F]{3}$/, 'a trouble code such as P0303');

/**
 * `content/codes/<id>.yaml`: a family of standard trouble codes that mean the same at different places.
 * Titles may use `{number}` (cylinder, coil or bank) and `{letter}` (A for 1, B for 2 …).
 */
export const codeFamilySchema = z.strictObject({
  title: sentence,
  otherWords,
  /** What the number in the code counts. */
  counts: z.enum(['cylinder', 'coil', 'bank', 'none']),
  /** The codes: `number` is the place it names. Either written one by one … */
  members: z.array(z.strictObject({ code, number: z.number().int().min(1).max(16).optional(), title: sentence.optional() })).default([]),
  /** … or as a run counted in decimal digits: P0301 to P0312 are places 1 to 12. */
  run: z.strictObject({ first: code, last: code, step: z.number().int().min(1).default(1), firstNumber: z.number().int().min(1).default(1) }).optional(),
  /** In our own words; what the control unit saw, not what to fit. */
  meaning: plainText,
  area: z.enum(['misfire', 'ignition', 'injection', 'mixture', 'air', 'sensors', 'emission', 'module', 'network']),
  /** What to look at first, in order. */
  lookFirst: z.array(sentence).min(1),
  /** Procedures to go to, most useful first. */
  procedures: z.array(entryId).min(1),
  /** Faults that set it. */
  faults: z.array(entryId).default([]),
  /** Chance that such a code is stored at a place that is not at fault (an estimate). */
  falseRate: z.number().min(0).max(1),
  /** For the meaning. */
  source: sourceReference,
  note: plainText.optional(),
});
