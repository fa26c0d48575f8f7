import type { Refusal, Result } from '../../result.ts';
import type { CaptureInput } from './channels.ts';
import { reportCoil } from './coil.ts';
import { reportCrank } from './crank.ts';
import { reportInjector } from './injector.ts';
import { reportLogged } from './logged.ts';
import { reportSpark } from './spark.ts';
import { reportStarter } from './starter.ts';
import type { CaptureKind, CaptureReport } from './types.ts';

const analyses: Readonly<Record<CaptureKind, (input: CaptureInput) => Result<CaptureReport, Refusal>>> = {
  logged: reportLogged,
  'coil-current': reportCoil,
  'ignition-voltage': reportSpark,
  'starter-current': reportStarter,
  'crank-sensor': reportCrank,
  injector: reportInjector,
};

/** What a table says when it is read as this kind of capture. Refuses with the words of the analysis. */
export function reportCapture(kind: CaptureKind, input: CaptureInput): Result<CaptureReport, Refusal> {
  return analyses[kind](input);
}
