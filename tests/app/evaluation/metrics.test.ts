import { describe, expect, it } from 'vitest';
import { bootstrapMean, quantile } from '@/app/_cli/evaluation/bootstrap';
import { brierScore, logScore, reliabilityTable } from '@/app/_cli/evaluation/probability-scores';
import { firstTrueRank, meanReciprocalRank, recallAmongFirst, shareWithin } from '@/app/_cli/evaluation/ranking-metrics';

/** Check values: an independent program in exact rationals, diagnosis.md section 2.5, printed to 12 digits. */
const CHANCES = [0.9, 0.8, 0.7, 0.6, 0.55, 0.3, 0.2, 0.1];
const SO = [true, true, false, true, false, false, true, false];
const RANKS = [1, 1, 2, 5, 3, 1, 8, 4];

/** Decimals to which the check values are printed. */
const PRINTED = 9;

describe('scores of stated chances', () => {
  it.each([
    ['Brier', brierScore(CHANCES, SO), 0.2178125],
    ['log', logScore(CHANCES, SO), 0.614160445414],
    ['reliability, 2 bins', reliabilityTable(CHANCES, SO, 2).reliability, 0.0142291667],
    ['resolution, 2 bins', reliabilityTable(CHANCES, SO, 2).resolution, 0.0166666667],
    ['uncertainty', reliabilityTable(CHANCES, SO, 2).uncertainty, 0.25],
    ['mean gap, 2 bins', reliabilityTable(CHANCES, SO, 2).meanGap, 0.11875],
  ])('gives the independent value for %s', (_, got, expected) => {
    expect(got).toBeCloseTo(expected, PRINTED);
  });

  it('splits the Brier score exactly into three terms when every bin holds one chance', () => {
    const chances = [0.15, 0.15, 0.15, 0.85, 0.85, 0.45];
    const so = [false, true, false, true, true, false];
    const { reliability, resolution, uncertainty } = reliabilityTable(chances, so, 10);
    expect(reliability - resolution + uncertainty).toBeCloseTo(brierScore(chances, so), 12);
  });

  it('puts a chance of 1 into the last bin and loses none', () => {
    const { rows } = reliabilityTable([0, 0.1, 0.999, 1], [false, false, true, true]);
    expect(rows.map((row) => row.count)).toEqual([1, 1, 0, 0, 0, 0, 0, 0, 0, 2]);
  });

  it('punishes a flat denial of what was so without end, or up to the floor', () => {
    expect(logScore([0], [true])).toBe(Infinity);
    expect(logScore([0], [true], 0.001)).toBeCloseTo(-Math.log(0.001), 12);
  });

  it('is best when the true chance is stated', () => {
    const so = Array.from({ length: 10 }, (_, k) => k < 3);
    const scores = [0.1, 0.2, 0.3, 0.4, 0.5].map((chance) => [brierScore(so.map(() => chance), so), logScore(so.map(() => chance), so)]);
    expect(scores.indexOf(scores.reduce((best, each) => ((each[0] ?? 1) < (best[0] ?? 1) ? each : best)))).toBe(2);
    expect(scores.indexOf(scores.reduce((best, each) => ((each[1] ?? 1) < (best[1] ?? 1) ? each : best)))).toBe(2);
  });

  it.each([[[0.5], []], [[], []], [[1.2], [true]], [[NaN], [true]]])('refuses %j with %j', (chances, so) => {
    expect(() => brierScore(chances, so)).toThrow(/expected/);
  });
});

describe('scores of rankings', () => {
  it.each([
    ['first place', shareWithin(RANKS, 1), 0.375],
    ['first three places', shareWithin(RANKS, 3), 0.625],
    ['mean reciprocal rank', meanReciprocalRank(RANKS), 0.551041666667],
  ])('gives the independent value for %s', (_, got, expected) => {
    expect(got).toBeCloseTo(expected, PRINTED);
  });

  it('counts the best placed of several true causes, and a missing one nowhere', () => {
    expect(firstTrueRank(['a', 'b', 'c'], ['c', 'b'])).toBe(2);
    expect(firstTrueRank(['a', 'b'], ['x'])).toBe(Infinity);
    expect(firstTrueRank(['a', 'b'], [])).toBe(Infinity);
    expect(meanReciprocalRank([Infinity, 1])).toBe(0.5);
  });

  it('looks for k true causes among max(3, k) places', () => {
    const ranking = ['a', 'b', 'c', 'd', 'e'];
    expect(recallAmongFirst(ranking, ['c'])).toBe(1);
    expect(recallAmongFirst(ranking, ['a', 'd'])).toBe(0.5);
    expect(recallAmongFirst(ranking, ['a', 'b', 'c', 'd'])).toBe(1);
    expect(recallAmongFirst(ranking, [])).toBe(0);
  });
});

describe('bootstrap', () => {
  const halves = Array.from({ length: 100 }, (_, k) => k % 2);

  it('gives about two standard errors either way for a share', () => {
    const { mean, low, high } = bootstrapMean(halves, { seed: 7 });
    // Binomial: standard error sqrt(.25/100) = .05; the 95 % limits are .402 and .598, and 2000 draws find them within .015.
    expect(mean).toBe(0.5);
    expect(Math.abs(low - 0.402)).toBeLessThan(0.015);
    expect(Math.abs(high - 0.598)).toBeLessThan(0.015);
  });

  it('repeats with its seed, and differs with another', () => {
    const values = Array.from({ length: 40 }, (_, k) => Math.sin(k));
    expect(bootstrapMean(values, { seed: 3 })).toEqual(bootstrapMean(values, { seed: 3 }));
    expect(bootstrapMean(values, { seed: 3 }).low).not.toBe(bootstrapMean(values, { seed: 4 }).low);
  });

  it('has no width when all cases agree, and refuses none at all', () => {
    expect(bootstrapMean([0.25, 0.25, 0.25])).toEqual({ mean: 0.25, low: 0.25, high: 0.25 });
    expect(() => bootstrapMean([])).toThrow(/at least one/);
  });

  it('is wider by the square root of two when every story is told twice and drawn as one', () => {
    const twice = [...halves, ...halves];
    const groups = twice.map((_, index) => String(index % halves.length));
    const width = (each: { low: number; high: number }): number => each.high - each.low;
    const ratio = width(bootstrapMean(twice, { seed: 7, groups })) / width(bootstrapMean(twice, { seed: 7 }));
    // Standard error of 100 independent stories over that of 200; 2000 draws find a width within about 5 %.
    expect(Math.abs(ratio - Math.SQRT2)).toBeLessThan(0.15);
    expect(() => bootstrapMean([1, 2], { groups: ['one'] })).toThrow(/group names/);
  });

  it('interpolates quantiles as spreadsheets do', () => {
    expect(quantile([1, 2, 3, 4], 0.5)).toBe(2.5);
    expect(quantile([10, 20, 30], 0.25)).toBe(15);
  });
});
