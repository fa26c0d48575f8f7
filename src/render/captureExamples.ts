import { parse } from 'yaml';

/** An invented log or trace, offered on the page that reads them. */
export interface CaptureExample {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly kind: string;
  readonly answers: Readonly<Record<string, string>>;
}

const truths = import.meta.glob<string>('/seeds/captures/*.yaml', { query: '?raw', import: 'default', eager: true });
const tables = import.meta.glob<string>('/seeds/captures/*.csv', { query: '?raw', import: 'default', eager: true });

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

/** The examples in order of their names. */
export function captureExamples(): readonly CaptureExample[] {
  return Object.keys(truths).sort().map((path) => parse(truths[path] ?? '') as CaptureExample);
}

/** Every file of the examples by its name: the tables, and beside each what was put into it. */
export function captureFiles(): ReadonlyMap<string, string> {
  return new Map(Object.entries({ ...truths, ...tables }).map(([path, text]) => [nameOf(path), text]));
}
