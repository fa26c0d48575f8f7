import { describe, expect, it } from 'vitest';
import { presentOutput } from '../../src/domain/calculators/present.ts';
import type { OutputDefinition } from '../../src/domain/calculators/definition.ts';

const output: OutputDefinition = { name: 'x', label: 'X', kind: 'quantity', unit: 'count', decimals: 0 };
const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('presentOutput', () => {
  it.each([
    { label: 'to the nearest', definition: output, value: 92.1, shown: '92' },
    { label: 'up, where too little would be unsafe', definition: { ...output, rounding: 'up' as const }, value: 92.1, shown: '93' },
    { label: 'up, but not for the noise of arithmetic', definition: { ...output, rounding: 'up' as const }, value: 100.0000000000001, shown: '100' },
  ])('rounds $label', ({ definition, value, shown }) => expect(presentOutput(definition, { value, unit: 'count' })).toBe(shown));

  // JCGM 100, 7.2.6: an uncertainty is given to at most two significant digits, and the value to the same place.
  it('rounds by the uncertainty where there is one, whatever the usual decimals', () => {
    expect(plain(presentOutput({ ...output, unit: 'ohm', decimals: 1 }, { value: 0.527345, unit: 'ohm' }, {}, 0.0413))).toBe('0.527 Ω');
    expect(plain(presentOutput({ ...output, unit: 'ohm', decimals: 1 }, { value: 0.527345, unit: 'ohm' }))).toBe('0.5 Ω');
  });
});
