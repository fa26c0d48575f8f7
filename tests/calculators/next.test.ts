import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { calculators } from '../../src/domain/calculators/registry.ts';
import { runCalculator } from '../../src/domain/calculators/run.ts';
import { allCases } from '../published/calculators/all.ts';

const content = resolve(import.meta.dirname, '../../content');
const endings = ['.mdx', '.md', '.yaml'];

/** Results send the reader on by address; a page that is not in the book would leave them at a dead end. */
describe.each(calculators.map((calculator) => [calculator.id, calculator] as const))('%s', (id, calculator) => {
  it('leads on only to pages of the book', () => {
    const inputs = [...calculator.examples.map((example) => example.inputs), ...(allCases[id] ?? []).map((row) => row.inputs)];
    const results = inputs.map((texts) => runCalculator(calculator, texts));
    const links = results.flatMap((result) => (result.ok ? (result.value.next ?? []) : []));
    for (const { page, label } of links) {
      expect(endings.some((ending) => existsSync(`${content}/${page}${ending}`)), `${label}: ${page}`).toBe(true);
      expect(label.length).toBeGreaterThan(3);
    }
  });
});
