import { z } from 'zod';
import { accessStates, specialTools } from '../domain/diagnosis/types.ts';
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

/** How far the car may be opened up, but for the cover, which has a field of its own. */
const accessState = z.enum(accessStates).exclude(['cover-off']);

/** Chances of the outcomes, by outcome id. They sum to 1 (checked over the whole book). */
const chances = z.record(z.string(), z.number().min(0).max(1));

const step = z.strictObject({
  /** One action. Starts with a verb. */
  text: plainText,
  /** Where the probe, tool or hand goes, if the text does not say it. */
  where: plainText.optional(),
  /** The caution that bites here; its short sentence is printed before the action. */
  caution: entryId.optional(),
  /** The step is for these arrangements only. */
  ignition: z.array(ignitionArrangement).min(1).optional(),
  injection: z.array(injectionArrangement).min(1).optional(),
  /** A reading taken here, judged on the page against the range. Several ranges when it depends on the arrangement. */
  reading: z
    .strictObject({
      label: plainText,
      ranges: z.array(entryId).min(1),
    })
    .optional(),
});

const outcome = z.strictObject({
  id: entryId,
  /** What was found, as the mechanic would say it: `The misfire moved with the coil`. */
  label: sentence,
  /** What it points to, in a sentence or two. */
  meaning: plainText,
  /** Faults it favours. */
  favours: z.array(entryId).default([]),
  /** Procedures to go to next. */
  next: z.array(entryId).default([]),
  /** Set when a judged reading decides this outcome. */
  verdict: z.enum(['inside', 'below', 'above', 'open']).optional(),
});

const likelihood = z.strictObject({
  faults: z.array(entryId).min(1),
  /** When the fault lies where the test was done. */
  here: chances,
  /** When it lies at the place the part was swapped to. Only for tests with a partner. */
  partner: chances.optional(),
  /** When it lies anywhere else; `otherwise` of the procedure when left out. */
  elsewhere: chances.optional(),
});

/**
 * `content/procedures/<id>.mdx`: how to do one job at the bench. The body (MDX) says why it works.
 * Minutes and chances are estimates of common practice; the page says so.
 */
export const procedureSchema = z.strictObject({
  /** As a mechanic says it. */
  title: plainText,
  otherWords,
  /** One sentence: what is done. */
  summary: sentence,
  /** The part of the index it stands in. */
  group: z.enum(['take-in', 'ignition', 'fuel', 'air', 'mechanical', 'repair']),
  /** `look`: eyes and hands, no condemnation rests on it alone. `test`: tells faults apart. `repair`, `proof`: after the finding. */
  kind: z.enum(['look', 'test', 'repair', 'proof']),
  /** What one run of it examines. */
  placeKind,
  /** True when a part is exchanged with another place, so that a second place must be named. */
  needsPartner: z.boolean().default(false),
  /** A finding may rest on it. */
  telling: z.boolean(),
  /** Minutes for a mechanic who has done it before, engine cover off. */
  minutes: z.number().int().min(1).max(480),
  /** Minutes for the same at a further place of the same car, everything still set up. Left out where a place is a job of its own. */
  minutesAgain: z.number().int().min(1).max(480).optional(),
  /** One run shows every cylinder, coil or bank at once, so that the same at another place is not news. */
  showsEveryPlace: z.boolean().default(false),
  /** Special tools it cannot be done without. What every shop has is not among them; a tool that something else can stand in for is left out. */
  needs: z.array(z.enum(specialTools)).default([]),
  /** True when the engine cover has to come off first. Its minutes come on top. */
  needsCoverOff: z.boolean().default(false),
  /** Of `minutes`, how many go into opening the car up so far; saved where that is done already. */
  access: z.partialRecord(accessState, z.number().int().min(1).max(120)).default({}),
  skill: z.enum(['apprentice', 'mechanic', 'specialist']),
  tools: z.array(z.strictObject({ name: plainText, without: plainText.optional() })),
  /** Cold, warm, running; key position. */
  engineState: sentence,
  whoShouldNot: sentence.optional(),
  /** Arrangements it can be done on; all when left out. */
  ignition: z.array(ignitionArrangement).min(1).optional(),
  injection: z.array(injectionArrangement).min(1).optional(),
  /** Why it cannot be done on the others. Needed when `ignition` or `injection` is set. */
  notPossible: sentence.optional(),
  worthIt: plainText,
  proves: plainText,
  provesNot: plainText,
  /** Cautions for the whole job, shown before the first step. */
  cautions: z.array(entryId),
  steps: z.array(step).min(1),
  /** Two or more for looks and tests; what was found and what follows. */
  outcomes: z.array(outcome).min(1),
  /** Chance of each outcome for the faults it tells apart. Empty for repairs. */
  likelihoods: z.array(likelihood).default([]),
  /** Chance of each outcome for every other fault, wherever it is. Needed when `likelihoods` is not empty. */
  otherwise: chances.optional(),
  /** Pictures shown after the steps. */
  drawings,
  /** Usual mistakes, worst first. */
  mistakes: z.array(plainText).min(1),
  sources: z.array(sourceReference).min(1),
  /** Signs in the complaint that make it worth doing early. */
  signs: z.array(complaintSign).default([]),
});
