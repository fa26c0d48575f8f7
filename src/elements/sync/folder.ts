import type { Refusal, Result } from '../../domain/result.ts';
import { failure, success } from '../../domain/result.ts';

/**
 * The shared folder's address from what was typed: relative to the book, such as `../shared-jobs/`, or whole. It must stand on the
 * book's own server, because the pages speak to no other.
 *
 * @param book address of the book's root, with a slash at its end
 */
export function readFolder(typed: string, book: string): Result<string, Refusal<'no-address' | 'other-server' | 'book-itself'>> {
  const words = typed.trim();
  const path = words.endsWith('/') ? words : `${words}/`;
  if (words === '' || !URL.canParse(path, book)) {
    return failure({ input: 'folder', code: 'no-address', message: 'Type the address of the folder, counted from the book, such as ../shared-jobs/.' });
  }
  const address = new URL(path, book);
  if (address.origin !== new URL(book).origin || address.username !== '') {
    return failure({ input: 'folder', code: 'other-server', message: `The folder must be on the book’s own server, ${new URL(book).origin}; this is ${address.origin}. The pages speak to no other server.` });
  }
  address.search = '';
  address.hash = '';
  if (address.href !== book) return success(address.href);
  return failure({ input: 'folder', code: 'book-itself', message: 'This is the folder of the book itself. Jobs need a folder of their own, such as ../shared-jobs/.' });
}
