import { accessStates } from '../../domain/diagnosis/types.ts';
import type { AccessState } from '../../domain/diagnosis/types.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { fold, paragraph } from './parts.ts';

const words: Readonly<Record<AccessState, string>> = { 'cover-off': 'Engine cover off', 'plugs-out': 'Plugs out', raised: 'On the lift' };

/** How far the car is opened up: what is open already is not charged again, so each tick changes the advice at once. */
export function accessTicks(bench: Bench): HTMLElement {
  const { access } = bench.session.derived;
  const open = accessStates.filter((state) => access.includes(state)).map((state) => words[state].toLowerCase());
  const state = open.length === 0 ? 'closed up' : open.join(', ');
  return fold(bench.memory, 'access', 'access', [`The car as it stands: ${state}`], () => [
    paragraph('field-hint', 'What is open already is not reckoned again.'),
    element('div', { role: 'group', 'aria-labelledby': 'access-summary' }, ...accessStates.map((one) => tick(bench, one))),
  ]);
}

function tick(bench: Bench, state: AccessState): HTMLElement {
  const { access } = bench.session.derived;
  const id = `access-${state}`;
  const box = element('input', { id, type: 'checkbox', checked: access.includes(state) });
  box.addEventListener('change', () => {
    const open = accessStates.filter((one) => (one === state ? box.checked : access.includes(one)));
    bench.session.add({ body: { kind: 'access', open } });
  });
  return element('p', { class: 'field tick' }, box, element('label', { for: id }, words[state]));
}
