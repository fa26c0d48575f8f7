import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

/** What the user set once for the whole book, kept on the device. */
export interface Settings {
  readonly decimalMark: '.' | ',';
  readonly temperatureUnit: 'C' | 'F';
  /** The meter last used: percent of reading and counts of the last digit. */
  readonly meter: { readonly name: string; readonly percent: number; readonly counts: number } | undefined;
}

const storageKey = 'ignition-bench-book:settings';
const startSettings: Settings = { decimalMark: '.', temperatureUnit: 'C', meter: undefined };

/** The settings kept on this device. What is missing or out of shape is taken at its start value. */
export function readSettings(): Settings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(storageKey) ?? '{}');
    return typeof kept === 'object' && kept !== null ? settingsFrom(kept as Readonly<Record<string, unknown>>) : startSettings;
  } catch {
    // Storage switched off or damaged: the book works with the start values.
    return startSettings;
  }
}

function settingsFrom(kept: Readonly<Record<string, unknown>>): Settings {
  return {
    decimalMark: kept['decimalMark'] === ',' ? ',' : '.',
    temperatureUnit: kept['temperatureUnit'] === 'F' ? 'F' : 'C',
    meter: meterFrom(kept['meter']),
  };
}

function meterFrom(kept: unknown): Settings['meter'] {
  if (typeof kept !== 'object' || kept === null) return undefined;
  const { name, percent, counts } = kept as Readonly<Record<string, unknown>>;
  if (typeof name !== 'string' || typeof percent !== 'number' || typeof counts !== 'number') return undefined;
  const usable = percent >= 0 && percent <= 100 && counts >= 0 && Number.isFinite(counts);
  return usable ? { name: name.slice(0, 200), percent, counts } : undefined;
}

/** Keeps the given settings and leaves the others. Fails where the browser keeps nothing. */
export function writeSettings(changes: Partial<Settings>): Result<Settings, Refusal<'not-kept'>> {
  const settings = { ...readSettings(), ...changes };
  try {
    localStorage.setItem(storageKey, JSON.stringify(settings));
    return success(settings);
  } catch {
    return failure({ input: 'settings', code: 'not-kept', message: 'This browser keeps no settings; they hold until the page is left.' });
  }
}
