import { describe, expect, it } from 'vitest';
import { readingLikelihoods, studentDensity } from '@/lib/diagnosis';
import type { ReadingModel } from '@/lib/knowledge';

const normal = (median: number, spread: number): ReadingModel => ({ shape: 'normal', median, spread });

describe('the likelihood of a reading', () => {
  it('has tails of a Student t with four degrees of freedom', () => {
    // diagnosis.md 1.2: N(70, 10) against N(100, 10) with t4 tails gives 11.4 at 30 and 2.04 at 82; density at 0 is 3/8.
    const ratio = (y: number): number => studentDensity((y - 70) / 10) / studentDensity((y - 100) / 10);
    expect(studentDensity(0)).toBeCloseTo(0.375, 12);
    expect(ratio(30)).toBeCloseTo(11.4, 1);
    expect(ratio(82)).toBeCloseTo(2.04, 2);
  });

  it('never lets one reading count for more than 20 decibans', () => {
    for (const value of [-1e9, 0, 30, 70, 1e9]) {
      const [a = 0, b = 0] = readingLikelihoods(value, 0, [normal(0, 0.01), normal(70, 0.01)]);
      expect(Math.max(a, b) / Math.min(a, b)).toBeLessThanOrEqual(100 + 1e-9);
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
