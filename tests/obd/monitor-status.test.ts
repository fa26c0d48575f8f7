import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeMonitorStatus, monitorsAllowed, readinessAllowance } from '../../src/domain/obd/monitor-status.ts';

/** 40 CFR 85.2222(c), recalled: two for 1996 to 2000, one from 2001 on, nothing before. */
describe('monitors allowed', () => {
  it.each([
    [1995, undefined],
    [1996, 2],
    [2000, 2],
    [2001, 1],
    [2015, 1],
  ])('%i', (year, allowed) => expect(monitorsAllowed(year)).toBe(allowed));

  it('one more is one too many', () => {
    expect(readinessAllowance(2000, 2)).toBe('allowed');
    expect(readinessAllowance(2000, 3)).toBe('too-many');
    expect(readinessAllowance(1995, 5)).toBe('not-subject');
  });
});

describe('decodeMonitorStatus', () => {
  it('never counts a monitor as not complete that the car does not have', () => {
    const byte = fc.integer({ min: 0, max: 255 }).map((value) => value.toString(16).padStart(2, '0'));
    fc.assert(
      fc.property(fc.tuple(byte, byte, byte, byte), (bytes) => {
        const status = decodeMonitorStatus(bytes.join(' '));
        if (!status.ok) throw new Error(status.error.message);
        for (const name of status.value.notComplete) expect(status.value.supported).toContain(name);
        expect(status.value.codes).toBe(Number.parseInt(bytes[0], 16) % 128);
      }),
    );
  });
});
