import { describeEvent } from '../../domain/jobs/describe.ts';
import type { JobEvent } from '../../domain/jobs/types.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { timeText } from './identity.ts';
import { pictureFigure } from './pictureFigure.ts';
import { button, paragraph } from './parts.ts';

/** Everything that happened, latest first. Each entry can be undone and brought back; none is ever lost. */
export function timeline(bench: Bench): HTMLElement {
  const { job } = bench.session;
  const entries = job.events.filter((event) => event.kind !== 'undone').toReversed();
  if (entries.length === 0) return paragraph('lead', 'Nothing yet.');
  return element('ol', { class: 'timeline' }, ...entries.map((event) => entry(bench, event)));
}

function entry(bench: Bench, event: JobEvent): HTMLElement {
  const undone = bench.session.derived.undone.has(event.id);
  const { title, lines } = describeEvent(event, { decimalMark: bench.settings.decimalMark });
  const words = undone ? 'Bring back' : 'Undo';
  const undo = button(`undo-${event.id}`, 'undo', words, () => bench.session.undo(event.id));
  undo.setAttribute('aria-label', `${words}: ${title}`);
  return element(
    'li',
    { class: undone ? 'entry is-undone' : 'entry', id: `entry-${event.id}` },
    element('time', { datetime: event.at, class: 'entry-time' }, timeText(event.at)),
    element('p', { class: 'entry-title' }, undone ? element('s', {}, title) : title, undone ? ' (undone)' : undefined),
    ...lines.map((line) => paragraph('entry-line', line)),
    event.kind === 'picture' && !undone ? pictureFigure(event, event.caption) : undefined,
    event.kind === 'calculation' ? element('p', { class: 'entry-line' }, element('a', { href: bookAddress(event.address) }, whereFrom(event.address))) : undefined,
    undo,
  );
}

function whereFrom(address: string): string {
  return address.startsWith('captures/') ? 'The page that read it' : 'The calculator with these figures';
}
