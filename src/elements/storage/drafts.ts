const prefix = 'ignition-bench-book:draft:';

/** Words typed into the forms of a job and not yet in its record, by field; empty where none are kept. */
export function readDrafts(job: string): ReadonlyMap<string, string> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(prefix + job) ?? '{}');
    const entries = typeof kept === 'object' && kept !== null ? Object.entries(kept) : [];
    return new Map(entries.filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
  } catch {
    // Damaged or switched off: the forms start empty.
    return new Map();
  }
}

/** Keeps the typed words, so that a closed page loses none. Where the browser keeps nothing they hold until the page is left. */
export function writeDrafts(job: string, drafts: ReadonlyMap<string, string>): void {
  try {
    if (drafts.size === 0) localStorage.removeItem(prefix + job);
    else localStorage.setItem(prefix + job, JSON.stringify(Object.fromEntries(drafts)));
  } catch {
    // The record itself is kept elsewhere and says so when it fails.
  }
}
