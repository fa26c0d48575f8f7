import { kindsOfCapture } from '../../domain/captures/report/kinds.data.ts';
import { captureKinds } from '../../domain/captures/report/types.ts';
import type { CaptureKind, CaptureReport } from '../../domain/captures/report/types.ts';
import { readBookData } from '../bookData.ts';
import { bookAddress } from '../dom.ts';
import { isPortable } from '../edition.ts';
import { setNote } from '../reading/fields.ts';
import { readSettings } from '../storage/settings.ts';
import { wantWorker } from '../wantedWorker.ts';
import { columnForm } from './columnForm.ts';
import { keepingNodes } from './keeping.ts';
import { answersFrom } from './questions.ts';
import type { ByHand, CaptureAnswer, CaptureRequest, TableFound } from './protocol.ts';
import { reportNodes } from './reportView.ts';
import { tableWords } from './tableWords.ts';

const notStarted = 'The part of the book that reads files could not be fetched. Reload the page where there is a network.';

/**
 * The page that reads a log or a trace. Its parts stand in the page already, hidden; this fills them one after the other: file, columns,
 * what it is, the few questions, the result. A worker reads and works out, so that the page never stands still.
 */
export class CaptureReader extends HTMLElement {
  private worker: Worker | undefined;
  private file: File | undefined;
  private table: TableFound | undefined;
  private byHand: ByHand = { choices: [] };
  /** Counts up with each file and cancel: what belongs to an earlier one is passed over. */
  private round = 0;

  connectedCallback(): void {
    this.section('file').hidden = false;
    this.field<HTMLInputElement>('file').addEventListener('change', ({ target }) => {
      const file = (target as HTMLInputElement).files?.[0];
      if (file) void this.read(file);
    });
    for (const button of this.querySelectorAll<HTMLButtonElement>('[data-capture-example]')) {
      button.addEventListener('click', () => void this.readExample(button.dataset['captureExample'] ?? ''));
    }
    this.find('cancel').addEventListener('click', () => this.cancel());
    this.find('other-mark').addEventListener('click', () => this.readAgain());
    this.find('work-out').addEventListener('click', () => this.analyse());
    this.find('print').addEventListener('click', () => print());
    this.field<HTMLSelectElement>('kind').addEventListener('change', () => this.showQuestions());
    this.field<HTMLSelectElement>('engine').addEventListener('change', () => setNote(this, 'engine', undefined));
  }

  private find(name: string): HTMLElement {
    return this.need(`[data-capture="${name}"]`);
  }

  private section(name: string): HTMLElement {
    return this.need(`[data-part="${name}"]`);
  }

  private field<Field extends HTMLElement>(name: string): Field {
    return this.need(`[data-field="${name}"]`) as Field;
  }

  private need(selector: string): HTMLElement {
    const found = this.querySelector<HTMLElement>(selector);
    if (!found) throw new Error(`The page has no ${selector}.`);
    return found;
  }

  private say(words: string): void {
    this.find('status').textContent = words;
  }

  private async readExample(id: string): Promise<void> {
    const round = ++this.round;
    this.say('The example is being fetched ...');
    const text = await exampleText(id).catch(() => undefined);
    if (round !== this.round) return;
    if (text === undefined) return this.say('The example could not be fetched. Reload the page where there is a network.');
    await this.read(new File([text], `${id}.csv`, { type: 'text/csv' }), engineOf(this.need(`[data-capture-example="${id}"]`)));
  }

  /** Begins with a file: whatever was read before goes. */
  private async read(file: File, preset: Preset = {}, decimalMark?: '.' | ','): Promise<void> {
    const round = ++this.round;
    this.stop();
    this.file = file;
    this.byHand = { choices: [] };
    this.table = undefined;
    for (const part of ['columns', 'kind', 'result']) this.section(part).hidden = true;
    this.setPreset(preset);
    this.showProgress(0);
    this.say(`${file.name} is being read.`);
    const worker = await wantWorker('captures');
    if (round !== this.round) return worker?.terminate();
    if (worker === undefined) return this.fail(notStarted);
    this.worker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<CaptureAnswer>) => {
      if (round === this.round) this.answer(data);
    });
    worker.addEventListener('error', () => {
      if (round === this.round) this.fail('The file asks for more than this device can hold. Save a shorter part of the record, or fewer columns.');
    });
    this.ask({ kind: 'read', file, ...(decimalMark === undefined ? {} : { decimalMark }) });
  }

  private setPreset(preset: Preset): void {
    for (const [name, value] of Object.entries(preset)) if (value !== undefined) this.field<HTMLInputElement | HTMLSelectElement>(name).value = value;
  }

  private readAgain(): void {
    if (this.file && this.table) void this.read(this.file, {}, this.table.decimalMark === '.' ? ',' : '.');
  }

  private ask(request: CaptureRequest): void {
    this.worker?.postMessage(request);
  }

  private stop(): void {
    this.worker?.terminate();
    this.worker = undefined;
  }

  private cancel(): void {
    this.round += 1;
    this.stop();
    this.section('progress').hidden = true;
    this.field<HTMLInputElement>('file').value = '';
    this.say('Stopped. Nothing of the file was kept.');
    this.field('file').focus();
  }

  private fail(message: string): void {
    this.section('progress').hidden = true;
    this.say(message);
  }

  private showProgress(share: number): void {
    const percent = Math.floor(100 * share);
    this.section('progress').hidden = false;
    this.need('progress').setAttribute('value', String(percent));
    this.find('percent').textContent = `${percent} %`;
  }

  private answer(answer: CaptureAnswer): void {
    if (answer.kind === 'progress') return this.showProgress(answer.share);
    this.section('progress').hidden = true;
    this.need('[data-capture="work-out"]').removeAttribute('disabled');
    if (answer.kind === 'table') this.showTable(answer.table);
    else if (answer.kind === 'report') this.showReport(answer.report);
    else this.refuse(answer.message, answer.input);
  }

  /** A refusal is said where the eye is, and at its field where it has one. */
  private refuse(message: string, input: string): void {
    this.say(message);
    this.find('refused').textContent = message;
    if (this.querySelector(`[data-field="${input}"]`)) setNote(this, input, message);
    if (this.table === undefined) return;
    this.section('result').hidden = true;
    (this.querySelector<HTMLElement>(`[data-field="${input}"]`) ?? this.field('kind')).focus();
  }

  private showTable(table: TableFound): void {
    const isFirst = this.table === undefined;
    const kind = this.field<HTMLSelectElement>('kind');
    // What was proposed follows the columns until the reader of the file has said otherwise.
    if (isFirst || kind.value === this.table?.proposed || kind.value === '') kind.value = table.proposed ?? '';
    this.table = table;
    this.find('table-words').replaceChildren(...tableWords(table));
    const mark = this.find('other-mark');
    mark.hidden = !table.decimalMarkUnsure;
    mark.textContent = table.decimalMark === ',' ? 'The comma parts thousands: read it again' : 'The comma is the decimal mark: read it again';
    this.find('columns').replaceChildren(columnForm(table, this.byHand, (byHand) => {
      this.byHand = byHand;
      this.section('result').hidden = true;
      this.ask({ kind: 'columns', ...byHand });
    }));
    this.say(`${table.rows} rows were read.`);
    this.find('refused').textContent = '';
    for (const part of ['columns', 'kind']) this.section(part).hidden = false;
    this.showQuestions();
    if (isFirst) this.need('#capture-columns-heading').focus();
  }

  private kind(): CaptureKind | undefined {
    const { value } = this.field<HTMLSelectElement>('kind');
    return captureKinds.find((kind) => kind === value);
  }

  private showQuestions(): void {
    const kind = this.kind();
    const asked: readonly string[] = kind === undefined ? [] : kindsOfCapture[kind].asks;
    for (const question of this.querySelectorAll<HTMLElement>('[data-ask]')) question.hidden = !asked.includes(question.dataset['ask'] ?? '');
    this.find('refused').textContent = '';
  }

  private analyse(): void {
    const kind = this.kind();
    for (const { dataset } of this.querySelectorAll<HTMLElement>('[data-ask] [data-field]')) if (dataset['field']) setNote(this, dataset['field'], undefined);
    if (kind === undefined) return this.refuse('Say first what the file holds.', 'kind');
    const answers = answersFrom(this, kindsOfCapture[kind].asks, readSettings().decimalMark);
    if (!answers.ok) return this.refuse(answers.error.message, answers.error.input);
    this.find('refused').textContent = '';
    this.say('Being worked out ...');
    this.need('[data-capture="work-out"]').setAttribute('disabled', '');
    this.ask({ kind: 'analyse', capture: kind, answers: answers.value, ...this.byHand });
  }

  private showReport(report: CaptureReport): void {
    const { label } = kindsOfCapture[report.kind];
    const about = document.querySelector(`[data-kind="${report.kind}"] [data-kind-body]`)?.cloneNode(true);
    const name = `${this.file?.name ?? ''}, ${this.table?.rows ?? 0} rows`;
    const engine = this.field<HTMLSelectElement>('engine').selectedOptions[0];
    const asksEngine = kindsOfCapture[report.kind].asks.includes('engine') && engine?.value;
    const inputs = [{ name: 'file', label: 'File', text: name }, ...(asksEngine ? [{ name: 'engine', label: 'Engine', text: engine.textContent ?? '' }] : [])];
    this.find('result-title').textContent = label;
    this.find('result-of').textContent = inputs.map(({ text }) => text).join('; ');
    this.find('report').replaceChildren(...reportNodes(report), ...(about ? [about] : []));
    this.find('keeping').replaceChildren(...keepingNodes(report, { title: label, inputs }));
    this.section('result').hidden = false;
    this.say('The result is there.');
    this.need('#capture-result-heading').focus();
  }
}

/** Answers that an example brings along. */
interface Preset {
  readonly engine?: string;
  readonly marked?: string;
  readonly supply?: string;
  readonly top?: string;
}

function engineOf({ dataset }: HTMLElement): Preset {
  const { engine = '', marked = '', supply = '', top = '' } = dataset;
  return { engine, marked, supply, top };
}

/** A page from disk may fetch nothing, so there the text comes as a script. */
async function exampleText(id: string): Promise<string> {
  if (isPortable()) return readBookData<string>(`captures/${id}`);
  const answer = await fetch(bookAddress(`data/captures/${id}.csv`));
  if (!answer.ok) throw new Error(`${id} did not load (${answer.status}).`);
  return answer.text();
}

