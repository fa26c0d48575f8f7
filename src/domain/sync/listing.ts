import type { RemoteEntry } from './types.ts';

/** One answer out of a listing of a folder (RFC 4918, PROPFIND with depth 1), not yet believed. */
export interface ListedItem {
  /** Address or path as the server wrote it. */
  readonly href: string;
  readonly etag: string;
  readonly length: string;
  readonly modified: string;
  readonly isFolder: boolean;
}

export interface Listing {
  readonly entries: readonly RemoteEntry[];
  /** Files that are no job files by their name; they are not touched. */
  readonly strangers: number;
  /** Did the server give an entity tag for each job file? */
  readonly hasTags: boolean;
}

/** Where "Try it" writes. The second dot keeps it out of the names of job files. */
export const trialFile = 'try.it.json';
/** A damaged file is kept under this name before the whole job is written over it. */
export const damagedFile = (id: string): string => `${id}.damaged.json`;
export const jobFile = (id: string): string => `${id}.json`;

/** The job that a file is named for; undefined where the name is not that of a job file. */
export function jobOfFile(name: string): string | undefined {
  return /^([A-Za-z0-9-]{1,64})\.json$/.exec(name)?.[1];
}

/**
 * The job files of a listing. `folderPath` is the path of the folder, with a slash at both ends. What stands elsewhere is left out,
 * whatever a server claims.
 */
export function readListing(items: readonly ListedItem[], folderPath: string): Listing {
  const files = items.filter(({ isFolder }) => !isFolder).flatMap((item) => {
    const name = nameIn(item.href, folderPath);
    return name === undefined ? [] : [{ ...item, name }];
  });
  const jobs = files.flatMap((file) => {
    const id = jobOfFile(file.name);
    return id === undefined ? [] : [{ ...file, id }];
  });
  const others = files.filter(({ name }) => jobOfFile(name) === undefined && name !== trialFile && !name.endsWith('.damaged.json'));
  return {
    entries: [...new Map(jobs.map((job) => [job.id, entryOf(job)])).values()],
    strangers: others.length,
    hasTags: jobs.every(({ etag }) => etag !== ''),
  };
}

function nameIn(href: string, folderPath: string): string | undefined {
  const path = decoded(href.replace(/^[a-z][a-z0-9+.-]*:\/\/[^/]*/i, ''));
  const folder = decoded(folderPath) ?? folderPath;
  if (path === undefined || !path.startsWith(folder)) return undefined;
  const name = path.slice(folder.length);
  return name === '' || name.includes('/') ? undefined : name;
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

/** Without an entity tag, day and length together stand for one. They are only compared for being the same, never for being later. */
function entryOf({ id, etag, length, modified }: ListedItem & { readonly id: string }): RemoteEntry {
  const bytes = /^\d{1,15}$/.test(length) ? Number(length) : undefined;
  const instead = modified === '' ? undefined : `${modified} ${length}`;
  return { id, tag: etag === '' ? instead : etag, length: bytes };
}
