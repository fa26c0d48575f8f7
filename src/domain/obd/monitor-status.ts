import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { hasBit, parseBytes, withoutHead } from './bytes.ts';
import type { BytesRefusal } from './bytes.ts';

/** Monitors that run all the time: supported in the low half of the second byte, not complete in the high half. */
const continuousMonitors = ['misfire', 'fuel system', 'components'] as const;

/** Monitors of a spark-ignition engine that run now and then: supported in the third byte, not complete in the fourth. */
const otherMonitors = [
  'catalyst',
  'heated catalyst',
  'evaporative system',
  'secondary air',
  'air-conditioning refrigerant or particulate filter',
  'oxygen sensor',
  'oxygen sensor heater',
  'exhaust gas recirculation or valve timing',
] as const;

export interface MonitorStatus {
  readonly lampCommanded: boolean;
  /** Confirmed emission codes, 0 to 127. */
  readonly codes: number;
  readonly ignition: 'spark' | 'compression';
  readonly supported: readonly string[];
  /** Supported monitors that have not finished since codes were cleared. */
  readonly notComplete: readonly string[];
  /** How many of `notComplete` run all the time. */
  readonly continuousNotComplete: number;
}

export type MonitorStatusRefusal = BytesRefusal | 'wrong-length';

interface Monitor {
  readonly name: string;
  readonly supported: boolean;
  readonly unfinished: boolean;
}

/** A "not complete" bit of a monitor that the car does not have means nothing, so both bits must be set. */
function monitorsOf(second: number, third: number, fourth: number): readonly Monitor[] {
  const spark = !hasBit(second, 3);
  return [
    ...continuousMonitors.map((name, bit) => ({ name, supported: hasBit(second, bit), unfinished: hasBit(second, bit + 4) })),
    // A compression-ignition engine gives the last two bytes other meanings.
    ...(spark ? otherMonitors.map((name, bit) => ({ name, supported: hasBit(third, bit), unfinished: hasBit(fourth, bit) })) : []),
  ].filter(({ supported }) => supported);
}

/**
 * The four data bytes of PID 01: lamp, number of codes and the state of the monitors since codes were cleared, with or without the
 * head of the answer (`41 01`). Source: SAE J1979 / ISO 15031-5. Refuses: `missing`, `not-hexadecimal`, `half-byte`, `wrong-length`.
 */
export function decodeMonitorStatus(text: string): Result<MonitorStatus, Refusal<MonitorStatusRefusal>> {
  const typed = parseBytes(text, 'bytes', '81 07 65 04');
  if (!typed.ok) return typed;
  const bytes = withoutHead(typed.value, [0x41, 0x01], 4);
  if (bytes.length !== 4) {
    const message = `${typed.value.length} bytes were given; the monitor status has 4. Give them as 81 07 65 04, without filling.`;
    return failure({ input: 'bytes', code: 'wrong-length', message });
  }
  const [first = 0, second = 0, third = 0, fourth = 0] = bytes;
  const monitors = monitorsOf(second, third, fourth);
  const unfinished = monitors.filter((monitor) => monitor.unfinished).map(({ name }) => name);
  return success({
    lampCommanded: hasBit(first, 7),
    codes: first & 0x7f,
    ignition: hasBit(second, 3) ? 'compression' : 'spark',
    supported: monitors.map(({ name }) => name),
    notComplete: unfinished,
    continuousNotComplete: unfinished.filter((name) => continuousMonitors.some((known) => known === name)).length,
  });
}

export type Allowance = 'not-subject' | 'allowed' | 'too-many';

/** First model year that the inspection rule covers, and the first that may have only one monitor not complete. */
export const firstYearOfRule = 1996;
export const firstYearOfOne = 2001;

/** How many monitors may be not complete at a US federal inspection; nothing before 1996. Source: 40 CFR 85.2222(c), recalled. */
export function monitorsAllowed(modelYear: number): number | undefined {
  if (modelYear < firstYearOfRule) return undefined;
  return modelYear < firstYearOfOne ? 2 : 1;
}

/** Whether so many monitors not complete pass that rule. */
export function readinessAllowance(modelYear: number, notComplete: number): Allowance {
  const allowed = monitorsAllowed(modelYear);
  if (allowed === undefined) return 'not-subject';
  return notComplete <= allowed ? 'allowed' : 'too-many';
}
