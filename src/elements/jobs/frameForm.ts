import type { FrameRead } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { isRefusal, makeForm, missing, numberWithin } from './form.ts';
import type { FormValues } from './form.ts';
import { paragraph } from './parts.ts';
import { warmChoices, yesNoUnknown } from './warm.ts';

/** Conditions stored with a misfire code: later they say at which speed and load the repair has to be proven. */
export function frameForm(bench: Bench): Node[] {
  const { derived, book } = bench.session;
  const { temperatureUnit } = bench.settings;
  const procedure = book.procedures['read-the-freeze-frame'];
  const form = makeForm(bench.memory, {
    name: 'frame',
    submit: 'Keep the conditions',
    fields: [
      { name: 'code', label: 'Stored with the code (may be left empty)', kind: 'line', start: derived.codes?.codes[0]?.code ?? '' },
      { name: 'speed', label: 'Engine speed', kind: 'line', unit: 'rpm', keyboard: 'numeric' },
      { name: 'load', label: 'Calculated load (may be left empty)', kind: 'line', unit: '%', keyboard: 'decimal' },
      { name: 'coolant', label: 'Coolant (may be left empty)', kind: 'line', unit: temperatureUnit === 'F' ? '°F' : '°C', keyboard: 'decimal' },
      { name: 'warm', label: 'Engine warmed up when it was stored', kind: 'choice', start: 'unknown', choices: warmChoices },
    ],
    take: (values) => {
      const frame = readFrame(values, temperatureUnit);
      if (isRefusal(frame)) return frame;
      return () => {
        bench.memory.setOpen('frame', false);
        return bench.session.add({ body: frame });
      };
    },
  });
  return [
    paragraph('lead', 'A control unit stores how the engine ran when it set the code. The proof is run under the same conditions.'),
    ...(procedure ? [element('p', { class: 'actions' }, element('a', { class: 'second-action', href: bookAddress(procedure.address) }, procedure.title))] : []),
    form,
  ];
}

function readFrame(values: FormValues, temperatureUnit: 'C' | 'F'): Omit<FrameRead, 'id' | 'sequence' | 'at'> | Refusal {
  const speed = numberWithin(values('speed'), 'speed', 'Engine speed', 0, 12_000);
  if (speed === undefined) return missing('speed', 'Type the engine speed stored with the code, such as 2400.');
  if (isRefusal(speed)) return speed;
  const load = numberWithin(values('load'), 'load', 'Calculated load', 0, 100);
  if (isRefusal(load)) return load;
  const [coldest, hottest] = temperatureUnit === 'F' ? [-40, 420] : [-40, 215];
  const coolant = numberWithin(values('coolant'), 'coolant', 'Coolant', coldest, hottest);
  if (isRefusal(coolant)) return coolant;
  return {
    kind: 'frame-read',
    code: values('code').trim().toUpperCase(),
    speed,
    ...(load === undefined ? {} : { load }),
    ...(coolant === undefined ? {} : { coolant: temperatureUnit === 'F' ? Math.round(((coolant - 32) * 50) / 9) / 10 : coolant }),
    warm: yesNoUnknown(values('warm')),
  };
}
