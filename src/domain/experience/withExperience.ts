import type { DiagnosisBook } from '../diagnosis/types.ts';

/** How many finished jobs the book's weights stand for when a shop's own are joined to them. An estimate, no source. */
export const priorStrength = 50;

/**
 * The book with each fault's weight joined to what a shop found: total · (strength · weight / total + count) / (strength + counts).
 *
 * That is the mean of a Dirichlet distribution after multinomial counts (Gelman et al., Bayesian Data Analysis, chapter on
 * single- and multiparameter models; recalled from memory). The sum of the weights stays as it was, so the share kept for
 * `none of these` is untouched. Counts of unknown faults and counts that are not above 0 are left out; without any count the book
 * comes back as it is.
 */
export function withExperience(book: DiagnosisBook, counts: ReadonlyMap<string, number>): DiagnosisBook {
  const countOf = (id: string): number => usable(counts.get(id));
  const counted = sum(book.faults.map(({ id }) => countOf(id)));
  const total = sum(book.faults.map(({ weight }) => weight));
  if (counted === 0 || total === 0) return book;
  const joined = (weight: number, count: number): number => (total * ((priorStrength * weight) / total + count)) / (priorStrength + counted);
  return { ...book, faults: book.faults.map((fault) => ({ ...fault, weight: joined(fault.weight, countOf(fault.id)) })) };
}

function usable(count: number | undefined): number {
  return count !== undefined && Number.isFinite(count) && count > 0 ? count : 0;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, value) => total + value, 0);
}
