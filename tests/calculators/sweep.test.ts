import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import temml from 'temml';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type {
  CalculatorDefinition,
  FormulaDefinition,
  OutputDefinition,
  OutputValue,
  WorkedExample,
} from '../../src/domain/calculators/definition.ts';
import { chartsOf } from '../../src/domain/calculators/definition.ts';
import { presentCalculation } from '../../src/domain/calculators/present.ts';
import { calculatorById, calculators } from '../../src/domain/calculators/registry.ts';
import { parseInputs, runCalculator } from '../../src/domain/calculators/run.ts';
import { unitById } from '../../src/domain/units/table.ts';
import { calculatorSchema } from '../../src/schemas/calculators.ts';
import { allCases } from '../published/calculators/all.ts';

const fewestCases = 3;
const fewestRows = 6;
const plainMinus = (text: string) => text.replaceAll('−', '-');

function run(calculator: CalculatorDefinition, inputs: Readonly<Record<string, string>>) {
  const result = runCalculator(calculator, inputs);
  if (!result.ok) throw new Error(`${calculator.id} refused ${JSON.stringify(inputs)}: ${result.error.message}`);
  return result.value;
}

/** Numbers that a sentence about a result may use: results, also as shown, inputs and their sum, defaults, and figures in labels. */
function numbersKnown(
  calculator: CalculatorDefinition,
  example: WorkedExample,
  outputs: Readonly<Record<string, OutputValue>>,
): number[] {
  const results = Object.values(outputs).flatMap((output) => {
    if (typeof output !== 'object' || !('unit' in output)) return [];
    return 'value' in output ? [output.value] : output.values;
  });
  const shown = presentCalculation(calculator, { outputs, notes: [] }).flatMap(
    ({ text }) =>
      plainMinus(text)
        .match(/-?\d+(\.\d+)?/g)
        ?.map(Number) ?? [],
  );
  const texts = calculator.inputs.map(({ name, default: standard }) => example.inputs[name] ?? standard ?? '');
  const typed = texts.map((text) => text.match(/[-+]?\d+(\.\d+)?/g)?.map(Number) ?? []);
  const sums = typed.map((numbers) => numbers.reduce((sum, number) => sum + number, 0));
  const labels = calculator.outputs.flatMap(({ label }) => label.match(/\d+/g)?.map(Number) ?? []);
  return [...results, ...shown, ...typed.flat(), ...sums, ...labels];
}

function mainText(output: OutputDefinition, value: OutputValue | undefined): string | undefined {
  if (value === undefined) return undefined;
  if (typeof value !== 'object') return (output.words?.[String(value)] ?? String(value)).toLowerCase();
  return 'value' in value && output.decimals !== undefined ? value.value.toFixed(output.decimals) : undefined;
}

/** Letters left in a formula once commands, units and every declared symbol are taken out. */
function undeclared(formula: FormulaDefinition): string {
  const bare = formula.tex.replaceAll(
    /\\mathrm\{(kPa|K)\}|\\(frac|sqrt|left|right|qquad|cdot|ln|le|ge|lfloor|rfloor)(?![A-Za-z])|\\[,;]/g,
    ' ',
  );
  const symbols = formula.symbols.map(({ tex }) => tex).sort((left, right) => right.length - left.length);
  return symbols.reduce((rest, symbol) => rest.replaceAll(symbol, ' '), bare).replaceAll(/[^A-Za-z\\]/g, '');
}

function expectDeclared(calculator: CalculatorDefinition, name: string, output: OutputValue): void {
  const definition = calculator.outputs.find((candidate) => candidate.name === name);
  expect(definition, name).toBeDefined();
  if (definition?.words !== undefined) expect(Object.keys(definition.words)).toContain(String(output));
}

function expectDrawable(calculator: CalculatorDefinition, inputs: Readonly<Record<string, string>>): void {
  const parsed = parseInputs(calculator, inputs);
  for (const { series, marks } of parsed.ok ? chartsOf(calculator, parsed.value) : []) {
    for (const { points } of series) expect(points.length).toBeGreaterThan(0);
    const points = [...series.flatMap((one) => one.points), ...marks];
    for (const { x, y } of points) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
  }
}

it('finds every calculator by its id, and each once', () => {
  const ids = calculators.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(calculatorById(id)?.id).toBe(id);
  expect(calculatorById('no-such')).toBeUndefined();
  expect(Object.keys(allCases).sort()).toEqual([...ids].sort());
});

describe.each(calculators.map((calculator) => [calculator.id, calculator] as const))('%s', (id, calculator) => {
  it('has at least three published or computed cases that give a result', () => {
    const withResult = allCases[id]?.filter((row) => row.expected !== undefined) ?? [];
    expect(withResult.length).toBeGreaterThanOrEqual(fewestCases);
    for (const row of allCases[id] ?? []) expect(row.source.length, row.label).toBeGreaterThan(10);
  });

  it('has labels, unique names and known units', () => {
    const names = [...calculator.inputs, ...calculator.outputs].map(({ name }) => name);
    expect(new Set(calculator.inputs.map(({ name }) => name)).size).toBe(calculator.inputs.length);
    expect(new Set(calculator.outputs.map(({ name }) => name)).size).toBe(calculator.outputs.length);
    for (const name of names) expect(name).toMatch(/^[a-z][A-Za-z0-9]*$/);
    for (const { label } of [...calculator.inputs, ...calculator.outputs]) expect(label.length).toBeGreaterThan(2);
    for (const input of calculator.inputs) {
      if (input.unit !== undefined) expect(unitById(input.unit)?.dimension, input.name).toBe(input.dimension);
      if (input.kind.startsWith('quantity')) expect(input.unit, input.name).toBeDefined();
    }
    for (const output of calculator.outputs)
      if (output.unit !== undefined) expect(unitById(output.unit), output.name).toBeDefined();
    expect(calculator.outputs.filter(({ main }) => main === true)).toHaveLength(1);
    expect(calculator.searchWords.length).toBeGreaterThan(2);
    expect(calculator.summary).toMatch(/\?$/);
  });

  it('has formulas and symbols that become MathML', () => {
    for (const { tex, symbols } of calculator.formulas)
      for (const text of [tex, ...symbols.map((symbol) => symbol.tex)])
        expect(temml.renderToString(text, { throwOnError: true }), text).toContain('<math');
  });

  it('reads its own defaults', () => {
    for (const { name, default: standard } of calculator.inputs) {
      if (standard === undefined) continue;
      const example = calculator.examples[0]?.inputs ?? {};
      expect(parseInputs(calculator, { ...example, [name]: standard }).ok, name).toBe(true);
    }
  });

  it.each(calculator.examples.map((example) => [example.title, example] as const))(
    'example tells the truth: %s',
    (_, example) => {
      const { outputs, notes } = run(calculator, example.inputs);
      expect(notes.length).toBeGreaterThan(0);
      const says = plainMinus(example.says);
      const main = calculator.outputs.find((output) => output.main === true);
      const shown = main === undefined ? undefined : mainText(main, outputs[main.name]);
      if (shown !== undefined) expect(says.toLowerCase()).toContain(shown);
      // Codes and bytes are no numbers.
      const spoken = says.replaceAll(/\b[PCBU][0-3][0-9A-F]{3}\b|\b[0-9A-F]{2} [0-9A-F]{2}\b/g, '');
      const known = numbersKnown(calculator, example, outputs);
      if (id === 'trouble-code') return;
      for (const text of spoken.match(/[-+]?\d+(\.\d+)?/g) ?? []) {
        const decimals = text.split('.')[1]?.length ?? 0;
        const found = known.some((value) => Number(value.toFixed(decimals)) === Number(text));
        expect(found, `${text} in "${example.says}" among ${known.join(', ')}`).toBe(true);
      }
    },
  );

  it('has a table for reading without scripts, every row of which computes', () => {
    const { rows, columns, caption } = calculator.table;
    expect(rows.length).toBeGreaterThanOrEqual(fewestRows);
    expect(caption.length).toBeGreaterThan(10);
    const names = [...calculator.inputs, ...calculator.outputs].map(({ name }) => name);
    for (const column of columns) expect(names).toContain(column);
    for (const row of rows) {
      const { outputs } = run(calculator, row);
      for (const column of columns)
        expect(column in row || column in outputs, `${column} in ${JSON.stringify(row)}`).toBe(true);
    }
  });

  it('explains every symbol of its formulas and names a source', () => {
    expect(calculator.formulas.length).toBeGreaterThan(0);
    for (const formula of calculator.formulas) {
      expect(undeclared(formula), formula.tex).toBe('');
      for (const { tex } of formula.symbols) expect(formula.tex).toContain(tex);
      expect(formula.sources.length).toBeGreaterThan(0);
      expect(formula.plain.length).toBeGreaterThan(3);
    }
  });

  it('gives only outputs it has declared, all finite, and a chart of finite points', () => {
    for (const { inputs } of [
      ...calculator.examples,
      ...(allCases[id] ?? []).filter((row) => row.refusal === undefined),
    ]) {
      const { outputs, notes } = run(calculator, inputs);
      for (const [name, output] of Object.entries(outputs)) expectDeclared(calculator, name, output);
      expect(JSON.stringify({ outputs, notes })).not.toMatch(/NaN|Infinity|null|undefined/);
      expectDrawable(calculator, inputs);
    }
  });

  it('has a page that fits its schema', () => {
    const file = resolve(import.meta.dirname, `../../content/calculators/${id}.mdx`);
    expect(existsSync(file)).toBe(true);
    const [, front = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(readFileSync(file, 'utf8')) ?? [];
    const page = calculatorSchema.safeParse(parse(front));
    expect(page.success, page.error?.message).toBe(true);
    expect(body.length).toBeGreaterThan(200);
  });
});
