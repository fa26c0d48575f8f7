import { failure, success } from '../result.ts';
import type { Result } from '../result.ts';

/** What a text in JSON says, and on which line each part of it stands. */
export interface ReadJson {
  readonly value: unknown;
  /** The line, from 1, of a part named as `src/domain/shape.ts` names it: `the file.engines[0].title`; of the nearest part around it where it is missing. */
  readonly lineOf: (at: string) => number;
}

export interface JsonFault {
  readonly line: number;
  /** The part in which reading stopped. */
  readonly at: string;
  readonly problem: string;
}

/** Deeper nesting is refused, so that no text can exhaust the stack. */
const deepest = 16;

/**
 * Reads JSON (RFC 8259) as strictly as the language itself does, and besides refuses a key that stands twice in one object, of which
 * the language would silently drop the first, and the key `__proto__`. Never throws.
 *
 * @param root the words for the whole, such as `the file`
 */
export function readJson(text: string, root: string): Result<ReadJson, JsonFault> {
  const reader = new Reader(text);
  try {
    const value = reader.whole(root);
    return success({ value, lineOf: (at) => nearestLine(reader.lines, at) });
  } catch (error) {
    if (error instanceof Fault) return failure({ line: reader.line, at: error.at, problem: error.message });
    throw error;
  }
}

/** Looks for `a.b[2].c`, then `a.b[2]`, then `a.b` … */
function nearestLine(lines: ReadonlyMap<string, number>, at: string): number {
  for (let part = at; part !== ''; part = part.slice(0, Math.max(0, part.lastIndexOf('.'), part.lastIndexOf('[')))) {
    const line = lines.get(part);
    if (line !== undefined) return line;
  }
  return 1;
}

/** Carries a fault out of however many brackets; it never leaves this file. */
class Fault extends Error {
  readonly at: string;

  constructor(at: string, problem: string) {
    super(problem);
    this.at = at;
  }
}

class Reader {
  readonly lines = new Map<string, number>();
  line = 1;
  private readonly text: string;
  private place = 0;

  constructor(text: string) {
    this.text = text;
  }

  whole(root: string): unknown {
    const value = this.value(root, 0);
    this.skipBlanks();
    if (this.place < this.text.length) throw new Fault(root, `ends here, but there is more: ${this.found()}`);
    return value;
  }

  private value(at: string, depth: number): unknown {
    this.skipBlanks();
    if (!this.lines.has(at)) this.lines.set(at, this.line);
    if (depth > deepest) throw new Fault(at, 'is nested too deep');
    switch (this.text[this.place]) {
      case '{':
        return this.object(at, depth);
      case '[':
        return this.list(at, depth);
      case '"':
        return this.string(at);
      default:
        return this.word(at);
    }
  }

  private object(at: string, depth: number): unknown {
    const entries = new Map<string, unknown>();
    this.members('}', at, () => {
      if (this.text[this.place] !== '"') throw new Fault(at, `needs a name in double quotes here; found ${this.found()}`);
      const { line } = this;
      const key = this.string(at);
      if (key === '__proto__') throw new Fault(`${at}.${key}`, 'is not allowed');
      if (entries.has(key)) throw new Fault(`${at}.${key}`, 'stands twice');
      this.lines.set(`${at}.${key}`, line);
      this.skipBlanks();
      this.take(':', `${at}.${key}`, 'a colon after the name');
      entries.set(key, this.value(`${at}.${key}`, depth + 1));
    });
    return Object.fromEntries(entries);
  }

  private list(at: string, depth: number): unknown {
    const items: unknown[] = [];
    this.members(']', at, () => items.push(this.value(`${at}[${items.length}]`, depth + 1)));
    return items;
  }

  /** What stands between the brackets, parted by commas, none after the last. */
  private members(end: '}' | ']', at: string, readOne: () => void): void {
    this.place += 1;
    this.skipBlanks();
    if (this.text[this.place] === end) {
      this.place += 1;
      return;
    }
    for (;;) {
      readOne();
      this.skipBlanks();
      if (this.text[this.place] === end) break;
      this.take(',', at, `a comma or ${end}`);
      this.skipBlanks();
      if (this.text[this.place] === end) throw new Fault(at, `has a comma too many before ${end}`);
    }
    this.place += 1;
  }

  private string(at: string): string {
    const start = this.place;
    for (this.place += 1; this.text[this.place] !== '"'; this.place += this.text[this.place] === '\\' ? 2 : 1) {
      if (this.place >= this.text.length || this.text[this.place] === '\n') throw new Fault(at, 'has text without its closing double quote on the line');
    }
    this.place += 1;
    try {
      // The language's own reader knows what may follow a stroke and what may not stand in a text.
      return JSON.parse(this.text.slice(start, this.place)) as string;
    } catch {
      throw new Fault(at, 'has text with a tab or another sign in it that JSON does not take, or a stroke \\ before the wrong letter');
    }
  }

  private word(at: string): unknown {
    const match = this.match(/(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y);
    if (match === undefined) throw new Fault(at, `needs a value here; found ${this.found()}`);
    return JSON.parse(match) as unknown;
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.place;
    const found = pattern.exec(this.text)?.[0];
    this.place += found?.length ?? 0;
    return found;
  }

  private take(wanted: string, at: string, words: string): void {
    if (this.text[this.place] !== wanted) throw new Fault(at, `needs ${words} here; found ${this.found()}`);
    this.place += 1;
  }

  private skipBlanks(): void {
    for (; /[ \t\r\n]/.test(this.text[this.place] ?? ''); this.place += 1) {
      if (this.text[this.place] === '\n') this.line += 1;
    }
  }

  private found(): string {
    const rest = /^[^\s]{1,20}/.exec(this.text.slice(this.place, this.place + 20))?.[0];
    return rest === undefined ? 'the end of the text' : `“${rest}”`;
  }
}
