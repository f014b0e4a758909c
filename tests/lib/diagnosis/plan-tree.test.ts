import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { costOf, endingsOfChanges, endingsWithCheck, growPlan, nextStep, possibilitiesOf, prospectOf, Standing, standingOf, type Change, type OpenCheck, type PlanNode, type PlanOptions } from '@/lib/diagnosis';
import { diagnosed, look } from './told';

/** Rounding of sums over some hundred draws. */
const ROUNDING = 1e-9;

const change = (id: string, cost: number, ...causes: readonly number[]): Change => ({ id, cost, money: 0, minutes: cost, removes: new Map(causes.map((cause) => [cause, 1])) });
/** A check that tells for certain whether one cause is there. */
const tells = (cause: number, minutes: number): OpenCheck => ({ id: `tells-${cause}`, method: `method-${cause}`, minutes, isLacking: false, answers: [{ kind: 'yes', says: 'it is' }, { kind: 'no', says: 'it is not' }], hears: new Set([cause]), chances: (present) => (present.includes(cause) ? [1, 0] : [0, 1]) });
const one = (cause: number) => ({ present: [cause], behind: [cause], bySymptom: [[cause]] });

function grown(standing: Standing, options?: PlanOptions): PlanNode {
  const work = growPlan(standing, options);
  for (;;) { const step = work.next(); if (step.done === true) return step.value; }
}

function everyNode(node: PlanNode): PlanNode[] {
  return 'branches' in node ? [node, ...node.branches.flatMap((branch) => everyNode(branch.next))] : [node];
}

/** The cheapest plan over one cause out of several, perfect checks and perfect changes, by going through every plan there is. */
function cheapest(shares: ReadonlyMap<number, number>, costs: readonly number[], checks: ReadonlyMap<number, number>): number {
  const total = [...shares.values()].reduce((sum, share) => sum + share, 0);
  if (total === 0) return 0;
  const without = (cause: number): Map<number, number> => new Map([...shares].filter(([each]) => each !== cause));
  const plans = [...shares.keys()].map((cause) => total * (costs[cause] ?? 0) + cheapest(without(cause), costs, checks));
  for (const [cause, minutes] of checks) {
    const left = new Map([...checks].filter(([each]) => each !== cause));
    const yes = shares.get(cause) ?? 0;
    if (yes > 0 && yes < total) plans.push(total * minutes + cheapest(new Map([[cause, yes]]), costs, left) + cheapest(without(cause), costs, left));
  }
  return Math.min(...plans);
}

describe('the plan of a small case', () => {
  // One of three causes, p = .5 .3 .2, changes of 10, 20, 40 min, a perfect check on the first cause of 2 min.
  const standing = new Standing({ symptoms: ['s'], ever: 1, scenarios: [one(0), one(1), one(2)] }, [tells(0, 2)], [change('a', 10, 0), change('b', 20, 1), change('c', 40, 2)], [0.5, 0.3, 0.2]);

  it('costs what the cheapest of all plans costs', () => {
    const best = cheapest(new Map([[0, 0.5], [1, 0.3], [2, 0.2]]), [10, 20, 40], new Map([[0, 2]]));
    // By hand: check 2, then 10 with .5, else 20 and with .4 another 40: 2 + 5 + 18.
    expect(best).toBeCloseTo(25, 12);
    expect(grown(standing).minutes).toBeCloseTo(best, 12);
  });

  it('tells how long it takes nine times in ten, and that it always ends in a cure', () => {
    const plan = grown(standing);
    // It ends after 12 min (.5), 22 min (.3) or 62 min (.2).
    expect([plan.worst, plan.cured]).toEqual([62, 1]);
    expect(plan.kind).toBe('check');
  });

  it('makes the changes at once where the check takes longer than it saves', () => {
    const dear = new Standing({ symptoms: ['s'], ever: 1, scenarios: [one(0), one(1), one(2)] }, [tells(0, 6)], [change('a', 10, 0), change('b', 20, 1), change('c', 40, 2)], [0.5, 0.3, 0.2]);
    const plan = grown(dear);
    expect(plan.kind).toBe('change');
    // p over cost sorts the causes as they stand: 10 + .5 · 20 + .2 · 40.
    expect(plan.minutes).toBeCloseTo(28, 12);
  });

  it('gives up where going on costs more, and says so', () => {
    const plan = grown(new Standing({ symptoms: ['s'], ever: 1, scenarios: [one(0)] }, [], [change('a', 700, 0)], [1]));
    expect([plan.kind, plan.cured, plan.minutes]).toEqual(['give-up', 0, 0]);
  });
});

describe('a proof that shows which symptoms went', () => {
  // Two faults at once: the first symptom comes from cause 0, the second from cause 1 or 2, one as likely as the other.
  const scenarios = [1, 2].map((cause) => ({ present: [0, cause], behind: [0, cause], bySymptom: [[0], [cause]] }));
  const changes = [change('a', 10, 0), change('b', 20, 1), change('c', 20, 2)];
  const standing = new Standing({ symptoms: ['first', 'second'], ever: 2, scenarios }, [], changes, [0.5, 0.5]);

  it('parts the ways by what is gone', () => {
    const [a, b] = changes;
    if (!a || !b) throw new Error('no changes');
    expect(standing.afterChange(a).map(({ gone, standing: left }) => [gone, left.total])).toEqual([[['first'], 1]]);
    expect(standing.afterChange(b).map(({ gone, standing: left }) => [gone.join(), left.total]).sort()).toEqual([['', 0.5], ['second', 0.5]]);
  });

  it('spares changes for a symptom that is gone', () => {
    // Either way 10 for the first; then 20, and with a chance of a half another 20.
    expect(standing.orderOfChanges().cost).toBeCloseTo(40, 12);
    expect(grown(standing).minutes).toBeCloseTo(40, 12);
  });
});

describe('two faults of which one can be mended', () => {
  // The first symptom comes from cause 0 in six of ten, else from something unlisted; the second always from something unlisted.
  const scenarios = [[0], [-1]].map((culprits) => ({ present: culprits.filter((cause) => cause >= 0), behind: culprits.filter((cause) => cause >= 0), bySymptom: [culprits, [-1]] }));
  const standing = (cost: number): Standing => new Standing({ symptoms: ['first', 'second'], ever: 2, scenarios }, [], [change('a', cost, 0)], [0.6, 0.4]);

  it('are worth the change that mends one, as long as it costs less than its share of giving up', () => {
    // Half of what was seen goes in six of ten: .3 of 600 min is 180 min.
    expect(standing(179).orderOfChanges()).toMatchObject({ changes: [{ id: 'a' }] });
    expect(standing(179).orderOfChanges().cost).toBeCloseTo(179 + 0.7 * 600, 9);
    expect(standing(181).orderOfChanges()).toEqual({ changes: [], cost: 600 });
  });

  it('begin with the change that takes away more of the trouble, where both are as sure', () => {
    // One symptom of five comes from cause 0, four from cause 1.
    const [few, many] = [change('few', 110, 0), change('many', 120, 1)];
    const drawn = { symptoms: ['a', 'b', 'c', 'd', 'e'], ever: 5, scenarios: [{ present: [0, 1], behind: [0, 1], bySymptom: [[0], [1], [1], [1], [1]] }] };
    expect(new Standing(drawn, [], [few, many], [1]).orderOfChanges().changes.map(({ id }) => id)).toEqual(['many', 'few']);
  });

  it('say in the plan that it is not cured, and how much of it is left', () => {
    const plan = grown(standing(60));
    expect([plan.kind, plan.cured, plan.left, plan.minutes].map((value) => (typeof value === 'number' ? Number(value.toFixed(9)) : value))).toEqual(['change', 0, 0.7, 60]);
    expect(prospectOf(endingsOfChanges(standing(60)))).toMatchObject({ cured: 0, minutes: 60 });
    expect(prospectOf(endingsOfChanges(standing(60))).left).toBeCloseTo(0.7, 9);
  });
});

describe('a check that tells what a failed proof would tell as well', () => {
  // Causes 0 and 2 together, or 1 and 3 together; each with a change of 10 min of its own. The check tells which pair it is.
  const scenarios = [[0, 2], [1, 3]].map(([first = 0, second = 0]) => ({ present: [first, second], behind: [first, second], bySymptom: [[first], [second]] }));
  const changes = [0, 1, 2, 3].map((cause) => change(`fix-${cause}`, 10, cause));
  const standing = (minutes: number): Standing => new Standing({ symptoms: ['first', 'second'], ever: 2, scenarios }, [tells(0, minutes)], changes, [0.5, 0.5]);

  it('saves less than by an order fixed beforehand: the proof of the first change tells which pair it is', () => {
    // Fixed: 10 + 10 for the first pair, all four for the second: 30. Reckoned anew after the first proof: 20 or 30, so 25.
    expect(standing(4).orderOfChanges().cost).toBeCloseTo(30, 12);
    expect(prospectOf(endingsOfChanges(standing(4))).minutes).toBeCloseTo(25, 12);
  });

  it('is taken at 4 min, and not at 7', () => {
    // With the check first always two changes: 4 + 20 is less than 25; 7 + 20 is more, though less than 30.
    expect(nextStep(standing(4))).toMatchObject({ kind: 'check', ahead: { now: { minutes: 25, cured: 1 }, after: { minutes: 24, cured: 1 } } });
    expect(nextStep(standing(7))).toMatchObject({ kind: 'change' });
  });
});

describe('the plan of a case of the knowledge base', () => {
  const knowledge = readContent().value?.knowledge;
  if (!knowledge) throw new Error('the content does not read');
  const possible = possibilitiesOf(knowledge);
  const standing = standingOf(diagnosed({ observations: [look('curled-edges', 'seen'), look('displaced-layers', 'seen'), look('lifted-corners', 'not-seen')] }, knowledge), possible, { draws: 200 });
  const plan = grown(standing, { depth: 4 });
  const nodes = everyNode(plan);

  it('is a tree of some size that begins with the next step', () => {
    expect(nodes.length).toBeGreaterThan(10);
    const step = nextStep(standing);
    expect(plan.kind).toBe(step.kind);
    if (step.kind === 'check') expect(plan).toMatchObject({ check: step.check.id });
  });

  it('adds up at every step: chances to 1, minutes and cures to those of the step', () => {
    const wrong = nodes.flatMap((node) => {
      if (!('branches' in node)) return [];
      const mean = (figure: (next: PlanNode) => number): number => node.branches.reduce((sum, branch) => sum + branch.chance * figure(branch.next), 0);
      const gaps = [mean(() => 1) - 1, mean((next) => next.minutes) + node.own - node.minutes, mean((next) => (next.kind === 'cured' ? 1 : next.cured)) - node.cured, node.branches.reduce((sum, branch) => sum + branch.next.chance, 0) - node.chance];
      return gaps.every((gap) => Math.abs(gap) < ROUNDING) ? [] : [`${node.kind}: ${gaps.join(', ')}`];
    });
    expect(wrong).toEqual([]);
  });

  it('has a mean that agrees with its nine in ten', () => {
    // At least a tenth takes as long as `worst`, so the mean is no less than a tenth of it.
    expect(nodes.filter((node) => node.worst < 0 || node.minutes < 0.1 * node.worst - ROUNDING)).toEqual([]);
  });

  it('takes a check only where that costs less than changes alone', () => {
    const step = nextStep(standing);
    if (step.kind !== 'check') throw new Error(`got ${step.kind}, expected a case that begins with a check`);
    expect(step.ahead).toEqual({ now: prospectOf(endingsOfChanges(standing)), after: prospectOf(endingsWithCheck(standing, step.check)) });
    expect(costOf(step.ahead.after)).toBeLessThan(costOf(step.ahead.now));
  });

  it('goes on from 0 to 1, and can be left at any point without a trace', () => {
    const left = growPlan(standing, { depth: 4 });
    left.next();
    left.return(plan);
    const followed: number[] = [];
    const work = growPlan(standing, { depth: 4 });
    for (let step = work.next(); step.done !== true; step = work.next()) followed.push(step.value.followed);
    expect(followed.every((share, index) => share >= (followed[index - 1] ?? 0))).toBe(true);
    expect(followed.at(-1)).toBeCloseTo(1, 9);
    expect(grown(standing, { depth: 4 })).toEqual(plan);
  });

  it('has for every check answers whose chances sum to 1, whatever causes are there', () => {
    const causes = Object.keys(knowledge.causes).length;
    expect(possible.checks.length).toBeGreaterThan(50);
    const wrong = possible.checks.filter((check) => [[], [3], [7, 30, 60], Array.from({ length: causes }, (_, cause) => cause)].some((present) => Math.abs(check.chances(present).reduce((sum, chance) => sum + chance, 0) - 1) > ROUNDING));
    expect(wrong.map((check) => check.id)).toEqual([]);
  });
});
