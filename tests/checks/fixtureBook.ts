import { join } from 'node:path';
import { formatFindings } from '../../src/checks/finding.ts';
import { readBook } from '../../src/checks/readBook.ts';

export function fixtureRoot(name: string): string {
  return join(import.meta.dirname, '../fixtures/books', name);
}

/** What an author would read about a fixture book. */
export function findingsOf(name: string): string {
  return formatFindings(readBook(fixtureRoot(name)).findings);
}
