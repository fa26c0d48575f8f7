import { mergeJobs } from '../../domain/jobs/edit.ts';
import { exportJob, importJob } from '../../domain/jobs/file.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { damagedFile, jobFile } from '../../domain/sync/listing.ts';
import { holdsEveryEvent, markOf, sameRecord } from '../../domain/sync/record.ts';
import { isStrong, sameTag } from '../../domain/sync/tags.ts';
import type { Agreed, Step } from '../../domain/sync/types.ts';
import type { JobStore } from '../storage/jobs.ts';
import type { Condition, Fault, Fetched, FolderServer } from './server.ts';

export interface ExchangeOf {
  readonly server: FolderServer;
  readonly store: Pick<JobStore, 'read' | 'write'>;
  /** Does the server keep to If-Match? Where not, the file is fetched and compared before it is written, and looked at again later. */
  readonly checks: boolean;
  /** Damaged files seen in an earlier round, by job; a fault on the way is not taken for a damaged file. */
  readonly damaged: Map<string, string>;
  readonly wait: (milliseconds: number) => Promise<void>;
}

export type Outcome =
  | { readonly kind: 'agreed'; readonly agreed: Agreed; readonly sent: boolean; readonly fetched: boolean }
  /** This file cannot be settled; others can. */
  | { readonly kind: 'problem'; readonly message: string }
  | { readonly kind: 'fault'; readonly fault: Fault };

/** The job as it is on this device now, and the server's copy where it could be taken in; or what stands in the way. */
type Here = { readonly job: Job; readonly there?: Job; readonly outcome?: undefined } | { readonly there?: undefined; readonly outcome: Outcome };

const mostTries = 5;
/** A server may call the tag of a file weak while the file is younger than a second. */
const youngFile = 1200;

const problem = (message: string): Outcome => ({ kind: 'problem', message });

/** Makes this device and the server agree on one job. What is here is only ever added to, and only by what was checked in full. */
export async function exchange(of: ExchangeOf, step: Step, before: Agreed | undefined): Promise<Outcome> {
  return new Exchange(of, step, before).run();
}

class Exchange {
  private readonly of: ExchangeOf;
  private readonly step: Step;
  private readonly before: Agreed | undefined;
  private readonly file: string;
  private sent = false;
  private fetched = false;
  private keptOther = false;

  constructor(of: ExchangeOf, step: Step, before: Agreed | undefined) {
    this.of = of;
    this.step = step;
    this.before = before;
    this.file = jobFile(step.id);
  }

  async run(): Promise<Outcome> {
    if (this.step.action === 'push' && this.of.checks && (this.step.tag === undefined || isStrong(this.step.tag))) {
      const settled = await this.sendUnseen();
      if (settled) return settled;
    }
    for (let tries = 0; tries < mostTries; tries += 1) {
      const settled = await this.compareAndSend(tries === 0);
      if (settled) return settled;
    }
    return problem(
      this.keptOther
        ? 'the server says that it kept the file and then shows another one. The job is whole on this device'
        : 'other devices changed it at every try. It is tried again later',
    );
  }

  /** Only this device has something new and the server checks tags: one request tells whether nobody else wrote. */
  private async sendUnseen(): Promise<Outcome | undefined> {
    const here = await this.readHere();
    return here.outcome ?? this.send(here.job, this.step.tag === undefined ? 'must-be-new' : { match: this.step.tag });
  }

  private async readHere(): Promise<Here> {
    const here = await this.of.store.read(this.step.id);
    if (!here.ok) return { outcome: problem(here.error.message) };
    return here.value === undefined ? { outcome: problem('it was removed just now') } : { job: here.value };
  }

  private async compareAndSend(isFirst: boolean): Promise<Outcome | undefined> {
    const { server, checks, wait } = this.of;
    const got = await server.get(this.file);
    if (!got.ok) return { kind: 'fault', fault: got.error };
    const joined = got.value === undefined ? undefined : await this.takeIn(got.value);
    const here = joined ?? (await this.readHere());
    if (here.outcome) return here.outcome;
    if (got.value === undefined && this.before !== undefined) return problem('it was removed just now');
    if (joined?.there && sameRecord(joined.there, here.job)) return this.agree(here.job, got.value);
    if (!(checks && isFirst && isWeak(got.value))) return this.send(here.job, conditionFor(got.value));
    await wait(youngFile);
    return undefined;
  }

  /** Takes the server's copy into this device. Nothing is touched unless all of it is sound. */
  private async takeIn({ text }: NonNullable<Fetched>): Promise<Here> {
    const { store, damaged } = this.of;
    const { id } = this.step;
    const incoming = importJob(text);
    if (!incoming.ok) return this.damagedCopy(text, incoming.error.code, incoming.error.message);
    damaged.delete(id);
    if (incoming.value.id !== id) return { outcome: problem(`it holds another job, ${incoming.value.id}. Nothing was taken from it`) };
    const here = await store.read(id);
    if (!here.ok) return { outcome: problem(here.error.message) };
    const merged = here.value === undefined ? incoming : mergeJobs(here.value, incoming.value);
    if (!merged.ok) return { outcome: problem(merged.error.message) };
    if (here.value !== undefined && sameRecord(here.value, merged.value)) return { job: here.value, there: incoming.value };
    const written = await store.write(merged.value);
    if (!written.ok) return { outcome: problem(written.error.message) };
    this.fetched = true;
    return { job: written.value.job, there: incoming.value };
  }

  /**
   * A file that cannot be read changes nothing here. Only where it was cut short or altered on the server's disk - the same text came in an
   * earlier round - and this device has the job, it is laid beside and the whole job written in its place.
   */
  private async damagedCopy(text: string, code: string, message: string): Promise<Here> {
    const { server, store, damaged } = this.of;
    const { id } = this.step;
    if (/^\s*</.test(text)) return { outcome: problem('a web page came in its place, such as a sign-in page. Nothing was taken from it') };
    const isSettled = damaged.get(id) === text;
    damaged.set(id, text);
    const here = await store.read(id);
    if (!here.ok || here.value === undefined || !isSettled || !['not-json', 'checksum'].includes(code)) return { outcome: problem(message) };
    const aside = await server.put(damagedFile(id), text, 'none');
    return aside.ok ? { job: here.value } : { outcome: { kind: 'fault', fault: aside.error } };
  }

  /** Sends the job and looks whether just that is there now. Undefined: another copy is there, so all is compared again. */
  private async send(job: Job, condition: Condition): Promise<Outcome | undefined> {
    const { server, damaged } = this.of;
    const text = exportJob(job);
    const put = await server.put(this.file, text, condition);
    if (!put.ok) return { kind: 'fault', fault: put.error };
    if (put.value === 'changed-meanwhile') return undefined;
    const back = await server.get(this.file);
    if (!back.ok) return { kind: 'fault', fault: back.error };
    if (back.value?.text === text) {
      this.sent = true;
      damaged.delete(this.step.id);
      return this.agreed({ tag: back.value.tag, mark: markOf(job), confirmed: this.of.checks });
    }
    const instead = back.value === undefined ? undefined : importJob(back.value.text);
    this.keptOther = !(instead?.ok === true && holdsEveryEvent(instead.value, job));
    return undefined;
  }

  /**
   * The listed tag is kept: the listing is what is compared the next time. Where the server does not check tags, two copies within one
   * second may bear the same one, so the copy must be found once more under the tag it had before. Without tags it is fetched in every
   * round anyway.
   */
  private agree(here: Job, got: Fetched): Outcome {
    const tag = this.step.tag ?? got?.tag;
    const confirmed = this.of.checks || tag === undefined || (!this.fetched && sameTag(this.before?.tag, tag));
    return this.agreed({ tag, mark: markOf(here), confirmed });
  }

  private agreed(agreed: Agreed): Outcome {
    return { kind: 'agreed', agreed, sent: this.sent, fetched: this.fetched };
  }
}

function isWeak(got: Fetched): boolean {
  return got?.tag !== undefined && !isStrong(got.tag);
}

function conditionFor(got: Fetched): Condition {
  if (got === undefined) return 'must-be-new';
  return isStrong(got.tag) ? { match: got.tag } : 'none';
}
