import { specialTools } from '../../domain/diagnosis/types.ts';
import type { SpecialTool } from '../../domain/diagnosis/types.ts';
import { isTime } from '../../domain/shape.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';

/** What the user set once for the whole book, kept on the device. */
export interface Settings {
  readonly decimalMark: '.' | ',';
  readonly temperatureUnit: 'C' | 'F';
  /** The meter last used: percent of reading and counts of the last digit. */
  readonly meter: { readonly name: string; readonly percent: number; readonly counts: number } | undefined;
  /** Tools the shop has not got: tests that need them are not proposed. */
  readonly toolsNotHad: readonly SpecialTool[];
  /** Do the shop's own finished jobs change how common a fault is taken to be? Only jobs finished after `since` (ISO 8601) count; left out: all. */
  readonly experience: { readonly on: boolean; readonly since?: string };
}

const storageKey = 'ignition-bench-book:settings';
const startSettings: Settings = { decimalMark: '.', temperatureUnit: 'C', meter: undefined, toolsNotHad: [], experience: { on: false } };

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
    toolsNotHad: toolsFrom(kept['toolsNotHad']),
    experience: experienceFrom(kept['experience']),
  };
}

/** Names of another edition of the book are left out. */
function toolsFrom(kept: unknown): readonly SpecialTool[] {
  return Array.isArray(kept) ? specialTools.filter((tool) => kept.includes(tool)) : [];
}

function experienceFrom(kept: unknown): Settings['experience'] {
  if (typeof kept !== 'object' || kept === null) return startSettings.experience;
  const { on, since } = kept as Readonly<Record<string, unknown>>;
  return { on: on === true, ...(isTime(since) ? { since } : {}) };
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
