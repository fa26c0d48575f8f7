import { quantityLabel, rangeWords } from '../../domain/measurement/meters.ts';
import type { UserMeter } from '../../domain/measurement/meters.ts';
import { exportMeters, importMeters, largestMetersFile, mergeMeters, metersFileName } from '../../domain/measurement/metersFile.ts';
import type { MergedMeters } from '../../domain/measurement/metersFile.ts';
import { textsOfMeter } from '../../domain/measurement/meterTexts.ts';
import { element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import { newId } from '../jobs/identity.ts';
import { keptMeters } from '../storage/meters.ts';
import { readSettings } from '../storage/settings.ts';
import { readMeterDraft, writeMeterDraft } from './meterDraft.ts';
import type { MeterDraft } from './meterDraft.ts';
import { emptyRange, meterEditor } from './meterEditor.ts';

/** `<my-meters>`: the meters and gauges of the shop with the accuracy of each range; kept on this device, taken out and in as a file. */
export class MyMeters extends HTMLElement {
  private readonly list = element('section', { 'aria-label': 'Meters on this device' });
  private readonly editor = element('div', { class: 'meter-editor-place' });
  private readonly note = element('p', { class: 'meter-note', role: 'status' });
  private stopWatching: (() => void) | undefined;

  connectedCallback(): void {
    this.replaceChildren(this.list, this.note, this.editor, this.fileActions());
    this.drawList();
    const draft = readMeterDraft();
    if (draft) this.edit(draft, false);
    else this.drawAdd(false);
    this.stopWatching = keptMeters.watch(() => this.drawList());
  }

  disconnectedCallback(): void {
    this.stopWatching?.();
  }

  private drawList(): void {
    const meters = keptMeters.read();
    if (!meters.ok) return this.list.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, meters.error.message), ...this.damagedActions(meters.error.code));
    const none = element('p', { class: 'lead' }, 'None yet. Add the meters of the shop once; every reading can then be judged by the right one.');
    const items = meters.value.map((meter) => this.item(meter));
    this.list.replaceChildren(items.length === 0 ? none : element('ul', { class: 'meters' }, ...items));
  }

  private item(meter: UserMeter): HTMLElement {
    const { decimalMark } = readSettings();
    const change = element('button', { type: 'button', 'aria-label': `Change ${meter.name}` }, 'Change');
    change.addEventListener('click', () => this.edit({ id: meter.id, texts: textsOfMeter(meter, { decimalMark }) }, true));
    const remove = element('button', { type: 'button', 'aria-label': `Remove ${meter.name}` }, 'Remove');
    remove.addEventListener('click', () => this.removeMeter(meter));
    return element(
      'li',
      {},
      element('h2', {}, meter.name),
      element('ul', {}, ...meter.ranges.map((range) => element('li', {}, `${quantityLabel(range.quantity)}, ${rangeWords(range, { decimalMark })}`))),
      element('p', { class: 'actions' }, change, remove),
    );
  }

  /** What cannot be read is saved to a file as it is before anything new can be kept. */
  private damagedActions(code: string): HTMLElement[] {
    if (code !== 'damaged') return [];
    const save = element('button', { type: 'button' }, 'Save it to a file as it is');
    save.addEventListener('click', () => {
      const text = keptMeters.text();
      if (text.ok) downloadText(text.value ?? '', metersFileName);
    });
    const afresh = element('button', { type: 'button' }, 'Remove it and start afresh');
    afresh.addEventListener('click', () => {
      const gone = keptMeters.forget();
      this.note.textContent = gone.ok ? 'Removed. No meters are kept on this device now.' : gone.error.message;
      this.drawList();
    });
    return [element('p', { class: 'actions' }, save, afresh)];
  }

  private removeMeter(meter: UserMeter): void {
    const kept = keptMeters.change((meters) => meters.filter(({ id }) => id !== meter.id));
    if (!kept.ok) return this.say(kept.error.message);
    this.drawList();
    const back = element('button', { type: 'button', class: 'plain' }, 'Bring it back');
    back.addEventListener('click', () => {
      const again = keptMeters.change((meters) => [...meters.filter(({ id }) => id !== meter.id), meter]);
      this.say(again.ok ? `“${meter.name}” is back.` : again.error.message);
      this.drawList();
    });
    this.note.replaceChildren(`“${meter.name}” was removed. `, back);
    back.focus();
  }

  private say(message: string): void {
    this.note.textContent = message;
  }

  private drawAdd(takeFocus: boolean): void {
    const add = element('button', { type: 'button', class: 'main-action', id: 'meter-add' }, 'Add a meter');
    add.addEventListener('click', () => this.edit({ id: newId(), texts: { name: '', ranges: [emptyRange] } }, true));
    this.editor.replaceChildren(element('p', { class: 'actions' }, add));
    if (takeFocus) add.focus();
  }

  private edit(draft: MeterDraft, takeFocus: boolean): void {
    const { id } = draft;
    const here = keptMeters.read();
    const known = here.ok && here.value.some((meter) => meter.id === id);
    const form = meterEditor({
      heading: known ? `Change ${draft.texts.name || 'the meter'}` : 'Add a meter',
      texts: draft.texts,
      take: (meter) => this.keep({ id, ...meter }),
      leave: () => this.shut(''),
      typed: (texts) => writeMeterDraft({ id, texts }),
    });
    this.editor.replaceChildren(form);
    this.say('');
    if (takeFocus) form.querySelector<HTMLElement>('[data-field="name"]')?.focus();
  }

  private keep(meter: UserMeter): string | undefined {
    const kept = keptMeters.change((meters) => (meters.some(({ id }) => id === meter.id) ? meters.map((one) => (one.id === meter.id ? meter : one)) : [...meters, meter]));
    if (!kept.ok) return kept.error.message;
    this.shut(`“${meter.name}” is kept on this device. Choose it where a reading is typed, under “Meter”.`);
    return undefined;
  }

  private shut(message: string): void {
    writeMeterDraft(undefined);
    this.drawList();
    this.drawAdd(true);
    this.say(message);
  }

  private fileActions(): HTMLElement {
    const save = element('button', { type: 'button', id: 'meters-to-file' }, 'Save the meters to a file');
    save.addEventListener('click', () => {
      const meters = keptMeters.read();
      if (meters.ok) downloadText(exportMeters(meters.value), metersFileName);
      this.say(meters.ok ? `${meters.value.length} ${meters.value.length === 1 ? 'meter' : 'meters'} saved to ${metersFileName}.` : meters.error.message);
    });
    const input = element('input', { id: 'meters-file', type: 'file', accept: '.json,application/json', 'aria-describedby': 'meters-file-note' });
    const note = element('span', { class: 'field-note', id: 'meters-file-note', role: 'status' });
    input.addEventListener('change', () => void this.takeFile(input, note));
    return element(
      'section',
      { 'aria-labelledby': 'meters-file-heading' },
      element('h2', { id: 'meters-file-heading' }, 'As a file'),
      element('p', {}, 'Whoever clears the browser’s data clears the meters: save them to a file, and take the same file in on the other devices of the shop.'),
      element('p', { class: 'actions' }, save),
      element('p', { class: 'field' }, element('label', { for: 'meters-file' }, 'Take meters in from a file'), input, note),
    );
  }

  private async takeFile(input: HTMLInputElement, note: HTMLElement): Promise<void> {
    const file = input.files?.[0];
    if (!file) return;
    const taken = await readFile(file);
    note.textContent = taken.message;
    input.setAttribute('aria-invalid', String(!taken.ok));
    // The same file can be chosen again once it has been mended.
    input.value = '';
    this.drawList();
  }
}

async function readFile(file: File): Promise<{ readonly ok: boolean; readonly message: string }> {
  if (file.size > largestMetersFile) return { ok: false, message: 'This file is larger than 1 MB. A file of meters is far smaller; choose the right file.' };
  const text = await file.text().catch(() => undefined);
  if (text === undefined) return { ok: false, message: 'The file could not be read. Copy it onto this device and choose it again.' };
  const meters = importMeters(text);
  if (!meters.ok) return { ok: false, message: meters.error.message };
  let merged: MergedMeters = { meters: [], added: [], replaced: [] };
  const kept = keptMeters.change((here) => (merged = mergeMeters(here, meters.value)).meters);
  return kept.ok ? { ok: true, message: takenWords(merged) } : { ok: false, message: kept.error.message };
}

function takenWords({ added, replaced }: MergedMeters): string {
  const parts = [
    ...(added.length > 0 ? [`Added: ${added.join(', ')}.`] : []),
    ...(replaced.length > 0 ? [`Replaced by the file’s: ${replaced.join(', ')}.`] : []),
  ];
  return parts.length > 0 ? parts.join(' ') : 'Every meter of the file was here already.';
}
