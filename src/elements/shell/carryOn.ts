import { bookAddress } from '../dom.ts';
import { readChoice } from '../storage/choices.ts';

/** The start page offers the job that is open: the job pages leave its id, engine and stage in a kept choice. */
export function carryOnDoor(): void {
  const door = document.querySelector<HTMLAnchorElement>('[data-jobs-door]');
  const kept = readChoice('open-job');
  if (!door || kept === '') return;
  const [id, engine, stage] = kept.split('\n');
  const title = door.querySelector('[data-jobs-door-title]');
  const text = door.querySelector('[data-jobs-door-text]');
  if (!id || !title || !text) return;
  door.href = `${bookAddress('jobs/bench/')}?job=${encodeURIComponent(id)}`;
  title.textContent = 'Carry on with the job';
  text.textContent = [engine, stage].filter(Boolean).join(', ');
}
