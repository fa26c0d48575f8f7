import { meterFor, metersFor } from '../../domain/measurement/meters.ts';
import type { UserMeter } from '../../domain/measurement/meters.ts';
import type { Meter } from '../../domain/measurement/types.ts';
import type { Refusal, Result } from '../../domain/result.ts';
import { success } from '../../domain/result.ts';
import { formatNumber } from '../../domain/units/format.ts';
import type { Dimension, UnitId } from '../../domain/units/types.ts';
import { readChoice, writeChoice } from '../storage/choices.ts';
import { keptMeters } from '../storage/meters.ts';
import { readSettings } from '../storage/settings.ts';

/** Values of the select "Meter": the one usual for the reading, the figures typed below it, or a meter of the shop. */
export const usualMeter = 'usual';
export const typedMeter = 'typed';
const ownMeter = 'my:';

/** The fields that a chosen meter fills; typing into one of them means the figures typed. */
export const meterFields = ['meterPercent', 'meterCounts', 'meterResolution'] as const;

export interface MeterAsked {
  readonly dimension: Dimension;
  readonly unit: UnitId;
  readonly usualMeter: { readonly percent: number; readonly counts: number };
}

export interface MeterOption {
  readonly value: string;
  readonly label: string;
}

/** What may be chosen for a reading of this kind, and what was chosen last where it still can be. */
export function meterOptions({ dimension, usualMeter: usual }: MeterAsked): { readonly options: readonly MeterOption[]; readonly start: string } {
  const { decimalMark, meter: lastTyped } = readSettings();
  const own = metersFor(kept(), dimension).map(({ id, name }) => ({ value: ownMeter + id, label: name }));
  const write = (value: number): string => formatNumber(value, { decimalMark });
  const options = [
    { value: usualMeter, label: `Usual for this reading: ±${write(usual.percent)} % ±${write(usual.counts)} digits` },
    ...own,
    { value: typedMeter, label: 'As typed below' },
  ];
  const last = readChoice('meter');
  if (own.some(({ value }) => value === last)) return { options, start: last };
  const wasTyped = lastTyped !== undefined && (last === '' || last === typedMeter);
  return { options, start: wasTyped ? typedMeter : usualMeter };
}

/** Remembers the meter for the next reading. */
export function keepMeterChoice(value: string): void {
  writeChoice('meter', value);
}

/**
 * The figures of the chosen meter for a reading of this size, in the unit of the reading; nothing where they are typed by hand.
 * Refuses a reading that the meter cannot have shown. Without a reading the lowest range speaks.
 */
export function chosenFigures(choice: string, asked: MeterAsked, reading: number | 'open' | undefined): Result<Meter, Refusal> | undefined {
  if (choice === typedMeter) return undefined;
  const meter = kept().find(({ id }) => ownMeter + id === choice);
  if (meter === undefined) return success({ name: '', percent: asked.usualMeter.percent, counts: asked.usualMeter.counts });
  return meterFor(meter, asked.dimension, { value: reading ?? 0, unit: asked.unit });
}

/** A list that cannot be read is told on its own page; readings go on with the usual meter. */
function kept(): readonly UserMeter[] {
  const meters = keptMeters.read();
  return meters.ok ? meters.value : [];
}
