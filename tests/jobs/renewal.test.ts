/** Renew now or in a visit of its own: level where chance × later = now. A part's price in minutes is the book's own table (none 0, low 15, medium 60, high 180); sums by hand. */
import { describe, expect, it } from 'vitest';
import { partCostMinutes } from '../../src/domain/diagnosis/costs.ts';
import { renewalTradeOff } from '../../src/domain/jobs/renewal.ts';

const renewal = { part: 'Boot', why: 'It tears when it comes off.' };

describe('renewalTradeOff', () => {
  it('rests on these prices', () => {
    expect(partCostMinutes).toEqual({ none: 0, low: 15, medium: 60, high: 180 });
  });

  it.each([
    { label: 'cheap and hard to reach', minutesNow: 5, minutesLater: 85, partCost: 'low', now: 20, later: 100, breakEven: 0.2, says: 'above 20 %' },
    { label: 'dear and easy to reach', minutesNow: 20, minutesLater: 60, partCost: 'high', now: 200, later: 240, breakEven: 0.8333, says: 'above 83 %' },
    { label: 'no gain in doing it now', minutesNow: 30, minutesLater: 30, partCost: 'medium', now: 90, later: 90, breakEven: 1, says: 'renew it now only if it is bad already' },
    { label: 'dearer now', minutesNow: 40, minutesLater: 25, partCost: 'low', now: 55, later: 40, breakEven: 1.375, says: 'renew it now only if it is bad already' },
    { label: 'costs nothing now', minutesNow: 0, minutesLater: 30, partCost: 'none', now: 0, later: 30, breakEven: 0, says: 'costs nothing more' },
    { label: 'costs nothing at all', minutesNow: 0, minutesLater: 0, partCost: 'none', now: 0, later: 0, breakEven: 0, says: 'costs nothing more' },
  ] as const)('$label', ({ minutesNow, minutesLater, partCost, now, later, breakEven, says }) => {
    const tradeOff = renewalTradeOff({ ...renewal, minutesNow, minutesLater, partCost });
    expect(tradeOff).toMatchObject({ nowMinutes: now, laterMinutes: later });
    expect(tradeOff.breakEven).toBeCloseTo(breakEven, 4);
    expect(tradeOff.sentence).toContain(says);
    expect(tradeOff.sentence).toContain(`about ${now} minutes`);
  });
});
