import { exportJob, importJob, jobFileName, largestFile } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';
import type { Result } from '../../domain/result.ts';
import { failure } from '../../domain/result.ts';
import { downloadText } from '../downloadText.ts';

/** Hands the job to the browser as a file to save. */
export function downloadJob(job: Job): void {
  downloadText(exportJob(job), jobFileName(job));
}

/** A chosen file as a job, or what is wrong with it. */
export async function readJobFile(file: File): Promise<Result<Job, string>> {
  if (file.size > largestFile) return failure('This file is larger than 10 MB. A job file is far smaller; choose the right file.');
  try {
    const job = importJob(await file.text());
    return job.ok ? job : failure(job.error.message);
  } catch {
    return failure('The file could not be read. Copy it onto this device and choose it again.');
  }
}
