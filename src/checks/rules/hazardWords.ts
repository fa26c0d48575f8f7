import type { Book, ContentKind } from '../../schemas/index.ts';
import { groupBy } from '../finding.ts';
import type { Finding } from '../finding.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'hazard-words-have-their-caution';

interface StepsOfJob {
  readonly kind: ContentKind;
  readonly id: string;
  readonly field: string;
  readonly cautions: readonly string[];
  readonly steps: readonly { readonly text: string; readonly where?: string | undefined; readonly caution?: string | undefined }[];
}

/** Everything in the book that tells a person to do something with their hands. */
function jobsIn(book: Book): StepsOfJob[] {
  return [
    ...[...book.procedures].map(([id, { cautions, steps }]) => ({ kind: 'procedures' as const, id, field: 'steps', cautions, steps })),
    ...[...book.parts].map(([id, { cautions, fit }]) => ({ kind: 'parts' as const, id, field: 'fit', cautions, steps: fit })),
  ];
}

/** A pattern that finds a word or phrase whole: `fuel` in `fuel rail`, not in `refuelling`. */
function wholeWord(word: string): RegExp {
  const escaped = word.trim().replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
  return new RegExp(`(?<![\\p{L}\\p{N}])${escaped}(?![\\p{L}\\p{N}])`, 'iu');
}

function hazardsIn(book: Book): { caution: string; word: string; pattern: RegExp }[] {
  return [...book.cautions].flatMap(([caution, entry]) => entry.hazardWords.map((word) => ({ caution, word, pattern: wholeWord(word) })));
}

function uncautioned(job: StepsOfJob, hazards: ReturnType<typeof hazardsIn>, context: RuleContext): Finding[] {
  return job.steps.flatMap((step, index) => {
    const text = [step.text, step.where ?? ''].join('\n');
    const missing = hazards.filter(({ caution, pattern }) => step.caution !== caution && !job.cautions.includes(caution) && pattern.test(text));
    const byCaution = groupBy(missing, ({ caution }) => caution);
    return [...byCaution].map(([caution, words]) => {
      const said = words.map(({ word }) => `"${word}"`).join(', ');
      const expected = `the caution ${caution} at this step, or in the cautions of the whole job`;
      return findingAt(name, context, { kind: job.kind, id: job.id, path: [job.field, index, 'text'] }, { found: `hazard words: ${said}`, expected, example: `caution: ${caution}` });
    });
  });
}

export const hazardWordsHaveTheirCaution: Rule = {
  name,
  why: 'The caution must stand at the step that can hurt, before the action.',
  scope: 'entry',
  check(book, context) {
    const hazards = hazardsIn(book);
    return jobsIn(book).flatMap((job) => uncautioned(job, hazards, context));
  },
};
