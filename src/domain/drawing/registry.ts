import { connectorFace } from './connector.ts';
import { leakEscapes } from './leaks.ts';
import { plugAppearance } from './plugs.ts';
import type { Illustration } from './sketch.ts';
import { swapDiagram } from './swap.ts';
import { coilCurrent, primaryVoltage, secondaryVoltage } from './traces.ts';
import { crankSignal, relativeCompression } from './turning.ts';

/** Ids by which procedures and faults name a picture. */
export const illustrationIds = [
  'connector-2-pins',
  'connector-3-pins',
  'connector-4-pins',
  'plug-appearance',
  'plug-gap-worn',
  'plug-fouled',
  'plug-wet',
  'plug-overheated',
  'plug-cracked',
  'plug-flash-over',
  'swap-coils',
  'swap-plugs',
  'swap-leads',
  'swap-injectors',
  'secondary-voltage',
  'primary-voltage',
  'coil-current',
  'crank-signal',
  'relative-compression',
  'leak-escapes',
] as const;

export type IllustrationId = (typeof illustrationIds)[number];

/** Every picture that a page can show beside its text, made when it is asked for. */
export const illustrations: Readonly<Record<IllustrationId, () => Illustration>> = {
  'connector-2-pins': () => connectorFace(2),
  'connector-3-pins': () => connectorFace(3),
  'connector-4-pins': () => connectorFace(4),
  'plug-appearance': () =>
    plugAppearance('How plugs look, and what each look says', ['normal', 'worn', 'sooty', 'oily', 'petrolWet', 'overheated', 'cracked', 'tracked']),
  'plug-gap-worn': () => plugAppearance('A normal plug and a worn one', ['normal', 'worn']),
  'plug-fouled': () => plugAppearance('A normal plug and three that are fouled', ['normal', 'sooty', 'oily', 'petrolWet']),
  'plug-wet': () => plugAppearance('A normal plug and one wet with petrol', ['normal', 'petrolWet']),
  'plug-overheated': () => plugAppearance('A normal plug, one too cold and one too hot', ['normal', 'sooty', 'overheated']),
  'plug-cracked': () => plugAppearance('A sound ceramic and a cracked one', ['sound', 'cracked']),
  'plug-flash-over': () => plugAppearance('A sound ceramic and one with a flash-over track', ['sound', 'tracked']),
  'swap-coils': () => swapDiagram('coil'),
  'swap-plugs': () => swapDiagram('plug'),
  'swap-leads': () => swapDiagram('lead'),
  'swap-injectors': () => swapDiagram('injector'),
  'secondary-voltage': secondaryVoltage,
  'primary-voltage': primaryVoltage,
  'coil-current': coilCurrent,
  'crank-signal': crankSignal,
  'relative-compression': relativeCompression,
  'leak-escapes': leakEscapes,
};
