import type { FieldPath } from './finding.ts';

/** A value in an entry and the way to it. */
export interface FieldValue {
  readonly path: FieldPath;
  readonly value: unknown;
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function listItems({ path, value }: FieldValue): FieldValue[] {
  return Array.isArray(value) ? value.map((item: unknown, index) => ({ path: [...path, index], value: item })) : [];
}

function step(at: FieldValue, name: string): FieldValue[] {
  if (name === '[]') return listItems(at);
  if (!isGroup(at.value)) return [];
  if (name === '{}') return Object.keys(at.value).map((key) => ({ path: [...at.path, key], value: key }));
  if (name === '*') return Object.entries(at.value).map(([key, value]) => ({ path: [...at.path, key], value }));
  const value = at.value[name];
  return value === undefined ? [] : [{ path: [...at.path, name], value }];
}

/**
 * Every value that a pattern leads to. Steps are parted by dots; `[]` stands for each entry of a list, `{}` for each key
 * of a group, `*` for each of its values: `steps.[].caution`, `codes.{}`, `partByIgnition.*`.
 */
export function valuesAt(entry: unknown, pattern: string): FieldValue[] {
  return pattern.split('.').reduce<FieldValue[]>((found, name) => found.flatMap((at) => step(at, name)), [{ path: [], value: entry }]);
}

/** Every text in an entry, however deep. */
export function textsIn(value: unknown, path: FieldPath = []): { readonly path: FieldPath; readonly text: string }[] {
  if (typeof value === 'string') return [{ path, text: value }];
  if (Array.isArray(value)) return value.flatMap((item: unknown, index) => textsIn(item, [...path, index]));
  return isGroup(value) ? Object.entries(value).flatMap(([key, inner]) => textsIn(inner, [...path, key])) : [];
}
