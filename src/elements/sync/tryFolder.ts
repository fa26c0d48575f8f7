import { readListing, trialFile } from '../../domain/sync/listing.ts';
import type { Fault, FolderServer } from './server.ts';

/** What trying the folder found. `checks`: the server keeps to If-Match and If-None-Match, as RFC 9110 wants. */
export type TrialResult =
  | { readonly works: true; readonly checks: boolean; readonly words: readonly string[] }
  | { readonly works: false; readonly words: readonly string[] };

/** Looks into the folder, writes a small file there, reads it back, and finds out whether the server checks before it overwrites. */
export async function tryFolder(server: FolderServer, folderPath: string, mark: string): Promise<TrialResult> {
  const listed = await server.list();
  if (!listed.ok) return doesNot('It does not work', listed.error);
  const { entries, strangers } = readListing(listed.value, folderPath);
  const found = [
    entries.length === 0 ? 'The folder is there. It holds no job yet.' : `The folder is there and holds ${entries.length} ${entries.length === 1 ? 'job' : 'jobs'}.`,
    ...(strangers === 0 ? [] : [`It also holds ${strangers} ${strangers === 1 ? 'file' : 'files'} that are no job files by their name; they stay as they are.`]),
  ];
  const text = `${JSON.stringify({ trial: mark })}\n`;
  const put = await server.put(trialFile, text, 'none');
  if (!put.ok) return doesNot(`${found.join(' ')} But nothing can be written into it`, put.error);
  const back = await server.get(trialFile);
  if (!back.ok) return doesNot(`${found.join(' ')} A file was written but cannot be read back`, back.error);
  if (back.value?.text !== text) return { works: false, words: [...found, `The server said that it kept the file ${trialFile}, and then showed something else. Jobs would not be safe there.`] };
  return { works: true, ...(await whatIsChecked(server, text, found)) };
}

async function whatIsChecked(server: FolderServer, text: string, found: readonly string[]): Promise<{ checks: boolean; words: string[] }> {
  const known = await server.put(trialFile, text, 'must-be-new');
  const other = await server.put(trialFile, text, { match: '"no-such-copy"' });
  const checks = known.ok && known.value === 'changed-meanwhile' && other.ok && other.value === 'changed-meanwhile';
  const words = checks
    ? 'The server checks that nobody else wrote before it takes a file.'
    : 'The server takes a file without checking whether somebody else wrote before. So each file is fetched and compared before it is sent and looked at again later: ' +
      'that is slower, and two bays that write one job in the same moment may need a minute until both see all of it.';
  return { checks, words: [...found, 'Writing and reading back works.', words] };
}

function doesNot(what: string, fault: Fault): TrialResult {
  return { works: false, words: [`${what}: ${fault.message}.`] };
}
