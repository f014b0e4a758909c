import { describe, expect, it } from 'vitest';
import { standingOf, Standing, possibilitiesOf, type Change } from '@/lib/diagnosis';
import { oracleKnowledge } from './oracle-knowledge';
import { diagnosed, look } from './told';

/** Several independent causes with these chances, of which at least one is there: the setting of diagnosis.md 2.4. */
function independent(chances: readonly number[], costs: readonly number[]): Standing {
  const numbers = [...chances.keys()];
  const sets = Array.from({ length: 2 ** chances.length - 1 }, (_, n) => numbers.filter((cause) => (((n + 1) >> cause) & 1) === 1));
  const weights = sets.map((set) => numbers.reduce((product, cause) => product * (set.includes(cause) ? (chances[cause] ?? 0) : 1 - (chances[cause] ?? 0)), 1));
  const changes = costs.map((cost, cause): Change => ({ id: `c${cause}`, cost, money: 0, minutes: cost, removes: new Map([[cause, 1]]) }));
  return new Standing({ symptoms: [], ever: 0, scenarios: sets.map((set) => ({ present: set, behind: set, bySymptom: [] })) }, [], changes, weights);
}

/** Least expected cost of all orders of three, by adding up: each change is made while anything it or a later one removes is left. */
function cheapestOrder(chances: readonly number[], costs: readonly number[]): { readonly order: readonly number[]; readonly cost: number } {
  const orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
  const bad = (causes: readonly number[]): number => 1 - causes.reduce((good, cause) => good * (1 - (chances[cause] ?? 0)), 1);
  return orders.map((order) => ({ order, cost: order.reduce((sum, cause, k) => sum + ((costs[cause] ?? 0) * bad(order.slice(k))) / bad(order), 0) })).reduce((best, each) => (each.cost < best.cost ? each : best));
}

describe('the order in which a plan tries changes', () => {
  it('is by odds over cost: the instance of the sheet, where chance over cost pays 6.672', () => {
    const { changes, cost } = independent([0.5, 0.3, 0.1], [4, 2, 10]).orderOfChanges();
    expect(changes.map(({ id }) => id)).toEqual(['c0', 'c1', 'c2']);
    expect(cost).toBeCloseTo(6.5401459854, 9);
  });

  it('is not by chance alone: with a tenfold price for the likeliest it comes second, as in the cheapest of all orders', () => {
    const best = cheapestOrder([0.5, 0.3, 0.1], [40, 2, 100]);
    expect(best.order).toEqual([1, 0, 2]);
    const { changes, cost } = independent([0.5, 0.3, 0.1], [40, 2, 100]).orderOfChanges();
    expect(changes.map(({ id }) => id)).toEqual(['c1', 'c0', 'c2']);
    expect(cost).toBeCloseTo(best.cost, 9);
  });

  it('leaves out what was tried', () => {
    const knowledge = oracleKnowledge({ fixes: true });
    const idsWith = (tried: readonly string[]) => standingOf(diagnosed({ observations: [look('f0', 'seen')] }, knowledge), possibilitiesOf(knowledge), { tried: new Set(tried) }).orderOfChanges().changes.map(({ id }) => id);
    expect([idsWith([])[0], idsWith(['fix-d0']).includes('fix-d0'), idsWith(['fix-d0']).length > 0]).toEqual(['fix-d0', false, true]);
  });
});
