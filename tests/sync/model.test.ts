/** Two bays, any edits, any faults, then calm: everyone ends with every entry, and no bay ever loses one it had. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/domain/jobs/file.ts';
import { Device } from './device.ts';
import { FakeServer, type Mishap, type ServerKind } from './fakeServer.ts';

const mishaps: readonly Mishap[] = [
  'refused-connection', 'cut-mid-put', 'answer-lost', 'changed-before', 'full', 'busy', 'late', 'late-but-kept', 'cut-answer', 'login-page', 'redirect',
  'wrong-checksum', 'keeps-something-else', 'half-listing',
];
const ids = ['a', 'b', 'c'];

type Move =
  | { readonly kind: 'note'; readonly who: 0 | 1; readonly job: string }
  | { readonly kind: 'round'; readonly who: 0 | 1; readonly mishaps: (Mishap | undefined)[] }
  | { readonly kind: 'both'; readonly mishaps: (Mishap | undefined)[]; readonly turns: number[] }
  | { readonly kind: 'forget'; readonly who: 0 | 1 }
  | { readonly kind: 'second-passes' };

const who = fc.constantFrom<0 | 1>(0, 1);
const troubles = fc.array(fc.option(fc.constantFrom(...mishaps), { nil: undefined, freq: 2 }), { maxLength: 12 });
const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('note' as const), who, job: fc.constantFrom(...ids) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('round' as const), who, mishaps: troubles }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('both' as const), mishaps: fc.oneof(fc.constant<(Mishap | undefined)[]>([]), troubles), turns: fc.array(fc.nat(5), { maxLength: 24 }) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('forget' as const), who }) },
  { weight: 1, arbitrary: fc.constant({ kind: 'second-passes' as const }) },
);

class World {
  readonly server: FakeServer;
  readonly devices: readonly [Device, Device];
  /** Every entry ever acknowledged to a person, by job. */
  readonly written = new Map<string, Set<string>>();
  private count = 100;

  constructor(kind: ServerKind) {
    this.server = new FakeServer(kind);
    this.devices = [new Device(this.server), new Device(this.server)];
  }

  async make(next: Move): Promise<void> {
    const { server, devices } = this;
    if (next.kind === 'second-passes') server.tick += 1;
    // All of the same length, so that copies of two bays are as alike as can be.
    if (next.kind === 'note') this.note(next.who, next.job);
    if (next.kind === 'forget') devices[next.who].agreements.clear();
    if (next.kind === 'round' || next.kind === 'both') {
      server.mishaps = [...next.mishaps];
      server.turns = next.kind === 'both' ? [...next.turns] : [];
      await Promise.all(next.kind === 'both' ? devices.map((device) => device.round(4)) : [devices[next.who].round(4)]);
      server.mishaps = [];
    }
  }

  private note(device: 0 | 1, job: string): void {
    this.count += 1;
    const text = `n${this.count}`;
    this.devices[device].note(job, text);
    this.written.set(job, (this.written.get(job) ?? new Set()).add(text));
  }

  /** As time passes where all is well. A second lies between a bay's rounds, as the runner sees to. */
  async calm(): Promise<void> {
    for (let rounds = 0; rounds < 7; rounds += 1) {
      for (const device of this.devices) {
        this.server.tick += 3;
        await device.round(200);
      }
    }
  }

  onServer(job: string): readonly string[] {
    const read = importJob(this.server.text(`${job}.json`) ?? '');
    return read.ok ? read.value.events.map(({ id }) => id).sort() : [];
  }
}

const kinds: readonly (readonly [ServerKind, number])[] = [['checks', 250], ['coarse-unchecked', 250], ['weak', 120], ['no-tags', 120]];

describe.each(kinds)('a server of the kind %s', (kind, numRuns) => {
  it(`ends with every entry everywhere, in ${numRuns} stories`, { timeout: 120_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(move, { minLength: 3, maxLength: 25 }), async (moves) => {
        const world = new World(kind);
        for (const next of moves) {
          const before = world.devices.map((device) => ids.map((id) => device.notes(id)));
          await world.make(next);
          // Nothing that a bay had is ever taken from it.
          world.devices.forEach((device, index) => ids.forEach((id, place) => expect(device.notes(id)).toEqual(expect.arrayContaining([...(before[index]?.[place] ?? [])]))));
        }
        await world.calm();
        for (const id of ids) {
          const all = [...(world.written.get(id) ?? [])].sort();
          expect([id, world.devices[0].notes(id), world.devices[1].notes(id), world.onServer(id)]).toEqual([id, all, all, all]);
        }
      }),
      { numRuns },
    );
  });
});
