import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { fieldGuides } from '../../src/checks/fieldGuide.data.ts';
import { schemaAt } from '../../src/checks/schemaShape.ts';
import { schemas } from '../../src/schemas/index.ts';
import type { ContentKind } from '../../src/schemas/index.ts';
import { z } from 'zod';

describe.each(Object.entries(fieldGuides))('the guide to %s', (address, { example }) => {
  it('gives an example that the schema takes', () => {
    const [kind, field = ''] = address.split('.');
    const schema = schemaAt(schemas[kind as ContentKind], [field]);
    if (!(schema instanceof z.ZodType)) throw new Error(`${address} is no field of a schema`);
    const fields: unknown = parse(example);
    expect(fields).toHaveProperty(field);
    expect(schema.safeParse((fields as Record<string, unknown>)[field]).error).toBeUndefined();
  });
});
