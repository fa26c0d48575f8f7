/** A value found to be in shape, or where it is not and what is wrong with it. */
export type Checked<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly at: string; readonly problem: string };

/** Takes a value from outside and the words for where it stands. Gives back a fresh copy that holds only what was checked. */
export type Shape<Value> = (value: unknown, at: string) => Checked<Value>;
type ValueOf<Checker> = Checker extends Shape<infer Value> ? Value : never;
type Shapes = Readonly<Record<string, Shape<unknown>>>;

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const wrong = (at: string, problem: string): { ok: false; at: string; problem: string } => ({ ok: false, at, problem });

/** Text of at most so many characters. */
export function text(longest: number, pattern?: { readonly matches: RegExp; readonly saying: string }): Shape<string> {
  return (value, at) => {
    if (typeof value !== 'string') return wrong(at, 'must be text');
    if (value.length > longest) return wrong(at, `must be at most ${longest} characters`);
    if (pattern !== undefined && !pattern.matches.test(value)) return wrong(at, `must be ${pattern.saying}`);
    return { ok: true, value };
  };
}

export function number(least = -Number.MAX_VALUE, most = Number.MAX_VALUE): Shape<number> {
  return (value, at) => {
    if (typeof value !== 'number' || !Number.isFinite(value)) return wrong(at, 'must be a number');
    if (value < least || value > most) return wrong(at, `must lie between ${least} and ${most}`);
    return { ok: true, value };
  };
}

export function whole(least: number, most = Number.MAX_SAFE_INTEGER): Shape<number> {
  const inRange = number(least, most);
  return (value, at) => (typeof value === 'number' && !Number.isInteger(value) ? wrong(at, 'must be a whole number') : inRange(value, at));
}

export function oneOf<const Word extends string>(words: readonly Word[]): Shape<Word> {
  return (value, at) => {
    const word = words.find((candidate) => candidate === value);
    return word === undefined ? wrong(at, `must be one of ${words.join(', ')}`) : { ok: true, value: word };
  };
}

export const trueOrFalse: Shape<boolean> = (value, at) =>
  typeof value === 'boolean' ? { ok: true, value } : wrong(at, 'must be true or false');

export function list<Item>(item: Shape<Item>, longest: number): Shape<readonly Item[]> {
  return (value, at) => {
    if (!Array.isArray(value)) return wrong(at, 'must be a list');
    if (value.length > longest) return wrong(at, `must hold at most ${longest} items`);
    const items: Item[] = [];
    for (const [index, inner] of value.entries()) {
      const checked = item(inner, `${at}[${index}]`);
      if (!checked.ok) return checked;
      items.push(checked.value);
    }
    return { ok: true, value: items };
  };
}

/** Two of a kind. */
export function pair<Item>(item: Shape<Item>): Shape<readonly [Item, Item]> {
  return (value, at) => {
    const checked = list(item, 2)(value, at);
    if (!checked.ok) return checked;
    const [first, second] = checked.value;
    return first === undefined || second === undefined ? wrong(at, 'must hold two items') : { ok: true, value: [first, second] };
  };
}

export function either<One, Other>(one: Shape<One>, other: Shape<Other>, saying: string): Shape<One | Other> {
  return (value, at) => {
    const first = one(value, at);
    if (first.ok) return first;
    const second = other(value, at);
    return second.ok ? second : wrong(at, `must be ${saying}`);
  };
}

/** Names chosen by content, such as outcome ids, each with a value of one shape. */
export function table<Value>(entry: Shape<Value>, most: number): Shape<Readonly<Record<string, Value>>> {
  return (value, at) => {
    if (!isObject(value)) return wrong(at, 'must be an object');
    const entries = Object.entries(value);
    if (entries.length > most) return wrong(at, `must hold at most ${most} entries`);
    const kept: [string, Value][] = [];
    for (const [key, inner] of entries) {
      const checked = entry(inner, `${at}.${key}`);
      if (!checked.ok) return checked;
      kept.push([key, checked.value]);
    }
    return { ok: true, value: Object.fromEntries(kept) };
  };
}

type ObjectOf<Needed extends Shapes, Allowed extends Shapes> = { readonly [Key in keyof Needed]: ValueOf<Needed[Key]> } & {
  readonly [Key in keyof Allowed]?: ValueOf<Allowed[Key]>;
};

/** An object with all of the needed keys, any of the allowed ones, and no other. */
export function object<Needed extends Shapes, Allowed extends Shapes = Record<never, never>>(
  needed: Needed,
  allowed?: Allowed,
): Shape<ObjectOf<Needed, Allowed>> {
  const shapes = new Map<string, Shape<unknown>>([...Object.entries(needed), ...Object.entries(allowed ?? {})]);
  return (value, at) => {
    if (!isObject(value)) return wrong(at, 'must be an object');
    const stranger = Object.keys(value).find((key) => !shapes.has(key));
    if (stranger !== undefined) return wrong(`${at}.${stranger}`, 'is not known here');
    const missing = Object.keys(needed).find((key) => !Object.hasOwn(value, key));
    if (missing !== undefined) return wrong(`${at}.${missing}`, 'is missing');
    const kept: [string, unknown][] = [];
    for (const [key, shape] of shapes) {
      if (!Object.hasOwn(value, key)) continue;
      const checked = shape(value[key], `${at}.${key}`);
      if (!checked.ok) return checked;
      kept.push([key, checked.value]);
    }
    // Every key was checked by its own shape just above; the compiler cannot follow that through the loop.
    return { ok: true, value: Object.fromEntries(kept) as ObjectOf<Needed, Allowed> };
  };
}

/** ISO 8601 in UTC, as `Date.prototype.toISOString` writes it, and a date that exists. */
export function isTime(value: unknown): value is string {
  if (typeof value !== 'string' || !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/.test(value)) return false;
  const milliseconds = Date.parse(value);
  return !Number.isNaN(milliseconds) && new Date(milliseconds).toISOString().slice(0, 19) === value.slice(0, 19);
}

export const time: Shape<string> = (value, at) =>
  isTime(value) ? { ok: true, value } : wrong(at, 'must be a date and time such as 2026-03-04T09:30:00.000Z');

const forbiddenKeys: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** The first key that could reach into the language itself, or the place where the nesting goes too deep. */
export function findForbiddenKey(
  value: unknown,
  deepest: number,
  at: string,
): { readonly at: string; readonly code: 'forbidden-key' | 'too-deep'; readonly problem: string } | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (deepest <= 0) return { at, code: 'too-deep', problem: 'is nested too deep' };
  for (const [key, inner] of Object.entries(value)) {
    if (forbiddenKeys.has(key)) return { at: `${at}.${key}`, code: 'forbidden-key', problem: 'is not allowed' };
    const found = findForbiddenKey(inner, deepest - 1, Array.isArray(value) ? `${at}[${key}]` : `${at}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
