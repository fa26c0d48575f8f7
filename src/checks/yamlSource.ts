import { isMap, isNode, isScalar, isSeq, LineCounter, parseDocument } from 'yaml';
import type { Document, YAMLError } from 'yaml';
import type { FieldPath } from './finding.ts';

/** What YAML text says, and where each field of it stands. */
export interface YamlSource {
  readonly value: unknown;
  readonly problems: readonly YamlProblem[];
  /** Line of the field, counted from 1; of the nearest field around it when it is not there. */
  readonly lineOf: (path: FieldPath) => number;
}

export interface YamlProblem {
  readonly line: number;
  readonly found: string;
  readonly expected: string;
  readonly example?: string;
}

interface Advice {
  readonly expected: string;
  readonly example?: string;
}

const quoteAdvice: Advice = {
  expected: 'text that holds a colon and a space, or begins with a sign, between double quotes',
  example: 'note: "Warm engine: let it run for ten minutes first."',
};

/** Advice by the code of the parser's error; the parser's own words serve for the rest. */
const adviceByCode: Readonly<Record<string, Advice>> = {
  BLOCK_AS_IMPLICIT_KEY: quoteAdvice,
  BAD_SCALAR_START: quoteAdvice,
  MULTILINE_IMPLICIT_KEY: {
    expected: 'every line to be `key: value`, a list entry after `- `, or a further line of text indented under its key',
  },
  DUPLICATE_KEY: { expected: 'each key once in a group of fields' },
  TAB_AS_INDENT: { expected: 'lines indented with spaces, not tabs' },
  BAD_INDENT: { expected: 'fields of one group indented alike, two spaces deeper than their parent' },
};

function problemOf(error: YAMLError, lineCounter: LineCounter, firstLine: number): YamlProblem {
  const line = lineCounter.linePos(error.pos[0]).line + firstLine - 1;
  const found = `text that is not YAML (${error.message.replace(/\s+/g, ' ').replace(/[.:]$/, '')})`;
  return { line, found, ...(adviceByCode[error.code] ?? { expected: 'YAML' }) };
}

interface Spot {
  readonly node: unknown;
  /** The character it starts at; for a field, the first of its key. */
  readonly offset: number;
}

/** One step from a node into a field or a list entry; undefined when there is no such thing. */
function stepInto(node: unknown, step: string | number): Spot | undefined {
  if (isMap(node)) {
    const pair = node.items.find((item) => isScalar(item.key) && item.key.value === step);
    return isScalar(pair?.key) && pair.key.range ? { node: pair.value, offset: pair.key.range[0] } : undefined;
  }
  if (!isSeq(node) || typeof step !== 'number') return undefined;
  const item = node.items[step];
  return isNode(item) && item.range ? { node: item, offset: item.range[0] } : undefined;
}

/** Walks as far along the path as the document goes, and gives the character the last step starts at. */
function offsetOf(document: Document, path: FieldPath): number {
  let spot: Spot = { node: document.contents, offset: document.contents?.range?.[0] ?? 0 };
  for (const step of path) {
    const next = stepInto(spot.node, step);
    if (next === undefined) break;
    spot = next;
  }
  return spot.offset;
}

/** Reads YAML and keeps where everything stood. `firstLine` is the line of the file that the text starts on. */
export function readYaml(text: string, firstLine = 1): YamlSource {
  const lineCounter = new LineCounter();
  const document = parseDocument(text, { lineCounter, prettyErrors: false, uniqueKeys: true });
  const problems = [...document.errors, ...document.warnings].map((error) => problemOf(error, lineCounter, firstLine));
  return {
    value: document.errors.length === 0 ? document.toJS() : undefined,
    problems,
    lineOf: (path) => lineCounter.linePos(offsetOf(document, path)).line + firstLine - 1,
  };
}
