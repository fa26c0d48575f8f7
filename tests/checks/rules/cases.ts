import type { RuleContext } from '../../../src/checks/rules/rule.ts';
import type { Draft } from './books.ts';

export interface RuleCase {
  readonly label: string;
  readonly book: Draft;
  readonly context?: Partial<RuleContext>;
}

export interface RuleCases {
  readonly keeps: readonly RuleCase[];
  readonly breaks: readonly RuleCase[];
}

const practice = { practice: {} };

function renewal(minutesNow: number, minutesLater: number): object {
  return { part: 'Boot', why: 'It is old.', minutesNow, minutesLater, partCost: 'low' };
}

const standard = { kind: 'standard', title: 'IEC 60028', publisher: 'IEC', seen: 'recalled' };
const copper = { gap: { unit: 'ohm', variesWithTemperature: 'copper' } };
const half = { moved: 0.5, stayed: 0.5 };
const sure = { moved: 0.9, stayed: 0.1 };
const told = (...faults: string[]): Record<string, unknown> => ({ likelihoods: [{ faults, here: sure }], otherwise: half });

const plainSteps = Array.from({ length: 12 }, () => ({ text: 'Switch the ignition off.' }));
const hardSteps = [
  { text: 'Switch the ignition off and wait.' },
  {
    text: 'Subsequent disassembly necessitates depressurisation of interconnected distribution assemblies, notwithstanding manufacturer-recommended precautionary instrumentation.',
  },
  { text: 'Establish unambiguous identification of deteriorated insulation, considering simultaneously environmental contamination, intermittent discontinuities and thermally accelerated degradation mechanisms.' },
  { text: 'Reinstate electrical interconnections immediately after satisfactory resistance verification.' },
];
const hardProse = hardSteps.map(({ text }) => text).join(' ');
const words = (count: number): string => `Turn ${'it '.repeat(count - 2)}round.`;

/** For every rule, books that keep it and books that break it. */
export const ruleCases: Readonly<Record<string, RuleCases>> = {
  'ids-resolve': {
    keeps: [{ label: 'every id has its file', book: { sources: practice, quantities: { gap: {} }, ranges: { gap: {} }, glossary: { gap: { see: ['ranges/gap'] } } } }],
    breaks: [
      { label: 'a slip of the pen', book: { sources: practice, quantities: { gap: {} }, ranges: { plug: { quantity: 'gpa' } } } },
      {
        label: 'ids deep in a procedure',
        book: {
          sources: practice,
          cautions: { 'high-tension': {} },
          procedures: {
            swap: {
              cautions: ['fuel-vapour'],
              steps: [{ text: 'Pull it.', caution: 'high-tenson', reading: { label: 'Gap', ranges: ['nowhere'] } }],
              outcomes: [{ id: 'moved', label: 'Moved', meaning: 'So.', favours: ['coil-winding'], next: ['swop'] }],
              ...told('boot-leaking'),
            },
          },
        },
      },
      { label: 'keys and single fields of a fault', book: { sources: practice, faults: { 'coil-winding': { codes: { 'misfire-cylinder': 0.5 }, part: 'coil', repairProcedure: 'fit' } } } },
      { label: 'a glossary link to a kind that does not exist', book: { glossary: { coil: { see: ['procedure/swap-coils'] } } } },
      { label: 'a source named in code', book: { sources: practice }, context: { domainSources: [{ usedBy: 'src/domain/units/table.data.ts', id: 'practise' }] } },
    ],
  },
  'low-not-above-high': {
    keeps: [
      { label: 'low below high, low equal to high, one end open', book: { ranges: { a: {}, b: { low: 1, high: 1 }, c: { low: undefined } } } },
    ],
    breaks: [{ label: 'ends the wrong way round', book: { ranges: { a: { low: 1.2, high: 1.1 } } } }],
  },
  'unit-fits-quantity': {
    keeps: [{ label: 'another unit of the same kind', book: { quantities: { gap: { unit: 'ohm' } }, ranges: { a: { unit: 'kohm' } } } }],
    breaks: [
      { label: 'a unit of another kind', book: { quantities: { gap: {} }, ranges: { a: { unit: 'ohm' } } } },
      { label: 'units nobody knows', book: { quantities: { gap: { unit: 'furlong' } }, ranges: { a: { unit: 'cubit' } } } },
    ],
  },
  'copper-ranges-have-a-reference-temperature': {
    keeps: [
      { label: 'with the temperature', book: { quantities: copper, ranges: { a: { unit: 'ohm', referenceTemperature: 20 } } } },
      { label: 'a quantity that does not vary', book: { quantities: { gap: {} }, ranges: { a: {} } } },
    ],
    breaks: [{ label: 'without the temperature', book: { quantities: copper, ranges: { a: { unit: 'ohm' } } } }],
  },
  'makers-figure-comes-first': {
    keeps: [
      { label: 'a regulation holds for every engine', book: { sources: { practice: { kind: 'regulation', publisher: 'A state', seen: 'read' } }, ranges: { a: { makerFirst: false } } } },
      { label: 'common practice stands second', book: { sources: practice, ranges: { a: {} } } },
    ],
    breaks: [{ label: 'common practice before the engine maker', book: { sources: practice, ranges: { a: { makerFirst: false } } } }],
  },
  'every-figure-has-a-source': {
    keeps: [
      {
        label: 'figures with sources and honest sources',
        book: {
          sources: { practice: {}, standard },
          glossary: { bus: { meaning: 'One of the 2 banks of a V6, at 90 degrees.' } },
          parts: { coil: { askMaker: [{ question: 'Torque?', fallback: '10 N m', source: { id: 'practice' } }, { question: 'Which?', fallback: 'Snug.' }] } },
        },
      },
    ],
    breaks: [
      { label: 'a figure where no source can be given', book: { glossary: { gap: { meaning: 'Often 0.8 mm wide.' } }, quantities: { gap: { meaning: 'Up to 12 kV.' } } } },
      { label: 'a figure in a fallback', book: { sources: practice, parts: { coil: { askMaker: [{ question: 'Torque?', fallback: '10 N m' }] } } } },
      {
        label: 'sources that claim too much or too little',
        book: { sources: { practice: { seen: 'read' }, standard: { ...standard, seen: 'none' }, book: { kind: 'textbook', seen: 'read' } } },
      },
    ],
  },
  'standards-and-regulations-need-a-place': {
    keeps: [
      { label: 'a clause, and a source that needs none', book: { sources: { practice: {}, standard }, ranges: { a: {}, b: { source: { id: 'standard', place: 'clause 4' } } } } },
    ],
    breaks: [
      {
        label: 'in a range, a procedure and a fallback',
        book: {
          sources: { practice: {}, standard },
          ranges: { a: { source: { id: 'standard' } } },
          procedures: { swap: { sources: [{ id: 'practice' }, { id: 'standard' }] } },
          parts: { coil: { askMaker: [{ question: 'Torque?', source: { id: 'standard' } }] } },
        },
      },
      {
        label: 'in a calculator',
        book: { sources: { standard } },
        context: { domainSources: [{ usedBy: 'src/domain/calculators/plug-gap/index.ts', id: 'standard' }] },
      },
    ],
  },
  'outcome-chances-sum-to-one': {
    keeps: [
      {
        label: 'sums that miss 1 by rounding, and an outcome left out',
        book: {
          procedures: {
            swap: {
              outcomes: ['a', 'b', 'c'].map((id) => ({ id, label: id, meaning: 'So.' })),
              likelihoods: [{ faults: ['x'], here: { a: 0.7, b: 0.2, c: 0.1 }, elsewhere: { a: 1 } }],
              otherwise: { a: 0.1, b: 0.2, c: 0.7 },
            },
          },
        },
      },
    ],
    breaks: [
      {
        label: 'sums beside 1 and an outcome of another name',
        book: {
          procedures: {
            swap: {
              likelihoods: [{ faults: ['x'], here: { moved: 0.6, stayed: 0.5 }, partner: { moved: 0.5, stayd: 0.5 }, elsewhere: { moved: 0.5 } }],
              otherwise: { moved: 0.999999, stayed: 0 },
            },
          },
        },
      },
    ],
  },
  'partner-chances-only-with-a-partner': {
    keeps: [
      { label: 'a swap', book: { procedures: { swap: { needsPartner: true, likelihoods: [{ faults: ['x'], here: sure, partner: half }], otherwise: half } } } },
      { label: 'no swap', book: { procedures: { look: told('x') } } },
    ],
    breaks: [
      { label: 'a partner where there is none', book: { procedures: { look: { likelihoods: [{ faults: ['x'], here: sure, partner: half }], otherwise: half } } } },
      { label: 'a swap without chances at the partner', book: { procedures: { swap: { needsPartner: true, ...told('x') } } } },
    ],
  },
  'likelihoods-need-otherwise': {
    keeps: [{ label: 'both or neither', book: { procedures: { swap: told('x'), repair: {} } } }],
    breaks: [{ label: 'likelihoods alone', book: { procedures: { swap: { likelihoods: [{ faults: ['x'], here: sure }] } } } }],
  },
  'likelihoods-name-a-fault-once': {
    keeps: [{ label: 'each fault once', book: { procedures: { swap: told('x', 'y') } } }],
    breaks: [
      {
        label: 'a fault in two groups',
        book: { procedures: { swap: { likelihoods: [{ faults: ['x', 'y'], here: sure }, { faults: ['y'], here: half }], otherwise: half } } },
      },
    ],
  },
  'outcomes-are-distinct': {
    keeps: [
      { label: 'a test with two, a repair with one', book: { procedures: { swap: {}, fit: { kind: 'repair', outcomes: [{ id: 'done', label: 'Done', meaning: 'So.' }] } } } },
    ],
    breaks: [
      { label: 'a test that can end in one way only', book: { procedures: { swap: { outcomes: [{ id: 'done', label: 'Done', meaning: 'So.' }] } } } },
      {
        label: 'two outcomes of one name',
        book: { procedures: { swap: { outcomes: [{ id: 'moved', label: 'Moved', meaning: 'So.' }, { id: 'moved', label: 'Stayed', meaning: 'So.' }] } } },
      },
    ],
  },
  'verdicts-come-from-a-reading': {
    keeps: [
      {
        label: 'a reading decides',
        book: {
          procedures: {
            gap: {
              steps: [{ text: 'Measure it.', reading: { label: 'Gap', ranges: ['a'] } }],
              outcomes: [{ id: 'inside', label: 'Inside', meaning: 'So.', verdict: 'inside' }, { id: 'above', label: 'Above', meaning: 'So.', verdict: 'above' }],
            },
          },
        },
      },
    ],
    breaks: [
      {
        label: 'no reading is taken',
        book: { procedures: { gap: { outcomes: [{ id: 'inside', label: 'Inside', meaning: 'So.', verdict: 'inside' }, { id: 'other', label: 'Other', meaning: 'So.' }] } } },
      },
    ],
  },
  'arrangement-limits-need-a-reason': {
    keeps: [
      { label: 'a limit with its reason, and no limit', book: { procedures: { swap: { ignition: ['coil-per-plug'], notPossible: 'One coil serves all.' }, look: {} } } },
    ],
    breaks: [
      { label: 'a limit without a reason', book: { procedures: { swap: { injection: ['port'] } } } },
      { label: 'a reason without a limit', book: { procedures: { swap: { notPossible: 'One coil serves all.' } } } },
    ],
  },
  'hazard-words-have-their-caution': {
    keeps: [
      {
        label: 'at the step, for the whole job, or only part of a longer word',
        book: {
          cautions: { 'fuel-vapour': { hazardWords: ['fuel', 'fuel rail'] } },
          procedures: {
            a: { steps: [{ text: 'Open the fuel rail.', caution: 'fuel-vapour' }] },
            b: { cautions: ['fuel-vapour'], steps: [{ text: 'Open the fuel line.' }] },
            c: { steps: [{ text: 'Ask about refuelling.' }] },
          },
        },
      },
    ],
    breaks: [
      {
        label: 'in a procedure, in any case, across a line, and in a part',
        book: {
          cautions: { 'fuel-vapour': { hazardWords: ['fuel rail', 'petrol'] }, 'hot-parts': { hazardWords: ['hot'] } },
          procedures: { a: { steps: [{ text: 'Wait.' }, { text: 'Open the Fuel\nrail while hot.', caution: 'hot-parts', where: 'Petrol side' }] } },
          parts: { injector: { fit: [{ text: 'Catch the petrol.' }] } },
        },
      },
    ],
  },
  'firing-orders-name-each-cylinder-once': {
    keeps: [
      { label: 'in line and in a vee', book: { engines: { a: {}, b: { cylinders: 6, form: 'vee', banks: [[1, 3, 5], [2, 4, 6]], firingOrder: [1, 2, 3, 4, 5, 6] } } } },
    ],
    breaks: [
      { label: 'one missing and one twice', book: { engines: { a: { firingOrder: [1, 3, 3, 2] } } } },
      { label: 'a cylinder too many in the banks', book: { engines: { a: { banks: [[1, 2, 3, 4, 5]] } } } },
      { label: 'one bank in a vee', book: { engines: { a: { form: 'vee' } } } },
    ],
  },
  'code-families-are-complete': {
    keeps: [{ label: 'a run, and members', book: { codes: { a: {}, b: { counts: 'bank', run: undefined, members: [{ code: 'P0171', number: 1 }] } } } }],
    breaks: [
      { label: 'no codes', book: { codes: { a: { run: undefined } } } },
      { label: 'a run that goes down', book: { codes: { a: { run: { first: 'P0312', last: 'P0301' } } } } },
      { label: 'a member without its number', book: { codes: { a: { counts: 'bank', run: undefined, members: [{ code: 'P0171' }] } } } },
    ],
  },
  'codes-stand-in-one-family-only': {
    keeps: [{ label: 'families side by side', book: { codes: { a: {}, b: { counts: 'none', run: undefined, members: [{ code: 'P0300' }] } } } }],
    breaks: [
      { label: 'a member that stands in the run of another', book: { codes: { a: {}, b: { counts: 'none', run: undefined, members: [{ code: 'P0303' }] } } } },
      { label: 'a code twice in one family', book: { codes: { b: { counts: 'none', run: undefined, members: [{ code: 'P0300' }, { code: 'P0300' }] } } } },
    ],
  },
  'faults-told-apart': {
    keeps: [
      { label: 'one test names one of them', book: { faults: { a: {}, b: {} }, procedures: { swap: told('a') } } },
      {
        label: 'never on the same engine',
        book: { faults: { a: { ignition: ['distributor'] }, b: { ignition: ['coil-per-plug'] } }, procedures: { swap: {} } },
      },
      {
        label: 'alike here, different elsewhere',
        book: { faults: { a: {}, b: {} }, procedures: { swap: { likelihoods: [{ faults: ['a'], here: sure, elsewhere: sure }, { faults: ['b'], here: sure }], otherwise: half } } },
      },
    ],
    breaks: [
      { label: 'one group, on one arrangement', book: { faults: { a: { ignition: ['distributor'], injection: ['port'] }, b: {} }, procedures: { swap: told('a', 'b') } } },
      {
        label: 'the only test cannot be done there',
        book: {
          faults: { a: { ignition: ['wasted-spark'], injection: ['port'] }, b: { injection: ['port'] } },
          procedures: { swap: { ...told('a'), ignition: ['coil-per-plug'], notPossible: 'Pairs.' } },
        },
      },
    ],
  },
  'nothing-orphaned': {
    keeps: [
      { label: 'a source named by a range that a calculator names', book: { sources: practice, ranges: { gap: {} }, calculators: { 'plug-gap': { ranges: ['gap'] } } } },
      { label: 'a source named in code', book: { sources: practice }, context: { domainSources: [{ usedBy: 'src/domain/units/table.data.ts', id: 'practice' }] } },
    ],
    breaks: [
      { label: 'one of each kind', book: { sources: { lost: {} }, ranges: { gap: {} }, cautions: { hot: {} }, parts: { coil: {} }, faults: { worn: {} } } },
      {
        label: 'a procedure that only names itself',
        book: { procedures: { swap: { outcomes: [{ id: 'a', label: 'A', meaning: 'So.', next: ['swap'] }, { id: 'b', label: 'B', meaning: 'So.' }] } } },
      },
    ],
  },
  'titles-are-unique': {
    keeps: [{ label: 'the same title in two kinds', book: { parts: { coil: { title: 'Coil' } }, glossary: { coil: { term: 'Coil' } } } }],
    breaks: [
      { label: 'but for capitals and blanks', book: { parts: { a: { title: 'Coil  unit' }, b: { title: 'coil unit' } }, glossary: { a: {}, b: {} } } },
    ],
  },
  'banned-words': {
    keeps: [{ label: 'ordinary text', book: { glossary: { coil: { meaning: 'It had had its day: a coil-on-plug unit does it better.' } } } }],
    breaks: [
      { label: 'in fields', book: { glossary: { coil: { meaning: 'TODO: the the coil, the plug etc. as per manufacturer.' } }, parts: { coil: { fit: [{ text: 'Torque ??' }] } } } },
      {
        label: 'in prose, on its own line',
        book: { procedures: { swap: {} } },
        context: { bodies: new Map([['procedures/swap', { firstLine: 40, text: '\nWhy it works.\n\nLorem ipsum.\n' }]]) },
      },
    ],
  },
  'sentences-end-properly': {
    keeps: [{ label: 'stops, questions and closing marks', book: { glossary: { a: { meaning: 'Is it “hot”?' }, b: { meaning: 'It is (so to say) “hot.”' } }, ranges: { gap: {} } } }],
    breaks: [
      { label: 'no stop in a sentence, a stop in a heading', book: { glossary: { a: { term: 'Coil.', meaning: 'It makes the spark' } }, procedures: { swap: { steps: [{ text: 'Pull it' }] } } } },
    ],
  },
  'calculators-have-prose': {
    keeps: [
      {
        label: 'one page for each calculator',
        book: { calculators: { 'plug-gap': {} } },
        context: { calculatorIds: ['plug-gap'], bodies: new Map([['calculators/plug-gap', { firstLine: 9, text: 'What it means.' }]]) },
      },
    ],
    breaks: [
      { label: 'a calculator without a page', book: {}, context: { calculatorIds: ['plug-gap'] } },
      {
        label: 'a page without a calculator, and without prose',
        book: { calculators: { 'plug-gab': {} } },
        context: { calculatorIds: ['plug-gap'], bodies: new Map([['calculators/plug-gab', { firstLine: 9, text: '\n' }]]) },
      },
    ],
  },
  'tools-are-named': {
    keeps: [
      { label: 'a tool for a test, none for a look', book: { procedures: { swap: { tools: [{ name: 'Code reader' }] }, look: { kind: 'look', tools: [] } } } },
    ],
    breaks: [{ label: 'a test and a repair with bare hands', book: { procedures: { swap: { tools: [] }, fit: { kind: 'repair', tools: [] } } } }],
  },
  'special-tools-are-needs': {
    keeps: [
      { label: 'a tool and its need', book: { procedures: { trace: { tools: [{ name: 'Oscilloscope with two leads' }], needs: ['oscilloscope'] } } } },
      { label: 'another way, and a choice of two', book: { procedures: { look: { tools: [{ name: 'Oscilloscope', without: 'Logic probe' }, { name: 'Mirror, or a borescope' }] } } } },
      { label: 'a need by choice', book: { procedures: { run: { tools: [{ name: 'Compression gauge, or a pressure sensor' }], needs: ['compression-gauge'] } } } },
    ],
    breaks: [
      { label: 'two tools in one line, one of them not needed', book: { procedures: { trace: { tools: [{ name: 'Oscilloscope with a low-current clamp' }], needs: ['oscilloscope'] } } } },
      { label: 'a need that no tool names', book: { procedures: { trace: { tools: [{ name: 'Multimeter' }], needs: ['smoke-machine'] } } } },
    ],
  },
  'access-within-minutes': {
    keeps: [{ label: 'part of the minutes', book: { procedures: { plugs: { minutes: 20, access: { 'plugs-out': 10, raised: 5 } } } } }],
    breaks: [{ label: 'all of them together', book: { procedures: { plugs: { minutes: 20, access: { 'plugs-out': 15, raised: 5 } } } } }],
  },
  'again-within-minutes': {
    keeps: [
      { label: 'shorter again, and just as long', book: { procedures: { ramp: { minutes: 15, minutesAgain: 5 }, plug: { minutes: 20, minutesAgain: 20 } } } },
      { label: 'every place in one run', book: { procedures: { counts: { showsEveryPlace: true } } } },
    ],
    breaks: [
      { label: 'longer again', book: { procedures: { ramp: { minutes: 15, minutesAgain: 16 } } } },
      { label: 'again, though one run shows every place', book: { procedures: { counts: { minutes: 10, minutesAgain: 2, showsEveryPlace: true } } } },
    ],
  },
  'later-not-below-now': {
    keeps: [{ label: 'longer later, and just as long', book: { parts: { coil: { renewWith: [renewal(5, 30), renewal(5, 5)] } } } }],
    breaks: [{ label: 'shorter later', book: { parts: { coil: { renewWith: [renewal(5, 30), renewal(30, 5)] } } } }],
  },
  'no-two-texts-alike': {
    keeps: [
      { label: 'one quantity at two heights', book: { ranges: { a: { inside: 'Usual for this height.' }, b: { inside: 'Usual for this height.' } } } },
      { label: 'the same words in two kinds', book: { glossary: { coil: { meaning: 'It makes the spark.' } }, faults: { coil: { meaning: 'It makes the spark.' } } } },
    ],
    breaks: [
      {
        label: 'but for capitals, blanks and stops',
        book: { glossary: { coil: { meaning: 'It makes the spark.' }, plug: { meaning: 'It makes -  the Spark' }, lead: { meaning: 'It carries the spark.' } } },
      },
      { label: 'ranges of two quantities', book: { ranges: { a: { quantity: 'gap' }, b: { quantity: 'reach' } } } },
      {
        label: 'fields of each kind',
        book: {
          quantities: { a: {}, b: {} },
          procedures: { a: {}, b: { worthIt: 'When two cylinders misfire.' }, c: { summary: 'Look at it.' } },
          faults: { a: {}, b: {} },
          codes: { a: {}, b: {} },
          cautions: { a: {}, b: { hazard: 'Burns.' }, c: { short: 'Let it cool.' } },
          parts: { a: {}, b: {} },
        },
      },
    ],
  },
  'other-words-differ': {
    keeps: [{ label: 'different words', book: { glossary: { coil: { otherWords: ['coil unit', 'coil pack'] }, plug: { otherWords: ['coil unit'] } } } }],
    breaks: [{ label: 'but for capitals and blanks', book: { glossary: { coil: { otherWords: ['coil unit', 'HT coil', 'Coil  Unit', 'ht coil'] } } } }],
  },
  'proper-names-are-on-the-list': {
    keeps: [
      {
        label: 'openings, names on the list, codes, threads and layouts',
        book: {
          glossary: { coil: { meaning: 'It fires. (Mind the UK rule!) Two kinds: Hall sensors; V6 and M14. P0301 at 80 °C “off”.', otherWords: ['HT coil'] } },
          sources: { practice: { kind: 'guidance', title: 'Tests by Acme', publisher: 'Acme', seen: 'read' } },
          ranges: { gap: { source: { id: 'practice', place: 'chapter Acme' }, note: 'TM 9-4910-677-14&P says so.' } },
        },
        context: { bodies: new Map([['procedures/swap', { firstLine: 9, text: '## Why It Works\n\nIt <Strip /> turns\n\n- Left first\n- Then `Acme`\n' }]]) },
      },
    ],
    breaks: [
      {
        label: 'a make in a sentence, a title, a tool and a search word',
        book: {
          glossary: { coil: { meaning: 'An Acme coil-on-plug unit by AcmeTech.', otherWords: ['Acme coil'] } },
          procedures: { swap: { title: 'Swap Acme coils', tools: [{ name: 'Reader by Acme' }] } },
        },
      },
      {
        label: 'in prose, on its own line',
        book: { procedures: { swap: {} } },
        context: { bodies: new Map([['procedures/swap', { firstLine: 40, text: '\nWhy it works:\n\n- The *Acme* coil.\n' }]]) },
      },
    ],
  },
  'step-sentences-are-short': {
    keeps: [{ label: '35 words, and twice as many in two sentences', book: { procedures: { swap: { steps: [{ text: words(35) }, { text: `${words(30)} ${words(30)}` }] } } } }],
    breaks: [{ label: '36 words, the second sentence of the second step', book: { procedures: { swap: { steps: [{ text: 'Look.' }, { text: `Look. ${words(36)}` }] } } } }],
  },
  'prose-within-reach': {
    keeps: [
      {
        label: 'plain steps, plain prose, and a few words too few to grade',
        book: { procedures: { swap: { steps: plainSteps }, look: { steps: [{ text: 'Depressurise distribution assemblies.' }] } } },
        context: { bodies: new Map([['procedures/swap', { firstLine: 9, text: 'The spark jumps the gap. '.repeat(12) }]]) },
      },
    ],
    breaks: [
      { label: 'hard steps', book: { procedures: { swap: { steps: hardSteps } } } },
      { label: 'a hard caution', book: { cautions: { hot: { hazard: hardProse } } } },
      {
        label: 'hard prose, on the line of its worst sentence',
        book: { procedures: { swap: { steps: plainSteps } } },
        context: { bodies: new Map([['procedures/swap', { firstLine: 40, text: `\nWhy it works.\n\n${hardSteps.map(({ text }) => text).join('\n\n')}\n` }]]) },
      },
    ],
  },
};
