import type { Question } from '../../domain/captures/report/kinds.data.ts';
import type { CaptureAnswers } from '../../domain/captures/report/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';
import { readNumber } from '../../domain/units/number.ts';

/** Without a stated accuracy of the supply reading, V: a workshop meter and its leads. Common practice. */
const supplyUncertainty = 0.1;

interface NumberField {
  readonly question: Question;
  readonly label: string;
  readonly low: number;
  readonly high: number;
}

/** The number fields of the page, by the name in `data-field`. Limits only keep out slips of the finger. */
const numberFields: Readonly<Record<string, NumberField>> = {
  marked: { question: 'marked', label: 'Cylinder of the trigger or first event', low: 1, high: 16 },
  supply: { question: 'supply', label: 'Voltage at the coil', low: 1, high: 60 },
  clamp: { question: 'clamp', label: 'Clamp scale', low: 0, high: 50 },
  top: { question: 'top', label: 'Top dead centre', low: -360, high: 720 },
  displacement: { question: 'displacement', label: 'Displacement', low: 0.1, high: 20 },
  speed: { question: 'stored', label: 'Stored speed', low: 300, high: 12_000 },
  load: { question: 'stored', label: 'Stored load', low: 0, high: 100 },
};

function numberFrom(scope: ParentNode, name: string, { label, low, high }: NumberField): Result<number | undefined, Refusal> {
  const typed = scope.querySelector<HTMLInputElement>(`[data-field="${name}"]`)?.value.trim() ?? '';
  if (typed === '') return success(undefined);
  const read = readNumber(typed);
  if (read.kind === 'number' && read.value >= low && read.value <= high) return success(read.value);
  return failure({ input: name, code: 'not-a-number', message: `${label}: "${typed}" was typed; a number from ${low} to ${high} is expected, or nothing.` });
}

type Numbers = Partial<Record<string, number>>;

function numbersFrom(scope: ParentNode, asked: readonly Question[]): Result<Numbers, Refusal> {
  const numbers: Numbers = {};
  for (const [name, field] of Object.entries(numberFields)) {
    if (!asked.includes(field.question)) continue;
    const value = numberFrom(scope, name, field);
    if (!value.ok) return value;
    if (value.value !== undefined) numbers[name] = value.value;
  }
  return success(numbers);
}

function selected(scope: ParentNode, name: string): HTMLOptionElement | undefined {
  return scope.querySelector<HTMLSelectElement>(`select[data-field="${name}"]`)?.selectedOptions[0];
}

/** The order of the engine that was chosen, or nothing. */
function firingOrderFrom(scope: ParentNode, asked: readonly Question[]): readonly number[] | undefined {
  const order = asked.includes('engine') ? (selected(scope, 'engine')?.dataset['order'] ?? '') : '';
  return order === '' ? undefined : order.split('-').map(Number);
}

function sideFrom(scope: ParentNode, asked: readonly Question[]): CaptureAnswers['side'] {
  const side = asked.includes('side') ? selected(scope, 'side')?.value : undefined;
  return side === 'primary' || side === 'secondary' ? side : undefined;
}

/** Only what was answered: an empty field is no answer. */
function answered<Answers extends object>(answers: Answers): { readonly [Name in keyof Answers]?: Exclude<Answers[Name], undefined> } {
  return Object.fromEntries(Object.entries(answers).filter(([, value]) => value !== undefined)) as { [Name in keyof Answers]?: Exclude<Answers[Name], undefined> };
}

/** What was answered of the questions that this kind of capture asks. Refuses what is no number, at its field. */
export function answersFrom(scope: ParentNode, asked: readonly Question[], decimalMark: '.' | ','): Result<CaptureAnswers, Refusal> {
  const numbers = numbersFrom(scope, asked);
  if (!numbers.ok) return numbers;
  const { marked, supply, clamp, top, displacement, speed, load } = numbers.value;
  const firingOrder = firingOrderFrom(scope, asked);
  if (marked !== undefined && firingOrder !== undefined && !firingOrder.includes(marked)) {
    return failure({ input: 'marked', code: 'no-such-cylinder', message: `This engine has no cylinder ${marked}. Its cylinders are 1 to ${firingOrder.length}.` });
  }
  const warm = selected(scope, 'warm')?.value !== 'no';
  return success({
    decimalMark,
    ...answered({
      firingOrder,
      markedCylinder: marked,
      supply: supply === undefined ? undefined : { value: supply, standardUncertainty: supplyUncertainty },
      clampPercent: clamp,
      side: sideFrom(scope, asked),
      firstTopDeadCentre: top,
      displacement,
      stored: speed === undefined || load === undefined ? undefined : { speed, load, warm },
    }),
  });
}
