import { entryRule } from './rule.ts';

/** What keeps a list from naming 1 to `cylinders` once each; undefined when nothing does. */
function fault(list: readonly number[], cylinders: number): string | undefined {
  const all = Array.from({ length: cylinders }, (_, index) => index + 1);
  const missing = all.filter((number) => !list.includes(number));
  const twice = all.filter((number) => list.filter((entry) => entry === number).length > 1);
  const strange = list.filter((number) => number > cylinders);
  const parts = [
    missing.length > 0 ? `without ${missing.join(', ')}` : '',
    twice.length > 0 ? `with ${twice.join(', ')} more than once` : '',
    strange.length > 0 ? `with ${strange.join(', ')}, which a ${cylinders}-cylinder engine does not have` : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(' and ') : undefined;
}

export const firingOrdersNameEachCylinderOnce = entryRule(
  'engines',
  'firing-orders-name-each-cylinder-once',
  'Companions, coil pairs and neighbours are worked out from the firing order and the banks.',
  (engine, report) => {
    const expected = `each cylinder from 1 to ${engine.cylinders} once`;
    const inOrder = fault(engine.firingOrder, engine.cylinders);
    if (inOrder !== undefined) report(['firingOrder'], { found: `${engine.firingOrder.join('-')} ${inOrder}`, expected });
    const inBanks = fault(engine.banks.flat(), engine.cylinders);
    if (inBanks !== undefined) report(['banks'], { found: `banks ${inBanks}`, expected: `${expected}, over all banks together` });
    if ((engine.form === 'inline') !== (engine.banks.length === 1)) {
      report(['banks'], { found: `${engine.banks.length} in an engine of the form ${engine.form}`, expected: engine.form === 'inline' ? '1 bank' : '2 banks' });
    }
  },
);
