import { z } from 'zod';
import type { FieldPath } from './finding.ts';

/** The schema without the wrappers that say `may be left out`. */
export function unwrapSchema(schema: unknown): unknown {
  let inner = schema;
  while (inner instanceof z.ZodOptional || inner instanceof z.ZodDefault) inner = inner.unwrap();
  return inner;
}

function schemaOfStep(schema: unknown, step: string | number): unknown {
  const inner = unwrapSchema(schema);
  if (inner instanceof z.ZodObject) return inner.shape[step];
  if (inner instanceof z.ZodArray) return inner.element;
  if (inner instanceof z.ZodRecord) return inner.valueType;
  return undefined;
}

/** The schema of the field at a path; undefined where there is none. */
export function schemaAt(schema: unknown, path: FieldPath): unknown {
  return unwrapSchema(path.reduce<unknown>(schemaOfStep, schema));
}

/** The keys an author may write in the group of fields at this schema. */
export function keysOf(schema: unknown): readonly string[] {
  const inner = unwrapSchema(schema);
  if (inner instanceof z.ZodObject) return Object.keys(inner.shape);
  if (inner instanceof z.ZodRecord && inner.keyType instanceof z.ZodEnum) return inner.keyType.options.map(String);
  return [];
}

function describeNumber(schema: z.ZodNumber): string {
  const noun = schema.format?.includes('int') ? 'a whole number' : 'a number';
  const low = schema.minValue;
  const high = schema.maxValue;
  const hasLow = low !== null && Number.isFinite(low) && low !== Number.MIN_SAFE_INTEGER;
  const hasHigh = high !== null && Number.isFinite(high) && high !== Number.MAX_SAFE_INTEGER;
  if (hasLow && hasHigh) return `${noun} from ${low} to ${high}`;
  if (hasLow) return `${noun} of at least ${low}`;
  return hasHigh ? `${noun} of at most ${high}` : noun;
}

/** What a field takes, in an author's words. */
export function describeSchema(schema: unknown): string {
  const inner = unwrapSchema(schema);
  if (inner instanceof z.ZodString) return 'text';
  if (inner instanceof z.ZodNumber) return describeNumber(inner);
  if (inner instanceof z.ZodBoolean) return 'true or false';
  if (inner instanceof z.ZodEnum) return `one of: ${inner.options.join(', ')}`;
  if (inner instanceof z.ZodArray) return 'a list, each entry on a line of its own after a hyphen';
  if (inner instanceof z.ZodObject) return `a group of the fields ${keysOf(inner).join(', ')}`;
  if (inner instanceof z.ZodRecord) return 'names with a value each, one on a line';
  return 'a value of another kind';
}
