import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBook } from '../../src/checks/readBook.ts';
import { referencesIn } from '../../src/checks/references.ts';
import { referencesTo } from '../../src/render/references.ts';

const { book } = readBook(join(import.meta.dirname, '../..'));

const named = referencesIn(book);

describe('pages that point here', () => {
  it('finds every procedure whose reading is judged by a range, as the checks find them', () => {
    for (const id of book.ranges.keys()) {
      const expected = named.filter(({ fromKind, toKind, toId }) => fromKind === 'procedures' && toKind === 'ranges' && toId === id);
      const found = referencesTo(book, { kind: 'ranges', id }).filter(({ kind }) => kind === 'procedures');
      expect(found.map((reference) => reference.id).sort()).toEqual([...new Set(expected.map(({ fromId }) => fromId))].sort());
    }
  });

  it('is in order of title within a kind, names nothing twice and never the page itself', () => {
    for (const id of book.procedures.keys()) {
      const found = referencesTo(book, { kind: 'procedures', id });
      const addresses = found.map((reference) => `${reference.kind}/${reference.id}`);
      expect(new Set(addresses).size).toBe(addresses.length);
      expect(addresses).not.toContain(`procedures/${id}`);
      const titles = found.filter(({ kind }) => kind === 'faults').map(({ title }) => title);
      expect(titles).toEqual(titles.toSorted((a, b) => a.localeCompare(b)));
    }
  });

  it('has nothing for an entry that no page names', () => {
    expect(referencesTo(book, { kind: 'ranges', id: 'no-such-range' })).toEqual([]);
  });
});
