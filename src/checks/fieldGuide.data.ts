/** What a field takes and a line that would be right, where the type alone does not say enough. */
export interface FieldGuide {
  readonly expected: string;
  readonly example: string;
}

const source: FieldGuide = {
  expected: 'the id of a file in content/sources, and the clause, table or page in it',
  example: 'source: { id: common-practice }',
};

const sources: FieldGuide = {
  expected: 'a list of at least one source, each with the id of a file in content/sources',
  example: 'sources: [{ id: common-practice }]',
};

const drawings: FieldGuide = {
  expected: 'a list of ids of pictures in src/domain/drawing/registry.ts',
  example: 'drawings: [connector-2-pins]',
};

/** By kind and field; positions in lists are left out. */
export const fieldGuides: Readonly<Record<string, FieldGuide>> = {
  'ranges.source': source,
  'codes.source': source,
  'engines.source': source,
  'faults.source': source,
  'procedures.sources': sources,
  'cautions.sources': sources,
  'parts.sources': sources,
  'calculators.sources': sources,
  'ranges.quantity': { expected: 'the id of a file in content/quantities', example: 'quantity: coil-primary-resistance' },
  'ranges.low': { expected: "a number in the range's unit", example: 'low: 0.3' },
  'ranges.high': { expected: "a number in the range's unit", example: 'high: 1' },
  'ranges.unit': { expected: 'the id of a unit in the unit table', example: 'unit: ohm' },
  'ranges.referenceTemperature': {
    expected: 'a temperature from -40 to 150 in °C, as a bare number',
    example: 'referenceTemperature: 20',
  },
  'quantities.unit': { expected: 'the id of a unit in the unit table', example: 'unit: ohm' },
  'quantities.usualMeter': {
    expected: 'percent of the reading and counts of the last digit',
    example: 'usualMeter: { percent: 0.8, counts: 3 }',
  },
  'procedures.minutes': { expected: 'whole minutes from 1 to 480', example: 'minutes: 15' },
  'procedures.minutesAgain': { expected: 'whole minutes from 1 to 480 for the same at a further place', example: 'minutesAgain: 5' },
  'procedures.showsEveryPlace': { expected: 'true where one run shows every cylinder, coil or bank at once', example: 'showsEveryPlace: true' },
  'procedures.needs': {
    expected: 'special tools it cannot be done without; an empty list if every shop has what it takes',
    example: 'needs: [oscilloscope]',
  },
  'procedures.access': {
    expected: 'of its minutes, how many go into taking the plugs out or raising the car',
    example: 'access: { plugs-out: 15 }',
  },
  'procedures.cautions': {
    expected: 'a list of ids of files in content/cautions; an empty list if there is none',
    example: 'cautions: [high-tension]',
  },
  'procedures.steps': {
    expected: 'a list of at least one step, each with its text',
    example: 'steps: [{ text: Switch the ignition off. }]',
  },
  'procedures.drawings': drawings,
  'faults.drawings': drawings,
  'faults.codes': {
    expected: 'ids of files in content/codes, each with a chance from 0 to 1',
    example: 'codes: { misfire-cylinder: 0.8 }',
  },
  'faults.complaint': {
    expected: 'signs in the complaint, each with a factor above 0 and at most 20',
    example: 'complaint: { when-hot: 3 }',
  },
  'parts.renewWith': {
    expected: 'parts worth renewing in the same visit, each with why, the minutes now and later, and the step of its price',
    example: 'renewWith: [{ part: Boot, why: It has hardened., minutesNow: 5, minutesLater: 30, partCost: low }]',
  },
  'engines.firingOrder': { expected: 'cylinder numbers in the order they fire', example: 'firingOrder: [1, 3, 4, 2]' },
  'engines.banks': {
    expected: 'a list of banks, each a list of its cylinder numbers from the front',
    example: 'banks: [[1, 2, 3, 4]]',
  },
  'codes.run': {
    expected: 'the first and the last code of a run',
    example: 'run: { first: P0301, last: P0312 }',
  },
};
