import { largestFiguresFile, readFigures } from '../../domain/figures/figuresFile.ts';
import type { FigureRange, ShopEngine } from '../../domain/figures/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { bookAddress } from '../dom.ts';
import { isPortable } from '../edition.ts';

/** Beside the pages on the shop's server; no part of the book, so a new edition leaves it alone. */
const place = 'shop/figures.json';

let asked: Promise<Result<string | undefined, string>> | undefined;

/**
 * The engines of the file on the shop's server: none where there is no such file, or the reason why nothing was taken from it.
 * Asked for once a page; in the edition opened from a folder there is no server to ask.
 */
export async function serverEngines(ranges: readonly FigureRange[]): Promise<Result<readonly ShopEngine[], string>> {
  asked ??= serverText();
  const text = await asked;
  if (!text.ok) return text;
  if (text.value === undefined) return success([]);
  const engines = readFigures(text.value, ranges);
  return engines.ok ? engines : failure(`Nothing was taken from the shop’s figures on the server (${place}). ${engines.error.message}`);
}

async function serverText(): Promise<Result<string | undefined, string>> {
  if (isPortable()) return success(undefined);
  try {
    const answer = await fetch(bookAddress(place), { cache: 'no-cache' });
    if (answer.status === 404) return success(undefined);
    if (!answer.ok) return failure(`The server would not give the shop’s figures (${place}, answer ${answer.status}); they are not used.`);
    if (Number(answer.headers.get('content-length')) > largestFiguresFile) return failure(`The shop’s figures on the server (${place}) are larger than 1 MB; nothing was taken from them.`);
    return success(await answer.text());
  } catch {
    return failure(`The shop’s figures on the server (${place}) could not be fetched; only those in this browser and in the book are used.`);
  }
}
