import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isCollection, isScalar, isSeq, parseDocument } from 'yaml';
import type { Node, ParsedNode } from 'yaml';
import type { FieldPath, Finding, Repair } from './finding.ts';
import { groupBy } from './finding.ts';

/** What came of one repair, for the person who asked for it. */
export interface RepairReport {
  readonly file: string;
  readonly line: number;
  readonly says: string;
}

/** A stretch of the file and what takes its place. */
interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The fields of a file, cut out without changing a character, and where they start. */
function fieldsOf(file: string, text: string): { readonly fields: string; readonly start: number } | undefined {
  if (file.endsWith('.yaml')) return { fields: text, start: 0 };
  const [whole, opening = '', fields] = /^(---[ \t]*\r?\n)([^]*?\n)---[ \t]*\r?(?:\n|$)/.exec(text) ?? [];
  return whole === undefined || fields === undefined ? undefined : { fields, start: opening.length };
}

/** A full stop before the closing quotation mark, or at the end of bare text; text in a block is left to its author. */
function addStop(node: unknown): Edit | undefined {
  if (!isScalar(node) || !node.range || (node.type !== 'PLAIN' && node.type !== 'QUOTE_DOUBLE' && node.type !== 'QUOTE_SINGLE')) return undefined;
  const at = node.range[1] - (node.type === 'PLAIN' ? 0 : 1);
  return { from: at, to: at, text: '.' };
}

function rangeOf(node: unknown): readonly [from: number, to: number] | undefined {
  const { range } = node as Partial<Node>;
  return range ? [range[0], range[1]] : undefined;
}

/** A later entry of a list taken out with the comma or the line it stands in; the first entry is never a repetition. */
function takeOutEntry(list: unknown, position: unknown, fields: string): Edit | undefined {
  if (!isSeq(list) || typeof position !== 'number' || position < 1) return undefined;
  const own = rangeOf(list.items[position]);
  const before = rangeOf(list.items[position - 1]);
  if (own === undefined || before === undefined) return undefined;
  if (list.flow === true) return { from: before[1], to: own[1], text: '' };
  // A list with one entry a line: the line goes, unless there is more in it, such as a comment.
  const from = fields.lastIndexOf('\n', own[0]) + 1;
  const end = fields.indexOf('\n', own[1]);
  const to = end === -1 ? fields.length : end + 1;
  const bare = /^\s*-\s*$/.test(fields.slice(from, own[0])) && fields.slice(own[1], to).trim() === '';
  return bare ? { from, to, text: '' } : undefined;
}

function editFor(contents: ParsedNode | null, { path, change }: Repair, fields: string): Edit | undefined {
  if (!isCollection(contents)) return undefined;
  if (change === 'add-stop') return addStop(contents.getIn(path, true));
  const list: FieldPath = path.slice(0, -1);
  return takeOutEntry(contents.getIn(list, true), path.at(-1), fields);
}

const done: Readonly<Record<Repair['change'], string>> = { 'add-stop': 'put a full stop at the end', 'take-out-entry': 'took out the second of two' };

/** The text of one file with its repairs made, and what was done. Findings without a repair are passed over. */
export function repairText(file: string, text: string, findings: readonly Finding[]): { readonly text: string; readonly reports: readonly RepairReport[] } {
  const parts = fieldsOf(file, text);
  const wanted = findings.filter((finding) => finding.repair !== undefined);
  if (parts === undefined) return { text, reports: [] };
  const { contents } = parseDocument(parts.fields);
  const outcomes = wanted.map((finding) => ({ finding, edit: finding.repair && editFor(contents, finding.repair, parts.fields) }));
  const edits = outcomes.flatMap(({ edit }) => (edit === undefined ? [] : [edit])).sort((a, b) => b.from - a.from);
  const repaired = edits.reduce((fields, { from, to, text: put }) => fields.slice(0, from) + put + fields.slice(to), parts.fields);
  const reports = outcomes.map(({ finding, edit }) => ({
    file,
    line: finding.line,
    says: `${finding.field}: ${edit === undefined || finding.repair === undefined ? 'left as it is, mend it by hand' : done[finding.repair.change]}`,
  }));
  return { text: text.slice(0, parts.start) + repaired + text.slice(parts.start + parts.fields.length), reports };
}

/** Makes every repair that a finding offers, in the files under a folder. Nothing else of a file changes. */
export function repairBook(root: string, findings: readonly Finding[]): RepairReport[] {
  const byFile = groupBy(findings.filter((finding) => finding.repair !== undefined), ({ file }) => file);
  return [...byFile].flatMap(([file, own]) => {
    const before = readFileSync(join(root, file), 'utf8');
    const { text, reports } = repairText(file, before, own);
    if (text !== before) writeFileSync(join(root, file), text);
    return [...reports];
  });
}

/** What was done, a line each. */
export function formatRepairs(reports: readonly RepairReport[]): string {
  if (reports.length === 0) return 'Nothing that can be repaired without an author.';
  return reports.map(({ file, line, says }) => `${file}:${line}  ${says}`).join('\n');
}
