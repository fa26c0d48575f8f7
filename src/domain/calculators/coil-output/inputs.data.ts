import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  quantity('clampVoltage', 'Primary clamp voltage', 'voltage', 'V', {
    ...aboveZero(5000),
    hint: 'Where the driver cuts the primary peak off, 300 to 450 V as a rule.',
  }),
  quantity('turnsRatio', 'Turns ratio', 'ratio', '1', { ...aboveZero(1000), hint: 'Secondary turns for one of the primary, 50 to 150 as a rule.' }),
  quantity('demand', 'Firing voltage asked for', 'voltage', 'kV', { optional: true, ...aboveZero(200), hint: 'From a scope, or from the plug gap calculator.' }),
  quantity('energy', 'Energy stored in the coil', 'energy', 'mJ', { optional: true, ...aboveZero(100_000), hint: 'From the coil charging calculator.' }),
  quantity('capacitance', 'Capacitance of coil, lead and plug', 'capacitance', 'pF', { optional: true, ...aboveZero(1_000_000), hint: '50 to 100 pF as a rule.' }),
  quantity('efficiency', 'Share of the energy that reaches the secondary', 'ratio', '1', {
    optional: true,
    default: '1',
    ...aboveZero(1),
    hint: '1 takes no loss; real coils reach about half.',
    advanced: true,
  }),
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'available', label: 'Voltage the turns can give', kind: 'quantity', unit: 'kV', decimals: 1, main: true },
  { name: 'reserve', label: 'Reserve over the demand', kind: 'quantity', unit: 'kV', decimals: 1 },
  { name: 'reservePercent', label: 'Reserve, share of what is available', kind: 'quantity', unit: '%', decimals: 0 },
  { name: 'capacitanceLimit', label: 'Voltage the energy can lift the capacitance to', kind: 'quantity', unit: 'kV', decimals: 1 },
];
