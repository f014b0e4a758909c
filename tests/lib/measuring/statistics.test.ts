import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  betaQuantile, chiSquareQuantile, compareBeforeAfter, coverageFactor95, failureRateBelow, failureTableP, normalBelow, rateInterval, signTestP, signedRankP, studentBelow, studentPower, studentQuantile, whatPrintsCanShow,
} from '@/lib/measuring';
import { logGamma } from '@/lib/measuring/gamma-function';
import library from '../../independent/measuring/library-values.json';
import values from '../../independent/measuring/values.json';

/** Both sides are double arithmetic of different routes. */
const LIBRARY = 1e-9;

function differing(rows: readonly (readonly [label: string, found: number, expected: number])[], tolerance = LIBRARY): string[] {
  expect(rows.length).toBeGreaterThan(2);
  return rows.filter(([, found, expected]) => !(Math.abs(found - expected) <= tolerance * Math.max(1, Math.abs(expected)))).map(([label, found, expected]) => `${label}: ${found}, library ${expected}`);
}

describe('distributions', () => {
  it('agree with a general-purpose library', () => {
    expect(differing(library.studentQuantile.map((row) => [`t ${row.p} ${row.freedom}`, studentQuantile(row.p, row.freedom), row.value]))).toEqual([]);
    expect(differing(library.studentBelow.map((row) => [`T ${row.t} ${row.freedom}`, studentBelow(row.t, row.freedom), row.value]))).toEqual([]);
    expect(differing(library.normalBelow.map((row) => [`N ${row.z}`, normalBelow(row.z), row.value]), 1e-12)).toEqual([]);
    expect(differing(library.chiSquareQuantile.map((row) => [`χ² ${row.p} ${row.freedom}`, chiSquareQuantile(row.p, row.freedom), row.value]))).toEqual([]);
    expect(differing(library.betaQuantile.map((row) => [`β ${row.p} ${row.a} ${row.b}`, betaQuantile(row.p, row.a, row.b), row.value]))).toEqual([]);
    expect(differing(library.logGamma.map((row) => [`lnΓ ${row.x}`, logGamma(row.x), row.value]), 1e-12)).toEqual([]);
    expect(differing(library.power.map((row) => [`power ${row.freedom} ${row.delta}`, studentPower(row.t, row.freedom, row.delta), row.value]), 1e-6)).toEqual([]);
  });

  it('agree with table B.1 of NIST TN 1297', () => {
    const { percents, rows } = values.tn1297;
    const wrong = Object.entries(rows).flatMap(([freedom, cells]) => cells.flatMap((cell, index) => {
      const found = studentQuantile(0.5 + (percents[index] ?? NaN) / 200, Number(freedom));
      return Math.abs(found - cell) < 0.006 * Math.max(1, cell / 20) ? [] : [`ν ${freedom}, ${percents[index]} %: ${found} for ${cell}`];
    }));
    expect(wrong).toEqual([]);
  });

  it('fall towards the normal factor as readings grow', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 400 }), (n) => coverageFactor95(n) > coverageFactor95(n + 1) && coverageFactor95(n) > 1.95996));
    expect(coverageFactor95(Number.POSITIVE_INFINITY)).toBeCloseTo(1.959964, 6);
  });

  it('refuse chances and freedoms that cannot be', () => {
    expect(() => studentQuantile(1, 3)).toThrow('less than 1');
    expect(() => studentBelow(1, 0)).toThrow('more than 0');
  });
});

describe('few prints', () => {
  it('show what the table of the sheet says', () => {
    const wrong = values.fewPrints.rows.flatMap(([n = 0, ...expected]) => {
      const few = whatPrintsCanShow(n);
      const found = [few.meanPlusMinus, few.smallestPairedChange, few.smallestGroupChange, ...few.deviationRange, few.smallestSignP, few.failureRateBelow];
      return expected.flatMap((value, index) => (Math.abs((found[index] ?? NaN) - value) < 6e-4 ? [] : [`n ${n} column ${index}: ${found[index]} for ${value}`]));
    });
    expect(wrong).toEqual([]);
  });

  it('pitfall 23: three good prints leave a failure rate of 63 %', () => {
    expect(failureRateBelow(3)).toBeCloseTo(0.632, 3);
    expect(failureRateBelow(0)).toBe(1);
  });

  it('give exact rates and tables like a library', () => {
    expect(differing(library.rateInterval.flatMap((row) => {
      const [low, high] = rateInterval(row.hits, row.tries);
      return [[`${row.hits}/${row.tries} low`, low, row.low] as const, [`${row.hits}/${row.tries} high`, high, row.high] as const];
    }))).toEqual([]);
    expect(differing(library.failureTableP.map(({ table: [a = 0, b = 0, c = 0, d = 0], value }) => [`table ${a} ${b} ${c} ${d}`, failureTableP(a, b, c, d), value]))).toEqual([]);
    expect(differing(library.signedRankP.map((row, index) => [`ranks ${index}`, signedRankP(row.differences), row.value]))).toEqual([]);
    expect(differing(library.signTestP.map((row, index) => [`signs ${index}`, signTestP(row.differences), row.value]))).toEqual([]);
    expect(() => rateInterval(4, 3)).toThrow('hits ≤ tries');
    expect(() => failureTableP(-1, 2, 3, 4)).toThrow('whole numbers');
    expect(() => whatPrintsCanShow(1)).toThrow('2 to 100');
  });
});

describe('before and after', () => {
  const paired = { before: [0, 0, 0, 0, 0], after: [0.12, 0.05, 0.09, 0.15, 0.04], paired: true, limit: 1, good: 'at-least', plusMinus: 0 } as const;

  it('give the worked differences of the sheet', () => {
    const found = compareBeforeAfter(paired);
    expect(found.change).toBeCloseTo(0.09, 9);
    // Interval 0.0324 to 0.1476; the normal factor would give ± 0.041.
    expect(found.changePlusMinus).toBeCloseTo(0.0576, 4);
    expect(found.p).toBeCloseTo(0.01225, 5);
    expect(found.verdict).toBe('better');
  });

  it('agree with a library on groups of unlike scatter', () => {
    const rows = library.welch.flatMap(({ before, after, p, freedom, plusMinus }, index) => {
      const found = compareBeforeAfter({ before, after, paired: false, limit: 0, good: 'at-most', plusMinus: 0 });
      return [[`p ${index}`, found.p ?? NaN, p], [`ν ${index}`, found.freedom ?? NaN, freedom], [`± ${index}`, found.changePlusMinus, plusMinus]] as const;
    });
    expect(differing(rows)).toEqual([]);
  });

  const table = [
    { name: 'well below the limit with room to spare', before: [1.42, 1.3, 1.38], after: [0.15, 0.18, 0.16], verdict: 'cured' },
    { name: 'two prints below the limit, which with t = 12.7 are not certain', before: [1.42, 1.3], after: [0.15, 0.18], verdict: 'better' },
    { name: 'lower, yet not surely below the limit', before: [1.42, 1.3, 1.38], after: [0.31, 0.28, 0.33], verdict: 'better' },
    { name: 'higher', before: [0.4, 0.42, 0.41], after: [0.9, 0.93, 0.88], verdict: 'worse' },
    { name: 'within the scatter', before: [0.9, 0.5, 1.2], after: [0.7, 1.1, 0.6], verdict: 'no-change' },
    { name: 'good before and after', before: [0.1, 0.12], after: [0.11, 0.1], verdict: 'no-change' },
    { name: 'one print each, far apart', before: [1.42], after: [0.2], verdict: 'cured' },
    { name: 'one print each, nearer than the measurement can tell', before: [0.5], after: [0.45], verdict: 'no-change' },
  ] as const;
  it('judge by both uncertainties and the limit', () => {
    const wrong = table.filter(({ before, after, verdict }) => compareBeforeAfter({ before, after, paired: false, limit: 0.3, good: 'at-most', plusMinus: 0.08 }).verdict !== verdict);
    expect(wrong.map((row) => `${row.name}: ${compareBeforeAfter({ ...row, paired: false, limit: 0.3, good: 'at-most', plusMinus: 0.08 }).verdict}`)).toEqual([]);
  });

  it('pitfall 23: say with "no change" which change three prints would have shown', () => {
    const found = compareBeforeAfter({ before: [0.9, 0.5, 1.2], after: [0.7, 1.1, 0.6], paired: false, limit: 0.3, good: 'at-most', plusMinus: 0 });
    // Two groups of three: 3.071 standard deviations (sheet, section 8) of the larger scatter.
    expect(found.smallestVisible).toBeCloseTo(3.071 * Math.sqrt(0.37 / 3), 2);
  });

  it('admit that one print shows no scatter', () => {
    const found = compareBeforeAfter({ before: [1], after: [0.5], paired: false, limit: 0.3, good: 'at-most', plusMinus: 0.1 });
    expect([found.scatterKnown, found.p, found.smallestVisible]).toEqual([false, undefined, undefined]);
    expect(found.changePlusMinus).toBeCloseTo(0.1 * Math.SQRT2, 6);
  });

  it('turn over with the sense of good', () => {
    const numbers = fc.array(fc.double({ min: 0.01, max: 2, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(fc.property(numbers, numbers, (before, after) => {
      const low = compareBeforeAfter({ before, after, paired: false, limit: 0.5, good: 'at-most', plusMinus: 0.05 });
      const high = compareBeforeAfter({ before: before.map((x) => -x), after: after.map((x) => -x), paired: false, limit: -0.5, good: 'at-least', plusMinus: 0.05 });
      return low.verdict === high.verdict && Math.abs(low.change + high.change) < 1e-12;
    }), { numRuns: 60 });
  });

  it('never claim less doubt than the measurement itself has, however alike the prints are', () => {
    const alike = { before: [1, 1, 1], after: [0.9, 0.9, 0.9], limit: 0.3, good: 'at-most', plusMinus: 0.1 } as const;
    // By hand: paired √2·0.1/1.96/√3·t(2), in groups the same with t(4).
    const floor = (Math.SQRT2 * 0.1) / 1.959964 / Math.sqrt(3);
    expect(compareBeforeAfter({ ...alike, paired: true }).changePlusMinus).toBeCloseTo(floor * 4.30265, 4);
    expect(compareBeforeAfter({ ...alike, paired: false }).changePlusMinus).toBeCloseTo(floor * 2.77645, 4);
    expect(compareBeforeAfter({ ...alike, paired: true }).verdict).toBe('no-change');
  });

  it('refuse an empty side and broken pairs', () => {
    expect(() => compareBeforeAfter({ ...paired, before: [] })).toThrow('at least one');
    expect(() => compareBeforeAfter({ ...paired, before: [1, 2] })).toThrow('pairs');
  });
});
