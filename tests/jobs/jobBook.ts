/** A small book for the tests of jobs: the hand-made diagnosis book, two ranges and one part. Its figures are invented. */
import type { JobBook, JobRange } from '../../src/domain/jobs/book.ts';
import { appendEvent, newJob } from '../../src/domain/jobs/edit.ts';
import type { Job, JobEventBody } from '../../src/domain/jobs/types.ts';
import { fault, fourCylinders, layoutOf, smallBook } from '../fixtures/diagnosisBook.ts';

export const coilRange: JobRange = {
  id: 'coil-primary',
  title: 'Coil primary resistance, coil on plug',
  quantity: 'Coil primary resistance',
  low: 0.4,
  high: 1,
  unit: 'ohm',
  referenceTemperature: 20,
  variation: 'copper',
  usualMeter: { percent: 0.8, counts: 3 },
  leadsMatter: true,
  sourceId: 'common-practice',
  sourceLabel: 'Common practice',
  makerFirst: true,
  inside: 'The winding is whole as far as resistance shows.',
  below: 'Turns are shorted.',
  above: 'The winding or its contact is high.',
  open: 'The winding is broken.',
  address: 'ranges/coil-primary/',
};

/** A second fault that the same part puts right. */
const coilInsulation = fault('coil-insulation', 'coil', { title: 'Coil insulation breaking down', weight: 4, part: 'coil', codes: { 'misfire-cylinder': 0.8, 'coil-circuit': 0.3 } });

export const jobBook: JobBook = {
  edition: '0.0.0',
  diagnosis: {
    ...smallBook,
    faults: [...smallBook.faults.map((one) => (one.id === 'coil-winding' ? { ...one, part: 'coil' } : one)), coilInsulation],
    tests: smallBook.tests.map((test) => ({
      ...test,
      likelihoods: test.likelihoods.map((one) => (one.faults.includes('coil-winding') ? { ...one, faults: [...one.faults, 'coil-insulation'] } : one)),
    })),
  },
  engines: [{ ...fourCylinders, ignition: ['coil-per-plug'], injection: ['port'], numbering: 'From the front.' }],
  ranges: [coilRange],
  parts: [
    {
      id: 'coil',
      title: 'Coil-on-plug unit',
      match: [{ feature: 'Pins', check: 'same count' }],
      renewWith: [],
      fit: [{ text: 'Push it home.' }],
      askMaker: [{ question: 'Torque of the screw?' }],
      beforeStart: ['Connector latched.'],
      cautions: ['high-tension'],
      address: 'parts/coil/',
    },
  ],
  signs: [{ id: 'when-hot', label: 'Only when hot' }],
  cautions: [{ id: 'high-tension', title: 'High tension', short: 'Tens of kilovolts: engine off before touching.', severity: 'danger', address: 'cautions/high-tension/' }],
  codes: {
    P0303: { family: 'misfire-cylinder', number: 3, title: 'Misfire, cylinder 3' },
    P0353: { family: 'coil-circuit', number: 3, title: 'Coil circuit, coil C' },
  },
  procedures: {},
  estimatesNote: 'Estimates: common practice, no source.',
};

export const startTime = '2026-03-04T09:00:00.000Z';

/** A job with these events in this order, a minute apart, with ids e1, e2, … */
export function jobOf(...bodies: readonly JobEventBody[]): Job {
  return bodies.reduce(
    (job, body, index) => appendEvent(job, body, `e${index + 1}`, new Date(Date.parse(startTime) + index * 60_000).toISOString()),
    newJob('job-1', startTime, 'test', 'Rough when hot'),
  );
}

export const engine: JobEventBody = {
  kind: 'engine-chosen',
  layout: layoutOf(fourCylinders),
  description: 'Small hatchback, invented',
  customerReference: '',
  makerFigures: [],
};
export const complaint: JobEventBody = { kind: 'complaint', text: 'Shakes when hot', signs: ['when-hot'] };
export const codes: JobEventBody = {
  kind: 'codes-read',
  text: 'P0303 P0353',
  codes: [
    { code: 'P0303', title: 'Misfire, cylinder 3', family: 'misfire-cylinder', number: 3 },
    { code: 'P0353', title: 'Coil circuit, coil C', family: 'coil-circuit', number: 3 },
  ],
  refused: [],
};
export const moved: JobEventBody = {
  kind: 'test-done',
  test: 'swap-coils',
  title: 'Swap the coils',
  place: { id: 'coil-3', label: 'coil of cylinder 3' },
  partner: { id: 'coil-1', label: 'coil of cylinder 1' },
  outcomes: { moved: 1 },
  outcome: 'The misfire moved',
  note: '',
};
export const count: JobEventBody = { kind: 'misfires-counted', misfires: 30, revolutions: 1000, how: 'counters' };
export const finding: JobEventBody = {
  kind: 'finding-made',
  hypothesis: 'coil-winding@coil-3',
  label: 'Coil winding open or shorted, coil of cylinder 3',
  belief: 0.95,
  supportedBy: ['Swap the coils: The misfire moved'],
};
export const repair: JobEventBody = { kind: 'repair-done', what: 'Coil of cylinder 3 renewed', hypothesis: 'coil-winding@coil-3', minutes: 20 };
export const cleared: JobEventBody = { kind: 'codes-cleared' };
export const noneBack: JobEventBody = { kind: 'codes-reread', text: '', codes: [], refused: [] };
export const quietRun: JobEventBody = { kind: 'proof-run', revolutions: 4000, minutes: 2, misfires: 0, similarConditions: 'yes', result: 'quiet' };
export const returned: JobEventBody = { kind: 'proof-run', revolutions: 900, minutes: 1, misfires: 12, similarConditions: 'yes', result: 'returned' };
export const reading: JobEventBody = {
  kind: 'reading-taken',
  range: 'coil-primary',
  title: 'Coil primary resistance, coil on plug',
  place: { id: 'coil-3', label: 'coil of cylinder 3' },
  text: '2.4',
  value: 2.4,
  unit: 'ohm',
  leads: 0,
  temperature: 20,
  meter: { name: '', percent: 0.8, counts: 3 },
  corrected: 2.4,
  expandedUncertainty: 0.06,
  verdict: 'above',
  limits: { low: 0.4, high: 1, referenceTemperature: 20, sourceId: 'common-practice', sourceLabel: 'Common practice' },
};
export const goodReading: JobEventBody = { ...reading, text: '0.7', value: 0.7, corrected: 0.7, verdict: 'inside' };
export const calculation: JobEventBody = {
  kind: 'calculation',
  calculator: 'plug-gap',
  title: 'Plug gap and voltage',
  inputs: [
    { name: 'gap', label: 'Plug gap', text: '1.1 mm' },
    { name: 'intakeTemperature', label: 'Intake temperature', text: '20 °C (usual)' },
  ],
  outputs: [{ name: 'breakdown', label: 'Voltage to jump the gap, at most', text: '4.7 kV' }],
  address: 'calculators/plug-gap/?gap=1.1%20mm',
};

/** The first bytes of a JPEG file (FF D8 FF E0, then the length and name of the JFIF segment) in Base64. */
export const jpegStart = '/9j/4AAQSkZJRg==';
export const opinion: JobEventBody = {
  kind: 'opinion',
  fault: 'injector-clogged',
  place: { id: 'cylinder-2', label: 'cylinder 2' },
  label: 'Injector clogged, cylinder 2',
  weight: 'likelier',
  reason: 'two of these last month',
};
export const access: JobEventBody = { kind: 'access', open: ['cover-off', 'plugs-out'] };
export const frame: JobEventBody = { kind: 'frame-read', code: 'P0303', speed: 2200, load: 50, coolant: 88, warm: 'yes' };
export const picture: JobEventBody = { kind: 'picture', caption: 'Burnt boot', width: 800, height: 600, jpeg: jpegStart };
export const trimsGood: JobEventBody = { kind: 'proof-check', check: 'trims', state: 'good', note: '' };
export const monitorsNotYet: JobEventBody = { kind: 'proof-check', check: 'monitors', state: 'not-yet', note: 'evaporative system' };
export const cameBack: JobEventBody = { kind: 'came-back', text: 'Shakes again after a week', misfire: 'same' };
export const cameBackOther: JobEventBody = { kind: 'came-back', text: 'Now at idle', misfire: 'different' };
export const renamed: JobEventBody = { kind: 'renamed', title: 'Blue hatchback' };
export const handedOver: JobEventBody = { kind: 'handed-over', to: 'owner' };
