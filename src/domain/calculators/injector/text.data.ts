import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`Q = Q_r\,\sqrt{\frac{p}{p_r}}`,
    plain: 'Q = Q_r × √(p / p_r)',
    symbols: [
      { tex: 'Q', meaning: 'flow now, held open' },
      { tex: 'Q_r', meaning: 'rated flow, held open' },
      { tex: 'p', meaning: 'pressure across the injector now' },
      { tex: 'p_r', meaning: 'pressure across the injector at the rating' },
    ],
    sources: [{ id: 'memory' }],
  },
  {
    tex: String.raw`D = \frac{t\,n\,k}{1200} \qquad t_m = \frac{120000}{n\,k}`,
    plain: 'D = t × n × k / 1200 and t_m = 120 000 / (n × k)',
    symbols: [
      { tex: 'D', meaning: 'duty cycle, percent' },
      { tex: 't', meaning: 'pulse width, milliseconds' },
      { tex: 'n', meaning: 'engine speed, revolutions per minute' },
      { tex: 'k', meaning: 'pulses in two revolutions' },
      { tex: 't_m', meaning: 'longest pulse there is time for, milliseconds' },
    ],
    sources: [{ id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A 200 ml/min injector at more pressure',
    inputs: { ratedFlow: '200 ml/min', ratedPressure: '300 kPa', pressure: '350 kPa' },
    says: 'At 350 kPa it passes 216.0 ml/min.',
  },
  {
    title: 'Near the end at full speed',
    inputs: { pulseWidth: '18 ms', speed: '6500 rpm' },
    says: '18 ms at 6500 rpm is a duty cycle of 97.5 %, for there is time for 18.46 ms only.',
  },
];

export const table: TableDefinition = {
  caption: 'Duty cycle by pulse width and engine speed, one pulse in two revolutions',
  rows: ['800', '1500', '3000', '4500', '6000'].flatMap((speed) => ['2.5', '5', '10', '15'].map((pulseWidth) => ({ speed: `${speed} rpm`, pulseWidth: `${pulseWidth} ms` }))),
  columns: ['speed', 'pulseWidth', 'dutyCycle', 'longestPulse'],
};

export const notes = {
  flow: 'Flow goes with the root of the pressure: a rail a fifth low costs a tenth of the fuel. Plus trims that grow with load fit that.',
  heldOpen: 'Over 100 % the next pulse comes before the last one ends: the injector is held open and passes all it can. The engine runs lean here, or pulses and speed were read at different moments.',
  nearLimit: 'Little or no time is left to close: 80 to 90 % is taken as the most that is sensible. Look for low fuel pressure or a blocked filter that makes the control unit ask for longer pulses. Common practice.',
  inHand: 'There is time in hand. A misfire here does not come from injectors held open; it may still come from one that is blocked or does not click.',
} as const;
