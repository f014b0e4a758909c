import { si, type Si } from '@/lib/units';

/** Air as the formulas of this room need it: density in kg/m³ and dynamic viscosity in Pa·s. */
export interface Air {
  readonly density: number;
  readonly viscosity: number;
}

/** Prandtl number of air between 0 °C and 100 °C, within 1 %. From memory. */
export const PRANDTL_NUMBER_OF_AIR = 0.71;

/** Pressure of the standard atmosphere at sea level, Pa (ISO 2533). */
export const STANDARD_PRESSURE = si('pressure', 101_325);

const ZERO_CELSIUS = 273.15;

/**
 * Air at a place: density and viscosity for `temperature` (K, 253 to 373), `pressure` (Pa) and relative `humidity` (0 to 1).
 * Uses `densityOfAir` and `viscosityOfAir`. Outside 253 to 373 K it throws: no printer works there.
 * Worked: 293.15 K, 101,325 Pa, 0.5 gives 1.19886 kg/m³ and 1.81332e-5 Pa·s.
 */
export function airAt(temperature: number, pressure: number, humidity: number): Air {
  return { density: densityOfAir(temperature, pressure, humidity), viscosity: viscosityOfAir(temperature) };
}

/**
 * Density of moist air, kg/m³, as an ideal mixture of dry air and vapour, with the Magnus formula for saturation.
 * `temperature` in K (253 to 373), `pressure` in Pa (above the vapour pressure), `humidity` 0 to 1.
 * Within 0.05 % of CIPM-2007 from 20 to 60 °C. Throws outside the ranges.
 * Worked: 293.15 K, 101,325 Pa, 0.5 gives 1.19886.
 */
export function densityOfAir(temperature: number, pressure: number, humidity: number): number {
  checkState(temperature, pressure, humidity);
  const celsius = temperature - ZERO_CELSIUS;
  const vapour = humidity * 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  if (vapour >= pressure) throw new Error(`densityOfAir: vapour pressure ${vapour} Pa is not below the air pressure ${pressure} Pa`);
  return (pressure - vapour) / (287.055 * temperature) + vapour / (461.52 * temperature);
}

/**
 * Density of moist air, kg/m³, by the CIPM-2007 formula with 400 ppm carbon dioxide.
 * Source: "Revised formula for the density of moist air (CIPM-2007)", Metrologia 45 (2008) 149-155.
 * Arguments as for `densityOfAir`; full accuracy for 15 to 27 °C and 600 to 1100 hPa, good to 1 % up to 60 °C.
 * Worked: 293.15 K, 101,325 Pa, 0.5 gives 1.19931.
 */
export function densityOfMoistAir(temperature: number, pressure: number, humidity: number): number {
  checkState(temperature, pressure, humidity);
  const vapourShare = vapourMoleFraction(temperature, pressure, humidity);
  const molarMassOfDryAir = 0.02896546;
  const molarMassOfWater = 0.01801528;
  const gasConstant = 8.314472;
  const dry = (pressure * molarMassOfDryAir) / (compressibility(temperature, pressure, vapourShare) * gasConstant * temperature);
  return dry * (1 - vapourShare * (1 - molarMassOfWater / molarMassOfDryAir));
}

/**
 * Dynamic viscosity of air, Pa·s, by Sutherland's formula. `temperature` in K, 100 to 1900 (within 2 %); throws at or below 0 K.
 * Source: US Standard Atmosphere 1976, equivalent form. Worked: 293.15 K gives 1.81332e-5.
 */
export function viscosityOfAir(temperature: number): number {
  checkAbsolute(temperature);
  return (1.716e-5 * (temperature / 273.15) ** 1.5 * (273.15 + 110.4)) / (temperature + 110.4);
}

/**
 * Thermal conductivity of air, W/(m·K). `temperature` in K; throws at or below 0 K.
 * Source: US Standard Atmosphere 1976, section on conductivity. Worked: 288.15 K gives 0.0253259.
 */
export function conductivityOfAir(temperature: number): number {
  checkAbsolute(temperature);
  return (2.64638e-3 * temperature ** 1.5) / (temperature + 245.4 * 10 ** (-12 / temperature));
}

/**
 * Air pressure at an altitude, Pa, in the standard atmosphere (ISO 2533). `altitude` in m, -500 to 9000; throws outside.
 * Worked: 1500 m gives 84,556 Pa.
 */
export function pressureAtAltitude(altitude: number): Si<'pressure'> {
  if (!(altitude >= -500 && altitude <= 9000)) throw new Error(`pressureAtAltitude: got ${altitude} m, expected -500 to 9000 m`);
  return si('pressure', STANDARD_PRESSURE * (1 - (0.0065 * altitude) / 288.15) ** 5.25588);
}

function vapourMoleFraction(temperature: number, pressure: number, humidity: number): number {
  const celsius = temperature - ZERO_CELSIUS;
  const saturation = Math.exp(
    1.2378847e-5 * temperature ** 2 - 1.9121316e-2 * temperature + 33.93711047 - 6.3431645e3 / temperature,
  );
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius ** 2;
  return (humidity * enhancement * saturation) / pressure;
}

function compressibility(temperature: number, pressure: number, vapourShare: number): number {
  const celsius = temperature - ZERO_CELSIUS;
  const ratio = pressure / temperature;
  const first =
    1.58123e-6 - 2.9331e-8 * celsius + 1.1043e-10 * celsius ** 2 +
    (5.707e-6 - 2.051e-8 * celsius) * vapourShare + (1.9898e-4 - 2.376e-6 * celsius) * vapourShare ** 2;
  return 1 - ratio * first + ratio ** 2 * (1.83e-11 - 0.765e-8 * vapourShare ** 2);
}

function checkState(temperature: number, pressure: number, humidity: number): void {
  if (!(temperature >= 253 && temperature <= 374)) throw new Error(`air: got ${temperature} K, expected 253 to 374 K`);
  if (!(pressure > 10_000 && pressure < 200_000)) throw new Error(`air: got ${pressure} Pa, expected 10,000 to 200,000 Pa`);
  if (!(humidity >= 0 && humidity <= 1)) throw new Error(`air: got humidity ${humidity}, expected 0 to 1`);
}

function checkAbsolute(temperature: number): void {
  if (!(temperature > 0)) throw new Error(`air: got ${temperature} K, expected a temperature above 0 K`);
}
