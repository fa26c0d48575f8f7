/** The sheet says what the record holds, no more: a repair that was not run long enough is called not proven in so many words. */
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import { reportOf } from '../../src/domain/jobs/report.ts';
import { inventedSource } from '../../src/domain/jobs/types.ts';
import type { Job, JobEventBody } from '../../src/domain/jobs/types.ts';
import { calculation, cleared, codes, complaint, count, engine, finding, goodReading, jobBook, jobOf, moved, noneBack, quietRun, reading, repair } from './jobBook.ts';

const reportFor = (job: Job) => reportOf(job, deriveJob(job.events, jobBook), jobBook);
const report = (...bodies: readonly JobEventBody[]) => reportFor(jobOf(...bodies));
const matched: JobEventBody = { kind: 'part-matched', part: 'coil', title: 'Coil-on-plug unit', ticks: [{ feature: 'Pins', matches: true }] };
const whole = [engine, complaint, codes, count, reading, moved, finding, matched, repair, goodReading, cleared, quietRun, noneBack];

describe('the customer’s half', () => {
  const { customer } = report(...whole);
  it('tells complaint, finding and what was done', () => {
    expect(customer).toMatchObject({
      complaint: 'Shakes when hot',
      signs: ['when hot'],
      whatWasWrong: 'Coil winding open or shorted, coil of cylinder 3',
      whatWasDone: ['Coil of cylinder 3 renewed'],
    });
  });

  it('sets the readings before and after side by side with limit and source', () => {
    expect(customer.howWeKnow.readings).toEqual([
      {
        title: 'Coil primary resistance, coil on plug, coil of cylinder 3',
        limits: expect.stringMatching(/^0\.4 to 1\.0\s.?Ω at 20\s.?°C$/u),
        source: 'Common practice',
        before: { reading: expect.stringContaining('2.4'), verdict: 'Above the range' },
        after: { reading: expect.stringContaining('0.7'), verdict: 'Inside the range' },
      },
    ]);
  });

  it('says what was proven and how long it was run', () => {
    expect(customer.proven).toBe(true);
    expect(customer.proof.join(' ')).toContain('4000 revolutions (2 minutes)');
    expect(customer.notChecked.join(' ')).not.toContain('quiet revolutions are needed');
  });

  it('does not call unruled what the fitted part puts right as well', () => {
    expect(customer.notChecked.join(' ')).not.toContain('Coil insulation breaking down, coil of cylinder 3');
  });

  it('never claims certainty', () => {
    expect(customer.proof.join(' ')).toContain('over 99 %');
  });

  it('carries the cautions of the fitted part', () => {
    expect(customer.cautions.map((caution) => caution.id)).toEqual(['high-tension']);
  });
});

describe('an unproven repair', () => {
  it('is called so, with the reason and what to watch', () => {
    const { customer } = report(...whole.slice(0, 10), { kind: 'handed-over', to: 'owner', unproven: 'No time for a run' });
    expect(customer.proven).toBe(false);
    expect(customer.proof.join(' ')).toContain('The repair is not proven. Handed over without proof: No time for a run');
    expect(customer.notChecked.join(' ')).toContain('have not been cleared');
    expect(customer.watch.join(' ')).toContain('may come back');
  });

  it('stays unproven on paper when it was handed over so, whatever the run said', () => {
    expect(report(...whole, { kind: 'handed-over', to: '', unproven: 'Lamp still to be watched' }).customer.proven).toBe(false);
  });
});

describe('nothing found', () => {
  it('is said plainly', () => {
    const { customer } = report(engine, complaint, codes);
    expect(customer.whatWasWrong).toBe('No fault was found for certain.');
    expect(customer.proof).toEqual(['Nothing was repaired, so nothing is proven.']);
  });
});

describe('the shop’s half', () => {
  it('keeps every event, the undone ones marked', () => {
    const { shop } = report(...whole, { kind: 'undone', undoes: 'e4' });
    expect(shop.rows).toHaveLength(whole.length);
    expect(shop.rows.filter((row) => row.undone).map((row) => row.id)).toEqual(['e4']);
  });

  it('gives every reading with limit, source, meter and verdict', () => {
    expect(report(...whole).shop.readings[0]).toMatchObject({
      source: 'Common practice',
      verdict: 'Above the range',
      meter: expect.stringMatching(/^Typed “2\.4”; meter ±0\.8 % ±3 digits; taken at 20\s.?°C$/u),
    });
  });

  it('gives a calculation with what went in, and keeps it out of the customer’s half and of the belief', () => {
    const { shop, customer } = report(...whole, calculation);
    expect(shop.rows.at(-1)).toMatchObject({
      title: 'Calculation: Plug gap and voltage',
      lines: ['Voltage to jump the gap, at most: 4.7 kV', 'From Plug gap: 1.1 mm; Intake temperature: 20 °C (usual)'],
      undone: false,
    });
    expect(customer).toEqual(report(...whole).customer);
  });

  it('names the meter and the size of its count where they were kept', () => {
    const withMeter = { ...(reading as Extract<JobEventBody, { kind: 'reading-taken' }>), meter: { name: 'Bench meter', percent: 0.5, counts: 2, resolution: 0.01 } };
    expect(report(engine, complaint, withMeter).shop.readings[0]?.meter).toMatch(/meter Bench meter, ±0\.5 % ±2 digits of 0\.01\sΩ;/u);
  });

  it('an invented job is marked as such', () => {
    expect(report(...whole).invented).toBe(false);
    expect(reportFor({ ...jobOf(...whole), source: inventedSource }).invented).toBe(true);
  });
});
