import type { Book, Entry } from '../../schemas/index.ts';
import { valuesAt } from '../fieldValues.ts';
import type { Finding } from '../finding.ts';
import { referenceFields } from '../references.ts';
import { entryRule, findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

const figureName = 'every-figure-has-a-source';
const figureWhy = 'A figure without a source cannot be trusted, defended to a customer, or corrected.';

const fallbacksHaveASource = entryRule('parts', figureName, figureWhy, (part, report) => {
  part.askMaker.forEach((question, index) => {
    if (question.fallback === undefined || !/\d/.test(question.fallback) || question.source !== undefined) return;
    report(['askMaker', index, 'fallback'], {
      found: 'a figure without a source',
      expected: 'the source of the figure in the same entry',
      example: 'source: { id: common-practice }',
    });
  });
});

const unpublished: ReadonlySet<Entry<'sources'>['kind']> = new Set(['common-practice', 'memory', 'computed']);

const sourcesAreHonest = entryRule('sources', figureName, figureWhy, (source, report) => {
  if (unpublished.has(source.kind) === (source.seen === 'none')) return;
  const honest = unpublished.has(source.kind) ? 'none, because there is no text to have seen' : 'read, extract or recalled';
  report(['seen'], { found: `${source.seen}, for a source of the kind ${source.kind}`, expected: honest });
});

const publishedSourcesCanBeFound = entryRule('sources', figureName, figureWhy, (source, report) => {
  const traces = [source.publisher, source.edition, source.note];
  if (unpublished.has(source.kind) || traces.some((trace) => trace !== undefined)) return;
  report(['title'], {
    found: `a source of the kind ${source.kind} with a title alone`,
    expected: 'a publisher, an edition, or a note that says what was seen of it',
  });
});

/** A number and a unit of measurement after it, such as `0.4 mm` or `12 V`. */
const figure = /\d+(?:[.,]\d+)?\s?(?:%|°C|[kMµm]?Ω|[km]?ohms?|[kMm]?V|mA|A|µs|ms|s|mm|bar|psi|k?Pa|rpm|Hz|N m)(?![\p{L}\p{N}])/u;

/** Entries that have no field for a source; their figures belong in a range. */
function figuresWithoutASource(kind: 'glossary' | 'quantities'): Rule {
  return entryRule(kind, figureName, figureWhy, (entry, report) => {
    const found = figure.exec(entry.meaning);
    if (found === null) return;
    report(['meaning'], { found: `the figure ${found[0]}, where no source can be given`, expected: 'words alone; the figure stands in a range, with its source' });
  });
}

/**
 * The schemas ask for a source wherever a figure has a field of its own; this holds the rest: figures in the text of a
 * fallback, figures in entries that can name no source, and sources that claim more than they are.
 */
export const everyFigureHasASource: Rule = {
  name: figureName,
  why: figureWhy,
  scope: 'entry',
  check: (book, context) =>
    [
      fallbacksHaveASource,
      figuresWithoutASource('glossary'),
      figuresWithoutASource('quantities'),
      sourcesAreHonest,
      publishedSourcesCanBeFound,
    ].flatMap((rule) => rule.check(book, context)),
};

interface Citation {
  readonly kind: keyof Book;
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly source: string;
  readonly place: string | undefined;
}

function citationsIn(book: Book): Citation[] {
  const kinds = Object.keys(referenceFields) as (keyof Book)[];
  return kinds.flatMap((kind) => {
    const patterns = Object.entries(referenceFields[kind]).filter(([, target]) => target === 'sources');
    return [...book[kind]].flatMap(([id, entry]) =>
      patterns.flatMap(([pattern]) =>
        valuesAt(entry, pattern.replace(/\.id$/, '')).map(({ path, value }) => {
          const reference = value as { readonly id: string; readonly place?: string | undefined };
          return { kind, id, path, source: reference.id, place: reference.place };
        }),
      ),
    );
  });
}

const placeName = 'standards-and-regulations-need-a-place';

function needsPlace(book: Book, source: string): boolean {
  const kind = book.sources.get(source)?.kind;
  return kind === 'standard' || kind === 'regulation';
}

export const standardsAndRegulationsNeedAPlace: Rule = {
  name: placeName,
  why: 'A standard has hundreds of pages: without the clause, table or page nobody can look the figure up.',
  scope: 'entry',
  check(book, context): Finding[] {
    const expected = 'the clause, section, table or page of the source';
    const inContent = citationsIn(book)
      .filter(({ source, place }) => place === undefined && needsPlace(book, source))
      .map(({ kind, id, path, source }) =>
        findingAt(placeName, context, { kind, id, path }, { found: `"${source}" without a place`, expected, example: 'place: §7.4' }),
      );
    const inDomain = context.domainSources
      .filter(({ id, place, usedBy }) => place === undefined && usedBy.includes('calculators') && needsPlace(book, id))
      .map(({ id, usedBy }) => ({ file: usedBy, line: 1, field: 'source', found: `"${id}" without a place`, expected, rule: placeName }));
    return [...inContent, ...inDomain];
  },
};
