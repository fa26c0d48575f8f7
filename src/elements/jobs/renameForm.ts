import { titleOf } from '../../domain/jobs/account.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';

/** Another title for the job; the one before stays in the record. */
export function renameForm(bench: Bench): Node[] {
  const form = makeForm(bench.memory, {
    name: 'rename',
    submit: 'Rename the job',
    fields: [{ name: 'title', label: 'Title of the job', kind: 'line', start: titleOf(bench.session.job) }],
    take: (values) => {
      const title = values('title').trim();
      if (title === '') return missing('title', 'Give the job a title by which it is found again.');
      return () => bench.session.add({ body: { kind: 'renamed', title } });
    },
  });
  return [form];
}
