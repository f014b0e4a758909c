/**
 * Flow error, a share, when filament of diameter `actual` is fed as if it had `assumed` (same unit): (d/d₀)² − 1. 1.80 for 1.75:
 * +5.80 %. Source: motion sheet 4.2. Throws unless both are above 0.
 */
export function flowErrorFromDiameter(actual: number, assumed: number): number {
  aboveZero('flowErrorFromDiameter', actual, assumed);
  return (actual / assumed) ** 2 - 1;
}

/** Factor on the flow that makes up for it: (d₀/d)². 1.72 for 1.75: 1.0352. */
export function flowFactorForDiameter(actual: number, assumed: number): number {
  aboveZero('flowFactorForDiameter', actual, assumed);
  return (assumed / actual) ** 2;
}

/** Diameter of the round filament with the area of an oval one: √(d₁·d₂). 1.71 × 1.79: 1.7495. */
export function diameterOfOval(across: number, turned: number): number {
  aboveZero('diameterOfOval', across, turned);
  return Math.sqrt(across * turned);
}

function aboveZero(name: string, ...values: readonly number[]): void {
  const wrong = values.find((value) => !(value > 0));
  if (wrong !== undefined) throw new Error(`${name}: got ${wrong}, expected diameters above 0`);
}
