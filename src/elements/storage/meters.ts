import { exportMeters, importMeters } from '../../domain/measurement/metersFile.ts';
import type { UserMeter } from '../../domain/measurement/meters.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

const storageKey = 'ignition-bench-book:meters';

export type MeterStorageCode = 'unavailable' | 'full' | 'damaged' | 'refused';
export type MeterStorageFailure = Refusal<MeterStorageCode>;

const unavailable: MeterStorageFailure = {
  input: 'storage',
  code: 'unavailable',
  message: 'This browser keeps nothing for this page, so no meter is kept. Save the meters to a file before leaving the page.',
};

/** The meters of this device, checked as a file would be. Nothing kept is no failure: there are none yet. */
export function readMeters(): Result<readonly UserMeter[], MeterStorageFailure> {
  const text = keptText();
  if (!text.ok) return text;
  if (text.value === undefined) return success([]);
  const meters = importMeters(text.value);
  if (meters.ok) return meters;
  const message = `The meters kept on this device cannot be read and were left as they are. ${meters.error.message}`;
  return failure({ input: 'storage', code: 'damaged', message });
}

/** What is kept, unread, so that it can be saved to a file even when it cannot be read. */
export function keptText(): Result<string | undefined, MeterStorageFailure> {
  try {
    return success(localStorage.getItem(storageKey) ?? undefined);
  } catch {
    return failure(unavailable);
  }
}

/** Changes the meters kept on this device as they stand at this moment. What cannot be read is never written over. */
export function changeMeters(change: (meters: readonly UserMeter[]) => readonly UserMeter[]): Result<readonly UserMeter[], MeterStorageFailure> {
  const kept = readMeters();
  if (!kept.ok) return kept;
  const text = exportMeters(change(kept.value));
  // Read back as a file would be, so that nothing is kept that could not be opened again.
  const sound = importMeters(text);
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
export function forgetMeters(): Result<void, MeterStorageFailure> {
  try {
    localStorage.removeItem(storageKey);
    return success(undefined);
  } catch {
    return failure(unavailable);
  }
}

/** Calls back when another window changed the meters. Gives back the way to stop. */
export function watchMeters(changed: () => void): () => void {
  const hear = (event: StorageEvent): void => {
    if (event.key === storageKey || event.key === null) changed();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}
