import type { ColumnMatch } from '../columns/match.ts';
import { kindsOfCapture } from './kinds.data.ts';
import { captureKinds } from './types.ts';
import type { CaptureKind } from './types.ts';

/** What a table most likely is, from what its columns hold: a trace by its own quantity, a log by two of what control units tell. */
export function proposeKind(matches: readonly ColumnMatch[]): CaptureKind | undefined {
  const held = new Set(matches.map(({ quantity }) => quantity));
  const logged = kindsOfCapture.logged.quantities.filter((quantity) => held.has(quantity)).length;
  const trace = captureKinds.find((kind) => kind !== 'logged' && kindsOfCapture[kind].quantities.some((quantity) => quantity !== 'trigger' && held.has(quantity)));
  return trace !== undefined && logged < 2 ? trace : logged > 0 ? 'logged' : trace;
}
