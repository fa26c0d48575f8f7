import { exportMeters, importMeters } from '../../domain/measurement/metersFile.ts';
import type { UserMeter } from '../../domain/measurement/meters.ts';
import { keptList } from './keptList.ts';

/** The meters of this device. */
export const keptMeters = keptList<UserMeter>({
  name: 'meters',
  fromText: importMeters,
  toText: exportMeters,
  unavailable: 'This browser keeps nothing for this page, so no meter is kept. Save the meters to a file before leaving the page.',
  damaged: 'The meters kept on this device cannot be read and were left as they are.',
});
