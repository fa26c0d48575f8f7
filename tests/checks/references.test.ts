import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { referenceFields } from '../../src/checks/references.ts';
import { unwrapSchema } from '../../src/checks/schemaShape.ts';
import { entryId } from '../../src/schemas/common.ts';
import { contentKinds, schemas } from '../../src/schemas/index.ts';

/** Every field of a schema that takes an id, found from the schema itself, written as a pattern. */
function idFields(schema: unknown, path: readonly string[] = []): string[] {
  const inner = unwrapSchema(schema);
  if (inner === entryId) return [path.join('.')];
  if (inner instanceof z.ZodObject) return Object.entries(inner.shape).flatMap(([key, value]) => idFields(value, [...path, key]));
  if (inner instanceof z.ZodArray) return idFields(inner.element, [...path, '[]']);
  if (inner instanceof z.ZodRecord) return [...idFields(inner.keyType, [...path, '{}']), ...idFields(inner.valueType, [...path, '*'])];
  return [];
}

/** Ids that name something inside the entry itself. */
const ownIds = ['procedures: outcomes.[].id'];

describe('referenceFields', () => {
  it.each(contentKinds)('lists every field of %s that takes the id of another entry', (kind) => {
    const inSchema = idFields(schemas[kind]).filter((field) => !ownIds.includes(`${kind}: ${field}`));
    expect(Object.keys(referenceFields[kind]).sort()).toEqual(inSchema.sort());
  });
});
