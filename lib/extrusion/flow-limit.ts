/**
 * What limits the flow through a nozzle, SI. Orders of magnitude: use them to rank, not to set. Source: motion sheet 4.5, 4.6.
 */

/** Thermal diffusivity of molten plastic, m²/s; from memory (motion sheet 4.5). */
export const MELT_DIFFUSIVITY = 1e-7;

/**
 * Largest flow, m³/s, that still melts to the middle in a melt zone of length L (m): π·α·L/Fo, whatever the filament diameter. Fo 0.3
 * (hot enough) to 0.5 (well molten). 12 mm: 12.6 to 7.5 mm³/s.
 */
export function meltLimit(meltZone: number, fourier: number, diffusivity = MELT_DIFFUSIVITY): number {
  if (!(meltZone > 0) || !(fourier > 0) || !(diffusivity > 0)) throw new Error(`meltLimit: got L ${meltZone}, Fo ${fourier}, α ${diffusivity}, expected all above 0`);
  return (Math.PI * diffusivity * meltZone) / fourier;
}

/**
 * Factor on the pressure, at one flow, when a bore narrows from `before` to `after` (same unit): (before/after)^(3n+1). The exponent n
 * of the melt is 1 when Newtonian, about 0.5 for printing plastics. 0.40 to 0.35: 1.706 (n 1), 1.396 (n 0.5).
 */
export function pressureFactor(before: number, after: number, exponent: number): number {
  if (!(before > 0) || !(after > 0) || !(exponent > 0)) throw new Error(`pressureFactor: got ${before}, ${after}, n ${exponent}, expected all above 0`);
  return (before / after) ** (3 * exponent + 1);
}

/**
 * Factor on the pressure, in one bore, when the flow grows from `before` to `after` (same unit): (after/before)^n, n as above. Twice the
 * flow: 2 (n 1), 1.414 (n 0.5). Both above 0; throws otherwise. Source: the power law that `pressureFactor` rests on.
 */
export function pressureFactorOfFlow(before: number, after: number, exponent: number): number {
  if (!(before > 0) || !(after > 0) || !(exponent > 0)) throw new Error(`pressureFactorOfFlow: got ${before}, ${after}, n ${exponent}, expected all above 0`);
  return (after / before) ** exponent;
}

/** Pressure, Pa, that a force (N) on filament of a diameter (m) can build. 40 N on 1.75 mm: 16.6 MPa. */
export function filamentPressure(force: number, diameter: number): number {
  return force / ((Math.PI * diameter ** 2) / 4);
}

/**
 * Heater power, W, that a flow (m³/s) takes: ρ·Q·(c·ΔT + h), density kg/m³, c J/(kg·K), ΔT K, melting heat J/kg.
 * 10 mm³/s at 1240 kg/m³, 1800 J/(kg·K), 190 K, 30 kJ/kg: 4.6 W, far below any heater.
 */
export function meltingPower(flow: number, density: number, specificHeat: number, warming: number, meltingHeat = 0): number {
  return density * flow * (specificHeat * warming + meltingHeat);
}
