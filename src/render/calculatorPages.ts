import { makeCalculators } from '../domain/calculators/registry.ts';
import type { CalculatorDefinition } from '../domain/calculators/definition.ts';
import type { Book } from '../schemas/index.ts';
import { codePages } from './codePages.ts';

/** The calculators as pages know them: code meanings come from the book. */
export function calculatorsOf(book: Pick<Book, 'codes'>): readonly CalculatorDefinition[] {
  const pages = new Map(codePages(book).map((page) => [page.code, page]));
  return makeCalculators({
    lookUpCode: (code) => {
      const page = pages.get(code);
      return page && { meaning: `${page.title}. ${page.family.meaning}`, lookFirst: page.family.lookFirst };
    },
  });
}

/** A calculator for its title and words alone; without the meanings of codes. */
export function calculatorById(id: string): CalculatorDefinition | undefined {
  return makeCalculators({ lookUpCode: () => undefined }).find((definition) => definition.id === id);
}
