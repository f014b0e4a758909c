import { describe, expect, it } from 'vitest';
import { diagnose, nextChecks } from '@/lib/diagnosis';
import type { Knowledge } from '@/lib/knowledge';
import { ORACLE, chanceSeen, everyState, oracleKnowledge, type States } from './oracle-knowledge';
import { diagnosed, file, look } from './told';

const oracle = oracleKnowledge();

/** Σ over all states of chance · weight. */
const sum = (weight: (states: States) => number): number => everyState().reduce((total, { states, chance }) => total + chance * weight(states), 0);

describe('what nothing listed explains', () => {
  it('is the chance that a finding came by itself alone, and their mean, by enumeration', () => {
    const byItself = (finding: 'f0' | 'f1', states: States): number => (ORACLE.leaks[finding] * (1 - chanceSeen(finding, states))) / (1 - ORACLE.leaks[finding]);
    const both = sum((states) => chanceSeen('f0', states) * chanceSeen('f1', states));
    const f0 = sum((states) => byItself('f0', states) * chanceSeen('f1', states)) / both;
    const f1 = sum((states) => byItself('f1', states) * chanceSeen('f0', states)) / both;
    const { unexplained } = diagnosed({ observations: [look('f0', 'seen'), look('f1', 'seen')] }, oracle);
    expect(unexplained.byFinding).toEqual([{ about: 'f0', share: expect.closeTo(f0, 12) as number }, { about: 'f1', share: expect.closeTo(f1, 12) as number }]);
    expect(unexplained.share).toBeCloseTo((f0 + f1) / 2, 12);
  });
});

describe('a part of the machine', () => {
  it('has the chance that at least one of its causes is there, by enumeration', () => {
    const parts: Readonly<Record<string, Knowledge['causes'][string]['part']>> = { d0: 'motion', d1: 'settings', d2: 'part-cooling', d3: 'motion' };
    const knowledge = { ...oracle, causes: Object.fromEntries(Object.entries(oracle.causes).map(([id, cause]) => [id, { ...cause, part: parts[id] ?? cause.part }])) };
    const { branches } = diagnosed({ observations: [look('f0', 'seen')] }, knowledge);
    const seen = sum((states) => chanceSeen('f0', states));
    const anyOf = (...causes: readonly number[]): number => sum((states) => (causes.some((cause) => states[cause] === true) ? chanceSeen('f0', states) : 0)) / seen;
    // d1 does not show f0, so nothing points to the settings.
    expect(new Map(branches.map(({ part, probability }) => [part, probability]))).toEqual(new Map([['motion', expect.closeTo(anyOf(0, 3), 12) as number], ['part-cooling', expect.closeTo(anyOf(2), 12) as number], ['settings', 0]]));
  });
});

describe('the band of a chance', () => {
  it('is that of a log odds shaken by 0.5 where nothing was told', () => {
    const result = diagnose(file({}), oracle, { copies: 1500 });
    if (result.kind !== 'diagnosis') throw new Error(`got ${result.kind}`);
    // logit⁻¹(logit p ± 1.644854 · .5): the normal quantile is a table value.
    const moved = (prior: number, z: number): number => 1 / (1 + ((1 - prior) / prior) * Math.exp(-0.5 * z));
    /*
     * Standard error of a 5 % quantile of n normal draws: √(.05 · .95 / n) / .1031 = 2.114 / √n spreads; four of them on the log odds,
     * at most p(1 − p) of that on the chance.
     */
    const logOdds = (p: number): number => Math.log(p / (1 - p));
    const within = (4 * 0.5 * 2.114) / Math.sqrt(1500);
    const wrong = result.causes.filter(({ low, high, before }) => [low - moved(before, -1.644854), high - moved(before, 1.644854)].some(Number.isNaN) || Math.abs(logOdds(low) - logOdds(moved(before, -1.644854))) > within || Math.abs(logOdds(high) - logOdds(moved(before, 1.644854))) > within);
    expect(wrong.map(({ id, low, high }) => [id, low, high])).toEqual([]);
  });
});

describe('checks that could be taken next', () => {
  const base = oracleKnowledge({ asChecks: ['f2', 'f3'] });
  const { way } = base.methods;
  if (!way) throw new Error('the oracle knowledge lacks its method');
  const knowledge: Knowledge = {
    ...base,
    methods: { way, gauged: { ...way, id: 'gauged', needs: ['gauge'] } },
    checks: Object.fromEntries(Object.entries(base.checks).map(([id, check]) => [id, { ...check, methods: [id === 'f2' ? 'gauged' : 'way'] }])),
  };
  const ranked = (lacksTools: readonly string[]) => nextChecks(diagnosed({ observations: [look('f0', 'seen'), look('f1', 'seen')] }, knowledge), knowledge, { lacksTools }).map(({ check, lacks }) => [check, lacks]);

  it('come last when a tool is not at hand, however much they tell', () => {
    // In the same time f2 takes away more doubt than f3 (diagnosis.md 2.4: .290 and .181 bit).
    expect(ranked([])).toEqual([['f2', []], ['f3', []]]);
    expect(ranked(['gauge'])).toEqual([['f3', []], ['f2', ['gauge']]]);
  });
});
