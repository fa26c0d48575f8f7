import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { exampleFiles } from './model/examples.ts';

const folder = join(import.meta.dirname, '../../seeds/captures');
const files = exampleFiles();

describe('the invented logs and traces', () => {
  it('are those of the model, and no others', () => {
    expect(readdirSync(folder).sort()).toEqual(files.flatMap(({ id }) => [`${id}.csv`, `${id}.yaml`]).sort());
  });

  it.each(files)('$id stands as the model makes it, marked as invented', ({ id, csv, yaml }) => {
    expect(readFileSync(join(folder, `${id}.csv`), 'utf8') === csv, 'run: node tests/captures/writeExamples.ts').toBe(true);
    expect(readFileSync(join(folder, `${id}.yaml`), 'utf8')).toBe(yaml);
    expect(parse(yaml)).toMatchObject({ id, invented: true, truth: expect.anything() });
  });
});
