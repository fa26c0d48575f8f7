import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { parse, stringify } from 'yaml';
import { splitFrontMatter } from '../../checks/frontMatter.ts';

/** How many entries are generated beside the real ones. */
export interface ScaleSizes {
  readonly procedures: number;
  readonly ranges: number;
}

const MARK = 'Generated for measuring; not part of the book.';

/** The fields the generator touches; all others are copied as they are. */
interface RangeFields {
  title: string;
  note?: string;
}
interface ProcedureFields {
  title: string;
  summary: string;
  worthIt: string;
  steps: object[];
  outcomes: { next?: string[] }[];
}

/**
 * Copies the real content and adds copies of its procedures and ranges under new ids and titles, each marked as generated.
 * Every generated procedure judges its share of the generated ranges and leads to the next one, so that nothing is orphaned.
 *
 * @param content the real content folder
 * @param target folder that gets the `content` to build
 * @param seed the same seed always makes the same book
 */
export function writeGeneratedBook(content: string, target: string, sizes: ScaleSizes, seed = 1): void {
  cpSync(content, join(target, 'content'), { recursive: true });
  const draw = drawer(seed);
  const ranges = readFolder(join(content, 'ranges'));
  const procedures = readFolder(join(content, 'procedures'));
  for (let index = 0; index < sizes.ranges; index += 1) {
    writeFileSync(join(target, 'content/ranges', `${rangeId(index)}.yaml`), generatedRange(draw(ranges), index));
  }
  for (let index = 0; index < sizes.procedures; index += 1) {
    writeFileSync(join(target, 'content/procedures', `${procedureId(index)}.mdx`), generatedProcedure(draw(procedures), index, sizes));
  }
}

const rangeId = (index: number): string => `generated-range-${index}`;
const procedureId = (index: number): string => `generated-procedure-${index}`;

function readFolder(folder: string): string[] {
  const names = readdirSync(folder).filter((name) => ['.yaml', '.mdx'].includes(extname(name)));
  return names.sort().map((name) => readFileSync(join(folder, name), 'utf8'));
}

/** Draws from a list with a linear congruential generator (the constants of Numerical Recipes). */
function drawer(seed: number): <Item>(items: readonly Item[]) => Item {
  let state = seed >>> 0;
  return (items) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const item = items[Math.floor((state / 2 ** 32) * items.length)];
    if (item === undefined) throw new Error('There is nothing to make copies of.');
    return item;
  };
}

function generatedRange(original: string, index: number): string {
  const fields = parse(original) as RangeFields;
  return stringify({ ...fields, title: `${fields.title}, generated ${index}`, note: [fields.note, MARK].filter(Boolean).join(' ') });
}

function generatedProcedure(original: string, index: number, sizes: ScaleSizes): string {
  const parts = splitFrontMatter(original);
  if (parts === undefined) throw new Error('A procedure does not open with its fields.');
  const fields = parse(parts.fields) as ProcedureFields;
  const share = Array.from({ length: sizes.ranges }, (_, at) => at).filter((at) => at % sizes.procedures === index);
  const reading = { text: 'Take the reading and judge it.', reading: { label: 'Generated reading', ranges: share.map(rangeId) } };
  const next = procedureId((index + 1) % sizes.procedures);
  const marked = {
    ...fields,
    title: `${fields.title}, generated ${index}`,
    // No two procedures may say the same of themselves.
    summary: `${fields.summary} Generated copy ${index}.`,
    worthIt: `${fields.worthIt} Generated copy ${index}.`,
    steps: share.length === 0 ? fields.steps : [...fields.steps, reading],
    outcomes: fields.outcomes.map((outcome, at) => (at === 0 ? { ...outcome, next: [...(outcome.next ?? []), next] } : outcome)),
  };
  return `---\n${stringify(marked)}---\n${parts.body}\n\n${MARK}\n`;
}
