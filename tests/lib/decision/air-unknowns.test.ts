import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { airOfPath, drawInputs, inputLayout, normalDeviate, normalShare, readAirPath, samplePath, seededRandom, stratifiedNormals, variantOfToday } from '@/lib/airflow';
import { readContent } from '@/content/read-content';
import { compareAirOptions } from '@/lib/decision';
import { airChanges } from '@/lib/decision/air-options';
import { sampleOptions } from '@/lib/decision/air-samples';
import { overTheBest, valueOfMeasuring } from '@/lib/decision/air-unknowns';
import { cheapestMethod } from '@/lib/diagnosis';

const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);

/**
 * Value of sample information for two acts with normal costs that differ by z + m: s·(φ(m/s) - (m/s)·Φ(-m/s)), where s is the
 * standard deviation of the posterior mean, 1/√(1 + σ²) for a reading error σ (unit normal loss integral; any text on statistical decisions).
 */
const exact = (m: number, error: number): number => {
  const s = 1 / Math.sqrt(1 + error * error);
  return s * (density(m / s) - (m / s) * normalShare(-m / s));
};

describe('the value of a measurement', () => {
  const count = 20_000;
  const z = stratifiedNormals(count, 1, 5);
  const costs = (m: number): ReturnType<typeof overTheBest> => overTheBest([new Float64Array(count), z.map((each) => each + m)]);
  // The reading error has no tails beyond 3, and 20,000 samples scatter by 1/√20000 of the spread: together below 4 %.
  const WITHIN = 0.04;

  it.each([[0.5, 0], [0.5, 1], [0.2, 0.5], [1, 0.3]])('agrees with the closed form for two acts: distance %s, reading error %s', (m, error) => {
    const { saving } = valueOfMeasuring({ shows: z, spread: error }, costs(m), 1);
    expect(Math.abs(saving / exact(m, error) - 1)).toBeLessThan(WITHIN);
  });

  it('is nothing when the reading has nothing to do with the costs, or one act is always better', () => {
    const other = stratifiedNormals(count, 1, 6);
    // What is left of chance after shrinking: a few thousandths.
    expect(valueOfMeasuring({ shows: other, spread: 0.1 }, costs(0.5), 1).saving).toBeLessThan(0.005);
    expect(valueOfMeasuring({ shows: z }, costs(9), 1)).toEqual({ saving: 0, chanceOfChange: 0 });
  });
});

describe('the demo path before anything was measured', () => {
  const { value } = readAirPath(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8'));
  if (value === undefined) throw new Error('the demo path should read');
  const path = { ...value, measured: [], print: { ...value.print, sides: [] } };
  const air = airOfPath(path);
  const today = variantOfToday(path);
  const plan = airChanges(path, today, air);
  // Many more samples than the page takes, so that sampling error is small beside the value.
  const SAMPLES = 16_000;
  const inputs = drawInputs(inputLayout(plan.fans, plan.ducts), SAMPLES, 3);
  const options = sampleOptions(plan.changes, air, inputs, samplePath(today, air, inputs));
  // Leave it or buy the fan, at the price where both are as good: the choice is as open as can be. A failed cure costs 30.
  const failures = ['leave', 'new-fan'].map((kind) => (options.find((option) => option.change.kind === kind)?.coverage ?? new Float64Array(SAMPLES)).map((each) => (each >= 1 ? 0 : 30)));
  const average = (values: Float64Array = new Float64Array(1)): number => values.reduce((sum, each) => sum + each, 0) / values.length;
  const price = average(failures[0]) - average(failures[1]);
  const costs = failures.map((failure, k) => failure.map((each) => each + (k === 1 ? price : 0)));
  const outlets = options[0]?.path.outlets ?? [];
  const weakest = Float64Array.from({ length: SAMPLES }, (_, s) => Math.min(...outlets.map((outlet) => outlet.speed[s] ?? 0)));
  const flow = Float64Array.from({ length: SAMPLES }, (_, s) => outlets.reduce((sum, outlet) => sum + (outlet.flow[s] ?? 0), 0));
  const freeFlow = options[0]?.path.fan.freeFlow ?? weakest;

  /** Nested Monte Carlo: a truth, its reading with a normal error, all samples weighed by it, the best act for those weights. */
  function bruteForce(shows: Float64Array, relative: number): number {
    const random = seededRandom(77);
    const now = Math.min(...costs.map(average));
    const truths = 2000;
    let after = 0;
    for (let k = 0; k < truths; k += 1) {
      const read = (shows[(k * 31 + 1) % SAMPLES] ?? 0) * (1 + relative * normalDeviate(Math.min(0.9999, Math.max(0.0001, random.uniform()))));
      const sums = costs.map(() => 0);
      let total = 0;
      for (let s = 0; s < SAMPLES; s += 1) {
        const each = shows[s] ?? 1;
        const weight = Math.exp(-0.5 * ((read - each) / (relative * each)) ** 2) / each;
        total += weight;
        for (let act = 0; act < sums.length; act += 1) sums[act] = (sums[act] ?? 0) + weight * (costs[act]?.[s] ?? 0);
      }
      after += Math.min(...sums) / total / truths;
    }
    return now - after;
  }

  it.each([['weakest outlet', weakest], ['flow through the whole path', flow], ['free flow', freeFlow]])('is valued like nested Monte Carlo does: %s', (_, shows) => {
    const brute = bruteForce(shows, 0.07);
    const { saving } = valueOfMeasuring({ shows, relativeSpread: 0.07 }, overTheBest(costs), 3);
    // 2,000 truths, and 16,000 samples of which a reading keeps about a tenth: some 0.05 either way of a value near 0.35.
    expect(brute).toBeGreaterThan(0.2);
    expect(Math.abs(saving - brute)).toBeLessThan(0.12);
  });

  it('names first an unknown whose check the person can take, when the changes are weighed by a hurried maker', () => {
    // Printing time dear and a failed cure dear: slower layers no longer win by themselves.
    const result = compareAirOptions(path, [], { hourOfPrinting: 8, failedCure: 60 });
    const [first, second] = result.unknowns;
    expect(first?.saving).toBeGreaterThan(0);
    expect(first?.saving).toBeGreaterThanOrEqual(second?.saving ?? 0);
    expect(readFileSync(`content/checks/${first?.check ?? ''}.mdx`, 'utf8')).toContain('asks:');
  });

  it('takes as long as the page of the cheapest method says', () => {
    const knowledge = readContent().value?.knowledge;
    const { unknowns } = compareAirOptions(path, []);
    expect(unknowns.length).toBeGreaterThan(6);
    const told = unknowns.map(({ id, check, minutes }) => ({ id, minutes, page: knowledge?.checks[check] && cheapestMethod(knowledge.checks[check], knowledge)?.method.minutes }));
    expect(told.filter(({ minutes, page }) => minutes !== page)).toEqual([]);
  });
});
