import { describe, expect, it } from 'vitest';
import { cheapestMethod, nextChecks, ownMinutesOfMethod, possibilitiesOf } from '@/lib/diagnosis';
import { minutesToLookAgain } from '@/lib/diagnosis/minutes-to-look';
import type { Knowledge, KnownMethod } from '@/lib/knowledge';
import { oracleKnowledge } from './oracle-knowledge';
import { diagnosed, look } from './told';

interface Way {
  readonly minutes: number;
  readonly waitMinutes?: number;
  readonly needs?: readonly string[];
}

/** The net of 4 causes with finding f2 as a check, and the same check once more under the name `twin`: only their ways differ. */
function withWays(f2: Readonly<Record<string, Way>>, twin: Readonly<Record<string, Way>>): Knowledge {
  const base = oracleKnowledge({ asChecks: ['f2'] });
  const [check, method] = [base.checks.f2, base.methods.way];
  if (!check || !method) throw new Error('the oracle knowledge lacks its check or its method');
  const methods = Object.entries({ ...f2, ...twin }).map(([id, { needs = [], ...way }]): readonly [string, KnownMethod] => [id, { ...method, ...way, needs: [...needs], id }]);
  return { ...base, checks: { f2: { ...check, methods: Object.keys(f2) }, twin: { ...check, id: 'twin', methods: Object.keys(twin) } }, methods: Object.fromEntries(methods) };
}

const BY_HAND = { minutes: 20 };
/** By hand: 10 + 35 / 4 = 18.75 own minutes. */
const WAITS = { minutes: 45, waitMinutes: 35 };
const ordered = (knowledge: Knowledge): readonly (readonly [string, number, number])[] => nextChecks(diagnosed({ observations: [look('f0', 'seen'), look('f1', 'seen')] }, knowledge), knowledge).map(({ check, minutes, own }) => [check, minutes, own] as const);

describe('own minutes of a check', () => {
  it('are hands in full and waiting at a quarter', () => {
    // By hand: 15 + 60 / 4; nothing waits; 10 + 35 / 4.
    expect([{ minutes: 75, waitMinutes: 60 }, { minutes: 12 }, WAITS].map(ownMinutesOfMethod)).toEqual([30, 12, 18.75]);
  });

  it('order checks that tell the same: one that mostly waits comes before a quicker one that keeps the hands busy', () => {
    expect(ordered(withWays({ hands: BY_HAND }, { waits: WAITS }))).toEqual([['twin', 45, 18.75], ['f2', 20, 20]]);
    expect(ordered(withWays({ hands: BY_HAND }, { stays: { minutes: 45 } }))).toEqual([['f2', 20, 20], ['twin', 45, 45]]);
  });

  it('are what the plan and the rule of the next step count, and what a second look costs', () => {
    const knowledge = withWays({ hands: BY_HAND }, { waits: WAITS });
    expect(possibilitiesOf(knowledge).checks.map(({ id, minutes }) => [id, minutes])).toEqual([['f2', 20], ['twin', 18.75]]);
    expect(minutesToLookAgain({ kind: 'answer', about: 'twin', round: 1, yes: true, finding: { check: 'twin', method: 'waits', round: 1, answer: 'yes' } }, knowledge)).toBe(18.75);
  });
});

describe('the cheapest method of a check', () => {
  it('is the one with fewest own minutes, not the one that is over first', () => {
    const { checks, methods } = withWays({ hands: BY_HAND, waits: WAITS }, {});
    expect(checks.f2 && cheapestMethod(checks.f2, { methods })?.method.id).toBe('waits');
  });

  it('has all its tools at hand where another does not, whatever it takes, and says what it lacks where none has', () => {
    const { checks, methods } = withWays({ quick: { minutes: 2, needs: ['gauge'] }, waits: { ...WAITS, needs: ['torch'] } }, { none: BY_HAND });
    const way = (lacking: readonly string[]) => checks.f2 && cheapestMethod(checks.f2, { methods }, lacking);
    expect([way([]), way(['gauge']), way(['gauge', 'torch'])].map((each) => [each?.method.id, each?.lacks])).toEqual([['quick', []], ['waits', []], ['quick', ['gauge']]]);
    expect(cheapestMethod({ methods: [] }, { methods })).toBeUndefined();
  });
});
