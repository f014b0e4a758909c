import { describe, expect, it } from 'vitest';
import { ADVICE_SETTLED, firstStep, growPlan, inOneGo, nextStep, possibilitiesOf, standingOf, waysOfCase, type PlanNode } from '@/lib/diagnosis';
import { oracleKnowledge } from './oracle-knowledge';
import { diagnosed, look } from './told';

const knowledge = oracleKnowledge({ asChecks: ['f2', 'f3'], fixes: true });
const standing = standingOf(diagnosed({ observations: [look('f0', 'seen'), look('f1', 'seen')] }, knowledge), possibilitiesOf(knowledge, []));
const remedy = standing.changes[standing.changes.length - 1]?.id ?? '';
const ways = inOneGo(waysOfCase(standing, [])).weighed;
const told = (probability: number) => firstStep(standing, { remedy, probability, checks: ['f2'] }, ways);

describe('the step that a person is told', () => {
  it('is that of the rule while an answer may still change the advice, or nothing is known of that', () => {
    expect(told(ADVICE_SETTLED - 1e-9)).toEqual(nextStep(standing));
    expect(firstStep(standing, undefined, ways)).toEqual(nextStep(standing));
  });

  it('is the settled change itself from the bound on', () => {
    // Nineteen of twenty: the bound of DEVELOPERS.md.
    expect(ADVICE_SETTLED).toBe(0.95);
    expect(told(ADVICE_SETTLED)).toMatchObject({ kind: 'change', change: { id: remedy } });
  });

  it('is that of the rule when the settled change has been tried since', () => {
    expect(firstStep(standing, { remedy: 'not among them', probability: 1, checks: [] }, ways)).toEqual(nextStep(standing));
  });

  it('is what a plan begins with', () => {
    const plan = growPlan(standing, { first: told(1), depth: 2 });
    let at = plan.next();
    while (at.done !== true) at = plan.next();
    const root: PlanNode = at.value;
    expect(root).toMatchObject({ kind: 'change', change: remedy });
  });
});
