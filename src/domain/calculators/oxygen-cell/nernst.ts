import { FARADAY_CONSTANT, MOLAR_GAS_CONSTANT, ZERO_CELSIUS } from '../../constants.ts';

const millivoltsPerVolt = 1000;
/** Each molecule of oxygen carries four electrons through the cell. */
const electrons = 4;

/** RT/4F, mV: what the cell gives for each factor e between its two sides. Temperature in °C. */
export function millivoltsPerFactor(temperature: number): number {
  const kelvin = temperature + ZERO_CELSIUS;
  return (millivoltsPerVolt * MOLAR_GAS_CONSTANT * kelvin) / (electrons * FARADAY_CONSTANT);
}

/** Voltage of the cell, mV, positive when the exhaust side holds less oxygen than the reference. Pressures above zero, in one unit. */
export function cellVoltage(temperature: number, oxygenPressure: number, referencePressure: number): number {
  return millivoltsPerFactor(temperature) * Math.log(referencePressure / oxygenPressure);
}

/** The oxygen pressure that gives this voltage, mV: the same equation solved for it, in the unit of the reference. */
export function oxygenPressureFrom(temperature: number, voltage: number, referencePressure: number): number {
  return referencePressure * Math.exp(-voltage / millivoltsPerFactor(temperature));
}
