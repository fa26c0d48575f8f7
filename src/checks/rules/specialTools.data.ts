import type { SpecialTool } from '../../domain/diagnosis/types.ts';

/** By which words the name of a tool is known to be a special one. */
export const specialToolWords: Readonly<Record<SpecialTool, RegExp>> = {
  'live-data-reader': /\blive (?:data|misfire count)|\blogs\b|\bmisfire counts\b|\brecords\b|\brail pressure\b/i,
  oscilloscope: /\boscilloscope\b/i,
  'low-current-clamp': /\blow-current clamp\b/i,
  'high-current-clamp': /\bclamp for several hundred amperes\b/i,
  'high-tension-pick-up': /\bhigh-tension pick-up/i,
  'spark-tester': /\bspark tester\b/i,
  'compression-gauge': /\bcompression gauge\b/i,
  'leak-down-tester': /\bleak-down tester\b/i,
  'compressed-air': /\bcompressed air\b/i,
  'vacuum-gauge': /\bvacuum gauge\b/i,
  'fuel-pressure-gauge': /\bfuel pressure gauge\b/i,
  'injector-pulse-tool': /\binjector pulse tool\b/i,
  'back-pressure-gauge': /\blow-pressure gauge\b/i,
  'gas-analyser': /\bgas analyser\b|\bexhaust-gas tester\b/i,
  'smoke-machine': /\bsmoke machine\b/i,
  borescope: /\bborescope\b/i,
  'cooling-system-tester': /\bcooling-system hand pump\b/i,
  'timing-lamp': /\bstrobe lamp\b/i,
  'battery-load-tester': /\bload tester\b/i,
  'insulation-meter': /\binsulation meter\b/i,
  lift: /\bvehicle lift\b/i,
  'second-person': /\bsecond person\b|\bhelper\b/i,
};
