import { perCent } from '../../domain/diagnosis/labels.ts';
import { windowOfFrame, windowWords } from '../../domain/jobs/similarRun.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { chosenConfidence, confidenceKey, confidences } from './confidence.ts';
import { countForm } from './countForm.ts';
import { handOverForm } from './handOverSection.ts';
import { button, fold, list, paragraph } from './parts.ts';
import { proofCheckFolds } from './proofChecks.ts';
import { runForm, usualSpeed } from './runForm.ts';
import { codesForm, frameFold } from './takeInForms.ts';

/** What proof still lacks, and the next thing to do for it. */
export function proofSection(bench: Bench): Node[] {
  const { proof, live } = bench.session.derived;
  const repairAt = live.findLastIndex((event) => event.kind === 'repair-done');
  const cleared = live.slice(repairAt + 1).some((event) => event.kind === 'codes-cleared');
  const lacking = list('still-missing', proof.missing);
  return [
    ...(lacking ? [paragraph('still-missing-head', 'Still missing for proof:'), lacking] : []),
    ...(cleared ? [] : [button('codes-cleared', 'main-action', 'Codes are cleared', () => bench.session.add({ body: { kind: 'codes-cleared' } }))]),
    ...(proof.rateBefore === undefined ? countForm(bench) : []),
    element('div', { class: 'proof-run' }, paragraph('lead', aimWords(bench)), confidenceChoice(bench), runForm(bench)),
    fold(bench.memory, 'reread', 'reread', ['Codes read again after the run'], () => codesForm(bench, 'codes-reread')),
    ...proofCheckFolds(bench),
    frameFold(bench),
    fold(bench.memory, 'unproven', 'unproven', ['Hand over without proof'], () => [handOverForm(bench, false)]),
  ];
}

function aimWords(bench: Bench): string {
  const { proof, frame } = bench.session.derived;
  const where = frame
    ? `Run it as it ran when ${frame.code === '' ? 'the code' : frame.code} was stored: ${windowWords(windowOfFrame(frame))}.`
    : 'Run it at the speed, load and warmth at which it misfired.';
  const needed = proof.revolutionsNeeded;
  if (needed === undefined) return where;
  const minutes = Math.ceil(Math.max(0, needed - proof.revolutionsRun) / usualSpeed);
  return `${needed} quiet revolutions leave ${perCent(1 - confidenceOf(bench))} of doubt; about ${minutes} more minutes at ${usualSpeed} rpm. ${where}`;
}

function confidenceOf({ memory }: Bench): number {
  return chosenConfidence({ get: (key) => memory.text(key) });
}

/** How sure the proof must be. It changes what is asked of the run, not what happened, so it is no entry of the record. */
function confidenceChoice(bench: Bench): HTMLElement {
  const chosen = confidenceOf(bench);
  const options = confidences.map((one) => element('option', { value: one, selected: one === chosen }, `${Math.round(one * 100)} %`));
  const select = element('select', { id: 'confidence' }, ...options);
  select.addEventListener('change', () => {
    bench.memory.setText(confidenceKey, select.value);
    bench.session.derive();
  });
  return element('p', { class: 'field' }, element('label', { for: 'confidence' }, 'How sure the proof must be'), select);
}
