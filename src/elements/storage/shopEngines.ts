import { readFigures, writeFigures } from '../../domain/figures/figuresFile.ts';
import type { ShopEngine } from '../../domain/figures/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

const storageKey = 'ignition-bench-book:shop-engines';

export type EngineStorageCode = 'unavailable' | 'full' | 'damaged' | 'refused';
export type EngineStorageFailure = Refusal<EngineStorageCode>;

const unavailable: EngineStorageFailure = {
  input: 'storage',
  code: 'unavailable',
  message: 'This browser keeps nothing for this page, so no figure is kept. Save the figures to a file before leaving the page.',
};

/** The shop's engines kept on this device, checked as a file would be; also figures for ranges of another edition. Nothing kept is no failure. */
export function readShopEngines(): Result<readonly ShopEngine[], EngineStorageFailure> {
  const text = keptEnginesText();
  if (!text.ok) return text;
  if (text.value === undefined) return success([]);
  const engines = readFigures(text.value);
  if (engines.ok) return engines;
  const message = `The engine makers’ figures kept in this browser cannot be read and were left as they are. ${engines.error.message}`;
  return failure({ input: 'storage', code: 'damaged', message });
}

/** What is kept, unread, so that it can be saved to a file even when it cannot be read. */
export function keptEnginesText(): Result<string | undefined, EngineStorageFailure> {
  try {
    return success(localStorage.getItem(storageKey) ?? undefined);
  } catch {
    return failure(unavailable);
  }
}

/** Changes the engines kept on this device as they stand at this moment. What cannot be read is never written over. */
export function changeShopEngines(change: (engines: readonly ShopEngine[]) => readonly ShopEngine[]): Result<readonly ShopEngine[], EngineStorageFailure> {
  const kept = readShopEngines();
  if (!kept.ok) return kept;
  const text = writeFigures(change(kept.value));
  // Read back as a file would be, so that nothing is kept that could not be opened again.
  const sound = readFigures(text);
  if (!sound.ok) return failure({ input: 'storage', code: 'refused', message: `Not kept. ${sound.error.message}` });
  try {
    localStorage.setItem(storageKey, text);
    return sound;
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    if (!full) return failure(unavailable);
    const message = 'The device has no room left, so nothing was kept. Make room on the device and try again; what you typed is still here.';
    return failure({ input: 'storage', code: 'full', message });
  }
}

/** Takes away everything kept, also what cannot be read. */
export function forgetShopEngines(): Result<void, EngineStorageFailure> {
  try {
    localStorage.removeItem(storageKey);
    return success(undefined);
  } catch {
    return failure(unavailable);
  }
}

/** Calls back when another window changed the engines. Gives back the way to stop. */
export function watchShopEngines(changed: () => void): () => void {
  const hear = (event: StorageEvent): void => {
    if (event.key === storageKey || event.key === null) changed();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}
