import type { SpecialTool } from '../diagnosis/types.ts';

/** Each tool by the name a mechanic would ask for it by. */
export const toolWords: Readonly<Record<SpecialTool, string>> = {
  'live-data-reader': 'Reader for codes and live data',
  oscilloscope: 'Oscilloscope',
  'low-current-clamp': 'Low-current clamp, for coils and injectors',
  'high-current-clamp': 'High-current clamp, for the starter',
  'high-tension-pick-up': 'High-tension pick-up for the oscilloscope',
  'spark-tester': 'Spark tester',
  'compression-gauge': 'Compression gauge',
  'leak-down-tester': 'Leak-down tester',
  'compressed-air': 'Compressed air',
  'vacuum-gauge': 'Vacuum gauge',
  'fuel-pressure-gauge': 'Fuel pressure gauge',
  'injector-pulse-tool': 'Injector pulse tool',
  'back-pressure-gauge': 'Exhaust back pressure gauge',
  'gas-analyser': 'Exhaust gas analyser',
  'smoke-machine': 'Smoke machine',
  borescope: 'Borescope',
  'cooling-system-tester': 'Cooling system pressure tester',
  'timing-lamp': 'Timing lamp',
  'battery-load-tester': 'Battery load tester',
  'insulation-meter': 'Insulation meter',
  lift: 'Lift or pit',
  'second-person': 'A second person to help',
};

export interface ToolGroup {
  readonly title: string;
  readonly tools: readonly SpecialTool[];
}

/** Every tool once, in the groups of a shop's wall. */
export const toolGroups: readonly ToolGroup[] = [
  { title: 'Electrics', tools: ['live-data-reader', 'oscilloscope', 'low-current-clamp', 'high-current-clamp', 'battery-load-tester', 'insulation-meter'] },
  { title: 'Ignition', tools: ['spark-tester', 'high-tension-pick-up', 'timing-lamp'] },
  { title: 'Cylinder and air', tools: ['compression-gauge', 'leak-down-tester', 'compressed-air', 'vacuum-gauge', 'smoke-machine', 'borescope', 'cooling-system-tester'] },
  { title: 'Fuel and exhaust', tools: ['fuel-pressure-gauge', 'injector-pulse-tool', 'back-pressure-gauge', 'gas-analyser'] },
  { title: 'The bay', tools: ['lift', 'second-person'] },
];
