import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`A_s = \frac{138.2\left(x + \frac{y}{4} - \frac{z}{2}\right)}{12.011\,x + 1.008\,y + 15.999\,z}`,
    plain: 'A_s = 138.2 × (x + y/4 − z/2) / (12.011 x + 1.008 y + 15.999 z)',
    symbols: [
      { tex: 'A_s', meaning: 'air that just burns the fuel, by mass' },
      { tex: 'x', meaning: 'carbon atoms' },
      { tex: 'y', meaning: 'hydrogen atoms' },
      { tex: 'z', meaning: 'oxygen atoms' },
    ],
    sources: [{ id: 'heywood', place: 'equation 3.6, recalled' }],
  },
  {
    tex: String.raw`w = \frac{v\,d_e}{v\,d_e + (1-v)\,d_p} \qquad A_s = w\,A_e + (1-w)\,A_p`,
    plain: 'w = v d_e / (v d_e + (1 − v) d_p) and A_s = w A_e + (1 − w) A_p',
    symbols: [
      { tex: 'w', meaning: 'ethanol as a part of the mass' },
      { tex: 'v', meaning: 'ethanol as a part of the volume' },
      { tex: 'd_e', meaning: 'density of ethanol' },
      { tex: 'd_p', meaning: 'density of petrol' },
      { tex: 'A_e', meaning: 'air that ethanol needs, by mass' },
      { tex: 'A_p', meaning: 'air that petrol needs, by mass' },
      { tex: 'A_s', meaning: 'air that just burns the blend, by mass' },
    ],
    sources: [{ id: 'computed' }, { id: 'heywood', place: 'table D.4, ratios of petrol and ethanol, recalled' }],
  },
  {
    tex: String.raw`\lambda = \frac{A}{A_s} \qquad \phi = \frac{A_s}{A}`,
    plain: 'λ = A / A_s and φ = A_s / A',
    symbols: [
      { tex: String.raw`\lambda`, meaning: 'lambda: air supplied over air needed; below 1 is rich' },
      { tex: String.raw`\phi`, meaning: 'equivalence ratio: the other way up; above 1 is rich' },
      { tex: 'A_s', meaning: 'air that just burns the fuel, by mass' },
      { tex: 'A', meaning: 'air-fuel ratio by mass, as measured' },
    ],
    sources: [{ id: 'heywood', place: 'section 3.4, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A ratio of 13.2 on plain petrol',
    inputs: { ethanolPercent: '0', actual: '13.2' },
    says: 'Petrol needs 14.60 of air; 13.2 is lambda 0.904, an equivalence ratio of 1.106: rich, about best power.',
  },
  {
    title: 'E10 from the pump',
    inputs: { ethanolPercent: '10 %' },
    says: 'With 10 % of ethanol by volume, 0.1053 by mass, the fuel needs 14.01 of air.',
  },
];

export const table: TableDefinition = {
  caption: 'Air needed by petrol with ethanol, petrol taken at 14.6',
  rows: ['0', '5', '10', '15', '20', '25', '27', '30', '50', '70', '85', '100'].map((ethanolPercent) => ({ ethanolPercent: `${ethanolPercent} %` })),
  columns: ['ethanolPercent', 'ethanolMassFraction', 'stoichiometric'],
};

/** What a lambda means in a plain petrol engine. Heywood chapters 7 and 15, recalled; common practice. */
export const zoneNotes = {
  'too-rich': 'Richer than lambda 0.6, about where petrol stops firing: expect black smoke, fouled plugs and misfire. Look for a leaking injector, high fuel pressure or flooding.',
  rich: 'Rich. Lambda 0.85 to 0.90 gives most power and is meant at full throttle; at a warm idle or steady cruise it is a fault.',
  'about-one': 'Within 3 % of what the fuel needs, as closed loop holds it. The mixture is not the likely cause of the misfire.',
  lean: 'Lean. Lambda 1.05 to 1.10 is economical in a sound engine; in closed loop look for air leaking in, low fuel pressure or an exhaust leak ahead of the sensor.',
  'too-lean': 'Leaner than lambda 1.2, where a plain engine begins to miss. Look for air leaking in or too little fuel before blaming the ignition; a misfire also sends air past the sensor and looks lean.',
} as const;

export const blendNote =
  'A sensor finds lambda; the ratio is worked out from it. A gauge set for 14.7 shows 14.7 on E10 at lambda 1, though the true ratio is then about 14.0: compare lambda, not ratios.';
