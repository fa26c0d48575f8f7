import { z } from 'zod';
import { otherWords, plainText, sentence } from './common.ts';

/** `content/quantities/<id>.yaml`: what is measured. */
export const quantitySchema = z.strictObject({
  title: plainText,
  otherWords,
  /** The letter it is written with, such as `R₁`. */
  symbol: plainText.optional(),
  /** Unit that readings are taken in when none is typed; an id of the unit table, such as `ohm`. */
  unit: z.string(),
  /** `copper` when a winding's resistance is meant; the reading is then referred to the range's temperature. */
  variesWithTemperature: z.enum(['none', 'copper']).default('none'),
  /** For pressures: read against the air outside (`gauge`) or against nothing (`absolute`). */
  pressure: z.enum(['gauge', 'absolute']).optional(),
  /** What to measure it with, in general terms. */
  meterNeeded: sentence,
  /** Which end of the range is the worry. */
  worry: z.enum(['low', 'high', 'both']),
  /** Accuracy assumed until the mechanic says which meter is used: percent of reading and counts. */
  usualMeter: z.strictObject({ percent: z.number().min(0).max(100), counts: z.number().min(0).max(100) }),
  /** Whether resistance of the leads is to be taken off. */
  leadsMatter: z.boolean().default(false),
  /** What it is, in a sentence or two. */
  meaning: plainText,
});
