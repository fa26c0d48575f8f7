import { z } from 'zod';
import { plainText } from './common.ts';

/** `content/glossary/<id>.yaml`: a trade term in plain words. */
export const glossarySchema = z.strictObject({
  term: plainText,
  meaning: plainText,
  /** Other words for it on both sides of the Atlantic; they lead the search to this term's pages. */
  otherWords: z.array(plainText).default([]),
  /** Pages to go to, as `kind/id`, such as `procedures/swap-coils`. */
  see: z.array(z.string().regex(/^[a-z]+\/[a-z0-9-]+$/, 'kind/id, such as procedures/swap-coils')).default([]),
});
