import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import type { ListedItem } from '../../domain/sync/listing.ts';

/** Why the server did not do what it was asked, in words for people. */
export interface Fault {
  readonly kind: 'unreachable' | 'late' | 'elsewhere' | 'sign-in' | 'forbidden' | 'no-folder' | 'full' | 'busy' | 'refused' | 'odd-listing';
  readonly message: string;
  /** It would meet every other file too, so the round ends. */
  readonly endsRound: boolean;
}

/** A file as it came; undefined where there is none. */
export type Fetched = { readonly text: string; readonly tag: string | undefined } | undefined;
/** What must hold at the server for the file to be kept. */
export type Condition = { readonly match: string } | 'must-be-new' | 'none';
export type Put = 'kept' | 'changed-meanwhile';

/** The shared folder. Nothing in here decides anything. */
export interface FolderServer {
  list(): Promise<Result<readonly ListedItem[], Fault>>;
  get(name: string): Promise<Result<Fetched, Fault>>;
  put(name: string, text: string, condition: Condition): Promise<Result<Put, Fault>>;
}

export interface Lines {
  readonly fetch: (address: string, options: RequestInit) => Promise<Response>;
  /** The items of a PROPFIND answer, or the status where it was not the answer of a shared folder. */
  readonly list: (address: string, signal: AbortSignal) => Promise<readonly ListedItem[] | number>;
  /** Milliseconds until an answer counts as not given. */
  readonly patience: number;
}

/** @param folder address with a slash at its end */
export function openFolder(folder: string, { fetch, list, patience }: Lines): FolderServer {
  const send = (name: string, options: RequestInit): Promise<Result<{ status: number; text: string; tag: string | undefined }, Fault>> =>
    inTime(patience, async (signal) => {
      // A request sent on to a sign-in page must not pass for one that was answered; no answer may come out of a cache.
      const answer = await fetch(folder + name, { ...options, signal, redirect: 'manual', cache: 'no-store', credentials: 'same-origin' });
      const text = await answer.text();
      return { status: answer.type === 'opaqueredirect' ? 302 : answer.status, text, tag: answer.headers.get('etag') ?? undefined };
    });
  return {
    list: async () => {
      const listed = await inTime(patience, (signal) => list(folder, signal));
      if (!listed.ok) return listed;
      return typeof listed.value === 'number' ? failure(listingFault(listed.value)) : success(listed.value);
    },
    get: async (name) => {
      const got = await send(name, { method: 'GET' });
      if (!got.ok) return got;
      const { status, text, tag } = got.value;
      if (status === 404) return success(undefined);
      return status === 200 ? success({ text, tag }) : failure(faultOf(status));
    },
    put: async (name, text, condition) => {
      const headers = { 'content-type': 'application/json', ...conditionHeaders(condition) };
      const put = await send(name, { method: 'PUT', body: text, headers });
      if (!put.ok) return put;
      const { status } = put.value;
      if (status === 412) return success('changed-meanwhile');
      return [200, 201, 204].includes(status) ? success('kept') : failure(faultOf(status));
    },
  };
}

function conditionHeaders(condition: Condition): Record<string, string> {
  if (condition === 'none') return {};
  return condition === 'must-be-new' ? { 'if-none-match': '*' } : { 'if-match': condition.match };
}

/** An answer that stays out is given up, so that nothing ever waits for it. */
async function inTime<Value>(patience: number, work: (signal: AbortSignal) => Promise<Value>): Promise<Result<Value, Fault>> {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), patience);
  try {
    return success(await work(stop.signal));
  } catch {
    return failure(
      stop.signal.aborted
        ? { kind: 'late', message: `the server did not answer within ${Math.round(patience / 1000)} seconds`, endsRound: true }
        : { kind: 'unreachable', message: 'the server cannot be reached, or broke off in the middle', endsRound: true },
    );
  } finally {
    clearTimeout(timer);
  }
}

function listingFault(status: number): Fault {
  if (status === 404) return { kind: 'no-folder', message: 'there is no such folder on the server', endsRound: true };
  if (status === 405 || status === 501) return { kind: 'no-folder', message: 'the address is on the server, but it is not a folder that takes jobs (WebDAV is not switched on for it)', endsRound: true };
  if (status < 300) return { kind: 'odd-listing', message: 'the server answered, but not with a list of files; a sign-in page, perhaps, or half an answer', endsRound: true };
  return faultOf(status);
}

function faultOf(status: number): Fault {
  const said = ` (the server said ${status})`;
  if (status >= 300 && status < 400) return { kind: 'elsewhere', message: `the server sends on to another address, such as a sign-in page${said}`, endsRound: true };
  if (status === 401) return { kind: 'sign-in', message: `the folder asks for a name and password${said}`, endsRound: true };
  if (status === 403 || status === 405) return { kind: 'forbidden', message: `the folder does not let this be done${said}`, endsRound: true };
  if (status === 404 || status === 409) return { kind: 'no-folder', message: `there is no such folder on the server${said}`, endsRound: true };
  if (status === 507) return { kind: 'full', message: `the server has no room left${said}`, endsRound: true };
  if (status === 429 || status === 503) return { kind: 'busy', message: `the server is not ready${said}`, endsRound: true };
  if (status === 413) return { kind: 'refused', message: `the server takes no file of this size${said}`, endsRound: false };
  if (status === 423) return { kind: 'refused', message: `the file is locked on the server${said}`, endsRound: false };
  return { kind: 'refused', message: `the server did not do it${said}`, endsRound: false };
}
