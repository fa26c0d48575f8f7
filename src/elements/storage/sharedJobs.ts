import { isObject } from '../../domain/shape.ts';
import type { Agreed } from '../../domain/sync/types.ts';

const folderKey = 'ignition-bench-book:shared-folder';
const prefix = 'ignition-bench-book:shared:';

/** The folder on the shop's server that jobs are shared through. No name and no password is kept: the browser asks for them. */
export interface SharedFolder {
  /** As it was typed, counted from the book. */
  readonly typed: string;
  /** Does the server keep to If-Match and If-None-Match? Found out by trying. */
  readonly checks: boolean;
}

/** Undefined where sharing is switched off, as it is from the start. */
export function readSharedFolder(): SharedFolder | undefined {
  const kept = readKept(folderKey);
  if (!isObject(kept)) return undefined;
  const { typed, checks } = kept;
  return typeof typed === 'string' ? { typed, checks: checks === true } : undefined;
}

/** Switches sharing on. False where the browser keeps nothing. */
export function writeSharedFolder(folder: SharedFolder): boolean {
  return keep(folderKey, folder);
}

/** Switches sharing off; what was agreed with that server is forgotten, the jobs stay on both sides. */
export function forgetSharedFolder(): void {
  try {
    for (const id of agreedIds()) localStorage.removeItem(prefix + id);
    localStorage.removeItem(folderKey);
  } catch {
    // Nothing was kept.
  }
}

/** What this device and the server last agreed on. All of it may be lost: then both copies are compared in full once more. */
export interface AgreedStore {
  ids(): readonly string[];
  read(id: string): Agreed | undefined;
  write(id: string, agreed: Agreed): void;
  forget(id: string): void;
}

export const agreedStore: AgreedStore = {
  ids: () => {
    try {
      return agreedIds();
    } catch {
      return [];
    }
  },
  read: (id) => {
    const kept = readKept(prefix + id);
    if (!isObject(kept)) return undefined;
    const { tag, mark, confirmed } = kept;
    return typeof mark === 'string' ? { tag: typeof tag === 'string' ? tag : undefined, mark, confirmed: confirmed === true } : undefined;
  },
  write: (id, agreed) => void keep(prefix + id, agreed),
  forget: (id) => {
    try {
      localStorage.removeItem(prefix + id);
    } catch {
      // Nothing was kept.
    }
  },
};

function agreedIds(): string[] {
  return Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '').flatMap((key) =>
    key.startsWith(prefix) ? [key.slice(prefix.length)] : [],
  );
}

function readKept(key: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null');
  } catch {
    return undefined;
  }
}

function keep(key: string, value: unknown): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    // Full or switched off: both copies are compared in full the next time.
    return false;
  }
}
