import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import type { Calculation, CalculatorDefinition, OutputValue, ParsedInputs } from './definition.ts';
import { parseField } from './parse-field.ts';
import type { ParsedField } from './parse-field.ts';
import { parsedInputs } from './parsed-inputs.ts';

/** Inputs that hold nothing but blanks count as left empty. */
function isEmpty(text: string | undefined): boolean {
  return text === undefined || text.trim() === '';
}

function refuseUnknown(definition: CalculatorDefinition, name: string): Result<never, Refusal> {
  const known = definition.inputs.map((input) => input.name).join(', ');
  return failure({
    input: name,
    code: 'unknown-input',
    message: `"${name}" is no input of ${definition.title}. Its inputs are ${known}.`,
  });
}

/**
 * The inputs of a calculator, read from text as a person types it. Defaults stand in for empty fields.
 * Refuses with the first input, in the order of the definition, that is unknown, missing, unreadable or outside its range:
 * `unknown-input`, `missing`, `not-a-number`, `ambiguous`, `unknown-unit`, `wrong-dimension`, `open-not-accepted`, `too-low`,
 * `too-high`, `not-whole`, `not-a-choice`.
 */
export function parseInputs(
  definition: CalculatorDefinition,
  texts: Readonly<Record<string, string>>,
): Result<ParsedInputs, Refusal> {
  const unknown = Object.keys(texts).find((name) => !definition.inputs.some((input) => input.name === name));
  if (unknown !== undefined) return refuseUnknown(definition, unknown);
  const fields = new Map<string, ParsedField>();
  for (const input of definition.inputs) {
    const typed = texts[input.name];
    const text = isEmpty(typed) ? input.default : typed;
    if (text === undefined) {
      if (input.optional) continue;
      return failure({
        input: input.name,
        code: 'missing',
        message: `${input.label}: nothing was typed, and it is needed. ${input.hint ?? ''}`.trim(),
      });
    }
    const field = parseField(input, text);
    if (!field.ok) return field;
    fields.set(input.name, field.value);
  }
  return success(parsedInputs(fields));
}

function isFinite(output: OutputValue): boolean {
  if (typeof output !== 'object' || !('unit' in output)) return true;
  return 'value' in output ? Number.isFinite(output.value) : output.values.every(Number.isFinite);
}

/**
 * A calculator applied to typed text. Besides the refusals of `parseInputs` and those of the calculator itself it refuses, as
 * `no-result`, inputs so extreme that the arithmetic has no finite answer.
 */
export function runCalculator(
  definition: CalculatorDefinition,
  texts: Readonly<Record<string, string>>,
): Result<Calculation, Refusal> {
  const inputs = parseInputs(definition, texts);
  return inputs.ok ? runParsed(definition, inputs.value) : inputs;
}

/** The same for inputs that are parsed already, where the chart needs them too. */
export function runParsed(definition: CalculatorDefinition, inputs: ParsedInputs): Result<Calculation, Refusal> {
  const result = definition.compute(inputs);
  if (!result.ok) return result;
  const bad = Object.entries(result.value.outputs).find(([, output]) => !isFinite(output));
  if (bad === undefined) return result;
  const message = `These inputs give no finite ${bad[0]}. Check them for a slipped digit or unit.`;
  return failure({ input: definition.inputs[0]?.name ?? '', code: 'no-result', message });
}
