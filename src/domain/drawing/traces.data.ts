import type { Point } from './sketch.ts';

/** Points as pairs across and down, in units of the drawing. Shapes only: no trace here has a scale. */
function points(...pairs: readonly (readonly [number, number])[]): readonly Point[] {
  return pairs.map(([x, y]) => ({ x, y }));
}

/** High-tension side of one firing: rest, dip, charge, firing line, burn line. The swings follow. */
export const secondaryTrace = points(
  [14, 128], [38, 128], [38, 152], [42, 134], [46, 147], [50, 137], [54, 144], [58, 139], [66, 140], [90, 134], [116, 129],
  [117, 22], [119, 112], [122, 88], [126, 94], [140, 92], [165, 93], [190, 91], [203, 86], [206, 84],
);

/** Low-tension side of one firing: supply, floor, kick, burn line. The swings follow. */
export const primaryTrace = points(
  [14, 112], [38, 112], [38, 158], [70, 157], [100, 155], [116, 153],
  [117, 22], [120, 96], [123, 70], [127, 80], [140, 78], [170, 78], [196, 75], [206, 72],
);

/** Current of one coil while it charges. */
export const soundRamp = points([8, 160], [16, 160], [28, 134], [40, 110], [52, 88], [64, 68], [70, 60], [88, 60], [88, 160]);
export const shortedRamp = points([88, 160], [122, 160], [124, 92], [140, 82], [160, 69], [180, 54], [180, 160]);
export const resistanceRamp = points([180, 160], [216, 160], [226, 138], [236, 122], [246, 111], [258, 104], [272, 101], [284, 100], [284, 160], [294, 160]);
