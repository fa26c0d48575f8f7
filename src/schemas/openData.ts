import { z } from 'zod';
import { calculatorSchema } from './calculators.ts';
import { code, codeFamilySchema } from './codes.ts';
import { entryId, plainText } from './common.ts';
import { schemas, type ContentKind } from './index.ts';

/** One code of a family, with all that the family says about it in place of the list of its codes. */
const codeItem = z.strictObject({
  /** The code itself, such as P0303. */
  id: code,
  /** The family: the name of its file in `content/codes`. */
  family: entryId,
  /** The cylinder, coil or bank it names, if any. */
  number: z.number().int().min(1).max(16).optional(),
  ...codeFamilySchema.omit({ members: true, run: true }).shape,
});

const input = z.strictObject({
  name: plainText,
  label: plainText,
  kind: z.enum(['quantity', 'quantity-list', 'choice', 'text']),
  dimension: plainText.optional(),
  /** Assumed when none is typed, and the unit of `minimum` and `maximum`. */
  unit: plainText.optional(),
  pressure: z.enum(['gauge', 'absolute']).optional(),
  optional: z.boolean(),
  default: z.string().optional(),
  choices: z.array(z.strictObject({ value: z.string(), label: plainText })).optional(),
  minimum: z.number().optional(),
  maximum: z.number().optional(),
  exclusiveMinimum: z.boolean().optional(),
  wholeNumber: z.boolean().optional(),
  hint: plainText.optional(),
  advanced: z.boolean().optional(),
});

const output = z.strictObject({
  name: plainText,
  label: plainText,
  kind: z.enum(['quantity', 'quantity-list', 'word', 'word-list']),
  unit: plainText.optional(),
  decimals: z.number().int().min(0).optional(),
  rounding: z.enum(['up']).optional(),
  uncertaintyFrom: plainText.optional(),
  words: z.record(z.string(), plainText).optional(),
  main: z.boolean().optional(),
});

/** A value in this unit is `(value + offset) × factor` in the base unit of its dimension. */
const unit = z.strictObject({
  id: plainText,
  symbol: z.string(),
  name: plainText,
  dimension: plainText,
  factor: z.number().positive(),
  offset: z.number(),
});

/** What a calculator takes and gives, the units these are in, and what its entry in `content/calculators` says. */
const calculatorItem = z.strictObject({
  id: entryId,
  title: plainText,
  summary: plainText,
  inputs: z.array(input).min(1),
  outputs: z.array(output).min(1),
  units: z.array(unit),
  ...calculatorSchema.shape,
});

/** JSON Schema cannot be made from a rule across fields, so the rule of ranges is said in its own words. */
const rangeItem = z
  .strictObject({ id: entryId, ...schemas.ranges.shape })
  .meta({ anyOf: [{ required: ['low'] }, { required: ['high'] }] });

/** One item of the open data of each kind: the entry with its id. */
export const openDataItems = {
  sources: z.strictObject({ id: entryId, ...schemas.sources.shape }),
  quantities: z.strictObject({ id: entryId, ...schemas.quantities.shape }),
  ranges: rangeItem,
  procedures: z.strictObject({ id: entryId, ...schemas.procedures.shape }),
  faults: z.strictObject({ id: entryId, ...schemas.faults.shape }),
  codes: codeItem,
  cautions: z.strictObject({ id: entryId, ...schemas.cautions.shape }),
  parts: z.strictObject({ id: entryId, ...schemas.parts.shape }),
  engines: z.strictObject({ id: entryId, ...schemas.engines.shape }),
  calculators: calculatorItem,
  glossary: z.strictObject({ id: entryId, ...schemas.glossary.shape }),
} as const satisfies Record<ContentKind, z.ZodType>;

export type OpenDataItem<Kind extends ContentKind> = z.output<(typeof openDataItems)[Kind]>;

/** The JSON Schema (draft 2020-12) of `data/<kind>.json`: a version of the book and the items. */
export function openDataJsonSchema(kind: ContentKind): object {
  const file = z
    .strictObject({ version: plainText, items: z.array(openDataItems[kind]) })
    .meta({ title: `data/${kind}.json`, description: `Every entry of the kind "${kind}" in the book, in order of id.` });
  return z.toJSONSchema(file, { target: 'draft-2020-12', io: 'output' });
}
