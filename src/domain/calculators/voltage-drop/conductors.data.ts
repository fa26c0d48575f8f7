/**
 * Sizes of flexible copper conductors, mm², and their highest resistance at 20 °C, Ω/km: IEC 60228, class 5, plain wires.
 * Two public reproductions of the table agree up to 50 mm²; the rows above were read in one.
 */
export const flexibleConductors: readonly (readonly [area: number, ohmPerKilometre: number])[] = [
  [0.5, 39.0],
  [0.75, 26.0],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
  [35, 0.554],
  [50, 0.386],
  [70, 0.272],
  [95, 0.206],
  [120, 0.161],
];
