import type { ContentKind } from '../../schemas/index.ts';
import { contentKinds } from '../../schemas/index.ts';
import type { Finding } from '../finding.ts';
import { showValue } from '../finding.ts';
import { valuesAt } from '../fieldValues.ts';
import { findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

const name = 'sentences-end-properly';

/** Fields that are read as sentences, by kind, as `valuesAt` patterns. */
export const sentenceFields: Readonly<Record<ContentKind, readonly string[]>> = {
  sources: ['note'],
  quantities: ['meaning'],
  ranges: ['inside', 'below.text', 'above.text', 'open.text', 'note'],
  procedures: ['summary', 'notPossible', 'worthIt', 'proves', 'provesNot', 'steps.[].text', 'outcomes.[].meaning', 'mistakes.[]'],
  faults: ['meaning', 'signs.[]', 'repair'],
  codes: ['meaning', 'lookFirst.[]', 'note'],
  cautions: ['short', 'hazard', 'do.[]', 'stopFor.[]'],
  parts: ['summary', 'match.[].check', 'renewWith.[].why', 'fit.[].text', 'askMaker.[].question', 'askMaker.[].fallback', 'beforeStart.[]'],
  engines: ['numbering', 'note'],
  calculators: ['whenToUse', 'limits.[]'],
  glossary: ['meaning'],
};

/** Fields that are read as headings. */
const headingFields = ['title', 'term'];

/** Text that breaks off after a word or figure; a comma or colon at the end says that words are missing, which only an author can give. */
function onlyLacksItsStop(text: string): boolean {
  return /[\p{L}\p{N}%°)"”’']$/u.test(text);
}

export const sentencesEndProperly: Rule = {
  name,
  why: 'A sentence without its end looks cut off, and a screen reader runs it into the next one.',
  scope: 'entry',
  check: (book, context) =>
    contentKinds.flatMap((kind) =>
      [...book[kind]].flatMap(([id, entry]) => {
        const unfinished = sentenceFields[kind].flatMap((pattern) => valuesAt(entry, pattern)).filter(({ value }) => !/[.?!][)"”’']?$/u.test(String(value)));
        const stopped = headingFields.flatMap((pattern) => valuesAt(entry, pattern)).filter(({ value }) => /[.,;:]$/.test(String(value)));
        return [
          ...unfinished.map(({ path, value }): Finding => {
            const found = `text that ends in ${showValue(String(value).slice(-12))}`;
            const finding = findingAt(name, context, { kind, id, path }, { found, expected: 'a sentence that ends with a full stop, question mark or exclamation mark' });
            return onlyLacksItsStop(String(value)) ? { ...finding, repair: { path, change: 'add-stop' } } : finding;
          }),
          ...stopped.map(({ path, value }) => findingAt(name, context, { kind, id, path }, { found: showValue(value), expected: 'a heading without a stop at its end' })),
        ];
      }),
    ),
};
