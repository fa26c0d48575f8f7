import { z } from 'zod';
import { partCosts } from '../domain/diagnosis/types.ts';
import {
  complaintSign,
  drawings,
  entryId,
  ignitionArrangement,
  injectionArrangement,
  otherWords,
  placeKind,
  plainText,
  sentence,
  sourceReference,
} from './common.ts';

/** `content/faults/<id>.yaml`: one way to fail. Weights and chances are estimates of common practice; the page says so. */
export const faultSchema = z.strictObject({
  title: plainText,
  otherWords,
  /** The part that fails. */
  component: plainText,
  placeKind,
  /** How common against the other faults: 10 very common, 1 now and then, 0.2 rare. */
  weight: z.number().positive().max(100),
  /** One or two sentences: what happens. */
  meaning: plainText,
  signs: z.array(sentence).min(1),
  /** Factor on the weight for each sign in the complaint. */
  complaint: z.partialRecord(complaintSign, z.number().positive().max(20)).default({}),
  /** Chance that a code of a family (id in `content/codes`) is stored at the fault's own place. */
  codes: z.record(entryId, z.number().min(0).max(1)),
  ignition: z.array(ignitionArrangement).min(1).optional(),
  injection: z.array(injectionArrangement).min(1).optional(),
  repair: plainText,
  repairMinutes: z.number().int().min(1).max(2400),
  /** What the part costs, in steps. */
  partCost: z.enum(partCosts),
  /** Match-and-fit sheet of the part that is renewed. */
  part: entryId.optional(),
  /** The sheet where an arrangement has another part: a coil pack in place of a coil on its plug. */
  partByIgnition: z.partialRecord(ignitionArrangement, entryId).default({}),
  /** How it is fitted. */
  repairProcedure: entryId.optional(),
  /** Procedures that tell it from the others, most telling first. */
  tellsApart: z.array(entryId).min(1),
  /** Pictures shown after the signs. */
  drawings,
  /** What weights and chances rest on. */
  source: sourceReference,
});
