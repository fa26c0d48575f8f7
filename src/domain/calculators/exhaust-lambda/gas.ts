/** Dry exhaust gas: carbon gases and oxygen in % by volume; unburnt fuel already turned into % of carbon atoms. */
export interface Gas {
  readonly co: number;
  readonly co2: number;
  readonly o2: number;
  /** Nitric oxide, % by volume. */
  readonly no: number;
  /** Carbon in unburnt fuel, % by volume. */
  readonly fuelCarbon: number;
}

/** Atoms of hydrogen and of oxygen for each of carbon in the fuel. */
export interface Fuel {
  readonly hydrogenCarbon: number;
  readonly oxygenCarbon: number;
}

/** Water-gas constant of the equation: how burnt gas shares its oxygen between carbon and hydrogen. OIML R 99, recalled. */
const waterGas = 3.5;
/** Molecules of nitrogen that come with each of oxygen. Heywood, section 3.2, recalled. */
const nitrogenPerOxygen = 3.773;

/** Oxygen molecules that burn one carbon atom of the fuel with its hydrogen. */
function oxygenPerCarbon({ hydrogenCarbon, oxygenCarbon }: Fuel): number {
  return 1 + hydrogenCarbon / 4 - oxygenCarbon / 2;
}

/**
 * Lambda by the Brettschneider equation. `co` + `co2` must be above zero. OIML R 99, recalled.
 * K/(K + CO/CO2) is written K·CO2/(K·CO2 + CO), which also holds without any CO2.
 */
export function lambdaFrom(gas: Gas, fuel: Fuel): number {
  const { co, co2, o2, no, fuelCarbon } = gas;
  const burnt = co + co2;
  const water = (fuel.hydrogenCarbon / 4) * ((waterGas * co2) / (waterGas * co2 + co));
  const oxygen = co2 + co / 2 + o2 + no / 2 + (water - fuel.oxygenCarbon / 2) * burnt;
  return oxygen / (oxygenPerCarbon(fuel) * (burnt + fuelCarbon));
}

/** Dry gas, % by volume, of a whole burn at this lambda: oxygen left over above 1, carbon monoxide and hydrogen below. */
export function burntGas(lambda: number, fuel: Fuel): { readonly co: number; readonly co2: number; readonly o2: number } {
  const needed = oxygenPerCarbon(fuel);
  const short = Math.max(0, 2 * needed * (1 - lambda));
  const co = carbonMonoxide(short, fuel.hydrogenCarbon);
  const o2 = Math.max(0, needed * (lambda - 1));
  const share = 100 / (1 + (short - co) + o2 + nitrogenPerOxygen * needed * lambda);
  return { co: co * share, co2: (1 - co) * share, o2: o2 * share };
}

/**
 * Carbon monoxide for each carbon atom when `short` oxygen atoms are lacking: hydrogen lacks the rest, and
 * CO·H2O / (CO2·H2) is the water-gas constant K. Solved as (1 − K)c² + (y/2 − d + K + K·d)c − K·d = 0.
 */
function carbonMonoxide(short: number, hydrogenCarbon: number): number {
  const linear = hydrogenCarbon / 2 - short + waterGas + waterGas * short;
  const root = Math.sqrt(linear ** 2 + 4 * (1 - waterGas) * waterGas * short);
  return (2 * waterGas * short) / (linear + root);
}
