import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const symbols = [
  { tex: 'E', meaning: 'voltage of the cell' },
  { tex: 'R', meaning: 'molar gas constant, 8.314462618 J/(mol K)' },
  { tex: 'T', meaning: 'temperature of the cell, kelvin' },
  { tex: 'F', meaning: 'charge of a mole of electrons, 96485.33212 C/mol' },
  { tex: 'p_0', meaning: 'oxygen pressure of the reference air, absolute' },
  { tex: 'p', meaning: 'oxygen pressure in the exhaust, absolute' },
] as const;

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`E = \frac{R\,T}{4\,F}\,\ln\left(\frac{p_0}{p}\right)`,
    plain: 'E = R T / (4 F) × ln(p0 / p)',
    symbols,
    sources: [
      { id: 'heywood', place: 'chapter 7, oxygen sensor, recalled' },
      { id: 'si-brochure', place: '9th edition, defining constants, for R and F' },
    ],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'One percent of oxygen past a cell at 700 °C',
    inputs: { temperature: '700 C', oxygenPressure: '0.01 atm' },
    says: 'With 0.01 atm of oxygen the cell gives 64 mV: lean.',
  },
  {
    title: 'The switching point at 600 °C',
    inputs: { temperature: '600 C', voltage: '0.45 V' },
    says: '450 mV stands for oxygen 10.4 powers of ten below the reference: all but none.',
  },
];

const pressures = ['0.05', '0.01', '0.001', '1e-5', '1e-10', '1e-20'];

export const table: TableDefinition = {
  caption: 'Voltage of the cell at 400, 600 and 800 °C by the oxygen that is left, reference 0.209 atm',
  rows: ['400', '600', '800'].flatMap((temperature) => pressures.map((oxygenPressure) => ({ temperature: `${temperature} °C`, oxygenPressure: `${oxygenPressure} atm` }))),
  columns: ['temperature', 'oxygenPressure', 'decades', 'voltage', 'side'],
};

export const notes = {
  lean: 'Oxygen is left over: the mixture is lean, a cylinder is missing, or air leaks in ahead of the sensor. Snap the throttle open and let it close: a good sensor rises at once.',
  rich: 'Hardly any oxygen is left: the mixture is rich. A steady high voltage with trims far to the minus side bears it out.',
  switching: 'About the voltage at which a narrow-band sensor switches. A warm engine in closed loop should cross it again and again, not stand here: a steady 450 mV is often only the bias of an idle circuit.',
  negative: 'A negative voltage means more oxygen in the exhaust than in the reference air: the reference side is starved or fouled, or the two wires are changed over.',
  cold: 'Below about 350 °C the ceramic hardly conducts: a meter reads less than the cell gives. Let the heater or the exhaust bring it up first.',
  perhapsVolts: 'A figure this small is nearly no voltage. If the meter showed it in volts, type the unit: 0.45 V is 450 mV.',
  oxygenOnly: 'The cell sees oxygen, not fuel. One cylinder that does not fire sends its air past the sensor, which then calls a lean mixture that is not there.',
} as const;
