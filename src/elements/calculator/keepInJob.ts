import type { CalculatorDefinition } from '../../domain/calculators/definition.ts';
import type { PresentedOutput } from '../../domain/calculators/present.ts';
import { calculationBody } from '../../domain/jobs/calculation.ts';
import { writeIntoJob } from '../jobs/writeIntoJob.ts';

/** Writes a calculation into a job of this device; gives back what went wrong, or nothing. */
export function keepInJob(
  id: string,
  definition: CalculatorDefinition,
  texts: Readonly<Record<string, string>>,
  outputs: readonly PresentedOutput[],
): Promise<string | undefined> {
  return writeIntoJob(id, calculationBody(definition, texts, outputs), 'the calculation');
}
