import { z } from 'zod';
import { plainText } from './common.ts';

/** `content/sources/<id>.yaml`: a place that figures come from. Every figure in the book points at one. */
export const sourceSchema = z.strictObject({
  /** What kind of authority it is. `common-practice` and `memory` are honest words for having no published source. */
  kind: z.enum(['standard', 'regulation', 'textbook', 'guidance', 'open-data', 'computed', 'common-practice', 'memory']),
  title: plainText,
  publisher: plainText.optional(),
  /** Edition or year, as printed. */
  edition: plainText.optional(),
  /** Was the text read (`read`), only a part or a copy of it (`extract`), or is it recalled without the text at hand (`recalled`)? `none` where there is no text. */
  seen: z.enum(['read', 'extract', 'recalled', 'none']),
  note: plainText.optional(),
});
