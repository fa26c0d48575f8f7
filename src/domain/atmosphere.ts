/*
 * The standard atmosphere up to 11 km, as set down in the U.S. Standard Atmosphere 1976; the same as ISO 2533 in this layer.
 * Constants are those of the document, recalled; worked pressures were compared with public tables.
 */

/** Pressure at sea level, kPa. */
export const seaLevelPressure = 101.325;
/** Temperature at sea level, K. */
export const seaLevelTemperature = 288.15;
/** How much colder it gets, K per metre of geopotential height. */
export const temperatureLapse = 0.0065;
/** Gravity times the molar mass of air over gas constant times lapse; no dimension. */
export const pressureExponent = 5.25588;
/** The radius of the earth that the document takes, m. */
export const earthRadius = 6_356_766;
/** Highest geopotential height this layer reaches, m. */
export const topOfLayer = 11_000;

/** Geopotential height, m, of a height as maps give it, m: gravity weakens with height, and this makes up for it. */
export function geopotentialHeight(altitude: number): number {
  return (earthRadius * altitude) / (earthRadius + altitude);
}

/** Temperature of the standard atmosphere, K, at a height as maps give it, m, from a little below the sea to 11 km. */
export function temperatureAtAltitude(altitude: number): number {
  return seaLevelTemperature - temperatureLapse * geopotentialHeight(altitude);
}

/** Pressure over pressure at sea level, at a height as maps give it, m, from a little below the sea to 11 km. */
export function pressureFactorAtAltitude(altitude: number): number {
  return (temperatureAtAltitude(altitude) / seaLevelTemperature) ** pressureExponent;
}

/** Outside pressure of the standard atmosphere, kPa, at a height as maps give it, m, from a little below the sea to 11 km. */
export function pressureAtAltitude(altitude: number): number {
  return seaLevelPressure * pressureFactorAtAltitude(altitude);
}
