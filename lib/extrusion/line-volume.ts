/**
 * Volume of a printed line, SI: m, m², m³/s. Steady extrusion, line supported on both sides. Source: motion sheet 4.1.
 */

/** A line with rounded flanks lacks this share of h² against a rectangle: 1 − π/4 = 0.2146. */
export const FLANK = 1 - Math.PI / 4;

/** Cross-section as a plain rectangle, m²: w·h. 0.45 × 0.2 mm is 0.0900 mm². */
export function rectangleArea(width: number, height: number): number {
  aboveZero('rectangleArea', width, height);
  return width * height;
}

/**
 * Cross-section with half-round flanks, m²: w·h − (1 − π/4)·h². Needs w ≥ h; throws otherwise, since such a line is a falling
 * thread and not a line. 0.45 × 0.2 mm is 0.081416 mm².
 */
export function roundedArea(width: number, height: number): number {
  aboveZero('roundedArea', width, height);
  if (width < height) throw new Error(`roundedArea: got width ${width} below height ${height}, expected a line at least as wide as high`);
  return width * height - FLANK * height ** 2;
}

/** Width, m, of a line with rounded flanks that holds `area` (m²) at a height (m): A/h + (1 − π/4)·h. */
export function widthOfRounded(area: number, height: number): number {
  aboveZero('widthOfRounded', area, height);
  return area / height + FLANK * height;
}

/** Distance between neighbouring rounded lines, m, that leaves no gaps: w − (1 − π/4)·h. */
export function spacingWithoutGaps(width: number, height: number): number {
  aboveZero('spacingWithoutGaps', width, height);
  return width - FLANK * height;
}

/** Area of round filament, m²: π·d²/4. 1.75 mm is 2.405282 mm². */
export function filamentArea(diameter: number): number {
  aboveZero('filamentArea', diameter);
  return (Math.PI * diameter ** 2) / 4;
}

/** Filament fed per length of line, no unit: A_line/A_filament. The rounded 0.45 × 0.2 mm line from 1.75 mm: 0.033849. */
export function feedPerLength(lineArea: number, diameter: number): number {
  return lineArea / filamentArea(diameter);
}

/** Flow, m³/s: A·v. The rounded 0.45 × 0.2 mm line at 60 mm/s: 4.885 mm³/s. */
export function lineFlow(lineArea: number, speed: number): number {
  return lineArea * speed;
}

/** Speed of the filament, m/s: Q/A_filament. 4.885 mm³/s from 1.75 mm: 2.031 mm/s. */
export function filamentSpeed(flow: number, diameter: number): number {
  return flow / filamentArea(diameter);
}

function aboveZero(name: string, ...values: readonly number[]): void {
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined) throw new Error(`${name}: got ${wrong}, expected lengths above 0`);
}
