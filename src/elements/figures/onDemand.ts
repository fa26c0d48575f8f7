import { wantScript } from '../wantedScript.ts';
import type { shopFigures, ShopFigures } from './shopFigures.ts';

/** Where the script of the shop's figures leaves its function: most pages are read without it. */
interface FiguresGlobal {
  ignitionBenchBookShopFigures?: typeof shopFigures;
}

const place = globalThis as FiguresGlobal;

/** Called by the script of the shop's figures. */
export function offerShopFigures(gather: typeof shopFigures): void {
  place.ignitionBenchBookShopFigures = gather;
}

/** The shop's figures; undefined where they cannot be had at all. */
export async function shopFiguresOnDemand(): Promise<ShopFigures | undefined> {
  const arrived = place.ignitionBenchBookShopFigures !== undefined || (await wantScript('assets/shop-figures.js'));
  return arrived ? place.ignitionBenchBookShopFigures?.().catch(() => undefined) : undefined;
}
