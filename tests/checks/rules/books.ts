import { formatFindings } from '../../../src/checks/finding.ts';
import type { Rule, RuleContext } from '../../../src/checks/rules/rule.ts';
import type { Unit } from '../../../src/domain/units/types.ts';
import { contentKinds, schemas } from '../../../src/schemas/index.ts';
import type { Book, ContentKind } from '../../../src/schemas/index.ts';

type Fields = Readonly<Record<string, unknown>>;
export type Draft = Partial<Record<ContentKind, Readonly<Record<string, Fields>>>>;

/** The least that each kind needs; a case gives the fields it is about. */
const least: Readonly<Record<ContentKind, Fields>> = {
  sources: { kind: 'common-practice', title: 'Common practice', seen: 'none' },
  quantities: {
    title: 'Plug gap',
    unit: 'mm',
    meterNeeded: 'A wire gauge.',
    worry: 'both',
    usualMeter: { percent: 0, counts: 1 },
    meaning: 'The distance the spark jumps.',
  },
  ranges: { quantity: 'gap', title: 'Plug gap', low: 0.7, high: 1.1, unit: 'mm', inside: 'The gap is usual.', source: { id: 'practice' } },
  procedures: {
    title: 'Swap coils',
    summary: 'Exchange two coils.',
    group: 'ignition',
    kind: 'test',
    placeKind: 'cylinder',
    telling: true,
    minutes: 15,
    skill: 'mechanic',
    tools: [],
    engineState: 'Off, key out.',
    worthIt: 'When one cylinder misfires.',
    proves: 'Which coil.',
    provesNot: 'Why.',
    cautions: [],
    steps: [{ text: 'Switch the ignition off.' }],
    outcomes: [
      { id: 'moved', label: 'It moved', meaning: 'The coil.' },
      { id: 'stayed', label: 'It stayed', meaning: 'Not the coil.' },
    ],
    mistakes: ['Haste.'],
    sources: [{ id: 'practice' }],
  },
  faults: {
    title: 'Coil winding',
    component: 'Coil',
    placeKind: 'coil',
    weight: 1,
    meaning: 'A winding is open.',
    signs: ['No spark.'],
    codes: {},
    repair: 'Renew the coil.',
    repairMinutes: 15,
    partCost: 'medium',
    tellsApart: ['swap'],
    source: { id: 'practice' },
  },
  codes: {
    title: 'Misfire, cylinder {number}',
    counts: 'cylinder',
    run: { first: 'P0301', last: 'P0312' },
    meaning: 'A cylinder slowed the crank.',
    area: 'misfire',
    lookFirst: ['The plug.'],
    procedures: ['swap'],
    falseRate: 0.02,
    source: { id: 'practice' },
  },
  cautions: {
    title: 'High tension',
    short: 'Keep hands off.',
    severity: 'danger',
    hazard: 'Tens of kilovolts.',
    whoIsAtRisk: 'Everybody',
    do: ['Switch off.'],
    stopFor: ['A pacemaker.'],
    defersTo: 'Local code',
    sources: [{ id: 'practice' }],
  },
  parts: {
    title: 'Coil',
    summary: 'One per plug.',
    match: [{ feature: 'Pins', check: 'Count them.' }],
    fit: [{ text: 'Push it home.' }],
    askMaker: [{ question: 'Which torque?' }],
    beforeStart: ['Check the latch.'],
    cautions: [],
    sources: [{ id: 'practice' }],
  },
  engines: {
    title: 'Four in line',
    cylinders: 4,
    form: 'inline',
    banks: [[1, 2, 3, 4]],
    firingOrder: [1, 3, 4, 2],
    ignition: ['coil-per-plug'],
    injection: ['port'],
    numbering: 'From the front.',
    source: { id: 'practice' },
  },
  calculators: { whenToUse: 'When it is warm.', limits: ['Copper only.'], sources: [{ id: 'practice' }] },
  glossary: { term: 'Coil', meaning: 'It makes the spark.' },
};

/** A book of the entries named, each held against its schema, so that a case cannot drift from it. */
export function bookOf(draft: Draft): Book {
  const kinds = contentKinds.map((kind) => {
    const entries = Object.entries(draft[kind] ?? {}).map(([id, fields]) => [id, schemas[kind].parse({ ...least[kind], ...fields })] as const);
    return [kind, new Map<string, unknown>(entries)] as const;
  });
  return Object.fromEntries(kinds) as unknown as Book;
}

function unit(id: string, dimension: Unit['dimension']): Unit {
  return { id, symbol: id, name: id, dimension, factor: 1, offset: 0, aliases: [], source: 'practice' };
}

const units = [unit('mm', 'length'), unit('ohm', 'resistance'), unit('kohm', 'resistance')];

/** Every field stands on line 1: where fields stand is `readBook`'s business and tested there. */
export function contextOf(book: Book, more: Partial<RuleContext> = {}): RuleContext {
  return {
    place: (kind, id) => ({ file: `content/${kind}/${id}`, line: 1 }),
    has: (kind, id) => book[kind].has(id),
    idsOf: (kind) => [...book[kind].keys()],
    bodies: new Map(),
    unitById: (id) => units.find((entry) => entry.id === id),
    domainSources: [],
    calculatorIds: [],
    ...more,
  };
}

/** What an author would read when one rule is held against a book. */
export function judge(rule: Rule, draft: Draft, more: Partial<RuleContext> = {}): string {
  const book = bookOf(draft);
  return formatFindings(rule.check(book, contextOf(book, more)));
}
