import { readFigures, writeFigures } from '../../domain/figures/figuresFile.ts';
import type { ShopEngine } from '../../domain/figures/types.ts';
import { keptList } from './keptList.ts';

/** The shop's engines of this device, also with figures for ranges of another edition. */
export const keptEngines = keptList<ShopEngine>({
  name: 'shop-engines',
  fromText: readFigures,
  toText: writeFigures,
  unavailable: 'This browser keeps nothing for this page, so no figure is kept. Save the figures to a file before leaving the page.',
  damaged: 'The engine makers’ figures kept in this browser cannot be read and were left as they are.',
});
