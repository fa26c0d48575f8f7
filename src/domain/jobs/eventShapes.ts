import { accessStates, complaintSigns, ignitionArrangements, injectionArrangements, opinionWeights } from '../diagnosis/types.ts';
import { either, isObject, list, number, object, oneOf, pair, table, text, time, trueOrFalse, whole } from '../shape.ts';
import type { Checked, Shape } from '../shape.ts';
import { lampStates, proofChecks, proofCheckStates } from './types.ts';
import type { JobEvent, JobEventKind } from './types.ts';

const id = text(64, { matches: /^[A-Za-z0-9][A-Za-z0-9-]*$/, saying: 'letters, digits and hyphens' });
const name = text(120, { matches: /^[a-z0-9]+([@-][a-z0-9]+)*$/, saying: 'a name in lower case with hyphens' });
const line = text(400);
const paragraph = text(20_000);
const longText = text(100_000);
/** A share out of a sum may overshoot 1 by the rounding of the sum. */
const share = number(0, 1 + 1e-6);
const count = whole(0, 1_000_000_000);
const temperature = number(-100, 1500);
const unit = text(20);
const minutes = number(0, 100_000);
/** rpm. */
const speed = number(0, 50_000);
/** Calculated load, percent. */
const load = number(0, 100);
const yesNoUnknown = oneOf(['yes', 'no', 'unknown']);
const returnedMisfire = oneOf(['same', 'different']);
/** As in the head of a job, and not empty. */
const title = text(300, { matches: /\S/, saying: 'a title with at least one letter' });

const head = { id, sequence: whole(1), at: time };
const place = object({ id: name, label: line });
const ignition = oneOf(ignitionArrangements);
const cylinder = whole(1, 16);

const layout = object({
  id: name,
  title: line,
  cylinders: cylinder,
  firingOrder: list(cylinder, 16),
  banks: list(list(cylinder, 16), 4),
  form: oneOf(['inline', 'vee', 'flat']),
  ignition,
  injection: oneOf(injectionArrangements),
  coilPairs: list(pair(cylinder), 8),
});

const makerFigure = object({ range: name, unit, from: line }, { low: number(), high: number(), referenceTemperature: temperature });
const code = object({ code: text(12), title: line }, { family: name, number: whole(1, 16) });
const codes = { text: longText, codes: list(code, 200), refused: list(line, 1000) };
const reading = either(oneOf(['open']), number(), 'a number or "open"');
const limits = object(
  { sourceId: name, sourceLabel: line },
  { low: number(), high: number(), referenceTemperature: temperature },
);

const figure = object({ name: text(60), label: line, text: paragraph });
/** Base64 of a file that begins as every JPEG does (FF D8 FF); nothing but letters, digits, + and /, so it can hold no markup. */
const jpeg = text(200_000, { matches: /^\/9j\/[A-Za-z0-9+/]*={0,2}$/, saying: 'a JPEG picture in Base64' });
const pixels = whole(1, 4000);
const answer = object({ question: line, answer: line, from: line });
/** It becomes a link, so it can lead nowhere but to a calculator of the book, or to its page for logs and traces. */
const calculatorAddress = text(20_000, { matches: /^(calculators\/[a-z0-9-]+\/(\?[^\s#]*)?|captures\/)$/, saying: 'the address of a calculator in this book' });

/** The shape of every kind of event, needed keys first, then those that may be left out. */
const eventShapes: { readonly [Kind in JobEventKind]: Shape<Extract<JobEvent, { kind: Kind }>> } = {
  'engine-chosen': object({
    ...head,
    kind: oneOf(['engine-chosen']),
    layout,
    description: paragraph,
    customerReference: line,
    makerFigures: list(makerFigure, 200),
  }),
  complaint: object({ ...head, kind: oneOf(['complaint']), text: paragraph, signs: list(oneOf(complaintSigns), 40) }, { lamp: oneOf(lampStates) }),
  'codes-read': object({ ...head, kind: oneOf(['codes-read']), ...codes }, { notRead: line }),
  'codes-reread': object({ ...head, kind: oneOf(['codes-reread']), ...codes }),
  'codes-cleared': object({ ...head, kind: oneOf(['codes-cleared']) }),
  'test-done': object(
    {
      ...head,
      kind: oneOf(['test-done']),
      test: name,
      title: line,
      place,
      outcomes: table(share, 40),
      outcome: line,
      note: paragraph,
    },
    { partner: place, reading: id, minutes },
  ),
  'test-not-possible': object(
    { ...head, kind: oneOf(['test-not-possible']), test: name, title: line, reason: paragraph },
    { place },
  ),
  'reading-taken': object(
    {
      ...head,
      kind: oneOf(['reading-taken']),
      range: name,
      title: line,
      text: line,
      value: reading,
      unit,
      leads: number(),
      temperature,
      meter: object({ name: line, percent: number(0, 100), counts: number(0, 1_000_000) }, { resolution: number(0) }),
      corrected: reading,
      expandedUncertainty: number(0),
      verdict: oneOf(['inside', 'below', 'above', 'too-close-to-call']),
      limits,
    },
    { test: name, place },
  ),
  'finding-made': object({
    ...head,
    kind: oneOf(['finding-made']),
    hypothesis: name,
    label: line,
    belief: share,
    supportedBy: list(line, 100),
  }),
  'part-matched': object(
    {
      ...head,
      kind: oneOf(['part-matched']),
      part: name,
      title: line,
      ticks: list(object({ feature: line, matches: trueOrFalse }), 60),
    },
    { answers: list(answer, 60), renewedWith: list(line, 60) },
  ),
  'repair-done': object({ ...head, kind: oneOf(['repair-done']), what: paragraph, hypothesis: name, minutes }),
  'misfires-counted': object({
    ...head,
    kind: oneOf(['misfires-counted']),
    misfires: count,
    revolutions: whole(1, 1_000_000_000),
    how: line,
  }),
  'proof-run': object(
    {
      ...head,
      kind: oneOf(['proof-run']),
      revolutions: count,
      minutes,
      misfires: count,
      similarConditions: yesNoUnknown,
      result: oneOf(['quiet', 'returned']),
    },
    { speed, load, misfire: returnedMisfire },
  ),
  'handed-over': object({ ...head, kind: oneOf(['handed-over']), to: line }, { unproven: paragraph }),
  note: object({ ...head, kind: oneOf(['note']), text: paragraph }),
  calculation: object({
    ...head,
    kind: oneOf(['calculation']),
    calculator: name,
    title: line,
    inputs: list(figure, 100),
    outputs: list(figure, 100),
    address: calculatorAddress,
  }),
  opinion: object(
    { ...head, kind: oneOf(['opinion']), fault: name, label: line, weight: oneOf(opinionWeights), reason: paragraph },
    { place },
  ),
  access: object({ ...head, kind: oneOf(['access']), open: list(oneOf(accessStates), accessStates.length) }),
  'frame-read': object({ ...head, kind: oneOf(['frame-read']), code: text(12), speed, warm: yesNoUnknown }, { load, coolant: temperature }),
  picture: object({ ...head, kind: oneOf(['picture']), caption: line, width: pixels, height: pixels, jpeg }),
  'proof-check': object({ ...head, kind: oneOf(['proof-check']), check: oneOf(proofChecks), state: oneOf(proofCheckStates), note: paragraph }),
  'came-back': object({ ...head, kind: oneOf(['came-back']), text: paragraph, misfire: returnedMisfire }),
  renamed: object({ ...head, kind: oneOf(['renamed']), title }),
  undone: object({ ...head, kind: oneOf(['undone']), undoes: id }),
};

const kinds = Object.keys(eventShapes) as JobEventKind[];
const kindShape = oneOf(kinds);

/** An event of any kind, in shape, or where it is not. */
export function checkEvent(value: unknown, at: string): Checked<JobEvent> {
  if (!isObject(value)) return { ok: false, at, problem: 'must be an object' };
  const kind = kindShape(value['kind'], `${at}.kind`);
  if (!kind.ok) return kind;
  const event = eventShapes[kind.value](value, at);
  return event.ok ? checkSense(event.value, at) : event;
}

/** What no single field can show: a layout whose cylinders do not add up would upset everything drawn from it. */
function checkSense(event: JobEvent, at: string): Checked<JobEvent> {
  if (event.kind !== 'engine-chosen') return { ok: true, value: event };
  const { cylinders, firingOrder, banks, coilPairs } = event.layout;
  const all = Array.from({ length: cylinders }, (_, index) => index + 1).join();
  const inOrder = (numbers: readonly number[]): string => [...numbers].sort((one, other) => one - other).join();
  if (inOrder(firingOrder) !== all) return { ok: false, at: `${at}.layout.firingOrder`, problem: 'must name every cylinder once' };
  if (inOrder(banks.flat()) !== all) return { ok: false, at: `${at}.layout.banks`, problem: 'must name every cylinder once' };
  if (coilPairs.flat().some((number) => number > cylinders)) {
    return { ok: false, at: `${at}.layout.coilPairs`, problem: 'names a cylinder the engine has not got' };
  }
  return { ok: true, value: event };
}
