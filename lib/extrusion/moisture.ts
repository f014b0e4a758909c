/**
 * Water in filament, SI. Drying tables assume dry-air dryers and differ by a factor of two between publishers; show ranges.
 */

/**
 * Time, s, until a share (0 to 1, not 1) of the water has left a round thread of radius R (m), D in m²/s: share = 1 − Σ 4/βₙ²·exp(−βₙ²·D·t/R²), βₙ
 * the zeros of J₀. Source: motion sheet 4.8 (0.0631, 0.3344 R²/D for 50, 90 %; its 0.4544 for 95 % should read 0.4543). 1.75 mm, 1e-11 m²/s, 95 %: 9.7 h.
 */
export function dryingTime(radius: number, diffusivity: number, share: number): number {
  if (!(radius > 0) || !(diffusivity > 0) || !(share > 0 && share < 1)) throw new Error(`dryingTime: got R ${radius}, D ${diffusivity}, share ${share}, expected R, D above 0 and a share between 0 and 1`);
  let low = 0;
  let high = 10;
  for (let step = 0; step < 100; step += 1) {
    const middle = (low + high) / 2;
    if (driedShare(middle) < share) low = middle;
    else high = middle;
  }
  return (low * radius ** 2) / diffusivity;
}

/** Share of the water that has left after the Fourier time Dt/R². */
export function driedShare(fourierTime: number): number {
  if (fourierTime <= 0) return 0;
  // Below this the series needs very many terms; the law of a slightly curved surface holds there to 1e-6.
  if (fourierTime < 1e-4) return 4 * Math.sqrt(fourierTime / Math.PI) - fourierTime;
  let left = 0;
  for (let n = 1; n <= 200; n += 1) {
    const beta = besselZero(n);
    left += (4 / beta ** 2) * Math.exp(-(beta ** 2) * fourierTime);
  }
  return Math.max(0, 1 - left);
}

/** Zeros of J₀: the first three as tabulated (from memory, checked in the tests), the rest by McMahon's series, good to 1e-8. */
function besselZero(n: number): number {
  const known = [2.404_825_557_695_773, 5.520_078_110_286_311, 8.653_727_912_911_013][n - 1];
  if (known !== undefined) return known;
  const b = (n - 0.25) * Math.PI;
  return b + 1 / (8 * b) - 124 / (3 * (8 * b) ** 3) + 120_928 / (15 * (8 * b) ** 5);
}

/** Molar gas constant, J/(mol·K), and molar mass of water, kg/mol. */
const GAS = 8.314_462_618;
const WATER = 0.018_015_28;

/**
 * Volume of vapour, m³ per kg of plastic, from a mass share of water at a temperature (K) and pressure (Pa), as an ideal gas. 0.1 % at
 * 200 °C and 101 325 Pa: 2.16 cm³ per gram, more than the plastic itself. Source: motion sheet 4.7.
 */
export function vapourVolume(waterShare: number, temperature: number, pressure = 101_325): number {
  return (waterShare * GAS * temperature) / (WATER * pressure);
}
