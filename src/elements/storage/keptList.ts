import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

export type KeptListCode = 'unavailable' | 'full' | 'damaged' | 'refused';
export type KeptListFailure = Refusal<KeptListCode>;

/** A list that the shop keeps in this browser, in the form of the file that it can be saved to. */
export interface KeptList<Item> {
  /** What is kept, checked as a file would be. Nothing kept is no failure: there is none yet. */
  read(): Result<readonly Item[], KeptListFailure>;
  /** What is kept, unread, so that it can be saved to a file even when it cannot be read. */
  text(): Result<string | undefined, KeptListFailure>;
  /** Changes what is kept as it stands at this moment. What cannot be read is never written over. */
  change(change: (items: readonly Item[]) => readonly Item[]): Result<readonly Item[], KeptListFailure>;
  /** Takes away everything kept, also what cannot be read. */
  forget(): Result<void, KeptListFailure>;
  /** Calls back when another window changed the list. Gives back the way to stop. */
  watch(changed: () => void): () => void;
}

export interface KeptListOptions<Item> {
  /** Name in the browser's storage, after that of the book. */
  readonly name: string;
  readonly fromText: (text: string) => Result<readonly Item[], Refusal>;
  readonly toText: (items: readonly Item[]) => string;
  /** Said where the browser keeps nothing for the page. */
  readonly unavailable: string;
  /** Said before the reason why what is kept cannot be read. */
  readonly damaged: string;
}

export function keptList<Item>({ name, fromText, toText, unavailable, damaged }: KeptListOptions<Item>): KeptList<Item> {
  const key = `ignition-bench-book:${name}`;
  const refuse = (code: KeptListCode, message: string): Result<never, KeptListFailure> => failure({ input: 'storage', code, message });

  const text = (): Result<string | undefined, KeptListFailure> => {
    try {
      return success(localStorage.getItem(key) ?? undefined);
    } catch {
      return refuse('unavailable', unavailable);
    }
  };

  const read = (): Result<readonly Item[], KeptListFailure> => {
    const kept = text();
    if (!kept.ok) return kept;
    if (kept.value === undefined) return success([]);
    const items = fromText(kept.value);
    return items.ok ? items : refuse('damaged', `${damaged} ${items.error.message}`);
  };

  const write = (content: string): Result<void, KeptListFailure> => {
    try {
      return success(localStorage.setItem(key, content));
    } catch (error) {
      const full = error instanceof DOMException && error.name === 'QuotaExceededError';
      if (!full) return refuse('unavailable', unavailable);
      return refuse('full', 'The device has no room left, so nothing was kept. Make room on the device and try again; what you typed is still here.');
    }
  };

  return {
    read,
    text,
    change: (change) => {
      const kept = read();
      if (!kept.ok) return kept;
      const content = toText(change(kept.value));
      // Read back as a file would be, so that nothing is kept that could not be opened again.
      const sound = fromText(content);
      if (!sound.ok) return refuse('refused', `Not kept. ${sound.error.message}`);
      const written = write(content);
      return written.ok ? sound : written;
    },
    forget: () => {
      try {
        return success(localStorage.removeItem(key));
      } catch {
        return refuse('unavailable', unavailable);
      }
    },
    watch: (changed) => {
      const hear = (event: StorageEvent): void => {
        if (event.key === key || event.key === null) changed();
      };
      addEventListener('storage', hear);
      return () => removeEventListener('storage', hear);
    },
  };
}
