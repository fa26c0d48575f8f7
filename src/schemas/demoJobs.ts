import { z } from 'zod';
import { lampStates, proofChecks, proofCheckStates } from '../domain/jobs/types.ts';
import { complaintSign, entryId, ignitionArrangement, injectionArrangement, plainText, sentence } from './common.ts';

/** Minutes since the job was opened. */
const minute = z.number().min(0);
/** As a job writes it: `cylinder-2`, `coil-2-3`, `bank-1`, `engine`. */
const place = entryId;
const yesNoUnknown = z.enum(['yes', 'no', 'unknown']);
const minutesAndKind = <const Kind extends string>(kind: Kind) => ({ kind: z.literal(kind), minute });
const faultAtPlace = { fault: entryId, place };

/** One thing that was done, in the order of the work. */
export const demoStep = z.discriminatedUnion('kind', [
  z.strictObject({ ...minutesAndKind('test'), test: entryId, place, partner: place.optional(), outcome: entryId, note: z.string().default('') }),
  z.strictObject({
    ...minutesAndKind('reading'),
    test: entryId.optional(),
    range: entryId,
    place,
    /** As typed, with its unit. */
    text: plainText,
    /** Of the part, °C. */
    temperature: z.number(),
    /** One of those under `meter`. */
    meter: z.string(),
  }),
  z.strictObject({ ...minutesAndKind('count'), misfires: z.number().int(), revolutions: z.number().int(), how: plainText }),
  z.strictObject({ ...minutesAndKind('finding'), ...faultAtPlace }),
  z.strictObject({ ...minutesAndKind('match'), part: entryId, matches: z.boolean() }),
  z.strictObject({ ...minutesAndKind('repair'), ...faultAtPlace, what: plainText, minutes: z.number() }),
  z.strictObject(minutesAndKind('clear')),
  z.strictObject({ ...minutesAndKind('reread'), text: z.string() }),
  z.strictObject({
    ...minutesAndKind('proof-run'),
    revolutions: z.number().int(),
    minutes: z.number(),
    misfires: z.number().int(),
    similarConditions: yesNoUnknown,
    /** rpm. */
    speed: z.number().positive().optional(),
    /** Calculated load, percent. */
    load: z.number().min(0).max(100).optional(),
    result: z.enum(['quiet', 'returned']),
  }),
  z.strictObject({ ...minutesAndKind('check'), check: z.enum(proofChecks), state: z.enum(proofCheckStates), note: z.string() }),
  z.strictObject({ ...minutesAndKind('hand-over'), to: z.string() }),
]);

/** What this car answers to a look or a test. Left out, the place (or the partner of a swap) is every one that is not named otherwise. */
export const demoAnswer = z.strictObject({ test: entryId, place: place.optional(), partner: place.optional(), outcome: entryId });

/** `seeds/jobs/<id>.yaml`: an invented job, told as it was done, and what its car answers to whatever else might be tried. */
export const demoJobSchema = z.strictObject({
  id: entryId,
  title: plainText,
  /** What the job shows. */
  sentence,
  invented: z.literal(true),
  /** The words shown on screen. */
  note: plainText,
  garage: plainText,
  car: plainText,
  customerReference: z.string(),
  engine: z.strictObject({ id: entryId, ignition: ignitionArrangement, injection: injectionArrangement }),
  makerFigures: z.array(
    z.strictObject({ range: entryId, low: z.number().optional(), high: z.number().optional(), unit: z.string(), from: plainText }),
  ),
  meter: z.record(z.string(), z.strictObject({ name: plainText, percent: z.number(), counts: z.number() })),
  /** What is really wrong with the car. */
  truth: z.strictObject(faultAtPlace),
  complaint: z.strictObject({ text: plainText, signs: z.array(complaintSign), lamp: z.enum(lampStates) }),
  /** The memory as it was read; empty text: it held none. */
  codes: z.strictObject({ minute, text: z.string() }),
  /** Conditions stored with the code; left out where the memory held none. */
  frame: z
    .strictObject({
      code: z.string(),
      speed: z.number().positive(),
      load: z.number().min(0).max(100).optional(),
      coolant: z.number().optional(),
      warm: yesNoUnknown,
    })
    .optional(),
  story: z.array(demoStep).min(1),
  answers: z.array(demoAnswer).min(1),
});

export type DemoStory = z.output<typeof demoJobSchema>;
export type DemoStep = z.output<typeof demoStep>;
export type DemoAnswer = z.output<typeof demoAnswer>;
