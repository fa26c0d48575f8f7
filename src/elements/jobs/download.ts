import { exportJob, jobFileName } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';
import type { Result } from '../../domain/result.ts';
import { failure } from '../../domain/result.ts';
import { downloadText } from '../downloadText.ts';
import { writeSavedToFile } from '../storage/backups.ts';
import { exportJobs, importJobs, jobsFileName, largestJobsFile, tooLargeWords } from '../storage/jobsFile.ts';
import type { JobOfFile } from '../storage/jobsFile.ts';
import { now } from './identity.ts';

/** Hands the job to the browser as a file to save, and remembers when. */
export function downloadJob(job: Job): void {
  downloadText(exportJob(job), jobFileName(job));
  writeSavedToFile(job, now());
}

/** All of them as one file. */
export function downloadJobs(jobs: readonly Job[]): void {
  const at = now();
  downloadText(exportJobs(jobs), jobsFileName(at));
  for (const job of jobs) writeSavedToFile(job, at);
}

/** The jobs of a chosen file, or what is wrong with it. Reading it changes nothing. */
export async function readJobsFile(file: File): Promise<Result<readonly JobOfFile[], string>> {
  if (file.size > largestJobsFile) return failure(tooLargeWords);
  try {
    const jobs = importJobs(await file.text());
    return jobs.ok ? jobs : failure(jobs.error.message);
  } catch {
    return failure('The file could not be read. Copy it onto this device and choose it again.');
  }
}
