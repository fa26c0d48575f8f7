import type { UnitId } from '../units/types.ts';

/** How the numbers of a service $06 record are scaled: raw × factor + offset. */
export interface RecordScaling {
  readonly factor: number;
  readonly offset: number;
  readonly unit: UnitId;
}

/**
 * Unit-and-scaling ids that a misfire record may carry. Source: SAE J1979 appendix E, compared with public transcriptions.
 * A misfire count has 24; the rest are here so that another scaling is read rightly and not as a count.
 */
export const recordScalings: ReadonlyMap<number, RecordScaling> = new Map([
  [0x01, { factor: 1, offset: 0, unit: 'count' }],
  [0x0a, { factor: 0.000122, offset: 0, unit: 'V' }],
  [0x0b, { factor: 0.001, offset: 0, unit: 'V' }],
  [0x0c, { factor: 0.01, offset: 0, unit: 'V' }],
  [0x0e, { factor: 0.001, offset: 0, unit: 'A' }],
  [0x10, { factor: 0.001, offset: 0, unit: 's' }],
  [0x16, { factor: 0.1, offset: -40, unit: 'C' }],
  [0x1e, { factor: 0.0000305, offset: 0, unit: '1' }],
  [0x20, { factor: 0.0039062, offset: 0, unit: '1' }],
  [0x24, { factor: 1, offset: 0, unit: 'count' }],
]);
