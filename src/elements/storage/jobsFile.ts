import { exportJob, importJob, largestFile } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';
import { isObject } from '../../domain/shape.ts';

/** What stands in `type` of a file that holds several jobs. */
export const jobsFileType = 'ignition-bench-book/jobs';
export const jobsFileVersion = 1;
/** A file of several jobs above this is refused unread, in characters. */
export const largestJobsFile = 20 * largestFile;
const mostJobs = 10_000;
export const tooLargeWords = `This file is larger than ${largestJobsFile / 1024 / 1024} MB. A file of jobs is far smaller; choose the right file.`;

/** A job of the file, or why it cannot be taken; the others can be. */
export type JobOfFile = Result<Job, { readonly title: string; readonly message: string }>;

/** All jobs as the text of one file: each as its own file would hold it, with its own checksum. */
export function exportJobs(jobs: readonly Job[]): string {
  const file = { type: jobsFileType, version: jobsFileVersion, jobs: jobs.map((job) => JSON.parse(exportJob(job)) as unknown) };
  return `${JSON.stringify(file, undefined, 1)}\n`;
}

/** A file name that says what is in it: `jobs-2026-03-04.json`. `at` is ISO 8601. */
export function jobsFileName(at: string): string {
  return `jobs-${at.slice(0, 10)}.json`;
}

/** The jobs of a file that holds one or several, each checked as a file of its own. Nothing is written. */
export function importJobs(text: string): Result<readonly JobOfFile[], Refusal> {
  if (text.length > largestJobsFile) return failure({ input: 'file', code: 'too-large', message: tooLargeWords });
  const several = severalJobs(text);
  if (several !== undefined) return checkSeveral(several);
  const job = importJob(text);
  return job.ok ? success([job]) : job;
}

/** Undefined where it is not a file of several jobs; what else it is, `importJob` finds out. */
function severalJobs(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const parsed: unknown = JSON.parse(text.replace(/^\uFEFF/, ''));
    return isObject(parsed) && parsed['type'] === jobsFileType ? parsed : undefined;
  } catch {
    return undefined;
  }
}

function checkSeveral(file: Readonly<Record<string, unknown>>): Result<readonly JobOfFile[], Refusal> {
  const { version, jobs } = file;
  const stranger = Object.keys(file).find((key) => !['type', 'version', 'jobs'].includes(key));
  if (typeof version === 'number' && version > jobsFileVersion) {
    const versions = `version ${version}; this book reads up to ${jobsFileVersion}`;
    const message = `This file was written by a newer book (${versions}). Nothing was changed: update the book, then open it again.`;
    return failure({ input: 'version', code: 'newer-version', message });
  }
  if (version !== jobsFileVersion) return damaged('version', `must be ${jobsFileVersion}`);
  if (stranger !== undefined) return damaged(stranger, 'is not part of a file of jobs');
  if (!Array.isArray(jobs)) return damaged('jobs', 'must be a list');
  if (jobs.length > mostJobs) return damaged('jobs', `must hold at most ${mostJobs} jobs`);
  return success(jobs.map((job: unknown, index) => jobOfFile(job, index)));
}

function jobOfFile(value: unknown, index: number): JobOfFile {
  const job = importJob(JSON.stringify(value) ?? '');
  if (job.ok) return job;
  const title = isObject(value) && typeof value['title'] === 'string' ? `“${value['title'].slice(0, 120)}”` : `Job ${index + 1} of the file`;
  return failure({ title, message: job.error.message });
}

function damaged(input: string, problem: string): Result<never, Refusal> {
  const message = `This file is damaged or was changed by hand: ${input} ${problem}. Nothing was taken from it.`;
  return failure({ input, code: 'wrong-field', message });
}
