import { entryRule } from './rule.ts';

export const lowNotAboveHigh = entryRule(
  'ranges',
  'low-not-above-high',
  'With its ends the wrong way round a range calls every reading bad.',
  (range, report) => {
    if (range.low === undefined || range.high === undefined || range.low <= range.high) return;
    report(['low'], { found: `low ${range.low} above high ${range.high}`, expected: 'low at most as large as high' });
  },
);

export const copperRangesHaveAReferenceTemperature = entryRule(
  'ranges',
  'copper-ranges-have-a-reference-temperature',
  'Copper gains about 0.4 % of resistance per degree: without the temperature that the limits hold at, a warm winding is misjudged.',
  (range, report, book) => {
    const varies = book.quantities.get(range.quantity)?.variesWithTemperature;
    if (varies === 'copper' && range.referenceTemperature === undefined) {
      report(['referenceTemperature'], {
        found: 'nothing',
        expected: `the temperature in °C that the limits hold at, because ${range.quantity} varies as copper does`,
        example: 'referenceTemperature: 20',
      });
    }
  },
);

export const makersFigureComesFirst = entryRule(
  'ranges',
  'makers-figure-comes-first',
  "A general figure must never stand above the engine maker's own; only a standard or a regulation holds for every engine.",
  (range, report, book) => {
    const kind = book.sources.get(range.source.id)?.kind;
    if (range.makerFirst || kind === undefined || kind === 'standard' || kind === 'regulation') return;
    report(['makerFirst'], {
      found: `false, with a source of the kind ${kind}`,
      expected: 'true, unless the source is a standard or a regulation',
      example: 'makerFirst: true',
    });
  },
);
