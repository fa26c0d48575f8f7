import { describe, expect, it } from 'vitest';
import { readBook } from '../../src/checks/readBook.ts';
import { fixtureRoot, findingsOf } from './fixtureBook.ts';

describe('readBook', () => {
  it('reads a right book without a finding, applies defaults and keeps the prose', () => {
    const { book, bodies, findings } = readBook(fixtureRoot('right'));
    expect(findings).toEqual([]);
    expect(book.ranges.get('coil-primary-contacts')).toMatchObject({ low: 2.5, high: 4, makerFirst: true, otherWords: [] });
    expect(book.faults.size).toBe(0);
    expect(bodies.get('calculators/coil-resistance')?.trim()).toBe('The figure is what the meter would have shown at the reference temperature.');
  });

  it('knows the line of every field, in YAML and between the lines of hyphens', () => {
    const { sources } = readBook(fixtureRoot('right'));
    const range = sources.get('ranges/coil-primary-contacts');
    const calculator = sources.get('calculators/coil-resistance');
    expect(range?.lineOf(['high'])).toBe(4);
    expect(range?.lineOf(['source', 'id'])).toBe(8);
    expect(calculator?.lineOf(['ranges', 0])).toBe(4);
    expect(calculator?.bodyLine).toBe(7);
  });

  it.each(['unknown-key', 'wrong-types', 'wrong-choices', 'missing-fields', 'no-limits', 'deep-field', 'comma-in-braces', 'bad-yaml', 'wrong-names', 'no-front-matter', 'no-content'])(
    'tells all that is wrong with %s',
    (name) => {
      expect(`\n${findingsOf(name)}\n`).toMatchSnapshot();
    },
  );

  it('reads on after a file that is not YAML', () => {
    const { book, sources } = readBook(fixtureRoot('bad-yaml'));
    expect([...book.sources.keys()]).toEqual(['good']);
    expect([...sources.keys()]).toContain('sources/a-colon');
  });
});
