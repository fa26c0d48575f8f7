/** A step into an entry: a key, or the position in a list counted from 0. */
export type FieldPath = readonly (string | number)[];

/** A change that needs no author: it follows from the finding alone, and `npm run check -- --fix` makes it. */
export interface Repair {
  readonly path: FieldPath;
  readonly change: 'add-stop' | 'take-out-entry';
}

/** One thing wrong in the book, with the address of the line that must change. */
export interface Finding {
  /** From the folder that holds `content`, such as `content/ranges/plug-gap-general.yaml`. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** The field as `fieldName` writes it. */
  readonly field: string;
  /** What stands there now. */
  readonly found: string;
  /** What is accepted. */
  readonly expected: string;
  /** A line that would be right, if one helps. */
  readonly example?: string;
  /** The rule that was broken: `file`, `yaml`, `schema`, or the name of a rule over the whole book. */
  readonly rule: string;
  readonly repair?: Repair;
}

/** `['steps', 2, 'caution']` as `steps › 3 › caution`: list entries are counted from 1, as a person counts them. */
export function fieldName(path: FieldPath): string {
  const words = path.map((step) => (typeof step === 'number' ? String(step + 1) : step));
  return words.length > 0 ? words.join(' › ') : 'the whole file';
}

/** A value as an author would recognise it, cut to a readable length. */
export function showValue(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object') return `the fields ${Object.keys(value).join(', ')}`;
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return text.length > 100 ? `${text.slice(0, 97)}…"` : text;
}

function compareFindings(a: Finding, b: Finding): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  if (a.line !== b.line) return a.line - b.line;
  return a.field.localeCompare(b.field, 'en');
}

function formatFinding(finding: Finding): string {
  const lines = [
    `${finding.file}:${finding.line}  ${finding.field}`,
    `    found: ${finding.found}`,
    `    expected: ${finding.expected}`,
  ];
  if (finding.example !== undefined) lines.push(`    example: ${finding.example}`);
  if (finding.repair !== undefined) lines.push('    repair: npm run check -- --fix');
  return lines.join('\n');
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

/** Entries of a list by a key, in the order in which the keys first come up. */
export function groupBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}

/** All findings at once: grouped by file, sorted by line, with a closing count. */
export function formatFindings(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'No findings.';
  const byFile = groupBy([...findings].sort(compareFindings), (finding) => finding.file);
  const groups = [...byFile.values()].map((group) => group.map(formatFinding).join('\n'));
  return `${groups.join('\n\n')}\n\n${count(findings.length, 'finding')} in ${count(byFile.size, 'file')}.`;
}
