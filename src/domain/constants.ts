/** 0 °C on the absolute scale, K. NIST SP 811, exact by definition. */
export const ZERO_CELSIUS = 273.15;

/** Resistivity of standard annealed copper at 20 °C, Ω·mm²/m: 1/58. IEC 60028, recalled; also in an open article on the conductivity scale. */
export const COPPER_RESISTIVITY = 1 / 58;

/**
 * Temperatures below zero, °C, at which the straight line of resistance would reach nothing, counted positive: the k of the
 * resistance method. Read in a public extract of an electrical safety standard; IEC 60228 uses the same 234.5 for copper conductors (recalled).
 */
export const COPPER_INFERRED_ZERO = 234.5;
export const ALUMINIUM_INFERRED_ZERO = 225;

/** Molar gas constant, J/(mol·K). It follows exactly from the defining constants of the SI (SI Brochure, 9th edition), to ten digits. */
export const MOLAR_GAS_CONSTANT = 8.314462618;

/** Charge of a mole of electrons, C/mol. It follows exactly from the defining constants of the SI (SI Brochure, 9th edition), to ten digits. */
export const FARADAY_CONSTANT = 96485.33212;

/** Specific gas constant of dry air, J/(kg·K). Heywood, Internal Combustion Engine Fundamentals, recalled. */
export const AIR_GAS_CONSTANT = 287.05;

/** Density of air at 25 °C and one standard atmosphere that absolute load is reckoned with, g/l. SAE J1979 and ISO 15031-5, PID 43, recalled. */
export const ABSOLUTE_LOAD_AIR_DENSITY = 1.184;

/** Air that brings one mole of oxygen, g: 4.773 mol of air at 28.96 g/mol, rounded. Heywood, equation 3.6, recalled. */
export const AIR_PER_MOLE_OF_OXYGEN = 138.2;
