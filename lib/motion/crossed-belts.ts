/** Cycles, teeth or metres that each motor of a machine with two crossed belts moved. */
export interface MotorPair {
  readonly a: number;
  readonly b: number;
}

/**
 * Belt movements of the two motors that belong to a shift of the nozzle: A = X + Y, B = X − Y. m. One motor alone moves both
 * axes by the same amount. Source: motion sheet 1.4. Shift +0.41, −0.39 mm is A 0.02, B 0.80 mm.
 */
export function motorsFromShift(x: number, y: number): MotorPair {
  return { a: x + y, b: x - y };
}

/** Shift of the nozzle that belongs to belt movements of the two motors, m. A 0.80, B 0 mm is +0.40, +0.40 mm. */
export function shiftFromMotors({ a, b }: MotorPair): { readonly x: number; readonly y: number } {
  return { x: (a + b) / 2, y: (a - b) / 2 };
}

/**
 * Steps of `spacing` (electrical cycle or tooth, m) that each motor lost, and the standard uncertainty of each: √2·u/spacing.
 * Shift +0.41, −0.39, u 0.05, spacing 0.8 mm: 0.025 and 1.00, each ± 0.088 standard.
 */
export function lostSteps(x: number, y: number, spacing: number, standard: number): MotorPair & { readonly standard: number } {
  if (!(spacing > 0)) throw new Error(`lostSteps: got spacing ${spacing}, expected more than 0`);
  const { a, b } = motorsFromShift(x, y);
  return { a: a / spacing, b: b / spacing, standard: (Math.SQRT2 * standard) / spacing };
}
