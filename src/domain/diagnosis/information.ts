/** Doubt left in a set of probabilities, in bits (Shannon's entropy): 1 bit is an even choice between two. */
export function entropy(probabilities: readonly number[]): number {
  return probabilities.reduce((sum, probability) => (probability > 0 ? sum - probability * Math.log2(probability) : sum), 0);
}
