import type { z } from 'zod';
import { calculatorSchema } from './calculators.ts';
import { cautionSchema } from './cautions.ts';
import { codeFamilySchema } from './codes.ts';
import { engineSchema } from './engines.ts';
import { faultSchema } from './faults.ts';
import { glossarySchema } from './glossary.ts';
import { partSchema } from './parts.ts';
import { procedureSchema } from './procedures.ts';
import { quantitySchema } from './quantities.ts';
import { rangeSchema } from './ranges.ts';
import { sourceSchema } from './sources.ts';

/** Every kind of content, by the name of its folder under `content/`. */
export const schemas = {
  sources: sourceSchema,
  quantities: quantitySchema,
  ranges: rangeSchema,
  procedures: procedureSchema,
  faults: faultSchema,
  codes: codeFamilySchema,
  cautions: cautionSchema,
  parts: partSchema,
  engines: engineSchema,
  calculators: calculatorSchema,
  glossary: glossarySchema,
} as const;

export type ContentKind = keyof typeof schemas;
export const contentKinds = Object.keys(schemas) as ContentKind[];

/** An entry of a kind, after its schema has been applied. */
export type Entry<Kind extends ContentKind> = z.output<(typeof schemas)[Kind]>;

/** All entries of the book by kind and id. */
export type Book = { readonly [Kind in ContentKind]: ReadonlyMap<string, Entry<Kind>> };
