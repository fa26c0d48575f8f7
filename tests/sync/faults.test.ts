/** One fault at a time: what is here stays whole, the server ends up whole, and what was wrong is named. */
import { describe, expect, it } from 'vitest';
import { exportJob, importJob } from '../../src/domain/jobs/file.ts';
import { inventedSource } from '../../src/domain/jobs/types.ts';
import { tryFolder } from '../../src/elements/sync/tryFolder.ts';
import { Device, jobOf } from './device.ts';
import { FakeServer, type Mishap, type ServerKind } from './fakeServer.ts';

const kinds: readonly ServerKind[] = ['checks', 'coarse-unchecked', 'weak', 'no-tags'];

const serverNotes = (server: FakeServer, id: string): readonly string[] => {
  const job = importJob(server.text(`${id}.json`) ?? '');
  return job.ok ? job.value.events.map((event) => event.id).sort() : [];
};

async function calm(server: FakeServer, ...devices: readonly Device[]): Promise<void> {
  server.mishaps = [];
  for (let rounds = 0; rounds < 5; rounds += 1) {
    for (const device of devices) {
      server.tick += 3;
      await device.round();
    }
  }
}

describe.each(kinds)('two bays and a server of the kind %s', (kind) => {
  it('both see what the other wrote', async () => {
    const server = new FakeServer(kind);
    const [one, two] = [new Device(server), new Device(server)];
    one.note('job', 'first');
    await calm(server, one, two);
    one.note('job', 'from-one');
    two.note('job', 'from-two');
    await Promise.all([one.round(), two.round()]);
    await calm(server, one, two);
    const all = ['first', 'from-one', 'from-two'];
    expect([one.notes('job'), two.notes('job'), serverNotes(server, 'job')]).toEqual([all, all, all]);
  });

  it('comes to rest: with nothing new a round is one request', async () => {
    const server = new FakeServer(kind);
    const [one, two] = [new Device(server), new Device(server)];
    one.note('job', 'first');
    await calm(server, one, two);
    server.requests.length = 0;
    await one.round();
    await two.round();
    expect(server.requests).toEqual(kind === 'no-tags' ? ['PROPFIND', 'GET job.json', 'PROPFIND', 'GET job.json'] : ['PROPFIND', 'PROPFIND']);
  });

  const mishaps: readonly Mishap[] = [
    'refused-connection', 'cut-mid-put', 'answer-lost', 'changed-before', 'full', 'busy', 'late', 'late-but-kept', 'cut-answer', 'login-page', 'redirect',
    'wrong-checksum', 'keeps-something-else', 'half-listing',
  ];
  it.each(mishaps.flatMap((mishap) => [0, 1, 2, 3].map((place) => ({ mishap, place }))))('$mishap at request $place', async ({ mishap, place }) => {
    const server = new FakeServer(kind);
    const [one, two] = [new Device(server), new Device(server)];
    one.note('job', 'first');
    await calm(server, one, two);
    one.note('job', 'from-one');
    two.note('job', 'from-two');
    await two.round();
    const before = one.notes('job');
    server.mishaps = [...Array.from({ length: place }, () => undefined), mishap];
    await one.round(15);
    for (const note of before) expect(one.notes('job')).toContain(note);
    await calm(server, one, two);
    const all = ['first', 'from-one', 'from-two'];
    expect([one.notes('job'), two.notes('job'), serverNotes(server, 'job')]).toEqual([all, all, all]);
  });
});

it('every file is sent under a condition: it must be new, or be the copy that was compared', async () => {
  const server = new FakeServer('checks');
  const [one, two] = [new Device(server), new Device(server)];
  one.note('job', 'first');
  await one.round();
  two.note('job', 'second');
  await two.round();
  one.note('job', 'third');
  await one.round();
  one.note('job', 'fourth');
  await one.round();
  expect(server.conditions).toEqual(['*', '"1"', '"2"', '"3"']);
});

it('a copy overwritten within the same second by one of the same length and tag is noticed at the second look', async () => {
  const server = new FakeServer('coarse-unchecked');
  const [one, two] = [new Device(server), new Device(server)];
  one.note('job', 'first');
  await calm(server, one, two);
  two.note('job', 'noteB');
  const copyOfTwo = two.jobs.get('job');
  one.note('job', 'noteA');
  await one.round();
  // What the second bay had compared before, and now writes without the server checking.
  const overwriting = exportJob({ ...jobOf('job'), ...copyOfTwo, revision: one.jobs.get('job')?.revision ?? 0 });
  expect(overwriting.length).toBe(server.text('job.json')?.length);
  server.keep('job.json', overwriting);
  await calm(server, one, two);
  const all = ['first', 'noteA', 'noteB'];
  expect([one.notes('job'), two.notes('job'), serverNotes(server, 'job')]).toEqual([all, all, all]);
});

describe('a damaged or strange file', () => {
  const whole = exportJob(jobOf('job', 'first', 'second'));
  it.each([
    ['cut short', whole.slice(0, 200), /cut short/],
    ['a wrong checksum', whole.replace('crc32:', 'crc32:0'), /checksum/],
    ['a sign-in page', '<!doctype html><title>Sign in</title>', /sign-in page/],
    ['another job', exportJob(jobOf('other', 'x')), /another job/],
    ['a newer book', whole.replace('"version": 3', '"version": 99'), /newer book/],
    ['the same entry told otherwise', exportJob({ ...jobOf('job', 'first'), events: [{ kind: 'note', text: 'Changed', id: 'first', sequence: 1, at: '2026-03-04T09:30:00.000Z' }] }), /disagree/],
  ])('%s replaces nothing here, stays there, and is named', async (_label, text, words) => {
    const server = new FakeServer();
    const device = new Device(server);
    device.note('job', 'first');
    const here = device.jobs.get('job');
    server.keep('job.json', text);
    const report = await device.round();
    expect(report.problems).toEqual([{ file: 'job.json', message: expect.stringMatching(words) as string }]);
    expect(device.jobs.get('job')).toBe(here);
    expect(server.text('job.json')).toBe(text);
  });

  it('is laid beside and mended from a whole copy when it came damaged twice', async () => {
    const server = new FakeServer();
    const device = new Device(server);
    device.note('job', 'first');
    const cut = whole.slice(0, 200);
    server.keep('job.json', cut);
    await device.round();
    await device.round();
    expect(server.text('job.damaged.json')).toBe(cut);
    expect(serverNotes(server, 'job')).toEqual(['first']);
  });

  it('of a newer book, and a page in place of a job, are never written over', async () => {
    for (const text of [whole.replace('"version": 3', '"version": 99'), '<html></html>']) {
      const server = new FakeServer();
      const device = new Device(server);
      device.note('job', 'first');
      server.keep('job.json', text);
      for (let rounds = 0; rounds < 4; rounds += 1) await device.round();
      expect(server.text('job.json')).toBe(text);
    }
  });

  it('does not keep the others from being sent', async () => {
    const server = new FakeServer();
    const device = new Device(server);
    for (let index = 0; index < 12; index += 1) device.note(`job-${index}`, `note-${index}`);
    server.keep('job-0.json', '<html></html>');
    const report = await device.round();
    expect(report.problems).toHaveLength(1);
    expect(report.sent).toBe(11);
  });
});

describe('removal', () => {
  it('on the server: the job stays here, is named, and is sent again only when asked', async () => {
    const server = new FakeServer();
    const device = new Device(server);
    device.note('job', 'first');
    await device.round();
    server.files.clear();
    device.note('job', 'second');
    const report = await device.round();
    expect([report.gone, report.sent, server.files.size]).toEqual([['job'], 0, 0]);
    expect(device.notes('job')).toEqual(['first', 'second']);
    device.agreed.forget('job');
    await device.round();
    expect(serverNotes(server, 'job')).toEqual(['first', 'second']);
  });

  it('here: the job stays on the server and does not come back by itself', async () => {
    const server = new FakeServer();
    const device = new Device(server);
    device.note('job', 'first');
    await device.round();
    device.jobs.delete('job');
    const report = await device.round();
    expect([report.removedHere, device.jobs.size]).toEqual([1, 0]);
    expect(serverNotes(server, 'job')).toEqual(['first']);
    device.agreed.forget('job');
    await device.round();
    expect(device.notes('job')).toEqual(['first']);
  });
});

it('invented jobs are not sent', async () => {
  const server = new FakeServer();
  const device = new Device(server);
  device.jobs.set('demo', { ...jobOf('demo', 'first'), source: inventedSource });
  await device.round();
  expect(server.requests).toEqual(['PROPFIND']);
});

it('a thousand jobs: the first time each is sent and looked at once; after that one request and the changed ones', async () => {
  const server = new FakeServer();
  const device = new Device(server);
  for (let index = 0; index < 1000; index += 1) device.note(`job-${index}`, `note-${index}`);
  await device.round();
  expect(server.requests).toHaveLength(1 + 2 * 1000);
  server.requests.length = 0;
  await device.round();
  expect(server.requests).toEqual(['PROPFIND']);
  server.requests.length = 0;
  for (const index of [7, 300, 999]) device.note(`job-${index}`, `more-${index}`);
  await device.round();
  expect(server.requests).toHaveLength(1 + 2 * 3);
  const fresh = new Device(server);
  server.requests.length = 0;
  await fresh.round();
  expect([fresh.jobs.size, server.requests.length]).toEqual([1000, 1001]);
});

it('a job that fails each time does not hold up the others: it comes last in the next round', async () => {
  const server = new FakeServer();
  const device = new Device(server);
  for (let index = 0; index < 8; index += 1) device.note(`job-${index}`, `note-${index}`);
  server.mishaps = [undefined, 'full', 'full', 'full', 'full'];
  const report = await device.round();
  expect(report.fault?.kind).toBe('full');
  server.requests.length = 0;
  server.mishaps = [];
  await device.round();
  expect(server.requests[1]).toBe('PUT job-4.json');
});

describe('"Try it"', () => {
  it('finds out whether the server checks before it overwrites', async () => {
    expect(await tryFolder(new FakeServer('checks').folder(), '/shared-jobs/', 'x')).toMatchObject({ works: true, checks: true });
    expect(await tryFolder(new FakeServer('coarse-unchecked').folder(), '/shared-jobs/', 'x')).toMatchObject({ works: true, checks: false });
  });

  it.each<[string, (Mishap | undefined)[], RegExp]>([
    ['no server', ['refused-connection'], /cannot be reached/],
    ['no answer', ['late'], /did not answer/],
    ['a page instead of a list', ['login-page'], /not with a list/],
    ['a way elsewhere', ['redirect'], /another address/],
    ['no room', [undefined, 'full'], /no room left/],
    ['it keeps something else', [undefined, 'keeps-something-else'], /showed something else/],
  ])('says so: %s', async (_label, mishaps, words) => {
    const server = new FakeServer();
    server.mishaps = mishaps;
    const found = await tryFolder(server.folder(), '/shared-jobs/', 'x');
    expect(found.works).toBe(false);
    expect(found.words.join(' ')).toMatch(words);
  });
});
