import type { Refusal } from '../../domain/result.ts';

export type StorageCode = 'unavailable' | 'blocked' | 'full' | 'damaged' | 'conflict' | 'failed';
export type StorageFailure = Refusal<StorageCode>;

const failureMessages: Readonly<Record<string, { readonly code: StorageCode; readonly message: string }>> = {
  BlockedError: {
    code: 'blocked',
    message: 'Another window of this book holds the jobs. Close the other windows of the book and try again.',
  },
  QuotaExceededError: {
    code: 'full',
    message: 'The device has no room left, so nothing was saved. Save the job to a file now, then make room on the device.',
  },
  NotSupportedError: {
    code: 'unavailable',
    message: 'This browser keeps no jobs (a private window, perhaps). Save the job to a file before leaving the page.',
  },
  SecurityError: {
    code: 'unavailable',
    message: 'This browser is set to keep nothing for this page. Save the job to a file before leaving the page.',
  },
  VersionError: {
    code: 'failed',
    message: 'A newer book has already been used on this device. Load the newest book; the jobs are still there.',
  },
};

/** What went wrong, in words that say what to do. */
export function failureOf(error: unknown): StorageFailure {
  const known = error instanceof DOMException ? failureMessages[error.name] : undefined;
  if (known !== undefined) return { input: 'storage', ...known };
  const why = error instanceof Error ? ` (${error.message})` : '';
  return { input: 'storage', code: 'failed', message: `The device did not save${why}. Save the job to a file and try again.` };
}
