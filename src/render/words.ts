import type { Entry } from '../schemas/index.ts';

type SourceKind = Entry<'sources'>['kind'];

/** The short status printed beside a figure. */
export function sourceStatus(source: Pick<Entry<'sources'>, 'kind' | 'seen'>): string {
  if (source.kind === 'common-practice') return 'common practice, no source';
  if (source.kind === 'memory') return 'from memory';
  if (source.kind === 'computed') return 'computed';
  const kind: Record<Exclude<SourceKind, 'common-practice' | 'memory' | 'computed'>, string> = {
    standard: 'standard',
    regulation: 'regulation',
    textbook: 'textbook',
    guidance: 'guidance',
    'open-data': 'open data',
  };
  return source.seen === 'recalled' ? `${kind[source.kind]}, recalled from memory` : kind[source.kind];
}

export const sourceSeen: Record<Entry<'sources'>['seen'], string> = {
  read: 'The text was read for this book.',
  extract: 'Part of the text, or a public copy of it, was read for this book.',
  recalled: 'The text was not at hand: recalled from memory, to be checked against the document.',
  none: 'There is no published text behind it.',
};

export const ignitionLabel: Record<string, string> = {
  'coil-per-plug': 'Coil on each plug',
  'coil-per-plug-built-in-driver': 'Coil on each plug, driver built in',
  'wasted-spark': 'Wasted spark, one coil for two cylinders',
  distributor: 'Distributor, one coil',
};

export const injectionLabel: Record<string, string> = { port: 'Port injection', direct: 'Direct injection' };

export const groupLabel: Record<Entry<'procedures'>['group'], string> = {
  'take-in': 'Take in and read',
  ignition: 'Ignition',
  fuel: 'Fuel',
  air: 'Air and exhaust',
  mechanical: 'Mechanical',
  repair: 'Repair and proof',
};

export const skillLabel: Record<Entry<'procedures'>['skill'], string> = {
  apprentice: 'Apprentice, supervised',
  mechanic: 'Mechanic',
  specialist: 'Specialist',
};

/** What comes on top of the minutes, and what is saved where the car stands open already. Empty where there is neither. */
export function furtherPlaceText({ placeKind, minutesAgain, showsEveryPlace }: Pick<Entry<'procedures'>, 'placeKind' | 'minutesAgain' | 'showsEveryPlace'>): string {
  if (showsEveryPlace) return 'one run shows them all';
  return minutesAgain === undefined ? '' : `${minutesAgain} min for each further ${furtherPlaceLabel[placeKind]}`;
}

const furtherPlaceLabel: Record<Entry<'procedures'>['placeKind'], string> = { cylinder: 'cylinder', coil: 'coil', neighbours: 'pair', bank: 'bank', engine: 'run' };

/** Minutes that depend on how far the car is opened up already. Empty where nothing does. */
export function accessText(procedure: Pick<Entry<'procedures'>, 'needsCoverOff' | 'access'>): string {
  const { 'plugs-out': plugs, raised } = procedure.access;
  return [
    procedure.needsCoverOff ? 'taking the engine cover off not counted' : '',
    plugs === undefined ? '' : `${plugs} min less if the plugs are out already`,
    raised === undefined ? '' : `${raised} min less if the car is raised already`,
  ]
    .filter(Boolean)
    .join('; ');
}

export const severityLabel: Record<Entry<'cautions'>['severity'], string> = { danger: 'Danger', warning: 'Warning', care: 'Take care' };

export const areaLabel: Record<Entry<'codes'>['area'], string> = {
  misfire: 'Misfire',
  ignition: 'Ignition',
  injection: 'Injection',
  mixture: 'Mixture',
  air: 'Air',
  sensors: 'Sensors',
  emission: 'Emission controls',
  module: 'Control unit',
  network: 'Network',
};

export const placeKindLabel: Record<Entry<'faults'>['placeKind'], string> = {
  cylinder: 'one cylinder',
  coil: 'one coil and the cylinders it serves',
  neighbours: 'two neighbouring cylinders',
  bank: 'one bank',
  engine: 'the whole engine',
};

/** Questions of the complaint, in the order they are asked. */
export const complaintLabel: Readonly<Record<string, string>> = {
  'when-cold': 'Only or mostly when cold',
  'when-hot': 'Only or mostly when hot',
  'in-wet': 'In wet or damp weather',
  'under-load': 'Under load, pulling or uphill',
  'at-idle': 'At idle',
  'after-plug-work': 'After work on plugs or coils',
  'after-engine-wash': 'After an engine wash',
  'oil-in-plug-wells': 'Oil seen in the plug wells',
  'plugs-old': 'Plugs old or of unknown age',
  'after-refuelling': 'After refuelling',
  'coolant-loss': 'Coolant goes missing',
  'oil-use': 'Uses oil',
};

/** The sections of the book in the order of its contents page. */
export const sections = [
  { path: 'procedures', title: 'Procedures', says: 'How to do each test and repair, step by step.' },
  { path: 'ranges', title: 'Ranges', says: 'What a reading should be, and a field to judge yours.' },
  { path: 'calculators', title: 'Calculators', says: 'Sums at the bench.' },
  { path: 'codes', title: 'Codes', says: 'What a stored code says and does not say.' },
  { path: 'faults', title: 'Faults', says: 'Ways to fail, their signs and what tells them apart.' },
  { path: 'parts', title: 'Parts', says: 'Match old and new, then fit.' },
  { path: 'cautions', title: 'Cautions', says: 'What can hurt you, and when to stop.' },
  { path: 'engines', title: 'Engines', says: 'Layouts, firing orders and coil pairs.' },
  { path: 'jobs', title: 'Jobs', says: 'Work a car from complaint to proof.' },
  { path: 'glossary', title: 'Glossary', says: 'Trade words in plain words.' },
  { path: 'sources', title: 'Sources', says: 'Where every figure comes from.' },
] as const;

export type SectionPath = (typeof sections)[number]['path'];

export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
