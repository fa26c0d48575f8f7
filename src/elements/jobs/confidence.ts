import { proofConfidence } from '../../domain/jobs/proof.ts';

/** How sure a proof can be asked to be. */
export const confidences = [0.9, 0.95, 0.99] as const;
/** Where the choice is remembered among the drafts of the job. */
export const confidenceKey = 'choice.confidence';

/** The confidence chosen for this job, by its drafts; the usual one where none was. */
export function chosenConfidence(drafts: { readonly get: (key: string) => string | undefined }): number {
  const chosen = Number(drafts.get(confidenceKey));
  return confidences.find((one) => one === chosen) ?? proofConfidence;
}
