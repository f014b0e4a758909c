import { describe, expect, it } from 'vitest';
import { readingLikelihoods, studentDensity } from '@/lib/diagnosis';
import type { ReadingModel } from '@/lib/knowledge';
import values from '../../independent/motion/values.json';

const mm = 1e-3;
const any = (median: number, factor: number): ReadingModel => ({ shape: 'log-normal', median: median * mm, spread: Math.log(factor) });
const multiples = (model: ReadingModel, ...spacings: readonly number[]): ReadingModel => ({ ...model, multiplesOf: spacings.map((each) => each * mm) });
const ratioOf = (size: number, standard: number, a: ReadingModel, b: ReadingModel): number => {
  const [first = 0, second = 0] = readingLikelihoods(size * mm, standard * mm, [a, b]);
  return first / second;
};
/**
 * What one in twenty stray readings leaves of the ratio of two densities a and b: they lie evenly over three times the range of the
 * models' sizes, from three spreads under the lowest to three over the highest, as logarithms.
 */
const kept = (a: number, b: number, models: readonly ReadingModel[]): number => {
  const logs = models.flatMap(({ median, spread }) => [Math.log(median) - 3 * spread, Math.log(median) + 3 * spread]);
  const stray = 0.05 / (3 * (Math.max(...logs) - Math.min(...logs)));
  return (0.95 * a + stray) / (0.95 * b + stray);
};

describe('the size of a layer step as evidence', () => {
  it('speaks for multiples by the lattice factor of the check values, with the same law of sizes on both sides', () => {
    // Sheet 1.3: shift, spacing, standard uncertainty (mm), factor. The law of sizes is the same on both sides and drops out.
    const rows = values.lattice.filter(([shift = 0, , , factor = 0]) => shift > 1 && factor > 1);
    expect(rows.length).toBeGreaterThan(2);
    const law = (shift: number, standard: number): number => { const spread = Math.hypot(Math.log(3), standard / shift); return studentDensity(Math.log(shift / 1.6) / spread) / spread; };
    const apart = rows.filter(([shift = 0, spacing = 1, standard = 1, factor = 1]) => Math.abs(1 / ratioOf(shift, standard, any(1.6, 3), multiples(any(1.6, 3), spacing)) / kept(factor * law(shift, standard), law(shift, standard), [any(1.6, 3)]) - 1) > 0.002);
    expect(apart).toEqual([]);
  });

  it('speaks against multiples that it does not hit, as far as one reading may', () => {
    // Sheet 1.3: 1.60 mm is no multiple of 2.0 mm at u 0.05 (factor 0): only stray readings are left, and one reading may say 100 : 1.
    expect(kept(0.375 / Math.log(3), 0, [any(1.6, 3)])).toBeGreaterThan(100);
    expect(ratioOf(1.6, 0.05, any(1.6, 3), multiples(any(1.6, 3), 2))).toBeCloseTo(100, 6);
  });

  it('weighs one tooth against motor cycles as worked by hand: 2.00 ± 0.05 mm', () => {
    // Tooth 2.0 mm: 2/(0.05·√2π) = 15.958. Cycles 0.8, 0.64, 0.4 mm: 0, 5.106·exp(-0.08²/0.005) = 1.420, 3.192; mean 1.537.
    // Laws of sizes: t4 with u/d = 0.025 beside ln 1.6 = 0.470 at 0: 0.375/0.4707; beside ln 2 = 0.693 at 0.2231: z 0.3217.
    const tooth = (15.958 * 0.375) / Math.hypot(Math.log(1.6), 0.025);
    const spread = Math.hypot(Math.LN2, 0.025);
    const cycles = (1.537 * studentDensity(Math.log(2 / 1.6) / spread)) / spread;
    expect(tooth / cycles).toBeCloseTo(15.9, 0);
    const found = ratioOf(2, 0.05, multiples(any(2, 1.6), 2), multiples(any(1.6, 2), 0.8, 0.64, 0.4));
    expect(found / kept(tooth, cycles, [any(2, 1.6), any(1.6, 2)])).toBeCloseTo(1, 2);
  });

  it('says nothing about multiples when the step is read too coarsely: half of the spacing (sheet 1.3: factor 1.014)', () => {
    expect(ratioOf(1.6, 0.4, any(1.6, 3), multiples(any(1.6, 3), 0.8))).toBeCloseTo(1, 1);
  });

  it('does not take a reading without uncertainty for endlessly fine', () => {
    // Floor 0.03 mm: at most 0.399·0.8/0.03 = 10.6.
    expect(1 / ratioOf(1.6, 0, any(1.6, 3), multiples(any(1.6, 3), 0.8))).toBeLessThan(10.7);
  });
});
