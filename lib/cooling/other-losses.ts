/** Heat that leaves without a fan, and heat that a line brings. Temperatures in K: never °C in a fourth power. */

const STEFAN_BOLTZMANN = 5.670374419e-8;
const GRAVITY = 9.80665;

/**
 * Radiation as a coefficient, W/(m²·K): eps·sigma·(T⁴ - Ta⁴)/(T - Ta). Temperatures in K, different from each other.
 * Worked: emissivity 0.95, 483.15 K in 298.15 K gives 13.6.
 */
export function radiationCoefficient(emissivity: number, surface: number, surroundings: number): number {
  return emissivity * STEFAN_BOLTZMANN * (surface ** 2 + surroundings ** 2) * (surface + surroundings);
}

/**
 * Natural convection from a hot plate facing up, W/(m²·K): Nu = 0.54·Ra^0.25 for 1e4 < Ra < 1e7, `length` = area/perimeter, m.
 * Worked: 12.5 mm, 373.15 K in 298.15 K gives 11.9 (just below the range).
 */
export function naturalConvection(length: number, surface: number, air: number, kinematicViscosity: number, conductivity: number): number {
  const film = (surface + air) / 2;
  const rayleigh = (GRAVITY * Math.abs(surface - air) * length ** 3 * 0.71) / (film * kinematicViscosity ** 2);
  return (0.54 * rayleigh ** 0.25 * conductivity) / length;
}

/** Temperature where two bodies meet, K: (e1·T1 + e2·T2)/(e1 + e2), e = sqrt(k·rho·cp). Worked: equal bodies at 210 and 60 °C meet at 135 °C. */
export function interfaceTemperature(effusivity1: number, temperature1: number, effusivity2: number, temperature2: number): number {
  return (effusivity1 * temperature1 + effusivity2 * temperature2) / (effusivity1 + effusivity2);
}

/**
 * Heat that a line gives up on its way to the target, W: rho·width·height·speed·cp·(from - to); lengths m, speed m/s.
 * Worked: PLA 0.45 × 0.2 mm at 60 mm/s from 210 to 60 °C gives 1.808.
 */
export function lineHeat(density: number, heatCapacity: number, width: number, height: number, speed: number, temperatureFall: number): number {
  return density * width * height * speed * heatCapacity * temperatureFall;
}

/** Area that air of coefficient h must wet to carry off that heat, m². Worked: 1.808 W, 75, 100 K gives 2.41e-4. */
export function areaToCool(heat: number, coefficient: number, temperatureDifference: number): number {
  return heat / (coefficient * temperatureDifference);
}
