/** The sheet says what the record holds, no more: a repair that was not run long enough is called not proven in so many words. */
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import { reportOf } from '../../src/domain/jobs/report.ts';
import { inventedSource } from '../../src/domain/jobs/types.ts';
import type { Job, JobEventBody } from '../../src/domain/jobs/types.ts';
import { describeEvent } from '../../src/domain/jobs/describe.ts';
import { durationWords } from '../../src/domain/jobs/minutes.ts';
import {
  access,
  calculation,
  cameBack,
  cameBackOther,
  cleared,
  codes,
  complaint,
  count,
  engine,
  finding,
  frame,
  goodReading,
  handedOver,
  jobBook,
  jobOf,
  jpegStart,
  monitorsNotYet,
  moved,
  noneBack,
  opinion,
  picture,
  quietRun,
  reading,
  renamed,
  repair,
  returned,
  trimsGood,
} from './jobBook.ts';

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

describe('what version 3 adds to the sheet', () => {
  it('the lamp stands with the signs', () => {
    const flashing = { ...complaint, lamp: 'flashed-long' } as JobEventBody;
    expect(report(engine, flashing).customer.signs).toEqual(['when hot', 'engine lamp flashed for minutes on end']);
  });

  it('what was renewed in the same visit', () => {
    const renewed = { ...matched, renewedWith: ['Boot', 'Plug'] } as JobEventBody;
    expect(report(...whole.map((event) => (event === matched ? renewed : event))).customer.whatWasDone).toEqual([
      'Coil of cylinder 3 renewed',
      'Renewed in the same visit (Coil-on-plug unit): Boot, Plug',
    ]);
  });

  it('a repair that did not hold is told with what came of it', () => {
    expect(report(...whole, handedOver, cameBack).customer.whatWasDone).toEqual(['Coil of cylinder 3 renewed. The misfire came back.']);
    expect(report(...whole, handedOver, cameBackOther, repair).customer.whatWasDone).toEqual([
      'Coil of cylinder 3 renewed. Another misfire showed itself afterwards.',
      'Coil of cylinder 3 renewed',
    ]);
    expect(report(...whole, returned, handedOver, cameBackOther).customer.whatWasDone).toEqual(['Coil of cylinder 3 renewed. Another misfire showed itself afterwards.']);
    expect(report(...whole, returned).customer.proof).toContain('The misfire came back after the last repair.');
    expect(report(...whole, handedOver, cameBackOther).customer.proof).toContain('Another misfire showed itself after the last repair.');
  });

  it('the time spent, and nothing where none is recorded', () => {
    // The book's minutes for the swap, 20 for the repair, 2 for the run.
    const swap = jobBook.diagnosis.tests.find((test) => test.id === 'swap-coils')?.minutes ?? Number.NaN;
    expect(report(...whole).customer.timeSpent).toBe(durationWords(swap + 22));
    expect(report(engine, complaint).customer.timeSpent).toBe('');
  });

  it.each([
    { minutes: 0, words: '0 min' },
    { minutes: 59.4, words: '59 min' },
    { minutes: 59.5, words: '1 h' },
    { minutes: 65, words: '1 h 05 min' },
    { minutes: 150, words: '2 h 30 min' },
  ])('$minutes minutes are $words', ({ minutes, words }) => {
    expect(durationWords(minutes)).toBe(words);
  });

  it('looks that were good are proof; looks not complete are named with what to watch', () => {
    const { customer } = report(...whole, trimsGood, monitorsNotYet);
    expect(customer.proven).toBe(true);
    expect(customer.proof).toContain('Fuel trims: back in their band.');
    expect(customer.notChecked).toContain('Monitors: not complete yet. evaporative system');
    expect(customer.watch.join(' ')).toContain('has not finished checking itself');
    expect(report(...whole).customer.watch.join(' ')).not.toContain('has not finished checking itself');
  });

  it('a look that was bad leaves the repair unproven', () => {
    const { customer } = report(...whole, { ...trimsGood, state: 'bad', note: '+14 % at idle' } as JobEventBody);
    expect(customer.proven).toBe(false);
    expect(customer.notChecked).toEqual(expect.arrayContaining(['The fuel trims are not back in their band.', 'Fuel trims: not back in their band. +14 % at idle']));
  });

  it('a hand-over without any repair gives its reason', () => {
    expect(report(engine, complaint, { kind: 'handed-over', to: '', unproven: 'Owner sells the car' }).customer.proof).toEqual([
      'Nothing was repaired, so nothing is proven.',
      'Handed over without proof: Owner sells the car',
    ]);
  });

  it('what was laid aside is said in both halves', () => {
    const { customer, shop } = report(...whole, handedOver, cameBackOther);
    // The swap and the codes.
    expect(customer.laidAside).toBe('2 pieces of what was found before a repair were laid aside, because another misfire showed itself after it.');
    expect(shop.laidAside).toBe(customer.laidAside);
    expect(report(...whole).customer.laidAside).toBe('');
  });

  it('opinions are called so in the shop’s half, and stay out of the customer’s', () => {
    const { shop, customer } = report(...whole, opinion);
    expect(shop.opinions).toEqual(['Opinion: Injector clogged, cylinder 2. Likelier than the book holds; no finding rests on it. Because: two of these last month']);
    expect(JSON.stringify(customer)).not.toContain('last month');
    expect(report(...whole, opinion, { kind: 'undone', undoes: `e${whole.length + 1}` }).shop.opinions).toEqual([]);
  });

  it('pictures stand in the shop’s half', () => {
    expect(report(picture).shop.pictures).toEqual([{ caption: 'Burnt boot', jpeg: jpegStart, width: 800, height: 600 }]);
  });

  it('a renamed job is called by its new name', () => {
    expect(report(...whole, renamed).title).toBe('Blue hatchback');
    expect(report(...whole).title).toBe('Rough when hot');
  });
});

describe('entries in words', () => {
  const words = (body: JobEventBody) => {
    const event = jobOf(body).events[0];
    return event && describeEvent(event);
  };
  const cases: readonly { readonly body: JobEventBody; readonly title: string; readonly lines: readonly (string | RegExp)[] }[] = [
    { body: { ...complaint, lamp: 'on' } as JobEventBody, title: 'Complaint', lines: ['Shakes when hot', 'When hot', 'Engine lamp on'] },
    { body: { ...moved, minutes: 25 } as JobEventBody, title: 'Swap the coils, coil of cylinder 3 with coil of cylinder 1', lines: ['The misfire moved', 'Took 25 min'] },
    {
      body: { ...matched, answers: [{ question: 'Torque of the screw?', answer: '10 N·m', from: 'maker, page 4' }], renewedWith: ['Boot'] } as JobEventBody,
      title: 'Part compared: Coil-on-plug unit',
      lines: ['Pins: matches', 'Torque of the screw? 10 N·m (from: maker, page 4)', 'Renewed in the same visit: Boot'],
    },
    {
      body: { ...returned, speed: 2200, load: 45, misfire: 'different' } as JobEventBody,
      title: 'Proof run: the misfire came back',
      lines: [
        '900 revolutions, 1 minute, 12 misfires counted',
        /^Held at 2200\s*rpm, 45 % load$/u,
        'Run under the conditions of the fault: yes',
        'Another misfire than before: a second fault stands behind the first',
      ],
    },
    { body: opinion, title: 'Opinion: Injector clogged, cylinder 2', lines: ['Likelier than the book holds; no finding rests on it', 'Because: two of these last month'] },
    { body: access, title: 'How far the car is open', lines: ['Engine cover off, plugs out'] },
    { body: { kind: 'access', open: [] }, title: 'How far the car is open', lines: ['Closed up'] },
    { body: frame, title: 'Stored frame of P0303', lines: [/^2200\s*rpm, 50 % load, coolant at 88\s*°C, engine warm$/u] },
    { body: { kind: 'frame-read', code: '', speed: 800, warm: 'unknown' }, title: 'Stored frame', lines: [/^800\s*rpm, warmth not known$/u] },
    { body: picture, title: 'Picture: Burnt boot', lines: [] },
    { body: monitorsNotYet, title: 'Monitors: not complete yet', lines: ['evaporative system'] },
    { body: trimsGood, title: 'Fuel trims: back in their band', lines: [] },
    { body: cameBack, title: 'The car came back', lines: ['Shakes again after a week', 'The same misfire as before'] },
    { body: renamed, title: 'Job renamed: Blue hatchback', lines: [] },
  ];
  it.each(cases)('$title', ({ body, title, lines }) => {
    const said = words(body);
    expect(said?.title).toBe(title);
    expect(said?.lines).toEqual(lines.map((line) => (typeof line === 'string' ? line : expect.stringMatching(line))));
  });
});
