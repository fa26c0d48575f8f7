import { hypothesisLabel, opinionWords } from '../../domain/diagnosis/labels.ts';
import { placesOf } from '../../domain/diagnosis/places.ts';
import { opinionWeights } from '../../domain/diagnosis/types.ts';
import type { FaultModel, Place } from '../../domain/diagnosis/types.ts';
import type { OpinionGiven } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import type { FormValues } from './form.ts';
import { paragraph } from './parts.ts';

const anywhere = 'anywhere';

/** What the mechanic knows of this engine. It moves the beliefs and is shown as an opinion wherever it did. */
export function opinionForm(bench: Bench): Node[] {
  const faults = faultsInQuestion(bench);
  const chosen = faults.find(({ id }) => id === bench.memory.text('opinion.fault')) ?? faults[0];
  const places = placesFor(bench, chosen);
  const form = makeForm(bench.memory, {
    name: 'opinion',
    submit: 'Keep the opinion',
    fields: [
      { name: 'fault', label: 'Fault', kind: 'choice', start: chosen?.id ?? '', choices: faults.map(({ id, title }) => ({ value: id, label: title })) },
      {
        name: 'place',
        label: 'Where',
        kind: 'choice',
        start: anywhere,
        choices: [{ value: anywhere, label: 'Wherever it may be' }, ...places.map(({ id, label }) => ({ value: id, label }))],
      },
      { name: 'weight', label: 'How likely, in your opinion', kind: 'choice', start: 'likelier', choices: opinionWeights.map((weight) => ({ value: weight, label: capital(opinionWords[weight]) })) },
      { name: 'reason', label: 'Why', kind: 'line', hint: 'Such as: third one of these this year.' },
    ],
    take: (values) => takeOpinion(bench, faults, values),
  });
  form.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLSelectElement) || target.dataset['field'] !== 'fault') return;
    // The places depend on the fault.
    bench.memory.setText('opinion.place', anywhere);
    bench.draw();
  });
  return [paragraph('lead', 'An opinion moves the beliefs and stays marked as one. No finding can rest on it: a test still has to show it.'), form];
}

/** Faults that this engine can have, by title. */
function faultsInQuestion({ session }: Bench): readonly FaultModel[] {
  const faults = session.derived.beliefs.flatMap(({ hypothesis: { fault } }) => (fault ? [fault] : []));
  return [...new Map(faults.map((fault) => [fault.id, fault])).values()].toSorted((one, other) => one.title.localeCompare(other.title, 'en'));
}

function placesFor({ session }: Bench, fault: FaultModel | undefined): readonly Place[] {
  const engine = session.derived.engine?.layout;
  const places = engine && fault ? placesOf(engine, fault.placeKind) : [];
  return places.length > 1 ? places : [];
}

function takeOpinion(bench: Bench, faults: readonly FaultModel[], values: FormValues): Refusal | (() => Refusal | undefined) {
  const fault = faults.find(({ id }) => id === values('fault'));
  const weight = opinionWeights.find((one) => one === values('weight'));
  if (!fault || !weight) return missing('fault', 'Choose the fault.');
  const reason = values('reason').trim();
  if (reason === '') return missing('reason', 'Say why, so that the next mechanic can judge the opinion.');
  const place = placesFor(bench, fault).find(({ id }) => id === values('place'));
  const label = place ? hypothesisLabel({ id: '', fault, place }) : fault.title;
  const body: Omit<OpinionGiven, 'id' | 'sequence' | 'at'> = {
    kind: 'opinion',
    fault: fault.id,
    ...(place ? { place: { id: place.id, label: place.label } } : {}),
    label,
    weight,
    reason,
  };
  return () => {
    bench.memory.setOpen('opinion', false);
    return bench.session.add({ body });
  };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
