import { verdictWord } from '../../measurement/sentence.ts';
import { success } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { openChoice } from '../parse-field.ts';
import { aboveZero, quantity } from '../quantity.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { examples, formulas, table, verdictNotes } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  quantity('length', 'Length of the lead', 'length', 'm', { ...aboveZero(20), hint: 'From contact to contact, laid straight.' }),
  quantity('resistancePerMetre', 'Resistance per length', 'resistance-per-length', 'ohm/m', {
    minimum: 0,
    maximum: 1_000_000,
    hint: 'Printed on the lead or in the maker’s data. Carbon core 10 to 25 kΩ/m, wire-wound 1 to 10 kΩ/m as a rule.',
  }),
  quantity('reading', 'Meter reading', 'resistance', 'ohm', {
    optional: true,
    minimum: 0,
    maximum: 100_000_000,
    choices: [{ value: openChoice, label: 'Open circuit (OL)' }],
    hint: 'Lead off both ends. OL for an open circuit.',
  }),
  quantity('seriesResistance', 'Resistors in the ends', 'resistance', 'ohm', {
    optional: true,
    default: '0',
    minimum: 0,
    maximum: 1_000_000,
    hint: 'Often 1 or 5 kΩ in a cap; 0 for none.',
  }),
  quantity('tolerancePercent', 'Accepted either way', 'ratio', '%', { optional: true, default: '20', minimum: 0, maximum: 100, advanced: true }),
];

const verdicts = ['inside', 'below', 'above'] as const;
type Verdict = (typeof verdicts)[number];

const outputs: readonly OutputDefinition[] = [
  { name: 'expected', label: 'Resistance to expect', kind: 'quantity', unit: 'ohm', decimals: 0, main: true },
  { name: 'lowest', label: 'Lowest accepted', kind: 'quantity', unit: 'ohm', decimals: 0 },
  { name: 'highest', label: 'Highest accepted', kind: 'quantity', unit: 'ohm', decimals: 0 },
  { name: 'verdict', label: 'Verdict', kind: 'word', words: Object.fromEntries(verdicts.map((word) => [word, verdictWord(word)])) },
];

interface Band {
  readonly expected: number;
  readonly lowest: number;
  readonly highest: number;
}

/** Ohms, for a lead of this many metres. */
function bandFor(length: number, given: ParsedInputs): Band {
  const expected = length * given.number('resistancePerMetre') + given.number('seriesResistance');
  const share = given.number('tolerancePercent') / 100;
  return { expected, lowest: expected * (1 - share), highest: expected * (1 + share) };
}

/** A reading on the limit itself is inside, whatever the last bit of the arithmetic says. */
const roundingRoom = 1e-12;

function judgeReading(reading: number | 'open', { lowest, highest }: Band): Verdict {
  if (reading === 'open' || reading > highest * (1 + roundingRoom)) return 'above';
  return reading < lowest * (1 - roundingRoom) ? 'below' : 'inside';
}

function readingOf(given: ParsedInputs): number | 'open' | undefined {
  if (!given.has('reading')) return undefined;
  return given.optionalNumber('reading') ?? 'open';
}

function notesOf(reading: number | 'open' | undefined, band: Band): readonly string[] {
  const limits = `${showFigure(band.lowest, 'ohm')} to ${showFigure(band.highest, 'ohm')}`;
  if (reading === undefined) return [`Accept ${limits}. Type what the meter shows for a verdict.`];
  if (reading === 'open') return [verdictNotes.open];
  const verdict = judgeReading(reading, band);
  return [`${verdictWord(verdict)}: ${showFigure(reading, 'ohm')} against ${limits}.`, verdictNotes[verdict]];
}

function compute(given: ParsedInputs) {
  const band = bandFor(given.number('length'), given);
  const reading = readingOf(given);
  const values: Record<string, OutputValue> = {
    expected: { value: band.expected, unit: 'ohm' },
    lowest: { value: band.lowest, unit: 'ohm' },
    highest: { value: band.highest, unit: 'ohm' },
  };
  if (reading !== undefined) values['verdict'] = judgeReading(reading, band);
  return success<Calculation>({ outputs: values, notes: notesOf(reading, band), next: [{ page: 'parts/plug-leads', label: 'Plug leads: matching and fitting' }] });
}

function chart(given: ParsedInputs): Chart {
  const [length, reading] = [given.number('length'), given.optionalNumber('reading')];
  const line = (name: string, pick: keyof Band) => ({
    name,
    kind: 'line' as const,
    points: samples(0, 1.5 * length, 1, (x) => bandFor(x, given)[pick]),
  });
  return {
    title: 'Resistance of a lead against its length',
    x: { label: 'Length', unit: 'm' },
    y: { label: 'Resistance', unit: 'ohm' },
    series: [line('Expected', 'expected'), line('Lowest', 'lowest'), line('Highest', 'highest')],
    marks: reading === undefined ? [] : [{ x: length, y: reading, label: 'This lead' }],
  };
}

/** The resistance a plug lead of this length should have, and whether the one read has it. */
export const leadResistance: CalculatorDefinition = {
  id: 'lead-resistance',
  title: 'Plug lead resistance',
  summary: 'What should a plug lead of this length read, and is this one good?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['HT lead', 'plug wire', 'carbon core', 'kilohm per metre', 'high tension lead', 'plug cap resistor', 'lead test'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => leadResistance;
