/** A curve through points that never overshoots them: knots with ascending x, and the slope at each. */
export interface MonotoneCurve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

/**
 * The shape-keeping cubic through points: between two knots it stays between their values.
 * `x` strictly ascending, at least two points, same length as `y`; throws otherwise. Units are the caller's.
 * Source: "Monotone Piecewise Cubic Interpolation", SIAM J. Numer. Anal. 17 (1980) 238-246, with the weighted harmonic mean
 * inside and the three-point rule at the ends.
 * Worked: x 0,1,2,3,4 and y 150,135,105,60,0 give the slopes -7.5, -20, -36, -51.428571, -67.5.
 */
export function monotoneCurve(x: readonly number[], y: readonly number[]): MonotoneCurve {
  if (x.length !== y.length || x.length < 2) throw new Error(`monotoneCurve: got ${x.length} x and ${y.length} y, expected two or more of each`);
  const step = differences(x);
  const unordered = step.findIndex((width) => !(width > 0));
  if (unordered >= 0) throw new Error(`monotoneCurve: x must ascend, got ${at(x, unordered)} then ${at(x, unordered + 1)}`);
  const secant = differences(y).map((rise, k) => rise / at(step, k));
  const slope = x.map((_, k) => knotSlope(k, step, secant));
  return { x, y, slope };
}

/**
 * The value of the curve at `x`. Outside the first and last knot it throws: a curve says nothing there.
 * Worked: the curve of `monotoneCurve` at 0.5 is 144.0625.
 */
export function monotoneValue(curve: MonotoneCurve, x: number): number {
  const last = curve.x.length - 1;
  if (!(x >= at(curve.x, 0) && x <= at(curve.x, last))) {
    throw new Error(`monotoneValue: got ${x}, expected ${at(curve.x, 0)} to ${at(curve.x, last)}`);
  }
  let k = 0;
  while (k < last - 1 && x > at(curve.x, k + 1)) k += 1;
  const width = at(curve.x, k + 1) - at(curve.x, k);
  const t = (x - at(curve.x, k)) / width;
  return (
    at(curve.y, k) * (2 * t ** 3 - 3 * t ** 2 + 1) +
    width * at(curve.slope, k) * (t ** 3 - 2 * t ** 2 + t) +
    at(curve.y, k + 1) * (-2 * t ** 3 + 3 * t ** 2) +
    width * at(curve.slope, k + 1) * (t ** 3 - t ** 2)
  );
}

function knotSlope(k: number, step: readonly number[], secant: readonly number[]): number {
  if (secant.length === 1) return at(secant, 0);
  if (k === 0) return endSlope(at(step, 0), at(step, 1), at(secant, 0), at(secant, 1));
  const last = secant.length;
  if (k === last) return endSlope(at(step, last - 1), at(step, last - 2), at(secant, last - 1), at(secant, last - 2));
  const before = at(secant, k - 1);
  const after = at(secant, k);
  if (before * after <= 0) return 0;
  const weightBefore = 2 * at(step, k) + at(step, k - 1);
  const weightAfter = at(step, k) + 2 * at(step, k - 1);
  return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
}

function endSlope(nearStep: number, nextStep: number, near: number, next: number): number {
  const slope = ((2 * nearStep + nextStep) * near - nearStep * next) / (nearStep + nextStep);
  if (slope * near <= 0) return 0;
  if (near * next < 0 && Math.abs(slope) > 3 * Math.abs(near)) return 3 * near;
  return slope;
}

function differences(values: readonly number[]): number[] {
  return values.slice(1).map((value, k) => value - at(values, k));
}

function at(values: readonly number[], index: number): number {
  const value = values[index];
  if (value === undefined) throw new Error(`pchip: no value ${index} in a list of ${values.length}`);
  return value;
}
