import type { EngineChoice, JobBook } from '../../domain/jobs/book.ts';
import { ignitionWords, injectionWords } from '../../domain/jobs/describe.ts';
import type { JobEventBody } from '../../domain/jobs/types.ts';
import { makeLayout } from '../../domain/diagnosis/layout.ts';
import { setNote } from '../reading/fields.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import type { FormValues } from './form.ts';
import { readChoice, writeChoice } from '../storage/choices.ts';
import type { Refusal } from '../../domain/result.ts';
import type { ScreenMemory } from './parts.ts';

type EngineChosenBody = Extract<JobEventBody, { kind: 'engine-chosen' }>;

/** The engine of a job: at first where its file names none, later when another was meant. */
export function changeEngineForm({ memory, session }: Bench): Node[] {
  const submit = session.derived.engine ? 'Change the engine' : 'Keep the engine';
  return [engineForm(memory, session.book, submit, (body) => session.add({ body }))];
}

/** Which engine is in the bay. The arrangements offered are those met on the chosen layout. */
export function engineForm(memory: ScreenMemory, book: JobBook, submit: string, chosen: (event: EngineChosenBody) => Refusal | undefined): HTMLFormElement {
  const first = book.engines.find((engine) => engine.id === readChoice('engine')) ?? book.engines[0];
  const engineOf = (values: FormValues): EngineChoice | undefined => book.engines.find((engine) => engine.id === values('engine'));
  const choice = <Word extends string>(word: Word, words: Readonly<Record<Word, string>>) => ({ value: word, label: capital(words[word]) });
  const form: HTMLFormElement = makeForm(memory, {
    name: 'engine',
    submit,
    fields: [
      { name: 'description', label: 'The car, in your own words', kind: 'line', hint: 'Such as: small van, 3 cylinders, 140 000 km.' },
      { name: 'customer', label: 'Customer or order reference (may be left empty)', kind: 'line' },
      {
        name: 'engine',
        label: 'Engine layout',
        kind: 'choice',
        start: first?.id ?? '',
        choices: book.engines.map(({ id, title }) => ({ value: id, label: title })),
      },
      {
        name: 'ignition',
        label: 'Ignition',
        kind: 'choice',
        start: first?.ignition[0] ?? '',
        choices: (first?.ignition ?? []).map((word) => choice(word, ignitionWords)),
      },
      {
        name: 'injection',
        label: 'Injection',
        kind: 'choice',
        start: first?.injection[0] ?? '',
        choices: (first?.injection ?? []).map((word) => choice(word, injectionWords)),
      },
    ],
    take: (values) => takeEngine(values, engineOf(values), chosen),
  });
  const offer = (): void => {
    const engine = book.engines.find((candidate) => candidate.id === valueOf(form, 'engine'));
    offerChoices(memory, form, 'ignition', (engine?.ignition ?? []).map((word) => choice(word, ignitionWords)));
    offerChoices(memory, form, 'injection', (engine?.injection ?? []).map((word) => choice(word, injectionWords)));
    setNote(form, 'engine', engine?.numbering);
    form.querySelector('[data-field="engine"]')?.removeAttribute('aria-invalid');
  };
  form.addEventListener('change', (event) => {
    if (event.target instanceof HTMLSelectElement && event.target.dataset['field'] === 'engine') offer();
  });
  offer();
  return form;
}

function takeEngine(values: FormValues, engine: EngineChoice | undefined, chosen: (event: EngineChosenBody) => Refusal | undefined): Refusal | (() => Refusal | undefined) {
  const ignition = engine?.ignition.find((word) => word === values('ignition')) ?? engine?.ignition[0];
  const injection = engine?.injection.find((word) => word === values('injection')) ?? engine?.injection[0];
  if (engine === undefined || ignition === undefined || injection === undefined) return missing('engine', 'Choose the layout of the engine.');
  const layout = makeLayout(engine, ignition, injection);
  if (!layout.ok) return layout.error.input === 'ignition' ? layout.error : { ...layout.error, input: 'engine' };
  const description = values('description').trim();
  if (description === '') return missing('description', 'Say which car it is, so that the job is found again.');
  // Read before the form forgets what was typed.
  const customerReference = values('customer').trim();
  return () => {
    writeChoice('engine', engine.id);
    return chosen({ kind: 'engine-chosen', layout: layout.value, description, customerReference, makerFigures: [] });
  };
}

function offerChoices(memory: ScreenMemory, form: HTMLFormElement, name: string, choices: readonly { readonly value: string; readonly label: string }[]): void {
  const select = form.querySelector<HTMLSelectElement>(`select[data-field="${name}"]`);
  if (!select) return;
  const before = select.value;
  select.replaceChildren(...choices.map(({ value, label }) => new Option(label, value, false, value === before)));
  memory.setText(`engine.${name}`, select.value);
}

function valueOf(form: HTMLFormElement, name: string): string {
  return form.querySelector<HTMLSelectElement>(`select[data-field="${name}"]`)?.value ?? '';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
