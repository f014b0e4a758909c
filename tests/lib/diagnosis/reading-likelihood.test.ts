import { describe, expect, it } from 'vitest';
import { readingLikelihoods, studentDensity } from '@/lib/diagnosis';
import type { ReadingModel } from '@/lib/knowledge';

const normal = (median: number, spread: number): ReadingModel => ({ shape: 'normal', median, spread });

describe('the likelihood of a reading', () => {
  it('has tails of a Student t with four degrees of freedom', () => {
    // diagnosis.md 1.2: N(70, 10) against N(100, 10) with t4 tails gives 11.4 at 30, 32 at 60 and 2.04 at 82 (closed form to 12 digits); density at 0 is 3/8.
    const ratio = (y: number): number => studentDensity((y - 70) / 10) / studentDensity((y - 100) / 10);
    expect(studentDensity(0)).toBeCloseTo(0.375, 12);
    expect([30, 60, 82].map(ratio)).toEqual([11.431801763611, 32, 2.04338013140167].map((value) => expect.closeTo(value, 11) as number));
  });

  it('never lets one reading count for more than 20 decibans', () => {
    for (const value of [-1e9, 0, 30, 70, 1e9]) {
      const [a = 0, b = 0] = readingLikelihoods(value, 0, [normal(0, 0.01), normal(70, 0.01)]);
      expect(Math.max(a, b) / Math.min(a, b)).toBeLessThanOrEqual(100 + 1e-9);
    }
  });

  it('that lies far from every model, as a slipped decimal point does, says next to nothing', () => {
    // A supply of 24 V read as 2.4 or 240 V; both fall within no model, so only stray readings are left.
    for (const value of [0.24, 2.4, 240, 2400]) {
      const [healthy = 0, low = 0] = readingLikelihoods(value, 0, [normal(24, 0.4), normal(21, 1.5)]);
      expect(Math.abs(low / healthy - 1), `${value} V`).toBeLessThan(0.03);
    }
  });

  it('on the other side of healthy never speaks for a cause, however wide its model is', () => {
    const against = (value: number): number => { const [healthy = 0, low = 0] = readingLikelihoods(value, 0, [normal(24, 0.4), normal(21, 1.5)]); return low / healthy; };
    for (let value = 24; value < 40; value += 0.1) expect(against(value), `${value.toFixed(1)} V`).toBeLessThanOrEqual(1 + 1e-9);
    expect(against(22)).toBeGreaterThan(10);
    // By hand at 25.4 V: healthy 0.375·(1 + 3.5²/4)^-2.5/0.4; the low model at 24 V is 0.375·2^-2.5/1.5, so 0.04714 of the healthy one; stray 0.05/27.
    const healthy = 0.95 * (0.375 / 0.4) * (1 + 3.5 ** 2 / 4) ** -2.5;
    const stray = 0.05 / (3 * (21 + 4.5 - (21 - 4.5)));
    expect(against(25.4)).toBeCloseTo((0.2667 * 2 ** -2.5 * healthy + stray) / (healthy + stray), 4);
  });

  it('speaks on both sides for a cause that errs on both', () => {
    for (const value of [80, 125]) {
      const [healthy = 0, either = 0] = readingLikelihoods(value, 0, [{ shape: 'log-normal', median: 99.7, spread: 0.015 }, { shape: 'log-normal', median: 100, spread: 0.22 }]);
      expect(either / healthy, `${value} %`).toBeGreaterThan(10);
    }
  });

  it('says less the less certain the reading is', () => {
    const models = [normal(70, 5), normal(100, 5)];
    const ratio = (uncertainty: number): number => {
      const [a = 0, b = 0] = readingLikelihoods(72, uncertainty, models);
      return a / b;
    };
    expect(ratio(0)).toBeGreaterThan(ratio(10));
    expect(ratio(10)).toBeGreaterThan(ratio(100));
    expect(ratio(1e6)).toBeCloseTo(1, 3);
  });

  it('treats a share below zero like a very small one instead of failing', () => {
    const likelihoods = readingLikelihoods(-3, 0.1, [{ shape: 'log-normal', median: 1, spread: 0.2 }, { shape: 'log-normal', median: 0.4, spread: 0.3 }]);
    expect(likelihoods.every((each) => Number.isFinite(each) && each > 0)).toBe(true);
  });
});
