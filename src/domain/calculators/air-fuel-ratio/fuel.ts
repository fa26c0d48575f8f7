import { AIR_PER_MOLE_OF_OXYGEN } from '../../constants.ts';

/** Atoms in a molecule of fuel, or for each other in a mixture. */
export interface Atoms {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen: number;
}

/** Molar masses, g/mol. Heywood, equation 3.6, recalled. */
const massOf = { carbon: 12.011, hydrogen: 1.008, oxygen: 15.999 } as const;

/** Moles of oxygen that burn one mole of the fuel; nothing or less where it cannot burn. */
export function oxygenNeeded({ carbon, hydrogen, oxygen }: Atoms): number {
  return carbon + hydrogen / 4 - oxygen / 2;
}

/** Mass of air that just burns one mass of the fuel. Needs a fuel that has some mass. */
export function stoichiometricRatio(atoms: Atoms): number {
  const mass = massOf.carbon * atoms.carbon + massOf.hydrogen * atoms.hydrogen + massOf.oxygen * atoms.oxygen;
  return (AIR_PER_MOLE_OF_OXYGEN * oxygenNeeded(atoms)) / mass;
}

export interface Blend {
  readonly petrolRatio: number;
  readonly ethanolRatio: number;
  /** In the same unit as the density of ethanol. */
  readonly petrolDensity: number;
  readonly ethanolDensity: number;
}

/** Share of ethanol by mass, 0 to 1, of a blend with this share by volume, percent. */
export function ethanolMassFraction(volumePercent: number, { petrolDensity, ethanolDensity }: Blend): number {
  const ethanol = volumePercent * ethanolDensity;
  return ethanol / (ethanol + (100 - volumePercent) * petrolDensity);
}

/** Air a blend needs by mass: each part brings its own demand. */
export function blendRatio(volumePercent: number, blend: Blend): number {
  const share = ethanolMassFraction(volumePercent, blend);
  return share * blend.ethanolRatio + (1 - share) * blend.petrolRatio;
}
