import { expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { rankRemedies } from '@/lib/diagnosis';
import { chainKnowledge } from './toy-knowledge';
import { oracleKnowledge } from './oracle-knowledge';
import { diagnosed, look } from './told';

const anyRemedy = Object.values(readContent().value?.knowledge.remedies ?? {})[0];
if (anyRemedy === undefined) throw new Error('the content does not read');
const known = chainKnowledge();
const mends = (id: string, cures: Readonly<Record<string, number>>) => [id, { ...anyRemedy, id, cures: Object.fromEntries(Object.entries(cures).map(([cause, chance]) => [cause, { chance, said: '', basis: { estimate: 'toy' }, statedIn: '' }])) }] as const;
const knowledge = { ...known, remedies: Object.fromEntries([mends('first', { d0: 0.9 }), mends('both', { d0: 1, d1: 1 })]) };

it('tells the chance of a change that cures two causes of the same thing as enumeration does', () => {
  // A curl by itself (0.02), through d0 (0.1 · 0.8) or through d1 (0.08 · 0.6).
  const seen = 1 - 0.98 * (1 - 0.08) * (1 - 0.048);
  const neither = (0.02 * (1 - 0.08) * (1 - 0.048)) / seen;
  const chanceOf = new Map(rankRemedies(diagnosed({ observations: [look('curl', 'seen')] }, knowledge), knowledge).map(({ id, chance }) => [id, chance]));
  expect(chanceOf.get('first')).toBeCloseTo((0.9 * 0.08) / seen, 9);
  // Five standard errors of a share over 600 draws. Taken as independent the two would give 0.71.
  expect(Math.abs((chanceOf.get('both') ?? 0) - (1 - neither))).toBeLessThan(5 * Math.sqrt((neither * (1 - neither)) / 600));
});

/*
 * The oracle net with f0 seen, P(f0) = .150043648: hands in it d0 .1 · .8, d2 .2 · .2, d3 .02 · .9 over that, each cured in nine of ten.
 * Chances .4799 .2399 .1080, odds .9226 .3157 .1210. The proof takes one minute, a quarter of it counts. All cost more than giving up (600).
 */
const SEEN = 0.150043648;
const f0 = { observations: [look('f0', 'seen')] };
const oracle = oracleKnowledge({ fixes: true });
const costing = (minutes: Readonly<Record<string, number>>) => ({ ...oracle, remedies: Object.fromEntries(Object.entries(oracle.remedies).map(([id, remedy]) => [id, { ...remedy, minutes: (minutes[id] ?? 5000) - 0.25 }])) });
const orderAt = (minutes: Readonly<Record<string, number>>, tried: readonly string[] = []) => { const priced = costing(minutes); return rankRemedies(diagnosed(f0, priced), priced, new Set(tried)); };

it('ranks by odds over cost, by neither chance over cost nor chance alone', () => {
  const odds = (hand: number) => (0.9 * hand) / (SEEN - 0.9 * hand);
  const byOdds = (minutes: readonly number[]) => ['fix-d0', 'fix-d2', 'fix-d3'].map((id, k) => ({ id, worth: odds([0.08, 0.04, 0.018][k] ?? 0) / (minutes[k] ?? 1) })).sort((a, b) => b.worth - a.worth).map(({ id }) => id);
  // Chance over cost would turn the first round, chance alone the second.
  for (const [order, minutes] of [[['fix-d0', 'fix-d2', 'fix-d3'], [5760, 2400, 1000]], [['fix-d2', 'fix-d3', 'fix-d0'], [20_000, 2400, 1000]]] as const) {
    expect(byOdds(minutes)).toEqual(order);
    expect(orderAt({ 'fix-d0': minutes[0], 'fix-d2': minutes[1], 'fix-d3': minutes[2] }).map(({ id }) => id)).toEqual(order);
  }
});

it('puts what was tried behind everything else, however likely and cheap', () => {
  const ranked = orderAt({ 'fix-d0': 10, 'fix-d2': 20, 'fix-d3': 5000 }, ['fix-d0']);
  expect(ranked.map(({ id, isTried }) => [id, isTried])).toEqual([['fix-d2', false], ['fix-d3', false], ['fix-d0', true]]);
  expect(orderAt({ 'fix-d0': 10, 'fix-d2': 20, 'fix-d3': 5000 })[0]?.id).toBe('fix-d0');
});
