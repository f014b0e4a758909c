import { describe, expect, it } from 'vitest';
import { combine, describe as describeSample, effectiveFreedom, freedomFromReliability, fromCertificate, fromLimits, fromResolution, fromSwing, fromTriangle, fitColumns, fitLine, studentQuantile } from '@/lib/measuring';
import type { Input } from '@/lib/measuring';
import values from '../../independent/measuring/values.json';
import strd from '../../independent/measuring/strd.json';

/** Digits that agree: −log10 of the relative error. */
const digits = (found: number, certified: number): number => -Math.log10(Math.max(1e-16, Math.abs(found - certified) / Math.abs(certified || 1)));

const endGauge: readonly Input[] = [
  { value: 50_000_623, standard: 25, freedom: 18 },
  // Pooled 13 nm over 5 readings; ±10 nm at 95 % with 5 degrees of freedom; ±20 nm at three standard deviations.
  { value: 215, standard: Math.hypot(13 / Math.sqrt(5), 10 / 2.57058, 20 / 3), freedom: 25.6 },
  { value: 11.5e-6, standard: 2e-6 / Math.sqrt(3) },
  { value: -0.1, standard: Math.hypot(0.2, 0.5 / Math.SQRT2) },
  { value: 0, standard: 1e-6 / Math.sqrt(3), freedom: 50 },
  { value: 0, standard: 0.05 / Math.sqrt(3), freedom: 2 },
];
const gaugeLength = ([ls = 0, d = 0, alphaS = 0, theta = 0, deltaAlpha = 0, deltaTheta = 0]: readonly number[]): number => ls + d - ls * (deltaAlpha * theta + alphaS * deltaTheta);

describe('propagation', () => {
  const { endGauge: published } = values;

  it('gives the end gauge of JCGM 100 H.1, first order', () => {
    const { standard, freedom, value, contributions } = combine(endGauge, gaugeLength);
    expect(value).toBeCloseTo(50_000_838, 0);
    expect(Math.abs(standard - published.standard)).toBeLessThan(0.1);
    expect(Math.abs(freedom - published.freedom)).toBeLessThan(0.15);
    for (const [index, size] of published.contributions.entries()) expect(Math.abs(contributions[index] ?? NaN)).toBeCloseTo(size, 0);
    expect(studentQuantile(0.995, 16)).toBeCloseTo(published.t99, 3);
    expect(studentQuantile(0.975, 16)).toBeCloseTo(published.t95, 3);
    expect(Math.abs(studentQuantile(0.995, Math.floor(freedom)) * standard - published.expanded99)).toBeLessThan(1);
  });

  it('adds the second-order terms that H.1 needs where a sensitivity is zero', () => {
    expect(Math.abs(combine(endGauge, gaugeLength, { secondOrder: true }).standard - published.secondOrder)).toBeLessThan(0.1);
  });

  it('pitfall 21: a rounded standard uncertainty would give 17.47 degrees of freedom where 16.74 is right', () => {
    const { contributions, standard } = combine(endGauge, gaugeLength);
    expect(Math.abs(effectiveFreedom(32, contributions, endGauge) - published.roundedFreedom)).toBeLessThan(0.1);
    expect(Math.floor(effectiveFreedom(standard, contributions, endGauge))).toBe(16);
  });

  it('gives resistance, reactance and impedance of JCGM 100 H.2 with correlated inputs', () => {
    const { impedance } = values;
    const inputs = impedance.inputs.map(([value = 0, standard = 0]) => ({ value, standard }));
    const [vi = 0, vp = 0, ip = 0] = impedance.r;
    const correlation = (i: number, j: number): number => (i === 0 ? (j === 1 ? vi : vp) : ip);
    const outputs = { R: ([v = 0, i = 1, p = 0]: readonly number[]) => (v / i) * Math.cos(p), X: ([v = 0, i = 1, p = 0]: readonly number[]) => (v / i) * Math.sin(p), Z: ([v = 0, i = 1]: readonly number[]) => v / i };
    for (const [name, f] of Object.entries(outputs)) {
      const [value = 0, standard = 0] = impedance[name as 'R' | 'X' | 'Z'];
      const found = combine(inputs, f, { correlation });
      expect(Math.abs(found.value - value), name).toBeLessThan(6e-4);
      expect(Math.abs(found.standard - standard), name).toBeLessThan(2e-3);
    }
    expect(combine(inputs, outputs.R).standard).toBeCloseTo(impedance.RIgnoringCorrelation, 2);
  });

  it('gives the 10 kg weight of EA-4/02 S2', () => {
    const parts = [fromCertificate(45, 2), fromLimits(15), fromLimits(10), fromLimits(10), 25 / Math.sqrt(3)];
    const { standard } = combine(parts.map((part) => ({ value: 0, standard: part })), (x) => x.reduce((sum, value) => sum + value, 0));
    expect(standard).toBeCloseTo(values.weight.standard, 2);
    expect(2 * standard).toBeCloseTo(values.weight.expanded2, 1);
  });

  it('gives the caliper example of the sheet', () => {
    const { deviation, mean, count } = describeSample([19.98, 20.02, 20.0, 20.03, 19.99]);
    expect(deviation).toBeCloseTo(values.caliper.deviation, 6);
    const inputs = [{ value: mean, standard: deviation / Math.sqrt(count), freedom: 4 }, { value: 0, standard: fromLimits(0.03), freedom: freedomFromReliability(0.25) }, { value: 0, standard: fromResolution(0.01) }];
    const found = combine(inputs, (x) => x.reduce((sum, value) => sum + value, 0));
    expect(found.standard).toBeCloseTo(values.caliper.standard, 6);
    expect(found.freedom).toBeCloseTo(values.caliper.freedom, 1);
    expect(found.coverage).toBeCloseTo(values.caliper.coverage, 3);
    expect(found.expanded).toBeCloseTo(values.caliper.expanded, 4);
  });

  it('turns limits into standard uncertainties by their shape', () => {
    expect([fromLimits(3), fromTriangle(6), fromSwing(2), fromResolution(12)].map((u) => u ** 2)).toEqual([3, 6, 2, 12].map((square) => expect.closeTo(square, 9) as number));
    expect([0.25, 0.1, 0.5].map(freedomFromReliability)).toEqual([8, expect.closeTo(50, 9), 2]);
    expect(() => fromLimits(-1)).toThrow('0 or more');
  });

  it('refuses a relation that is not finite at the estimate', () => {
    expect(() => combine([{ value: 0, standard: 1 }], ([x = 0]) => 1 / x)).toThrow('finite');
  });

  it('does not fall off the edge of a root', () => {
    expect(combine([{ value: 1, standard: 1.5 }], ([x = 0]) => Math.sqrt(x)).standard).toBeCloseTo(0.75, 1);
  });
});

describe('summaries and least squares', () => {
  it('pitfall 22: keep the last digits of NIST StRD NumAcc1 to NumAcc4', () => {
    const alternating = (first: number, low: number, high: number): number[] => [first, ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? low : high))];
    const sets: [number[], number, number, number][] = [
      [[10_000_001, 10_000_003, 10_000_002], 10_000_002, 1, 14],
      [alternating(1.2, 1.1, 1.3), 1.2, 0.1, 12],
      [alternating(1_000_000.2, 1_000_000.1, 1_000_000.3), 1_000_000.2, 0.1, 8],
      // The sheet asks for 7 digits; the readings themselves are stored to 8.3.
      [alternating(10_000_000.2, 10_000_000.1, 10_000_000.3), 10_000_000.2, 0.1, 7],
    ];
    for (const [data, mean, deviation, least] of sets) {
      const found = describeSample(data);
      expect(digits(found.mean, mean)).toBeGreaterThan(14);
      expect(digits(found.deviation, deviation)).toBeGreaterThanOrEqual(least);
    }
  });

  const sets = {
    norris: { rows: strd.norris.x.map((x) => [1, x]), set: strd.norris, least: 10 },
    pontius: { rows: strd.pontius.x.map((x) => [1, x, x * x]), set: strd.pontius, least: 9 },
    longley: { rows: strd.longley.y.map((_, index) => [1, ...strd.longley.columns.map((column) => column[index] ?? NaN)]), set: strd.longley, least: 8 },
    noInt1: { rows: strd.noInt1.x.map((x) => [x]), set: strd.noInt1, least: 12 },
    noInt2: { rows: strd.noInt2.x.map((x) => [x]), set: strd.noInt2, least: 12 },
  };
  it('reach the digits of the NIST StRD linear sets', () => {
    const wrong = Object.entries(sets).flatMap(([name, { rows, set, least }]) => {
      const fit = fitColumns(rows, set.y);
      const pairs: [string, number, number][] = [
        ...set.coefficients.map((value, index): [string, number, number] => [`B${index}`, fit.coefficients[index] ?? NaN, value]),
        ...set.deviations.map((value, index): [string, number, number] => [`sd B${index}`, fit.deviations[index] ?? NaN, value]),
        ['residual', fit.residual, set.residual], ['explained', fit.explained, set.explained],
      ];
      return pairs.filter(([, found, certified]) => !(digits(found, certified) >= least)).map(([what, found, certified]) => `${name} ${what}: ${found} for ${certified}`);
    });
    expect(wrong.join('\n')).toBe('');
  });

  it('find the coefficients of Wampler1 and Wampler2', () => {
    const x = Array.from({ length: 21 }, (_, index) => index);
    const powers = x.map((value) => [0, 1, 2, 3, 4, 5].map((power) => value ** power));
    const first = fitColumns(powers, powers.map((row) => row.reduce((sum, value) => sum + value, 0)));
    const second = fitColumns(powers, x.map((value) => [0, 1, 2, 3, 4, 5].reduce((sum, power) => sum + (value / 10) ** power, 0)));
    for (const [power, found] of first.coefficients.entries()) expect(digits(found, 1), `x^${power}`).toBeGreaterThan(7);
    for (const [power, found] of second.coefficients.entries()) expect(digits(found, 10 ** -power), `(x/10)^${power}`).toBeGreaterThan(7);
  });

  it('give the calibration line of JCGM 100 H.3 and its prediction', () => {
    const { calibrationLine: published } = values;
    const line = fitLine(published.t.map((t) => t - 20), published.b);
    const at30 = line.at(10);
    const found = [line.intercept, line.interceptDeviation, line.slope, line.slopeDeviation, line.residual, at30.value, at30.standard];
    const expected = [...published.intercept, ...published.slope, published.residual, ...published.at30];
    // The published figures carry two or three digits.
    for (const [index, value] of expected.entries()) expect(Math.abs((found[index] ?? NaN) - value)).toBeLessThan(index === 2 || index === 3 ? 6e-6 : 6e-5);
    expect(line.correlation).toBeCloseTo(published.r, 3);
  });

  it('refuse dependent columns and too few rows', () => {
    expect(() => fitColumns([[1, 2], [2, 4], [3, 6]], [1, 2, 3])).toThrow('independent');
    expect(() => fitColumns([[1, 2]], [1])).toThrow('at least 2 rows');
    expect(() => describeSample([])).toThrow('at least one');
  });
});
