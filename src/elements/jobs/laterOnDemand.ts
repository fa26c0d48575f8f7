import { wantScript } from '../wantedScript.ts';
import type { Bench } from './bench.ts';
import type { laterParts } from './laterParts.ts';
import { paragraph } from './parts.ts';

type LaterParts = typeof laterParts;

/** Where the script of the later parts leaves them: the first test is found without any of them. */
interface LaterGlobal {
  ignitionBenchBookLaterParts?: LaterParts;
}

const place = globalThis as LaterGlobal;

/** Called by the script of the later parts. */
export function offerLaterParts(parts: LaterParts): void {
  place.ignitionBenchBookLaterParts = parts;
}

/** A part of the bench, at once where its script is here, otherwise in place of a waiting line as soon as it has arrived. */
export function laterPart(bench: Bench, name: keyof LaterParts): readonly Node[] {
  const here = place.ignitionBenchBookLaterParts;
  if (here) return here[name](bench);
  const waiting = paragraph('lead', 'This part is being fetched ...');
  waiting.setAttribute('role', 'status');
  void wantScript('assets/bench-later.js').then((arrived) => {
    const parts = arrived ? place.ignitionBenchBookLaterParts : undefined;
    if (parts) waiting.replaceWith(...parts[name](bench));
    else waiting.textContent = 'This part could not be fetched. Nothing is lost: reload the page where there is a network.';
  });
  return [waiting];
}
