import { entryRule } from './rule.ts';

export const laterNotBelowNow = entryRule(
  'parts',
  'later-not-below-now',
  'A visit of its own opens and closes the car once more, so it never takes less than the work done in the same visit.',
  (part, report) => {
    part.renewWith.forEach(({ minutesNow, minutesLater }, index) => {
      if (minutesLater >= minutesNow) return;
      report(['renewWith', index, 'minutesLater'], { found: `${minutesLater} minutes later, ${minutesNow} minutes now`, expected: `at least ${minutesNow}` });
    });
  },
);
