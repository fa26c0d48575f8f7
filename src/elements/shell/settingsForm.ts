import { element } from '../dom.ts';
import { readSettings, writeSettings, type Settings } from '../storage/settings.ts';

/** `<book-settings>`: how figures are written, chosen once for the whole book. */
export class SettingsForm extends HTMLElement {
  connectedCallback(): void {
    const settings = readSettings();
    const note = element('p', { class: 'field-note', role: 'status' });
    this.replaceChildren(
      choice('decimalMark', 'Decimal mark', settings.decimalMark, { '.': 'Point: 0.62', ',': 'Comma: 0,62' }),
      choice('temperatureUnit', 'Temperature', settings.temperatureUnit, { C: 'Degrees Celsius', F: 'Degrees Fahrenheit' }),
      ...(settings.meter ? [forgetMeter(settings.meter, note)] : []),
      note,
    );
    this.addEventListener('change', (event) => {
      if (!(event.target instanceof HTMLSelectElement)) return;
      const kept = writeSettings({ [event.target.name]: event.target.value } as Partial<Settings>);
      note.textContent = kept.ok ? 'Kept on this device.' : kept.error.message;
    });
  }
}

function choice(name: string, label: string, value: string, options: Readonly<Record<string, string>>): HTMLElement {
  const id = `setting-${name}`;
  const select = element('select', { id, name }, ...Object.entries(options).map(([key, text]) => element('option', { value: key, selected: key === value }, text)));
  return element('p', { class: 'field' }, element('label', { for: id }, label), select);
}

function forgetMeter(meter: { percent: number; counts: number }, note: HTMLElement): HTMLElement {
  const button = element('button', { type: 'button' }, 'Forget it');
  const line = element('p', {}, `Meter last used: ±${meter.percent} % ±${meter.counts} digits. `, button);
  button.addEventListener('click', () => {
    writeSettings({ meter: undefined });
    line.remove();
    note.textContent = 'Forgotten: each reading starts from the usual meter again.';
  });
  return line;
}
