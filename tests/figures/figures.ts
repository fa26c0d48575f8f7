import type { FigureRange, ShopEngine, ShopFigure } from '../../src/domain/figures/types.ts';

/** Two ranges as a book may have them; the figures below are invented. */
export const ranges: readonly FigureRange[] = [
  { id: 'coil-primary', title: 'Coil primary resistance', unit: 'ohm', dimension: 'resistance', referenceTemperature: 20 },
  { id: 'plug-gap', title: 'Plug gap', unit: 'mm', dimension: 'length' },
];

export const coil: ShopFigure = {
  range: 'coil-primary',
  low: 0.4,
  high: 0.8,
  unit: 'ohm',
  referenceTemperature: 20,
  from: 'Invented repair data, page 14',
  enteredBy: 'The foreman',
  enteredOn: '2026-03-04',
};
export const gap: ShopFigure = { range: 'plug-gap', high: 0.9, unit: 'mm', from: 'Invented data, page 2', enteredBy: 'B', enteredOn: '2026-03-05' };
export const van: ShopEngine = { id: 'small-van', title: 'Small van', layout: 'three-inline', figures: [coil, gap] };

/** One field a line, so that a case can say on which line its fault stands. */
export const fileOfVan = `{
  "type": "ignition-bench-book/figures",
  "version": 1,
  "engines": [
    {
      "id": "small-van",
      "title": "Small van",
      "layout": "three-inline",
      "figures": [
        {
          "range": "coil-primary",
          "low": 0.4,
          "high": 0.8,
          "unit": "ohm",
          "referenceTemperature": 20,
          "from": "Invented repair data, page 14",
          "enteredBy": "The foreman",
          "enteredOn": "2026-03-04"
        },
        {
          "range": "plug-gap",
          "high": 0.9,
          "unit": "mm",
          "from": "Invented data, page 2",
          "enteredBy": "B",
          "enteredOn": "2026-03-05"
        }
      ]
    }
  ]
}
`;
