import type { CalculatorMaker } from '../../domain/calculators/definition.ts';
import { readBookData } from '../bookData.ts';
import { CalculatorForm } from './calculatorForm.ts';

interface CodeMeanings {
  readonly families: Readonly<Record<string, { readonly meaning: string; readonly lookFirst: readonly string[] }>>;
  readonly codes: Readonly<Record<string, { readonly title: string; readonly family: string }>>;
}

/** Only the trouble-code calculator needs the meanings of codes; they are read from the book's data when its page opens. */
async function loadMeanings(id: string): Promise<CodeMeanings> {
  const none: CodeMeanings = { families: {}, codes: {} };
  if (id !== 'trouble-code') return none;
  return readBookData<CodeMeanings>('code-meanings').catch(() => none);
}

/** Sets one calculator going on its page. Each calculator has a script of its own, so a page loads no other. */
export function startCalculator(make: CalculatorMaker): void {
  CalculatorForm.definitionOf = async (id) => {
    const { families, codes } = await loadMeanings(id);
    const lookUpCode = (code: string) => {
      const entry = codes[code];
      const family = entry && families[entry.family];
      return entry && family ? { meaning: `${entry.title}. ${family.meaning}`, lookFirst: family.lookFirst } : undefined;
    };
    return make({ lookUpCode });
  };
  customElements.define('calculator-form', CalculatorForm);
}
