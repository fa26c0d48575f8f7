import { sameTag } from './tags.ts';
import type { Action, LocalEntry, RemoteEntry, Step } from './types.ts';

/**
 * What one round has to do about each job. Only marks are compared, never clocks. Nothing is ever removed on either side: a job that
 * is gone from the server stays here, and one removed here stays there.
 */
export function planSync(local: readonly LocalEntry[], remote: readonly RemoteEntry[]): readonly Step[] {
  const there = new Map(remote.map((entry) => [entry.id, entry]));
  const here = new Set(local.map(({ id }) => id));
  const onlyThere = remote.filter(({ id }) => !here.has(id)).map(({ id, tag }): Step => ({ id, action: 'pull', tag }));
  return [...local.map((entry) => stepFor(entry, there.get(entry.id))), ...onlyThere];
}

function stepFor(entry: LocalEntry, remote: RemoteEntry | undefined): Step {
  const { id, mark, invented, agreed } = entry;
  if (invented) return { id, action: 'leave', because: 'invented' };
  if (mark === undefined) return { id, action: 'leave', because: 'removed-here' };
  if (remote === undefined) return agreed === undefined ? { id, action: 'push' } : { id, action: 'leave', because: 'gone-from-server' };
  return { id, action: actionFor(mark, agreed, remote), tag: remote.tag };
}

function actionFor(mark: string, agreed: LocalEntry['agreed'], remote: RemoteEntry): Action {
  if (agreed === undefined) return 'merge';
  const newHere = mark !== agreed.mark;
  const mayBeNewThere = !agreed.confirmed || !sameTag(agreed.tag, remote.tag);
  if (newHere) return mayBeNewThere ? 'merge' : 'push';
  return mayBeNewThere ? 'pull' : 'nothing';
}
