import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkBook, formatCheck } from '../src/checks/checkBook.ts';

describe('the book', () => {
  it('has no findings', () => {
    const check = checkBook(join(import.meta.dirname, '..'));
    expect(formatCheck(check)).toBe('No findings.');
    expect(check.book.procedures.size).toBeGreaterThan(0);
  });
});
