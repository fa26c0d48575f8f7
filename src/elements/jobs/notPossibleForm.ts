import type { Place, TestModel } from '../../domain/diagnosis/types.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';

/** Leaves the test out here or everywhere, with the reason; it is not proposed again. */
export function notPossibleForm(bench: Bench, test: TestModel, place: Place): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'not-possible',
    submit: 'Leave it out',
    fields: [
      {
        name: 'where',
        label: 'Left out',
        kind: 'choice',
        start: 'here',
        choices: [
          { value: 'here', label: `At ${place.label} only` },
          { value: 'everywhere', label: 'Everywhere: the tool is not there' },
        ],
      },
      { name: 'reason', label: 'Why not', kind: 'line', hint: 'Such as: plug seized, tool not in the shop.' },
    ],
    take: (values) => {
      const reason = values('reason').trim();
      if (reason === '') return missing('reason', 'Say why, so that the sheet can say it too.');
      const at = values('where') === 'everywhere' ? {} : { place: { id: place.id, label: place.label } };
      return () => {
        bench.choose(undefined);
        bench.memory.setOpen('not-possible', false);
        return bench.session.add({ body: { kind: 'test-not-possible', test: test.id, title: test.title, reason, ...at } });
      };
    },
  });
}
