/**
 * Chance that an F ratio is at least `value` when nothing is behind it; `top` and `bottom` degrees of freedom above 0.
 * By the incomplete beta function (Lentz's continued fraction), relative error below 1e-10. Worked: F(2, 5) = 279.614 gives 7.392e-6.
 */
export function chanceOfF(value: number, top: number, bottom: number): number {
  if (!(value >= 0 && top > 0 && bottom > 0)) throw new Error(`chanceOfF: got ${value}, ${top}, ${bottom}, expected all above 0`);
  return incompleteBeta(bottom / 2, top / 2, bottom / (bottom + top * value));
}

/** Two-sided 95 % deviate of Student's t; `degrees` above 0. Worked: 5 gives 2.57058. */
export function studentDeviate95(degrees: number): number {
  let low = 0;
  let high = 1000;
  for (let round = 0; round < 80; round += 1) {
    const middle = (low + high) / 2;
    if (chanceOfF(middle * middle, 1, degrees) > 0.05) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(b, a, 1 - x);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  return front * continuedFraction(a, b, x);
}

function continuedFraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  const kept = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / kept(1 - ((a + b) * x) / (a + 1));
  let sum = d;
  for (let m = 1; m < 300; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / kept(1 + even * d);
    c = kept(1 + even / c);
    sum *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / kept(1 + odd * d);
    c = kept(1 + odd / c);
    const step = d * c;
    sum *= step;
    if (Math.abs(step - 1) < 1e-14) break;
  }
  return sum;
}

/** Logarithm of the gamma function, Lanczos with g = 7; relative error below 1e-13 for arguments above 0.5. */
function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const t = x + 6.5;
  const series = LANCZOS.reduce((sum, coefficient, k) => sum + (k === 0 ? coefficient : coefficient / (x - 1 + k)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(series);
}

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012,
  9.9843695780195716e-6, 1.5056327351493116e-7,
];
