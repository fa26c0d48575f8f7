/** Every kind of entry as it comes from outside: what is taken, and a table of what hostile or careless hands may put in. JPEG begins FF D8 FF (ISO/IEC 10918-1). */
import { describe, expect, it } from 'vitest';
import { checkEvent } from '../../src/domain/jobs/eventShapes.ts';
import type { JobEventBody } from '../../src/domain/jobs/types.ts';
import { access, cameBack, complaint, frame, jpegStart, monitorsNotYet, moved, opinion, picture, quietRun, renamed, returned, startTime } from './jobBook.ts';

const head = { id: 'e1', sequence: 1, at: startTime };
const matched: JobEventBody = { kind: 'part-matched', part: 'coil', title: 'Coil', ticks: [] };
const check = (body: object) => checkEvent({ ...head, ...body }, 'entry');

describe('taken as it stands', () => {
  it.each([
    { label: 'an opinion', body: opinion },
    { label: 'an opinion wherever it may be', body: { kind: 'opinion', fault: 'injector-clogged', label: '', weight: 'much-less-likely', reason: '' } },
    { label: 'access', body: access },
    { label: 'closed up', body: { kind: 'access', open: [] } },
    { label: 'a frame', body: frame },
    { label: 'a frame with speed alone', body: { kind: 'frame-read', code: '', speed: 0, warm: 'unknown' } },
    { label: 'a picture', body: picture },
    { label: 'the largest picture', body: { ...picture, width: 4000, height: 4000, jpeg: jpegStart.slice(0, 4).padEnd(200_000, 'A') } },
    { label: 'a proof check', body: monitorsNotYet },
    { label: 'came back', body: cameBack },
    { label: 'renamed', body: renamed },
    { label: 'a complaint with the lamp', body: { ...complaint, lamp: 'flashed-long' } },
    { label: 'a test with its minutes', body: { ...moved, minutes: 12.5 } },
    { label: 'a run with speed, load and misfire', body: { ...returned, speed: 2200, load: 45, misfire: 'different' } },
    { label: 'a part with answers and what was renewed', body: { ...matched, answers: [{ question: 'Torque?', answer: '10 N·m', from: 'maker, page 4' }], renewedWith: ['Boot'] } },
  ])('$label', ({ body }) => {
    expect(check(body)).toEqual({ ok: true, value: { ...head, ...body } });
  });
});

describe('refused, saying where', () => {
  const cases: readonly { readonly label: string; readonly body: object; readonly at: string }[] = [
    ...[
      ['markup', '<img src=x onerror=alert(1)>'],
      ['another kind of picture', 'iVBORw0KGgo='],
      ['a scalable picture', 'PHN2ZyBvbmxvYWQ9YWxlcnQoMSk+'],
      ['an address', 'data:image/jpeg;base64,/9j/4AAQ'],
      ['markup behind a good start', '/9j/"><script>'],
      ['a line end', '/9j/4AAQ\n'],
      ['padding in the middle', '/9j/4A==AAQ'],
      ['the web-safe alphabet', '/9j/4A-_'],
      ['nothing', ''],
      ['one character too many', '/9j/'.padEnd(200_001, 'A')],
    ].map(([what = '', jpeg]) => ({ label: `a picture of ${what}`, body: { ...picture, jpeg }, at: 'entry.jpeg' })),
    { label: 'a picture that is a number', body: { ...picture, jpeg: 9 }, at: 'entry.jpeg' },
    { label: 'a picture of no width', body: { ...picture, width: 0 }, at: 'entry.width' },
    { label: 'a picture too wide', body: { ...picture, width: 4001 }, at: 'entry.width' },
    { label: 'half a pixel', body: { ...picture, height: 1.5 }, at: 'entry.height' },
    { label: 'a picture with a link', body: { ...picture, href: 'https://elsewhere.example/' }, at: 'entry.href' },
    { label: 'a caption too long', body: { ...picture, caption: 'x'.repeat(401) }, at: 'entry.caption' },
    { label: 'an opinion of another weight', body: { ...opinion, weight: 'certain' }, at: 'entry.weight' },
    { label: 'an opinion with a figure for a weight', body: { ...opinion, weight: 1000 }, at: 'entry.weight' },
    { label: 'an opinion on a fault named by markup', body: { ...opinion, fault: '<b>' }, at: 'entry.fault' },
    { label: 'an opinion on the language itself', body: { ...opinion, fault: '__proto__' }, at: 'entry.fault' },
    { label: 'an opinion at a place without words', body: { ...opinion, place: { id: 'cylinder-2' } }, at: 'entry.place.label' },
    { label: 'an access state that is none', body: { ...access, open: ['gearbox-out'] }, at: 'entry.open[0]' },
    { label: 'more access states than there are', body: { ...access, open: ['raised', 'raised', 'raised', 'raised'] }, at: 'entry.open' },
    { label: 'access that is no list', body: { ...access, open: 'raised' }, at: 'entry.open' },
    { label: 'a frame running backwards', body: { ...frame, speed: -1 }, at: 'entry.speed' },
    { label: 'a frame with a load above 100 %', body: { ...frame, load: 101 }, at: 'entry.load' },
    { label: 'a frame colder than any engine', body: { ...frame, coolant: -101 }, at: 'entry.coolant' },
    { label: 'a frame with no warmth', body: { kind: 'frame-read', code: '', speed: 800 }, at: 'entry.warm' },
    { label: 'a frame with warmth as yes or no of the language', body: { ...frame, warm: true }, at: 'entry.warm' },
    { label: 'a frame with a speed in words', body: { ...frame, speed: '2200' }, at: 'entry.speed' },
    { label: 'a check of something else', body: { ...monitorsNotYet, check: 'tyres' }, at: 'entry.check' },
    { label: 'a check in no known state', body: { ...monitorsNotYet, state: 'fine' }, at: 'entry.state' },
    { label: 'came back with a third kind of misfire', body: { ...cameBack, misfire: 'unknown' }, at: 'entry.misfire' },
    { label: 'came back without saying which', body: { kind: 'came-back', text: '' }, at: 'entry.misfire' },
    { label: 'renamed to nothing', body: { ...renamed, title: ' ' }, at: 'entry.title' },
    { label: 'renamed to a book', body: { ...renamed, title: 'x'.repeat(301) }, at: 'entry.title' },
    { label: 'a lamp that sang', body: { ...complaint, lamp: 'sang' }, at: 'entry.lamp' },
    { label: 'a test that gave time back', body: { ...moved, minutes: -1 }, at: 'entry.minutes' },
    { label: 'a run at no speed', body: { ...quietRun, speed: 'fast' }, at: 'entry.speed' },
    { label: 'a run at an impossible load', body: { ...quietRun, load: -1 }, at: 'entry.load' },
    { label: 'a run with another misfire', body: { ...returned, misfire: 'other' }, at: 'entry.misfire' },
    { label: 'an answer without its source', body: { ...matched, answers: [{ question: 'Torque?', answer: '10 N·m' }] }, at: 'entry.answers[0].from' },
    { label: 'renewed with things that are no words', body: { ...matched, renewedWith: [{}] }, at: 'entry.renewedWith[0]' },
    { label: 'more renewed than a car has', body: { ...matched, renewedWith: Array.from({ length: 61 }, () => 'x') }, at: 'entry.renewedWith' },
  ];
  it.each(cases)('$label', ({ body, at }) => {
    expect(check(body)).toMatchObject({ ok: false, at });
  });
});
