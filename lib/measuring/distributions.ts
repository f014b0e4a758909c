import { incompleteGamma, logGamma } from './gamma-function';

/** Chance that a standard normal variable is below z. `normalBelow(1.959964)` is 0.975. */
export function normalBelow(z: number): number {
  const half = 0.5 * incompleteGamma(0.5, (z * z) / 2);
  return z >= 0 ? 0.5 + half : 0.5 - half;
}

/** Chance that chi-square with `freedom` > 0 is below x ≥ 0. `chiSquareBelow(5.9915, 2)` is 0.95. */
export function chiSquareBelow(x: number, freedom: number): number {
  return incompleteGamma(freedom / 2, x / 2);
}

/** The x that chi-square with `freedom` > 0 stays below with chance p, 0 < p < 1. */
export function chiSquareQuantile(p: number, freedom: number): number {
  expectShare('chiSquareQuantile', p);
  return solveIncreasing((x) => chiSquareBelow(x, freedom) - p, 0, Math.max(10, 4 * freedom));
}

/** Chance that Student's t with `freedom` > 0 (also fractional or infinite) is below t. */
export function studentBelow(t: number, freedom: number): number {
  if (!(freedom > 0)) throw new Error(`studentBelow: got ${freedom} degrees of freedom, expected more than 0`);
  if (freedom === Number.POSITIVE_INFINITY) return normalBelow(t);
  const tail = 0.5 * incompleteBeta(freedom / 2, 0.5, freedom / (freedom + t * t));
  return t >= 0 ? 1 - tail : tail;
}

/** The t that Student's t stays below with chance p. `studentQuantile(0.975, 2)` is 4.30265 (NIST TN 1297, table B.1: 4.30). */
export function studentQuantile(p: number, freedom: number): number {
  expectShare('studentQuantile', p);
  if (p < 0.5) return -studentQuantile(1 - p, freedom);
  return solveIncreasing((t) => studentBelow(t, freedom) - p, 0, 10);
}

/** Coverage factor of a two-sided 95 % interval. `coverageFactor95(2)` is 4.30265; infinite freedom gives 1.95996. */
export function coverageFactor95(freedom: number): number {
  return studentQuantile(0.975, freedom);
}

/**
 * Regularised incomplete beta function I_x(a, b), a, b > 0, 0 ≤ x ≤ 1: the chance that a beta variable is below x.
 * Continued fraction; the mirrored form is used where it converges faster.
 */
export function incompleteBeta(a: number, b: number, x: number): number {
  if (!(a > 0) || !(b > 0) || !(x >= 0 && x <= 1)) {
    throw new Error(`incompleteBeta: got a = ${a}, b = ${b}, x = ${x}, expected a, b > 0 and x from 0 to 1`);
  }
  if (x === 0 || x === 1) return x;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  if (x < (a + 1) / (a + b + 2)) return (front * betaFraction(a, b, x)) / a;
  return 1 - (front * betaFraction(b, a, 1 - x)) / b;
}

/** The x that a beta variable stays below with chance p, 0 < p < 1. */
export function betaQuantile(p: number, a: number, b: number): number {
  expectShare('betaQuantile', p);
  let low = 0;
  let high = 1;
  for (let step = 0; step < 200 && high - low > 1e-16; step += 1) {
    const middle = (low + high) / 2;
    if (incompleteBeta(a, b, middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Chance that |T′| exceeds t when T′ is non-central t with `freedom` and offset `delta`: the power of a two-sided t
 * test. Direct integration over the spread estimate, because closed forms lose all digits in the far tail.
 */
export function studentPower(t: number, freedom: number, delta: number): number {
  const logScale = Math.LN2 + (freedom / 2) * Math.log(freedom / 2) - logGamma(freedom / 2);
  const density = (s: number): number => (s === 0 ? (freedom === 1 ? Math.exp(logScale) : 0) : Math.exp(logScale + (freedom - 1) * Math.log(s) - (freedom * s * s) / 2));
  const missed = (s: number): number => (normalBelow(t * s - delta) - normalBelow(-t * s - delta)) * density(s);
  return 1 - simpson(missed, 0, 1 + 8 / Math.sqrt(2 * freedom), 400);
}

/** Root of an increasing function at or above `low`, to `relative` of itself; the upper end is pushed out until it brackets the root. */
export function solveIncreasing(distance: (x: number) => number, low: number, firstHigh: number, relative = 1e-14): number {
  let below = low;
  let above = firstHigh;
  while (distance(above) < 0 && above < 1e300) above *= 2;
  for (let step = 0; step < 300 && above - below > relative * Math.max(1e-300, Math.abs(above)); step += 1) {
    const middle = (below + above) / 2;
    if (distance(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}

function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / nonZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= 1000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonZero(1 + even * d);
    c = nonZero(1 + even / c);
    value *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonZero(1 + odd * d);
    c = nonZero(1 + odd / c);
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return value;
}

function nonZero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

function simpson(f: (x: number) => number, from: number, to: number, evenCount: number): number {
  const width = (to - from) / evenCount;
  let sum = f(from) + f(to);
  for (let index = 1; index < evenCount; index += 1) sum += (index % 2 === 1 ? 4 : 2) * f(from + index * width);
  return (sum * width) / 3;
}

function expectShare(name: string, p: number): void {
  if (!(p > 0 && p < 1)) throw new Error(`${name}: got chance ${p}, expected more than 0 and less than 1`);
}
