import { describe, expect, it } from 'vitest';
import { licenceFindings, lockedPackages, noticesOf } from '../../src/build/licences.ts';

const one = (licence: string | undefined) => [{ name: 'thing', version: '1.0.0', licence }];

// Expressions as in SPDX: OR leaves the choice, AND asks for both.
describe('licences', () => {
  it.each([
    { licence: 'MIT', findings: 0 },
    { licence: '(MIT OR GPL-3.0-only)', findings: 0 },
    { licence: 'MIT AND GPL-3.0-only', findings: 1 },
    { licence: 'GPL-3.0-only', findings: 1 },
    { licence: undefined, findings: 1 },
  ])('$licence: $findings findings', ({ licence, findings }) => expect(licenceFindings(one(licence))).toHaveLength(findings));

  it('every package of the lock file is under one that is allowed', () => {
    const packages = lockedPackages();
    expect(packages.length).toBeGreaterThan(300);
    expect(licenceFindings(packages)).toEqual([]);
  });

  it('the notices go along: the book, what is bundled, and the search', () => {
    const text = noticesOf(['idb']);
    expect(text).toContain('Ignition Bench Book (MIT)');
    expect(text).toMatch(/idb \d+\.\d+\.\d+ \(ISC\)/);
    expect(text).toMatch(/pagefind \d+\.\d+\.\d+ \(MIT\)/);
    expect(text.match(/Permission (?:is hereby granted|to use)/g)?.length).toBeGreaterThanOrEqual(3);
  });

  it('nothing under a licence for tools only gets into the book', () => expect(() => noticesOf(['axe-core'])).toThrow(/axe-core .* MPL-2.0/));
});
