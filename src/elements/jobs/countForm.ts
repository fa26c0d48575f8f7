import type { Bench } from './bench.ts';
import { isRefusal, makeForm, wholeNumber } from './form.ts';

/** How often it misfired while the fault was there: without it no run can be called long enough. */
export function countForm(bench: Bench): Node[] {
  const form = makeForm(bench.memory, {
    name: 'count',
    submit: 'Keep the count',
    fields: [
      { name: 'misfires', label: 'Misfires counted before the repair', kind: 'line', keyboard: 'numeric', hint: 'By the counters of the control unit, or by ear over a minute at a known speed.' },
      { name: 'revolutions', label: 'In so many revolutions', kind: 'line', keyboard: 'numeric', start: '1000' },
      { name: 'how', label: 'How it was counted', kind: 'line' },
    ],
    take: (values) => {
      const misfires = wholeNumber(values('misfires'), 'misfires', 'Misfires', 1);
      if (isRefusal(misfires)) return misfires;
      const revolutions = wholeNumber(values('revolutions'), 'revolutions', 'Revolutions', 1);
      if (isRefusal(revolutions)) return revolutions;
      return () => bench.session.add({ body: { kind: 'misfires-counted', misfires, revolutions, how: values('how').trim() } });
    },
  });
  return [form];
}
