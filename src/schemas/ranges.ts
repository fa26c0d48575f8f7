import { z } from 'zod';
import { entryId, ignitionArrangement, injectionArrangement, otherWords, plainText, sentence, sourceReference } from './common.ts';

/** What a reading beyond one end of the range suggests. */
const suggestion = z.strictObject({
  /** One or two sentences a mechanic can act on. */
  text: plainText,
  /** Faults it speaks for. */
  faults: z.array(entryId).default([]),
});

/** `content/ranges/<id>.yaml`: the limits of one quantity for one kind of component. */
export const rangeSchema = z
  .strictObject({
    quantity: entryId,
    /** As a mechanic would name it: `Coil primary resistance, coil on plug`. */
    title: plainText,
    otherWords,
    /** Limits in `unit`. One end may be left open. */
    low: z.number().optional(),
    high: z.number().optional(),
    /** Id of the unit table. */
    unit: z.string(),
    /** The temperature the limits hold at, °C. Needed when the quantity varies with temperature. */
    referenceTemperature: z.number().min(-40).max(150).optional(),
    /** Other conditions: engine warm, key on, engine off … */
    conditions: sentence.optional(),
    /** Arrangements it holds for; all when left out. */
    ignition: z.array(ignitionArrangement).min(1).optional(),
    injection: z.array(injectionArrangement).min(1).optional(),
    below: suggestion.optional(),
    inside: sentence,
    above: suggestion.optional(),
    /** What an open circuit (`OL`) means here. */
    open: suggestion.optional(),
    /** General figures guide only: the engine maker's figure comes first. False only for limits set by a rule that holds for every engine. */
    makerFirst: z.boolean().default(true),
    source: sourceReference,
    note: plainText.optional(),
  })
  .refine((range) => range.low !== undefined || range.high !== undefined, {
    message: 'needs low, high or both',
    path: ['low'],
  });
