import { exportJob, importJob, jobFileName, largestFile } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';
import type { Result } from '../../domain/result.ts';
import { failure } from '../../domain/result.ts';
import { element } from '../dom.ts';

/** Hands the job to the browser as a file to save. */
export function downloadJob(job: Job): void {
  downloadText(exportJob(job), jobFileName(job));
}

export function downloadText(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = element('a', { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken the data over once the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
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
