import { describe, expect, it } from 'vitest';
import { makeCalculators } from '../../src/domain/calculators/registry.ts';
import { runCalculator } from '../../src/domain/calculators/run.ts';
import type { OutputValue } from '../../src/domain/calculators/definition.ts';
import { allCases } from './calculators/all.ts';
import type { CalculatorCase } from './calculators/case.ts';

/** A book of one code, so that the lookup is seen to be used and neighbours are seen not to be. */
const lookUpCode = (code: string) =>
  code === 'P0303' ? { meaning: 'Misfire, cylinder 3', lookFirst: ['Plug and boot.'] } : undefined;
const calculators = makeCalculators({ lookUpCode });

function near(found: number, wanted: number, tolerance: number, name: string): void {
  expect(Math.abs(found - wanted), `${name}: ${found}, expected ${wanted} ± ${tolerance}`).toBeLessThanOrEqual(
    tolerance,
  );
}

type Expected = NonNullable<CalculatorCase['expected']>[string];

function isNumberRow(expected: Expected): expected is readonly [number, string, number] {
  return Array.isArray(expected) && typeof expected[0] === 'number';
}

function compare(found: OutputValue | undefined, expected: Expected, name: string): void {
  if (isNumberRow(expected)) {
    const [value, unit, tolerance] = expected;
    expect(found, name).toMatchObject({ unit });
    near((found as { value: number }).value, value, tolerance, name);
  } else if (typeof expected === 'object' && 'tolerance' in expected) {
    expect(found, name).toMatchObject({ unit: expected.unit });
    const values = (found as { values: readonly number[] }).values;
    expect(values, name).toHaveLength(expected.values.length);
    expected.values.forEach((value, index) =>
      near(values[index] ?? Number.NaN, value, expected.tolerance, `${name}[${index}]`),
    );
  } else expect(found, name).toEqual(expected);
}

function check(id: string, row: CalculatorCase): void {
  const definition = calculators.find((calculator) => calculator.id === id);
  if (definition === undefined) throw new Error(`no calculator ${id}`);
  const result = runCalculator(definition, row.inputs);
  if (row.refusal !== undefined) {
    expect(result).toMatchObject({ ok: false, error: row.refusal });
    return;
  }
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`);
  const { outputs, notes } = result.value;
  for (const [name, expected] of Object.entries(row.expected ?? {})) compare(outputs[name], expected, name);
  for (const name of row.absent ?? []) expect(outputs, `${name} must be left out`).not.toHaveProperty(name);
  if (row.says !== undefined) expect(notes.join('\n')).toMatch(row.says);
}

describe.each(Object.entries(allCases))('%s against published and computed values', (id, cases) => {
  it.each(cases.map((row) => [row.label, row] as const))('%s', (_, row) => {
    expect(row.expected ?? row.absent ?? row.says ?? row.refusal, 'a case must expect something').toBeDefined();
    check(id, row);
  });
});
