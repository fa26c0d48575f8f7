import { exportJob, importJob } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';

/**
 * Every job a second time, outside the database: one file each in the browser's own file store for this book. A browser that was killed
 * may find its database damaged at the next start and throws it away as a whole; seen about once in two hundred kills on a busy machine.
 * Each file is written beside the old one and put in its place in one step, so that it is always whole.
 */
export interface SecondCopy {
  write(job: Job): Promise<void>;
  remove(id: string): Promise<void>;
  /** Files that cannot be read as a job are passed over. */
  readAll(): Promise<readonly Job[]>;
}

/** Undefined where the browser has no such store: on plain http, and in some private windows. */
export async function openSecondCopy(name: string): Promise<SecondCopy | undefined> {
  try {
    const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle(`${name}-jobs`, { create: true });
    return typeof FileSystemFileHandle.prototype.createWritable === 'function' ? copyIn(folder) : undefined;
  } catch {
    return undefined;
  }
}

function copyIn(folder: FileSystemDirectoryHandle): SecondCopy {
  return {
    write: async (job) => {
      const file = await folder.getFileHandle(`${job.id}.json`, { create: true });
      const writing = await file.createWritable();
      await writing.write(exportJob(job));
      await writing.close();
    },
    remove: async (id) => folder.removeEntry(`${id}.json`),
    readAll: async () => {
      const jobs: Job[] = [];
      for await (const handle of folder.values()) {
        if (handle.kind !== 'file') continue;
        const job = importJob(await (await handle.getFile()).text());
        if (job.ok) jobs.push(job.value);
      }
      return jobs;
    },
  };
}
