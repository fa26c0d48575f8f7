import type { z } from 'zod';
import { fieldGuides } from './fieldGuide.data.ts';
import { showValue } from './finding.ts';
import type { FieldPath } from './finding.ts';
import { nearestClause } from './nearest.ts';
import { describeSchema, keysOf, schemaAt } from './schemaShape.ts';

type Issue = z.core.$ZodIssue;

/** A finding before it has a file and a line. */
export interface SchemaFinding {
  readonly path: FieldPath;
  readonly found: string;
  readonly expected: string;
  readonly example?: string;
}

interface Field {
  readonly kind: string;
  readonly schema: unknown;
  readonly path: FieldPath;
  readonly value: unknown;
}

function valueAt(value: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>((inner, step) => {
    if (typeof inner !== 'object' || inner === null) return undefined;
    return (inner as Readonly<Record<string, unknown>>)[String(step)];
  }, value);
}

function pathOf(issue: Issue): FieldPath {
  return issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
}

function guideFor(field: Field): { expected?: string; example?: string } {
  return fieldGuides[[field.kind, ...field.path.filter((step) => typeof step === 'string')].join('.')] ?? {};
}

/** Numbers and true/false where text is meant are nearly always text that lacks its quotes. */
function quotedExample(field: Field): { example?: string } {
  const bare = typeof field.value === 'number' || typeof field.value === 'boolean';
  const key = field.path.findLast((step) => typeof step === 'string');
  return bare && describeSchema(field.schema) === 'text' ? { example: `${key}: "${String(field.value)}"` } : {};
}

function wrongType(field: Field): SchemaFinding {
  const guide = guideFor(field);
  const expected = guide.expected ?? describeSchema(field.schema);
  const missing = field.value === undefined || field.value === null;
  return {
    path: field.path,
    found: showValue(field.value),
    expected: missing ? `this field is needed: ${expected}` : expected,
    ...quotedExample(field),
    ...(guide.example === undefined ? {} : { example: guide.example }),
  };
}

/** A key of several words is nearly always the rest of a text that was cut at its comma. */
function commaClause(key: string): string {
  return key.includes(' ') ? '; a text with a comma inside braces stands between double quotes' : '';
}

function unknownKeys(field: Field, keys: readonly string[]): SchemaFinding[] {
  const known = keysOf(field.schema);
  return keys.map((key) => ({
    path: [...field.path, key],
    found: `the key "${key}", which does not exist here`,
    expected: `one of the keys ${known.join(', ')}${nearestClause(key, known)}${commaClause(key)}`,
  }));
}

function notAChoice(field: Field, values: readonly unknown[]): SchemaFinding {
  const choices = values.map(String);
  return {
    path: field.path,
    found: showValue(field.value),
    expected: `one of: ${choices.join(', ')}${nearestClause(String(field.value), choices)}`,
  };
}

/** Wording of a limit by what is counted. */
function limit(origin: string, amount: string, inclusive: boolean, direction: 'least' | 'most'): string {
  if (origin === 'array') return `a list of at ${direction} ${amount} ${amount === '1' ? 'entry' : 'entries'}`;
  if (origin === 'string') return direction === 'least' ? 'some text' : `at most ${amount} characters`;
  if (inclusive) return `a number of at ${direction} ${amount}`;
  return direction === 'least' ? `a number above ${amount}` : `a number below ${amount}`;
}

function outOfLimits(field: Field, expected: string): SchemaFinding {
  const length = typeof field.value === 'string' && field.value.length > 100 ? `${field.value.length} characters: ` : '';
  return { path: field.path, found: `${length}${showValue(field.value)}`, expected, ...guideFor(field) };
}

function badKey(field: Field, issues: readonly Issue[]): SchemaFinding {
  const key = String(field.path.at(-1));
  const known = keysOf(schemaAt(field.schema, []));
  const expected = known.length > 0 ? `one of: ${known.join(', ')}` : (issues[0]?.message ?? 'another name');
  return { path: field.path, found: `the name "${key}"`, expected: `${expected}${nearestClause(key, known)}` };
}

function translate(issue: Issue, field: Field, whole: unknown): SchemaFinding[] {
  switch (issue.code) {
    case 'invalid_type':
      return [wrongType(field)];
    case 'unrecognized_keys':
      return unknownKeys(field, issue.keys);
    case 'invalid_value':
      return [field.value === undefined || field.value === null ? wrongType(field) : notAChoice(field, issue.values)];
    case 'too_small':
      return [outOfLimits(field, limit(issue.origin, String(issue.minimum), issue.inclusive ?? true, 'least'))];
    case 'too_big':
      return [outOfLimits(field, limit(issue.origin, String(issue.maximum), issue.inclusive ?? true, 'most'))];
    case 'invalid_key':
      return [badKey({ ...field, schema: schemaAt(whole, field.path.slice(0, -1)) }, issue.issues as Issue[])];
    default:
      // Formats and rules across fields carry the schema's own words for what is accepted.
      return [{ path: field.path, found: showValue(field.value), expected: issue.message.replace(/^needs /, '') }];
  }
}

/** Everything the schema of a kind has against a value, in an author's words. */
export function schemaFindings(kind: string, schema: unknown, value: unknown, issues: readonly Issue[]): SchemaFinding[] {
  return issues.flatMap((issue) => {
    const path = pathOf(issue);
    return translate(issue, { kind, schema: schemaAt(schema, path), path, value: valueAt(value, path) }, schema);
  });
}
