import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { samples } from '../samples.ts';
import { blendRatio, ethanolMassFraction, oxygenNeeded, stoichiometricRatio } from './fuel.ts';
import type { Atoms, Blend } from './fuel.ts';
import { inputs, outputs } from './inputs.data.ts';
import { blendNote, examples, formulas, table, zoneNotes } from './text.data.ts';

const atomNames = ['carbon', 'hydrogen', 'oxygen'] as const;

/** Bands of lambda in a plain engine. Heywood chapters 7 and 15, recalled; common practice. */
const richLimit = 0.6;
const richBelow = 0.97;
const leanAbove = 1.03;
const leanMisfireAbove = 1.2;

function hasAtoms(given: ParsedInputs): boolean {
  return atomNames.some((name) => given.has(name));
}

/** Atoms that were not typed are none. */
function atomsOf(given: ParsedInputs): Atoms {
  const count = (name: string) => given.optionalNumber(name) ?? 0;
  return { carbon: count('carbon'), hydrogen: count('hydrogen'), oxygen: count('oxygen') };
}

function blendOf(given: ParsedInputs): Blend {
  return {
    petrolRatio: given.number('petrolRatio'),
    ethanolRatio: given.number('ethanolRatio'),
    petrolDensity: given.number('petrolDensity'),
    ethanolDensity: given.number('ethanolDensity'),
  };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const refuse = (input: string, code: string, message: string) => ({ input, code, message });
  const [atoms, percent] = [hasAtoms(given), given.has('ethanolPercent')];
  if (!atoms && !percent) {
    return refuse('ethanolPercent', 'missing', 'Ethanol in the fuel: nothing was typed. Type 0 for plain petrol, the percent of a blend, or the atoms of a pure fuel.');
  }
  if (atoms && percent) {
    return refuse('ethanolPercent', 'both-given', 'Ethanol in the fuel: a blend and the atoms of a pure fuel were both given. Clear one of them.');
  }
  if (percent || oxygenNeeded(atomsOf(given)) > 0) return undefined;
  const { carbon, hydrogen, oxygen } = atomsOf(given);
  const found = `${carbon} carbon, ${hydrogen} hydrogen and ${oxygen} oxygen atoms`;
  return refuse('carbon', 'no-fuel', `Carbon atoms: ${found} make nothing that takes up oxygen, so it does not burn. Check the formula of the fuel; isooctane has 8 carbon and 18 hydrogen.`);
}

function zoneOf(lambda: number): keyof typeof zoneNotes {
  if (lambda < richLimit) return 'too-rich';
  if (lambda < richBelow) return 'rich';
  if (lambda <= leanAbove) return 'about-one';
  return lambda > leanMisfireAbove ? 'too-lean' : 'lean';
}

function stoichiometric(given: ParsedInputs): number {
  return hasAtoms(given) ? stoichiometricRatio(atomsOf(given)) : blendRatio(given.number('ethanolPercent'), blendOf(given));
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const [ratio, actual, percent] = [stoichiometric(given), given.optionalNumber('actual'), given.optionalNumber('ethanolPercent')];
  const values: Record<string, OutputValue> = { stoichiometric: { value: ratio, unit: '1' } };
  if (percent !== undefined) values['ethanolMassFraction'] = { value: ethanolMassFraction(percent, blendOf(given)), unit: '1' };
  if (actual !== undefined) {
    values['lambda'] = { value: actual / ratio, unit: '1' };
    values['equivalenceRatio'] = { value: ratio / actual, unit: '1' };
  }
  const notes = [...(actual === undefined ? [] : [zoneNotes[zoneOf(actual / ratio)]]), blendNote];
  return success({ outputs: values, notes, next: [{ page: 'procedures/fuel-trims', label: 'Fuel trims, idle and cruise' }] });
}

const chartPoints = 20;

function chart(given: ParsedInputs): Chart | undefined {
  const percent = given.optionalNumber('ethanolPercent');
  if (percent === undefined) return undefined;
  const blend = blendOf(given);
  const points = samples(0, 100, chartPoints, (percentage) => blendRatio(percentage, blend));
  return {
    title: 'Air needed by the ethanol in the fuel',
    x: { label: 'Ethanol by volume', unit: '%' },
    y: { label: 'Air to fuel by mass', unit: '1' },
    series: [{ name: 'Just burns', kind: 'line', points }],
    marks: [{ x: percent, y: blendRatio(percent, blend), label: 'This fuel' }],
  };
}

/** The air a fuel needs, by its ethanol content or its formula, and lambda from a ratio that was measured. */
export const airFuelRatio: CalculatorDefinition = {
  id: 'air-fuel-ratio',
  title: 'Air-fuel ratio',
  summary: 'How much air does this fuel need to burn, and is the measured ratio rich or lean for it?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['AFR', 'stoichiometric', 'stoich', '14.7', 'lambda', 'ethanol', 'E10', 'E85', 'mixture', 'wideband', 'rich', 'lean', 'phi'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => airFuelRatio;
