import { describe, expect, it } from 'vitest';
import { leader, sameDecision } from '@/lib/inference';
import { nextChecks, sameAdvice } from '@/lib/diagnosis';
import { chanceSeen, everyState, oracleKnowledge } from './oracle-knowledge';
import { diagnosed, file, look } from './told';

const knowledge = oracleKnowledge({ asChecks: ['f2', 'f3'], fixes: true });
const facts = { observations: [look('f0', 'seen'), look('f1', 'seen')] };
const STRAY = 0.05;

describe('the advice after more checks', () => {
  it('stays the same with the probability of an enumeration over all states and outcomes', () => {
    const result = diagnosed(facts, knowledge);
    const shares = result.net.causes.map((id) => { const cause = result.causes.find((each) => each.id === id); return cause && cause.present > 0 ? cause.probability / cause.present : 0; });
    const told = (on: boolean, truth: number): number => (on ? truth * (1 - STRAY) + (1 - truth) * STRAY : truth * STRAY + (1 - truth) * (1 - STRAY));
    const combos = [[true, true], [true, false], [false, true], [false, false]] as const;
    const weights = (f2: boolean | undefined, f3: boolean | undefined): number[] => everyState().map(({ states, chance }) => chance * chanceSeen('f0', states) * chanceSeen('f1', states) * (f2 === undefined ? 1 : told(f2, chanceSeen('f2', states))) * (f3 === undefined ? 1 : told(f3, chanceSeen('f3', states))));
    const total = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
    // Remedies are alike, so the first one cures the cause of the largest chance of being behind it.
    const first = (list: readonly number[]): number => {
      const chances = shares.map((share, cause) => share * everyState().reduce((sum, { states }, row) => sum + (states[cause] === true ? (list[row] ?? 0) : 0), 0));
      return chances.indexOf(Math.max(...chances));
    };
    const now = weights(undefined, undefined);
    const kept = combos.filter(([f2, f3]) => first(weights(f2, f3)) === first(now)).reduce((sum, [f2, f3]) => sum + total(weights(f2, f3)), 0) / total(now);
    const found = sameAdvice(result, nextChecks(result, knowledge), file(facts), knowledge);
    expect([...(found?.checks ?? [])].sort()).toEqual(['f2', 'f3']);
    expect(found?.remedy).toBe('fix-d0');
    expect(found?.probability).toBeCloseTo(kept, 10);
  });

  it('rests on a core that gives the value of the sheet for "which cause leads"', () => {
    // diagnosis.md 2.4: .825521615833, with answers that never mislead.
    const plain = oracleKnowledge();
    const everything = diagnosed({ observations: ['f0', 'f1', 'f2', 'f3'].map((id) => look(id, 'seen')) }, plain);
    const index = (id: string): number => everything.net.gates.findIndex((gate) => gate.about === id);
    const gates = everything.net.net.gates.map((gate, each) => (each === index('f2') || each === index('f3') ? { ...gate, weights: [1, 1] } : gate));
    const open = (id: string) => [[0, 1], [1, 0]].map((weights) => ({ kind: 'gate' as const, gate: index(id), weights }));
    expect(sameDecision({ ...everything.net.net, gates }, [open('f2'), open('f3')], leader)).toBeCloseTo(0.825521615833, 11);
  });

  it('is certain when the checks tell nothing apart, and is not asked without checks or remedies', () => {
    const result = diagnosed(facts, knowledge);
    expect(sameAdvice(result, [], file(facts), knowledge)).toBeUndefined();
    const without = oracleKnowledge({ asChecks: ['f2', 'f3'] });
    const bare = diagnosed(facts, without);
    expect(sameAdvice(bare, nextChecks(bare, without), file(facts), without)).toBeUndefined();
    const deaf = { ...knowledge, checks: Object.fromEntries(Object.entries(knowledge.checks).map(([id, check]) => [id, { ...check, yes: Object.fromEntries(Object.entries(check.yes).map(([cause, link]) => [cause, { ...link, chance: 1e-9 }])) }])) };
    const same = diagnosed(facts, deaf);
    expect(sameAdvice(same, nextChecks(same, deaf), file(facts), deaf)?.probability).toBeCloseTo(1, 9);
  });
});
