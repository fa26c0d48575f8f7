import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { isObject, list, number, object, oneOf, text } from '../shape.ts';
import type { Shape } from '../shape.ts';
import { readJson } from './jsonReader.ts';
import type { ReadJson } from './jsonReader.ts';
import { problemInFigure, problemWithRange } from './problem.ts';
import { longest, mostEngines, mostFigures } from './types.ts';
import type { FigureRange, ShopEngine, ShopFigure } from './types.ts';

/** What stands in `type` of every file of figures. */
export const figuresType = 'ignition-bench-book/figures';
/** The version written today. A file of a newer version is refused untouched. */
export const figuresVersion = 1;
export const figuresFileName = 'figures.json';
/** Files above this many bytes are refused unread: a hundred engines are some hundreds of kilobytes. */
export const largestFiguresFile = 1024 * 1024;

export type FiguresFileCode = 'too-large' | 'not-json' | 'not-figures' | 'newer-version' | 'unknown-version' | 'wrong-field';

/** Why a file was not taken, with the line at which to look. `input` is the field: `engines[0].figures[1].unit`. */
export interface FiguresRefusal extends Refusal<FiguresFileCode> {
  readonly line: number;
}

/** Figures as the text of a file: one form for the server, the browser and the file carried between devices. */
export function writeFigures(engines: readonly ShopEngine[]): string {
  return `${JSON.stringify({ type: figuresType, version: figuresVersion, engines }, undefined, 2)}\n`;
}

/**
 * Figures from the text of a file, all of it checked before any of it is used. Refuses what is no such file, what a newer book wrote, and
 * anything out of shape, naming line and field.
 *
 * @param ranges the ranges that figures may be for; left out where figures for ranges of another edition must stay readable
 */
export function readFigures(content: string, ranges?: readonly FigureRange[]): Result<readonly ShopEngine[], FiguresRefusal> {
  // A character takes at least one byte, so text longer than the limit is certainly too large.
  if (content.length > largestFiguresFile) return refuse('too-large', 1, 'file', 'This file is larger than 1 MB. A file of figures is far smaller; choose the right file.');
  const json = readJson(content.replace(/^\uFEFF/, ''), root);
  if (!json.ok) {
    const { line, at, problem } = json.error;
    return refuse('not-json', line, fieldOf(at), `Line ${line}, ${fieldOf(at)}: this ${problem}. The file cannot be read as JSON.`);
  }
  return headProblem(json.value) ?? checkEngines(json.value, ranges);
}

const root = 'the file';

/** Without the words for the whole: `engines[0].title`. */
function fieldOf(at: string): string {
  return at.startsWith(`${root}.`) ? at.slice(root.length + 1) : at;
}

function headProblem({ value, lineOf }: ReadJson): Result<never, FiguresRefusal> | undefined {
  const head = (code: FiguresFileCode, field: string, message: string): Result<never, FiguresRefusal> => {
    const line = lineOf(`${root}.${field}`);
    return refuse(code, line, field, `Line ${line}, ${field}: ${message}`);
  };
  if (!isObject(value) || value['type'] !== figuresType) return head('not-figures', 'type', `this is no file of figures of this book; "type" must be "${figuresType}".`);
  const { version } = value;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return head('unknown-version', 'version', `must be ${figuresVersion}; found ${JSON.stringify(version)?.slice(0, 40) ?? 'nothing'}.`);
  }
  if (version <= figuresVersion) return undefined;
  return head('newer-version', 'version', `a newer book wrote this file (version ${version}; this book reads up to ${figuresVersion}). Update the book; the file was left as it is.`);
}

/** As in content: a word in lower case with hyphens. */
const id = text(120, { matches: /^[a-z0-9]+(-[a-z0-9]+)*$/, saying: 'an id in lower case with hyphens, such as small-van' });
const line = (most: number): Shape<string> => text(most, { matches: /^(?=.*\S)[^\u0000-\u001F]*$/, saying: 'one line of text, not empty' });
const figure: Shape<ShopFigure> = object(
  { range: text(120), unit: text(20), from: line(longest.from), enteredBy: line(longest.enteredBy), enteredOn: text(40) },
  { low: number(), high: number(), referenceTemperature: number(-40, 150) },
);
const engine: Shape<ShopEngine> = object({ id, title: line(longest.title), figures: list(figure, mostFigures) }, { layout: id });
const file = object({ type: oneOf([figuresType]), version: number(), engines: list(engine, mostEngines) });

function checkEngines({ value, lineOf }: ReadJson, ranges: readonly FigureRange[] | undefined): Result<readonly ShopEngine[], FiguresRefusal> {
  const wrong = (at: string, problem: string): Result<never, FiguresRefusal> => {
    const place = lineOf(at);
    return refuse('wrong-field', place, fieldOf(at), `Line ${place}, ${fieldOf(at)}: ${problem}.`);
  };
  const checked = file(value, root);
  if (!checked.ok) return wrong(checked.at, checked.problem);
  const { engines } = checked.value;
  for (const [index, one] of engines.entries()) {
    const at = `${root}.engines[${index}]`;
    if (engines.findIndex((other) => other.id === one.id) < index) return wrong(`${at}.id`, `“${one.id}” stands twice in the file`);
    for (const [row, shown] of one.figures.entries()) {
      const found = problemInFigure(shown) ?? (ranges === undefined ? undefined : problemWithRange(shown, ranges));
      if (found) return wrong(`${at}.figures[${row}].${found.field}`, found.problem);
    }
  }
  return success(engines);
}

function refuse(code: FiguresFileCode, at: number, input: string, message: string): Result<never, FiguresRefusal> {
  return failure({ input, code, line: at, message });
}
