import { bookAddress } from '../dom.ts';
import { openJobStore } from '../storage/jobs.ts';
import { agreedStore, forgetSharedFolder, readSharedFolder, writeSharedFolder } from '../storage/sharedJobs.ts';
import type { SharedFolder } from '../storage/sharedJobs.ts';
import { browserLines } from './browserLines.ts';
import { readFolder } from './folder.ts';
import { SyncRunner } from './runner.ts';
import type { SyncState } from './runner.ts';
import { openFolder } from './server.ts';

type Listener = (state: SyncState | undefined) => void;

const listeners = new Set<Listener>();
let runner: SyncRunner | undefined;
let state: SyncState | undefined;

/** Sharing of this window's jobs. Every part of a page that shows something of it listens here. */
export const sharing = {
  folder: readSharedFolder,

  /** Begins where sharing is switched on; once for a page. */
  start(): void {
    const folder = readSharedFolder();
    const address = folder && readFolder(folder.typed, bookAddress(''));
    if (runner || !folder || !address?.ok) return;
    const server = openFolder(address.value, browserLines);
    const folderPath = new URL(address.value).pathname;
    runner = new SyncRunner({ server, folderPath, checks: folder.checks, store: openJobStore(), agreed: agreedStore, changed: tell });
  },

  /** False where the browser keeps no settings. What was agreed with another folder does not hold for this one. */
  switchOn(folder: SharedFolder): boolean {
    sharing.switchOff();
    if (!writeSharedFolder(folder)) return false;
    sharing.start();
    return true;
  },

  switchOff(): void {
    runner?.stop();
    runner = undefined;
    forgetSharedFolder();
    tell(undefined);
  },

  tryNow(): void {
    runner?.tryNow();
  },

  /** The jobs that the server has no longer are sent once more. */
  sendAgain(ids: readonly string[]): void {
    for (const id of ids) agreedStore.forget(id);
    runner?.tryNow();
  },

  /** The jobs that were removed from this device are fetched once more. */
  async fetchRemoved(): Promise<void> {
    const store = openJobStore();
    const marks = await store.marks();
    store.close();
    if (!marks.ok) return;
    const here = new Set(marks.value.map(({ id }) => id));
    for (const id of agreedStore.ids()) if (!here.has(id)) agreedStore.forget(id);
    runner?.tryNow();
  },

  /** Calls at once and at every change. Gives back the way to stop. */
  listen(listener: Listener): () => void {
    listeners.add(listener);
    listener(state);
    return () => listeners.delete(listener);
  },
};

function tell(next: SyncState | undefined): void {
  state = next;
  for (const listener of listeners) listener(next);
}
