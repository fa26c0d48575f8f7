import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeLayout } from '../domain/diagnosis/layout.ts';
import { placeById, placesOf } from '../domain/diagnosis/places.ts';
import type { EngineLayout } from '../domain/diagnosis/types.ts';
import { demoJobSchema } from '../schemas/demoJobs.ts';
import type { DemoAnswer, DemoStory } from '../schemas/demoJobs.ts';
import type { Book, Entry } from '../schemas/index.ts';
import { fieldName } from './finding.ts';
import type { FieldPath, Finding } from './finding.ts';
import { nearestClause } from './nearest.ts';
import { schemaFindings } from './schemaFindings.ts';
import { readYaml } from './yamlSource.ts';

/** Where the invented jobs stand, from the folder that holds `content`. */
export const demoJobFolder = 'seeds/jobs';

const rule = 'demo-jobs';
type Complain = (path: FieldPath, found: string, expected: string) => void;

/** The invented jobs that can be read, by id, and what is wrong with any of them. A folder without them has none, which is no fault. */
export function readDemoJobs(root: string, book: Book): { readonly stories: readonly DemoStory[]; readonly findings: readonly Finding[] } {
  const folder = join(root, demoJobFolder);
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.yaml')).sort() : [];
  const read = names.map((name) => readDemoJob(root, `${demoJobFolder}/${name}`, name.slice(0, -'.yaml'.length), book));
  return { stories: read.flatMap(({ story }) => story ?? []), findings: read.flatMap(({ findings }) => findings) };
}

function readDemoJob(root: string, file: string, id: string, book: Book): { story?: DemoStory; findings: readonly Finding[] } {
  const yaml = readYaml(readFileSync(join(root, file), 'utf8'));
  if (yaml.problems.length > 0) return { findings: yaml.problems.map((problem) => ({ file, field: 'the YAML', ...problem, rule: 'yaml' })) };
  const parsed = demoJobSchema.safeParse(yaml.value ?? {});
  if (!parsed.success) {
    const wrong = schemaFindings('demoJobs', demoJobSchema, yaml.value ?? {}, parsed.error.issues);
    return { findings: wrong.map(({ path, ...rest }) => ({ file, line: yaml.lineOf(path), field: fieldName(path), ...rest, rule: 'schema' })) };
  }
  const findings: Finding[] = [];
  checkStory(parsed.data, id, book, (path, found, expected) => {
    findings.push({ file, line: yaml.lineOf(path), field: fieldName(path), found, expected, rule });
  });
  return { story: parsed.data, findings };
}

function checkStory(story: DemoStory, id: string, book: Book, complain: Complain): void {
  if (story.id !== id) complain(['id'], `"${story.id}"`, `the name of the file, ${id}`);
  const layout = layoutOf(story, book, complain);
  if (layout === undefined) return;
  const within = new Within(book, layout, complain);
  within.faultAt(['truth'], story.truth);
  story.makerFigures.forEach(({ range }, index) => within.has('ranges', ['makerFigures', index, 'range'], range));
  story.story.forEach((step, index) => checkStep(step, ['story', index], story, within, complain));
  story.answers.forEach((answer, index) => within.testAt(['answers', index], answer, false));
  eachAnswerOnce(story.answers, complain);
  everythingAnswered(story, book, layout, complain);
}

function layoutOf({ engine }: DemoStory, book: Book, complain: Complain): EngineLayout | undefined {
  const known = book.engines.get(engine.id);
  if (known === undefined) {
    complain(['engine', 'id'], `"${engine.id}"`, `the id of a file in content/engines${nearestClause(engine.id, book.engines.keys())}`);
    return undefined;
  }
  if (!known.ignition.includes(engine.ignition)) complain(['engine', 'ignition'], engine.ignition, `one of ${known.ignition.join(', ')}`);
  if (!known.injection.includes(engine.injection)) complain(['engine', 'injection'], engine.injection, `one of ${known.injection.join(', ')}`);
  const layout = makeLayout({ ...known, id: engine.id }, engine.ignition, engine.injection);
  if (layout.ok) return layout.value;
  complain(['engine'], layout.error.message, 'an arrangement that this engine is built with');
  return undefined;
}

function checkStep(step: DemoStory['story'][number], path: FieldPath, { truth, meter }: DemoStory, within: Within, complain: Complain): void {
  if (step.kind === 'test') within.testAt(path, step, true);
  if (step.kind === 'finding' || step.kind === 'repair') within.faultAt(path, step);
  if (step.kind === 'finding' && (step.fault !== truth.fault || step.place !== truth.place)) {
    complain([...path, 'fault'], `${step.fault} at ${step.place}`, `the truth, ${truth.fault} at ${truth.place}`);
  }
  if (step.kind === 'match') within.has('parts', [...path, 'part'], step.part);
  if (step.kind !== 'reading') return;
  if (step.test !== undefined) within.has('procedures', [...path, 'test'], step.test);
  within.has('ranges', [...path, 'range'], step.range);
  within.placeNamed([...path, 'place'], step.place);
  if (!(step.meter in meter)) complain([...path, 'meter'], `"${step.meter}"`, `one of those under meter: ${Object.keys(meter).join(', ')}`);
}

/** The book and the engine that a story is held against. */
class Within {
  private readonly book: Book;
  private readonly layout: EngineLayout;
  private readonly complain: Complain;

  constructor(book: Book, layout: EngineLayout, complain: Complain) {
    this.book = book;
    this.layout = layout;
    this.complain = complain;
  }

  has(kind: 'ranges' | 'parts' | 'procedures' | 'faults', path: FieldPath, id: string): boolean {
    const known = this.book[kind];
    if (known.has(id)) return true;
    this.complain(path, `"${id}"`, `the id of a file in content/${kind}${nearestClause(id, known.keys())}`);
    return false;
  }

  placeNamed(path: FieldPath, id: string, kind?: Entry<'procedures'>['placeKind']): void {
    const place = placeById(this.layout, id);
    if (place !== undefined && (kind === undefined || place.kind === kind)) return;
    const known = kind === undefined ? [] : placesOf(this.layout, kind).map((one) => one.id);
    this.complain(path, `"${id}"`, known.length > 0 ? `one of ${known.join(', ')}` : 'a place that this engine has');
  }

  faultAt(path: FieldPath, { fault, place }: { readonly fault: string; readonly place: string }): void {
    if (this.has('faults', [...path, 'fault'], fault)) this.placeNamed([...path, 'place'], place, this.book.faults.get(fault)?.placeKind);
  }

  /** A story names the places of each test; an answer may leave them out. */
  testAt(path: FieldPath, said: DemoAnswer, told: boolean): void {
    const { test, outcome, place, partner } = said;
    const procedure = this.book.procedures.get(test);
    if (procedure === undefined) {
      this.has('procedures', [...path, 'test'], test);
      return;
    }
    const ids = procedure.outcomes.map((one) => one.id);
    if (!ids.includes(outcome)) this.complain([...path, 'outcome'], `"${outcome}"`, `an outcome of ${test}: ${ids.join(', ')}${nearestClause(outcome, ids)}`);
    if (place !== undefined) this.placeNamed([...path, 'place'], place, procedure.placeKind);
    if (partner !== undefined) this.placeNamed([...path, 'partner'], partner, procedure.placeKind);
    const swap = procedure.needsPartner;
    if (partner !== undefined && !swap) this.complain([...path, 'partner'], 'a partner for a test without one', 'no partner');
    if (partner === undefined && swap && told) this.complain([...path, 'partner'], 'no partner', `the other place, since ${test} exchanges a part`);
    if (!doneOn(procedure, this.layout)) this.complain([...path, 'test'], `"${test}"`, 'a test that can be done on this arrangement');
  }
}

function doneOn(procedure: Entry<'procedures'>, { ignition, injection }: EngineLayout): boolean {
  return (procedure.ignition?.includes(ignition) ?? true) && (procedure.injection?.includes(injection) ?? true);
}

function eachAnswerOnce(answers: DemoStory['answers'], complain: Complain): void {
  const seen = new Set<string>();
  answers.forEach(({ test, place = '', partner = '' }, index) => {
    const key = `${test} ${place} ${partner}`;
    if (seen.has(key)) complain(['answers', index, 'test'], `a second answer to ${key.trim()}`, 'one answer to each question');
    seen.add(key);
  });
}

/** Whatever is proposed must have its answer, or the car could not be worked in another order than that of its story. */
function everythingAnswered({ answers }: DemoStory, book: Book, layout: EngineLayout, complain: Complain): void {
  const always = new Set(answers.filter(({ place, partner }) => place === undefined && partner === undefined).map(({ test }) => test));
  for (const [id, procedure] of book.procedures) {
    const asked = (procedure.kind === 'look' || procedure.kind === 'test') && doneOn(procedure, layout) && placesOf(layout, procedure.placeKind).length > 0;
    if (asked && !always.has(id)) complain(['answers'], `no answer to ${id} for places that are not named`, `- { test: ${id}, outcome: … }`);
  }
}
