import type { ReasoningBook } from './book.ts';
import { isSearch } from './searched.ts';
import type { JobEvent, TestDone } from './types.ts';

/** Minutes of tests, repairs and proof runs together. */
export function minutesSpent(live: readonly JobEvent[], book: ReasoningBook): number {
  return live.reduce((total, event) => total + minutesOf(event, book), 0);
}

/** `45 min`, `2 h`, `1 h 05 min`; rounded to the minute. */
export function durationWords(minutes: number): string {
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')} min`;
}

function minutesOf(event: JobEvent, book: ReasoningBook): number {
  if (event.kind === 'test-done') return event.minutes ?? bookMinutes(event, book);
  return event.kind === 'repair-done' || event.kind === 'proof-run' ? event.minutes : 0;
}

/** Repairs and proofs bring minutes of their own with the repair and the run; the book's figure would count them twice. */
function bookMinutes(event: TestDone, book: ReasoningBook): number {
  if (!isSearch(event, book)) return 0;
  return book.diagnosis.tests.find((test) => test.id === event.test)?.minutes ?? 0;
}
