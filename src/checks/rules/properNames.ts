import type { Book, ContentKind } from '../../schemas/index.ts';
import { contentKinds } from '../../schemas/index.ts';
import { textsIn } from '../fieldValues.ts';
import type { FieldPath, Finding } from '../finding.ts';
import { withoutMarkup } from '../sentences.ts';
import { properNamePatterns, properNames } from './properNames.data.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'proper-names-are-on-the-list';
const expected = 'a word in lower case, or a name on the list in src/checks/rules/properNames.data.ts; never a maker, product or person';
const allowed: ReadonlySet<string> = new Set(Object.values(properNames).flat());

/** Sources name texts and publishers by their nature, and so does the place in one. */
function isCitation(kind: ContentKind, path: FieldPath): boolean {
  return kind === 'sources' || path.at(-1) === 'place';
}

/** After a stop, a colon or a semicolon, a paragraph, or the sign of a list entry or heading, a capital says nothing. */
const opening = /(?:^|[.!?:;][)"”’']?\s|\n\s*\n|\n\s*(?:[-*#]+|\d+\.)\s)[^\p{L}\p{N}]*$/u;
/** A word with a capital; a letter joined on by an ampersand belongs to the name before it, as in the numbers of manuals. */
const capitalised = /(?<![\p{L}\p{N}&])\p{Lu}[\p{L}\p{N}]*/gu;

function isKnown(word: string): boolean {
  return allowed.has(word) || properNamePatterns.some((pattern) => pattern.test(word));
}

/** Words with a capital that no sentence opens with and that are on no list, with their places in the text. */
function strangers(text: string, openingCounts: boolean): { word: string; index: number }[] {
  return [...text.matchAll(capitalised)]
    .map((match) => ({ word: match[0], index: match.index }))
    .filter(({ word, index }) => !isKnown(word) && (openingCounts || !opening.test(text.slice(0, index))));
}

function inFields(book: Book, kind: ContentKind, context: RuleContext): Finding[] {
  return [...book[kind]].flatMap(([id, entry]) =>
    textsIn(entry)
      .filter(({ path }) => !isCitation(kind, path))
      .flatMap(({ path, text }) => {
        // Other words are search words, not sentences: none opens with a capital without a reason.
        const found = strangers(text, path[0] === 'otherWords');
        return found.map(({ word }) => findingAt(name, context, { kind, id, path }, { found: `"${word}"`, expected }));
      }),
  );
}

function inProse(context: RuleContext): Finding[] {
  return [...context.bodies].flatMap(([address, { text, firstLine }]) => {
    const [kind, id] = address.split('/') as [ContentKind, string];
    const { file } = context.place(kind, id, []);
    const words = text.replace(/^#.*$/gm, (heading) => ' '.repeat(heading.length));
    return strangers(withoutMarkup(words), false).map(({ word, index }) => {
      const line = firstLine + text.slice(0, index).split('\n').length - 1;
      return { file, line, field: 'the prose', found: `"${word}"`, expected, rule: name };
    });
  });
}

/** The word that opens a sentence cannot be judged: every one has a capital there. */
export const properNamesAreOnTheList: Rule = {
  name,
  why: 'A make or product in the text ages, favours a seller, and makes a general figure look like that maker’s own.',
  scope: 'entry',
  check: (book, context) => [...contentKinds.flatMap((kind) => inFields(book, kind, context)), ...inProse(context)],
};
