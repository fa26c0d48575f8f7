import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { parse } from 'yaml';
import type { CalculatorDefinition, CodeMeaning } from '../../domain/calculators/definition.ts';
import { makeCalculators } from '../../domain/calculators/registry.ts';
import { runCalculator } from '../../domain/calculators/run.ts';
import { expandFamily } from '../../domain/obd/families.ts';
import { codeFamilySchema } from '../../schemas/codes.ts';

const exitRefused = 2;
const exitUsage = 64;
const codesFolder = resolve(import.meta.dirname, '../../../content/codes');

const usage = 'npm run -s calculate -- <id> name=value …   or   npm run -s calculate -- --list';

function print(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

function complain(...lines: readonly string[]): void {
  process.stderr.write(`${lines.join('\n')}\n`);
}

/** Meanings of every code in the book. A file that does not fit its schema is left to the content check. */
function readMeanings(): ReadonlyMap<string, CodeMeaning> {
  const meanings = new Map<string, CodeMeaning>();
  for (const file of readdirSync(codesFolder).filter((name) => name.endsWith('.yaml'))) {
    const family = codeFamilySchema.safeParse(parse(readFileSync(join(codesFolder, file), 'utf8')));
    if (!family.success) {
      complain(`content/codes/${file} does not fit its schema and is left out; see npm run check.`);
      continue;
    }
    for (const { code, title } of expandFamily(family.data)) {
      meanings.set(code, { meaning: `${title}. ${family.data.meaning}`, lookFirst: family.data.lookFirst });
    }
  }
  return meanings;
}

/** Inputs with their units and defaults, and outputs with theirs. */
function listEntry(calculator: CalculatorDefinition) {
  return {
    calculator: calculator.id,
    title: calculator.title,
    inputs: calculator.inputs.map(({ name, label, kind, unit, optional, default: standard, choices }) => ({
      name,
      label,
      kind,
      unit,
      optional,
      default: standard,
      choices: choices?.map((choice) => choice.value),
    })),
    outputs: calculator.outputs.map(({ name, label, kind, unit, words }) => ({ name, label, kind, unit, words })),
  };
}

/** `name=value` words by name, or what is wrong with them. */
function readWords(words: readonly string[]): {
  readonly texts: ReadonlyMap<string, string>;
  readonly problem?: string;
} {
  const texts = new Map<string, string>();
  for (const word of words) {
    const equals = word.indexOf('=');
    if (equals < 1) return { texts, problem: `"${word}" is not of the form name=value.` };
    const name = word.slice(0, equals);
    if (texts.has(name)) return { texts, problem: `"${name}" is given twice.` };
    texts.set(name, word.slice(equals + 1));
  }
  return { texts };
}

function calculate(calculator: CalculatorDefinition, words: readonly string[]): number {
  const known = `Inputs of ${calculator.id}: ${calculator.inputs.map(({ name, optional }) => (optional ? `${name}?` : name)).join(', ')}`;
  const { texts, problem } = readWords(words);
  if (problem !== undefined) {
    complain(problem, known, usage);
    return exitUsage;
  }
  const result = runCalculator(calculator, Object.fromEntries(texts));
  if (result.ok) {
    print({ calculator: calculator.id, ...result.value });
    return 0;
  }
  if (result.error.code === 'unknown-input') {
    complain(result.error.message, known);
    return exitUsage;
  }
  print({ calculator: calculator.id, refusal: result.error });
  return exitRefused;
}

function main(words: readonly string[]): number {
  const [id, ...rest] = words;
  const all = makeCalculators({});
  if (id === '--list') {
    print(all.map(listEntry));
    return 0;
  }
  const found = all.find((calculator) => calculator.id === id);
  if (found === undefined) {
    complain(
      id === undefined ? usage : `"${id}" is no calculator.`,
      `Calculators: ${all.map((calculator) => calculator.id).join(', ')}`,
    );
    return exitUsage;
  }
  return calculate(found.id === 'trouble-code' ? withMeanings(found) : found, rest);
}

/** The book is read only for the calculator that needs it. */
function withMeanings(plain: CalculatorDefinition): CalculatorDefinition {
  const meanings = readMeanings();
  const informed = makeCalculators({ lookUpCode: (code) => meanings.get(code) });
  return informed.find((calculator) => calculator.id === plain.id) ?? plain;
}

process.exitCode = main(process.argv.slice(2));
