import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const current = { tex: 'I', meaning: 'current in the primary, amperes' };
const inductance = { tex: 'L', meaning: 'inductance of the primary, henries' };
const resistance = { tex: 'R', meaning: 'resistance of the primary circuit, ohms' };
const voltage = { tex: 'V', meaning: 'supply voltage less the voltage lost in the switch, volts' };
const time = { tex: 't', meaning: 'charging time, seconds' };

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`I = \frac{V}{R}\left(1 - e^{-t R/L}\right)`,
    plain: 'I = V / R × (1 − e^(−t R / L))',
    symbols: [current, voltage, resistance, inductance, time, { tex: 'e', meaning: 'base of natural logarithms, 2.718' }],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 14.4, RL circuits' }],
  },
  {
    tex: String.raw`t = -\frac{L}{R}\,\ln\left(1 - \frac{I R}{V}\right)`,
    plain: 't = −L / R × ln(1 − I R / V); there is none once I R reaches V',
    symbols: [time, inductance, resistance, current, voltage],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 14.4, solved for the time' }],
  },
  {
    tex: String.raw`E = \frac{L I^2}{2}`,
    plain: 'E = L I² / 2',
    symbols: [{ tex: 'E', meaning: 'energy stored in the coil, joules' }, inductance, current],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 14.3, energy in a magnetic field' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Three milliseconds of dwell, engine running',
    inputs: { supplyVoltage: '14 V', resistance: '0.6 ohm', inductance: '3 mH', chargeTime: '3 ms', targetCurrent: '7 A' },
    says: 'After 3 ms the coil carries 10.53 A; it passes 7 A at 1.78 ms.',
  },
  {
    title: 'The same coil while the starter pulls the battery down',
    inputs: { supplyVoltage: '9.6 V', resistance: '0.6 ohm', inductance: '3 mH', chargeTime: '3 ms', targetCurrent: '7 A' },
    says: 'After 3 ms the coil carries 7.22 A; it needs 2.88 ms for 7 A.',
  },
];

export const table: TableDefinition = {
  caption: 'A coil of 0.6 Ω and 3 mH: current after 3 ms, and time to 7 A, by supply voltage',
  rows: ['9', '10', '11', '12', '13', '14', '15'].map((supplyVoltage) => ({
    supplyVoltage: `${supplyVoltage} V`,
    resistance: '0.6',
    inductance: '3',
    chargeTime: '3',
    targetCurrent: '7',
  })),
  columns: ['supplyVoltage', 'current', 'energy', 'timeToTarget'],
};
