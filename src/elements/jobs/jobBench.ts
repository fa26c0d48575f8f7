import { engineShape } from '../../domain/drawing/engine.ts';
import { inventedSource, stages, stageTitles } from '../../domain/jobs/types.ts';
import type { Stage } from '../../domain/jobs/types.ts';
import { suspicionByCylinder, suspicionSentence } from '../../domain/jobs/suspicion.ts';
import { element } from '../dom.ts';
import { writeChoice } from '../storage/choices.ts';
import { readDrafts, writeDrafts } from '../storage/drafts.ts';
import { openJobStore } from '../storage/jobs.ts';
import type { JobStore } from '../storage/jobs.ts';
import { readSettings } from '../storage/settings.ts';
import { drawShape } from '../svg.ts';
import { beliefSection } from './beliefSection.ts';
import type { Bench, ChosenTest } from './bench.ts';
import { loadBook } from './data.ts';
import { engineForm } from './engineForm.ts';
import { findingForm } from './findingSection.ts';
import { extrasSection } from './extrasSection.ts';
import { fold, paragraph, ScreenMemory, section } from './parts.ts';
import { handOverForm, proofSection } from './proofSection.ts';
import { repairSection } from './repairSection.ts';
import { SaveLine } from './saveLine.ts';
import { JobSession } from './session.ts';
import { jobAddress, jobInAddress, jobNotHere, sayInstead } from './shared.ts';
import { complaintForm, codesForm } from './takeInForms.ts';
import { testSection } from './testSection.ts';
import { timeline } from './timeline.ts';

/** `<job-bench>`: one job, `?job=<id>`, worked from complaint to proof. Everything shown is derived from its events. */
export class JobBench extends HTMLElement {
  private readonly store: JobStore = openJobStore();
  private memory = new ScreenMemory();
  private readonly saveLine = new SaveLine(() => this.session);
  private readonly screen = element('div', { class: 'bench-screen' });
  private session: JobSession | undefined;
  private chosen: ChosenTest | undefined;
  private stopWatching: (() => void) | undefined;

  connectedCallback(): void {
    void this.start();
  }

  disconnectedCallback(): void {
    this.stopWatching?.();
    this.store.close();
  }

  private async start(): Promise<void> {
    const id = jobInAddress();
    if (id === '') return sayInstead(this, 'No job is named. Open one from the list of jobs.');
    const book = await loadBook();
    if (!book.ok) return sayInstead(this, book.error);
    const job = await this.store.read(id);
    if (!job.ok) return sayInstead(this, job.error.message);
    if (job.value === undefined) return sayInstead(this, jobNotHere);
    this.memory = new ScreenMemory(readDrafts(id), (texts) => writeDrafts(id, texts));
    this.session = new JobSession(job.value, book.value, this.store, { changed: () => this.draw(), statusChanged: () => this.saveLine.show() });
    this.stopWatching = this.store.watch((changed) => {
      if (changed === id) void this.session?.refresh();
    });
    this.replaceChildren(this.saveLine.node, this.screen);
    this.saveLine.show();
    this.draw();
  }

  private draw(): void {
    const { session } = this;
    if (!session) return;
    const bench = this.benchOf(session);
    const focus = rememberFocus(this.screen);
    this.screen.replaceChildren(
      topOf(bench),
      section('do-now', 'do-now', headings[session.derived.stage], ...doNow(bench)),
      // Before codes and tests there is nothing but how common each fault is.
      ...(session.derived.beliefs.length > 0 && session.derived.stage !== 'complaint' ? [section('beliefs', 'beliefs', 'What it may be', ...beliefSection(bench))] : []),
      section('extras', 'extras', 'Also for the record', ...extrasSection(bench)),
      section('timeline', 'record', 'What happened', timeline(bench)),
    );
    focus();
    const { engine, stage } = session.derived;
    writeChoice('open-job', [session.job.id, engine?.layout.title ?? session.job.title, stageTitles[stage], session.job.title].join('\n'));
  }

  private benchOf(session: JobSession): Bench {
    return {
      session,
      memory: this.memory,
      settings: readSettings(),
      chosen: this.chosen,
      choose: (test) => (this.chosen = test),
      draw: () => this.draw(),
    };
  }
}

const headings: Readonly<Record<Stage, string>> = {
  complaint: 'Now: take the complaint',
  codes: 'Now: read the codes',
  tests: 'Now: this test',
  finding: 'Now: the finding',
  repair: 'Now: the repair',
  proof: 'Now: the proof',
  'hand-over': 'Now: hand over',
};

function topOf(bench: Bench): HTMLElement {
  const { job, derived } = bench.session;
  const { engine, beliefs, stage } = derived;
  const sheet = element('a', { class: 'second-action', id: 'to-sheet', href: jobAddress('sheet', job.id) }, 'Sheet');
  const top = element('header', { class: 'bench-top' }, element('h1', { class: 'job-title' }, job.title));
  if (job.source.startsWith(inventedSource)) top.append(paragraph('invented', job.source));
  if (engine) {
    const suspicion = suspicionByCylinder(engine.layout, beliefs);
    const marks = new Map([...suspicion].map(([cylinder, share]) => [cylinder, { share, text: `${Math.round(share * 100)} %` }]));
    top.append(drawShape(engineShape(engine.layout, marks)), paragraph('engine-suspicion', suspicionSentence(suspicion)));
  }
  top.append(stageLine(stage), element('p', { class: 'actions' }, sheet));
  return top;
}

function stageLine(stage: Stage): HTMLElement {
  const at = stages.indexOf(stage);
  const items = stages.map((one, index) => {
    const state = index < at ? 'is-done' : index === at ? 'is-here' : 'is-ahead';
    return element('li', { class: state, 'aria-current': index === at ? 'step' : undefined }, stageTitles[one]);
  });
  return element('ol', { class: 'stage-line', 'aria-label': 'Stages of the job' }, ...items);
}

function doNow(bench: Bench): Node[] {
  const { derived, book } = bench.session;
  if (!derived.engine) {
    return [engineForm(bench.memory, book, 'Keep the engine', (body) => bench.session.add({ body }))];
  }
  switch (derived.stage) {
    case 'complaint':
      return complaintForm(bench);
    case 'codes':
      return codesForm(bench, 'codes-read');
    case 'tests':
      return [...failedWords(bench), ...testSection(bench), findingFold(bench)];
    case 'finding':
      return [...findingForm(bench), fold(bench.memory, 'test-further', 'test-further', ['Test further first'], () => testSection(bench))];
    case 'repair':
      return repairSection(bench);
    case 'proof':
      return proofSection(bench);
    case 'hand-over':
      return handOver(bench);
  }
}

function failedWords({ session }: Bench): Node[] {
  const { proof } = session.derived;
  return proof.failed ? [paragraph('proof-failed', 'The misfire came back after the repair. The repair now counts as a test: that fault at that place has become unlikely.')] : [];
}

function findingFold(bench: Bench): HTMLElement {
  return fold(bench.memory, 'early-finding', 'early-finding', ['Write down a finding'], () => findingForm(bench));
}

function handOver(bench: Bench): Node[] {
  const { proof } = bench.session.derived;
  if (proof.handedOver?.unproven !== undefined) return [paragraph('handed-over', `Handed over without proof: ${proof.handedOver.unproven}`)];
  if (proof.handedOver) return [paragraph('handed-over', 'Handed over, repair proven. Print the sheet for the customer.')];
  return [paragraph('lead', 'The repair is proven. Print the sheet and hand the car over.'), handOverForm(bench, true)];
}

/**
 * The focus before a drawing, put back after it: on the same control where it is still there, otherwise on the heading of what is
 * to be done now. Where the focus was outside, it stays there.
 */
function rememberFocus(screen: HTMLElement): () => void {
  const active = document.activeElement;
  if (!(active instanceof HTMLElement) || !screen.contains(active)) return () => undefined;
  const { id } = active;
  const cursor = active instanceof HTMLInputElement && active.type === 'text' ? active.selectionStart : null;
  return () => {
    const same = id === '' ? null : document.getElementById(id);
    (same ?? document.getElementById('do-now-heading'))?.focus({ preventScroll: same !== null });
    if (same instanceof HTMLInputElement && cursor !== null) same.setSelectionRange(cursor, cursor);
  };
}
