import { outcomeBody, placesFor } from '../../domain/captures/asOutcome.ts';
import type { ProposedOutcome } from '../../domain/captures/asOutcome.ts';
import type { CaptureReport } from '../../domain/captures/report/types.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import type { JobEventBody } from '../../domain/jobs/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { loadBook } from '../jobs/data.ts';
import { openJobStore } from '../storage/jobs.ts';

/** A finding as an entry that can be written into the open job. */
export interface OfferedOutcome {
  /** `Coil current ramp with a clamp` and `The current jumps up …`. */
  readonly test: string;
  readonly outcome: string;
  readonly places: readonly { readonly id: string; readonly label: string }[];
  readonly bodyAt: (place: string) => JobEventBody | undefined;
}

/** What the result of a capture is called in a job, and what it came from. */
export interface CaptureNoted {
  readonly title: string;
  readonly inputs: readonly { readonly name: string; readonly label: string; readonly text: string }[];
}

const mostText = 2000;

/** The entry for the result itself: kept in words, evidence of nothing. */
export function captureBody({ kept }: CaptureReport, { title, inputs }: CaptureNoted): JobEventBody {
  const outputs = kept.slice(0, 100).map(({ name, label, text }) => ({ name: name.slice(0, 60), label, text: text.slice(0, mostText) }));
  return { kind: 'calculation', calculator: 'captures', title, inputs: [...inputs], outputs, address: 'captures/' };
}

/** The outcomes of a capture that fit the engine of a job, or why there are none. */
export async function offerOutcomes(job: string, outcomes: readonly ProposedOutcome[], note: string): Promise<Result<readonly OfferedOutcome[], string>> {
  const book = await loadBook();
  if (!book.ok) return book;
  const store = openJobStore();
  try {
    const read = await store.read(job);
    if (!read.ok) return failure(read.error.message);
    const engine = read.value && deriveJob(read.value.events, book.value).engine?.layout;
    if (engine === undefined) return success([]);
    return success(
      outcomes.flatMap((proposal) => {
        const test = book.value.diagnosis.tests.find(({ id }) => id === proposal.procedure);
        const outcome = test?.outcomes.find(({ id }) => id === proposal.outcome);
        const places = test === undefined ? [] : placesFor(proposal, test, engine);
        if (test === undefined || outcome === undefined || places.length === 0) return [];
        const bodyAt = (id: string) => {
          const place = places.find((one) => one.id === id);
          return place && outcomeBody(proposal, test, place, note);
        };
        return [{ test: test.title, outcome: outcome.label, places: places.map(({ id, label }) => ({ id, label })), bodyAt }];
      }),
    );
  } finally {
    store.close();
  }
}
