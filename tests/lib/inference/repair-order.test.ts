import { describe, expect, test } from 'vitest';
import {
  batchPays,
  beforeCallingHelp,
  bestBatches,
  expectedCost,
  expectedCostOfBatches,
  expectedCostOfInspections,
  goodRepairOrder,
  independentScenarios,
  mulberry32,
  oneCauseScenarios,
  orderByOddsOverCost,
  orderByProbabilityOverCost,
  orderOfInspections,
  perfectRepair,
  stillBadAfter,
  valueOfQuestion,
  type Repair,
} from '@/lib/inference';

/** Printed to ten digits by the Python program. */
const PRINTED = 8;

function orders(count: number): number[][] {
  const of = (list: readonly number[]): number[][] => (list.length === 0 ? [[]] : list.flatMap((first) => of(list.filter((x) => x !== first)).map((rest) => [first, ...rest])));
  return of(Array.from({ length: count }, (_, i) => i));
}

describe('exactly one cause', () => {
  const p = [0.4, 0.3, 0.2, 0.1];
  const costs = [8, 3, 1, 4];
  const repairs = costs.map((cost, i) => perfectRepair(cost, i));
  const scenarios = oneCauseScenarios(p);
  const costOf = (order: readonly number[]) => expectedCost(order, repairs, scenarios);

  test('probability over cost is the best of all orders', () => {
    expect(orderByProbabilityOverCost(p, costs)).toEqual([2, 1, 0, 3]);
    expect(costOf([2, 1, 0, 3])).toBeCloseTo(7.8, 12);
    expect(costOf([0, 1, 2, 3])).toBeCloseTo(10.5, 12);
    expect(Math.max(...orders(4).map(costOf))).toBeCloseTo(12.9, 12);
    expect(Math.min(...orders(4).map(costOf))).toBeCloseTo(7.8, 12);
  });

  test('with an inspection first, probability over the cost of the inspection decides', () => {
    expect(orderOfInspections(p, [1, 1, 1, 1])).toEqual([0, 1, 2, 3]);
    expect(expectedCostOfInspections([0, 1, 2, 3], p, [1, 1, 1, 1], costs)).toBeCloseTo(6.7, 12);
  });

  test('help at 4 is called at once, at 6 after one try, at 12 never', () => {
    const best = (help: number) => beforeCallingHelp([2, 1, 0, 3], repairs, scenarios, help);
    expect([4, 6, 12].map((help) => best(help).order)).toEqual([[], [2], [2, 1, 0, 3]]);
    expect([4, 6, 12].map((help) => best(help).cost)).toEqual([4, 5.8, 7.8].map((cost) => expect.closeTo(cost, 12) as number));
  });

  test('a question is worth what it saves', () => {
    const found = valueOfQuestion(p, costs, [0.9, 0.2, 0.2, 0.5], 0.5);
    expect(found).toEqual({
      yes: expect.closeTo(0.51, 12) as number,
      costNow: expect.closeTo(7.8, 12) as number,
      costAfterYes: expect.closeTo(28 / 3, 12) as number,
      costAfterNo: expect.closeTo(216 / 49, 12) as number,
      net: expect.closeTo(0.38, 12) as number,
    });
  });

  test('the textbook exercise: four actions, three causes, uncertain success', () => {
    const actions: Repair[] = [perfectRepair(1, 0), { cost: 2, removes: new Map([[1, 0.95]]) }, { cost: 25, removes: new Map([[0, 0.99], [1, 0.99]]) }, perfectRepair(500, 0, 1, 2)];
    const causes = oneCauseScenarios([0.8, 0.15, 0.05]);
    expect(expectedCost([0, 1, 2, 3], actions, causes)).toBeCloseTo(27.875, 10);
    expect(expectedCost([1, 0, 2, 3], actions, causes)).toBeCloseTo(29.3325, 10);
    expect(expectedCost([0, 1, 3], actions, causes)).toBeCloseTo(30.15, 10);
    const found = goodRepairOrder(actions, causes);
    expect(found.order).toEqual([0, 1, 2, 3]);
    expect(found.cost).toBeCloseTo(27.875, 10);
  });

  test('actions that share causes: the search finds 7.0 where fixed probability over cost pays 7.5', () => {
    const q = oneCauseScenarios([0.3, 0.25, 0.25, 0.2]);
    const shared = [perfectRepair(5, 0, 1), perfectRepair(4, 1, 2), perfectRepair(5, 2, 3), perfectRepair(6, 0, 3)];
    expect(expectedCost([1, 0, 2, 3], shared, q)).toBeCloseTo(7.5, 12);
    const found = goodRepairOrder(shared, q);
    expect(found.order).toEqual([1, 3]);
    expect(found.cost).toBeCloseTo(7, 12);
  });
});

describe('several independent causes, bad while any is left', () => {
  const instances: readonly (readonly [number[], number[], number[], number, number[], number])[] = [
    [[0.5, 0.3, 0.1], [4, 2, 10], [0, 1, 2], 6.5401459854, [1, 0, 2], 6.67153284672],
    [[0.6, 0.4, 0.35, 0.1], [12, 5, 4, 1], [2, 1, 0, 3], 17.610981852, [3, 2, 1, 0], 17.7240577013],
  ];
  test.each(instances)('odds over cost beats probability over cost: p = %j', (p, costs, byOdds, best, byP, worse) => {
    const repairs = costs.map((cost, i) => perfectRepair(cost, i));
    const costOf = (order: readonly number[]) => expectedCost(order, repairs, independentScenarios(p));
    expect(orderByOddsOverCost(p, costs)).toEqual(byOdds);
    expect(orderByProbabilityOverCost(p, costs)).toEqual(byP);
    expect(costOf(byOdds)).toBeCloseTo(best, PRINTED);
    expect(costOf(byP)).toBeCloseTo(worse, PRINTED);
    expect(Math.min(...orders(p.length).map(costOf))).toBeCloseTo(best, PRINTED);
  });

  test('odds over cost is the best order in 300 random instances', () => {
    const u = mulberry32(1);
    const beaten: string[] = [];
    for (let i = 0; i < 300; i++) {
      const n = 2 + Math.floor(u() * 4);
      const p = Array.from({ length: n }, () => 0.01 + 0.94 * u());
      const costs = Array.from({ length: n }, () => 1 + 29 * u());
      const repairs = costs.map((cost, r) => perfectRepair(cost, r));
      const scenarios = independentScenarios(p);
      const best = Math.min(...orders(n).map((order) => expectedCost(order, repairs, scenarios)));
      const got = expectedCost(orderByOddsOverCost(p, costs), repairs, scenarios);
      if (got > best * (1 + 1e-12)) beaten.push(`${p.join()} at ${costs.join()}: ${got} > ${best}`);
    }
    expect(beaten).toEqual([]);
  });

  const batches: readonly (readonly [number, number, number[][], number])[] = [
    [0, 6.540145985, [[0], [1], [2]], 6.540145985],
    [1, 8.226277372, [[0], [1], [2]], 8.226277372],
    [3, 10.89781022, [[0, 1], [2]], 11.59854015],
    [6, 14.33576642, [[0, 1], [2]], 16.65693431],
    [20, 30.37956204, [[0, 1], [2]], 40.26277372],
  ];
  test.each(batches)('with a re-test that costs %d the best batches cost %d', (retest, cost, expected, oneByOne) => {
    const repairs = [4, 2, 10].map((c, i) => perfectRepair(c, i));
    const scenarios = independentScenarios([0.5, 0.3, 0.1]);
    const found = bestBatches(repairs, scenarios, retest);
    expect(found.batches).toEqual(expected);
    expect(found.cost).toBeCloseTo(cost, PRINTED - 1);
    expect(Math.min(...orders(3).map((order) => expectedCost(order, repairs, scenarios, retest)))).toBeCloseTo(oneByOne, PRINTED - 1);
  });

  test('the batch inequality switches where the two costs cross, at a re-test of 1.70', () => {
    const repairs = [4, 2, 10].map((c, i) => perfectRepair(c, i));
    const scenarios = independentScenarios([0.5, 0.3, 0.1]);
    const good = 1 - stillBadAfter([0], repairs, scenarios);
    const together = (retest: number) => expectedCostOfBatches([[0, 1], [2]], repairs, scenarios, retest) < expectedCost([0, 1, 2], repairs, scenarios, retest);
    for (const retest of [0.5, 1, 1.6, 1.69, 1.72, 2, 3, 20]) expect(batchPays(2, good, retest)).toBe(together(retest));
    expect(batchPays(2, good, 1.69)).toBe(false);
    expect(batchPays(2, good, 1.72)).toBe(true);
  });
});

test('the insertion search stays within .1 % of the best of all orders on average', () => {
  const u = mulberry32(5);
  let gap = 0;
  const runs = 40;
  for (let run = 0; run < runs; run++) {
    const causes = 6;
    const scenarios = Array.from({ length: 25 }, () => ({ share: u() * u(), present: Array.from({ length: causes }, (_, c) => c).filter(() => u() < 0.35) }));
    const repairs = Array.from({ length: 5 }, (): Repair => ({ cost: 3 + 39 * u(), removes: new Map([0, 1, 2].map(() => [Math.floor(u() * causes), 0.5 + 0.5 * u()])) }));
    const unsolvedCost = 300;
    const costOf = (order: readonly number[]) => expectedCost(order, repairs, scenarios, 6) + unsolvedCost * stillBadAfter(order, repairs, scenarios);
    const best = Math.min(...orders(5).map(costOf));
    gap += goodRepairOrder(repairs, scenarios, { retestCost: 6, unsolvedCost }).cost / best - 1;
  }
  expect(gap / runs).toBeGreaterThan(-1e-9);
  expect(gap / runs).toBeLessThan(1e-3);
});
