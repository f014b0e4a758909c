import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSolvedCases } from '@/app/_cli/evaluation/read-solved-cases';
import { readContent } from '@/content/read-content';
import { caseSchema, type CaseFile } from '@/lib/cases';
import { buildNet, diagnose, evidenceOf } from '@/lib/diagnosis';
import type { Grade, Knowledge } from '@/lib/knowledge';
import { chainKnowledge } from './toy-knowledge';

const toy = chainKnowledge();
/** Rounding of some hundred additions of doubles. */
const DIGITS = 11;
const FADING = 0.2;

/** Shares of slight, clear, severe in the toy: d0 mostly slight, d1 mostly severe, what has no cause in between. */
const SHARES = { d0: [0.7, 0.2, 0.1], d1: [0.1, 0.3, 0.6], leak: [0.5, 0.3, 0.2] } as const;
const PRIORS = { d0: 0.1, d1: 0.08, d2: 0.05 } as const;
const CURED = 0.9;
/** P(told | true), rows by what was told, columns by what it is: as in symptom-levels.ts. */
const TOLD = { slight: [0.8, 0.15, 0.03], clear: [0.17, 0.7, 0.17], severe: [0.03, 0.15, 0.8] } as const;

const graded = gradedToy();

function gradedToy(): Knowledge {
  const { curl } = toy.symptoms;
  const { d0, d1 } = curl?.links ?? {};
  if (!curl || !d0 || !d1) throw new Error('toy');
  const words = { slight: 'a little', clear: 'plain to see', severe: 'a lot' };
  return {
    ...toy,
    symptoms: { ...toy.symptoms, curl: { ...curl, grades: words, leakGrades: SHARES.leak, links: { d0: { ...d0, grades: SHARES.d0 }, d1: { ...d1, grades: SHARES.d1 } } } },
    remedies: { fix: { id: 'fix', does: 'Fix', cures: { d0: { chance: CURED, said: '' } }, minutes: 1, price: { from: 0, to: 0 }, reversible: 'yes', needs: [], provedBy: { minutes: 1 }, hazards: [] } },
  };
}

interface Look {
  readonly symptom: 'curl' | 'shift';
  readonly round: number;
  readonly seen: boolean;
  readonly severity?: Grade;
}

function presences(looks: readonly Look[], rounds: number, knowledge = graded): number[] {
  const file = caseOf(looks, rounds);
  const result = diagnose(file, knowledge, { copies: 0, fading: FADING });
  if (result.kind !== 'diagnosis') throw new Error('too much');
  return ['d0', 'd1', 'd2'].map((id) => result.causes.find((cause) => cause.id === id)?.present ?? NaN);
}

function caseOf(looks: readonly Look[], rounds: number): CaseFile {
  const fitted = Array.from({ length: rounds - 1 }, (_, index) => ({ number: index + 1, remedy: index === 0 ? 'fix' : 'another', fittedOn: '2026-05-24' }));
  return caseSchema.parse({ schema: 'leeward/case', version: 1, id: 'a', observations: looks.map(({ symptom, round, seen, severity }) => ({ symptom, round, state: seen ? 'seen' : 'not-seen', ...(severity ? { severity } : {}) })), rounds: fitted });
}

/* The enumeration: every way it may be, one by one, with no gates and no levels. */

interface Way {
  readonly chance: number;
  /** Last round in which it fires, 0 for never. */
  readonly last: number;
  readonly grade: number;
}

function waysOf(chance: number, last: number, shares: readonly number[], fading: number): Way[] {
  if (last === 0) return [{ chance: 1, last: 0, grade: -1 }];
  const ends = last === 1 || fading === 0 ? [[last, chance]] : [[last, chance * (1 - fading)], ...Array.from({ length: last - 1 }, (_, index) => [index + 1, (chance * fading) / (last - 1)])];
  return [{ chance: 1 - chance, last: 0, grade: -1 }, ...ends.flatMap(([end = 0, share = 0]) => shares.map((part, grade) => ({ chance: share * part, last: end, grade })))];
}

/** States of a cause: chance, last round in which it acts (0: absent), and whether it is at work now. */
function statesOf(prior: number, cured: number, rounds: number): { chance: number; last: number; now: boolean }[] {
  return [{ chance: 1 - prior, last: 0, now: false }, { chance: prior * cured, last: 1, now: false }, { chance: prior * (1 - cured), last: rounds, now: true }].filter((state) => state.chance > 0);
}

function enumerated(looks: readonly Look[], rounds: number): number[] {
  let total = 0;
  const present = [0, 0, 0];
  const curlLooks = looks.filter((look) => look.symptom === 'curl');
  const shiftLooks = looks.filter((look) => look.symptom === 'shift');
  for (const s0 of statesOf(PRIORS.d0, rounds > 1 ? CURED : 0, rounds)) for (const s1 of statesOf(PRIORS.d1, 0, rounds)) for (const s2 of statesOf(PRIORS.d2, 0, rounds))
    for (const a of waysOf(0.8, s0.last, SHARES.d0, 0)) for (const b of waysOf(0.6, s1.last, SHARES.d1, 0)) for (const c of waysOf(0.02, rounds, SHARES.leak, FADING)) {
      const curl = story(curlLooks, [a, b, c]);
      if (curl === 0) continue;
      const shift = shiftLooks.length === 0 ? 1 : shiftLikelihood(shiftLooks, Math.max(a.last, b.last, c.last), s2.last, rounds);
      const weight = s0.chance * s1.chance * s2.chance * a.chance * b.chance * c.chance * curl * shift;
      total += weight;
      [s0, s1, s2].forEach((state, cause) => { if (state.now) present[cause] = (present[cause] ?? 0) + weight; });
    }
  return present.map((sum) => sum / total);
}

function shiftLikelihood(looks: readonly Look[], curlLast: number, causeLast: number, rounds: number): number {
  let sum = 0;
  for (const a of waysOf(0.7, causeLast, [1], 0)) for (const b of waysOf(0.01, rounds, [1], FADING)) for (const c of waysOf(0.5, curlLast, [1], FADING)) sum += a.chance * b.chance * c.chance * story(looks, [a, b, c]);
  return sum;
}

/** Likelihood of what was told of one symptom when it fires in these ways. The last grade told holds for the last round seen. */
function story(looks: readonly Look[], ways: readonly Way[]): number {
  const fires = (round: number): Way[] => ways.filter((way) => way.last >= round);
  if (looks.some((look) => look.seen !== fires(look.round).length > 0)) return 0;
  const seen = looks.filter((look) => look.seen);
  const told = [...seen].reverse().find((look) => look.severity)?.severity;
  if (told === undefined) return 1;
  const worst = Math.max(...fires(Math.max(...seen.map((look) => look.round))).map((way) => way.grade));
  return TOLD[told][worst] ?? NaN;
}

const curl = (round: number, seen: boolean, severity?: Grade): Look => ({ symptom: 'curl', round, seen, ...(severity ? { severity } : {}) });
const shift = (round: number, seen: boolean): Look => ({ symptom: 'shift', round, seen });

describe('how bad a symptom is', () => {
  it.each([
    ['slight, one round', [curl(1, true, 'slight')], 1],
    ['clear, one round', [curl(1, true, 'clear')], 1],
    ['severe, one round', [curl(1, true, 'severe')], 1],
    ['severe, and what follows from it seen too', [curl(1, true, 'severe'), shift(1, true)], 1],
    ['severe, and what follows from it not seen', [curl(1, true, 'severe'), shift(1, false)], 1],
    ['slight, then gone after the repair', [curl(1, true, 'slight'), curl(2, false)], 2],
    ['severe, then seen again, not said how bad', [curl(1, true, 'severe'), curl(2, true)], 2],
    ['severe, then slight after the repair', [curl(1, true, 'severe'), curl(2, true, 'slight')], 2],
    ['slight, a repair, nothing told since', [curl(1, true, 'slight')], 2],
    ['severe, two repairs, gone after the second', [curl(1, true, 'severe'), curl(2, true), curl(3, false)], 3],
    ['severe, looked at again in the third round only', [curl(1, true, 'severe'), curl(3, false)], 3],
    ['severe, then slight, with what follows from it told in both rounds', [curl(1, true, 'severe'), shift(1, true), curl(2, true, 'slight'), shift(2, false)], 2],
    ['slight, then gone, what follows from it gone too', [curl(1, true, 'slight'), shift(1, true), curl(2, false), shift(2, false)], 2],
  ] as const)('%s: gives the enumerated chances', (_, looks, rounds) => {
    const chances = enumerated(looks, rounds);
    presences(looks, rounds).forEach((chance, index) => { expect(chance).toBeCloseTo(chances[index] ?? NaN, DIGITS); });
  });

  it('stays within a hundredth of the enumeration where something follows from it and it was not looked at since the repair', () => {
    const looks = [curl(1, true, 'severe'), shift(1, true)];
    const chances = enumerated(looks, 2);
    presences(looks, 2).forEach((chance, index) => { expect(Math.abs(chance - (chances[index] ?? NaN))).toBeLessThan(0.01); });
  });

  it('raises the cause that mostly shows it so, and lowers the other', () => {
    const [slightBy0 = NaN, slightBy1 = NaN] = presences([curl(1, true, 'slight')], 1);
    const [plain0 = NaN, plain1 = NaN] = presences([curl(1, true)], 1);
    const [severe0 = NaN, severe1 = NaN] = presences([curl(1, true, 'severe')], 1);
    expect(slightBy0).toBeGreaterThan(plain0);
    expect(plain0).toBeGreaterThan(severe0);
    expect(severe1).toBeGreaterThan(plain1);
    expect(plain1).toBeGreaterThan(slightBy1);
  });

  it('says nothing where the page tells no grades apart', () => {
    expect(presences([curl(1, true, 'severe')], 1, toy)).toEqual(presences([curl(1, true)], 1, toy));
  });
});

describe('cases in which nobody said how bad it was', () => {
  const { knowledge } = readContent(join(import.meta.dirname, '../../../content')).value ?? {};
  if (!knowledge) throw new Error('no content');
  const without: Knowledge = { ...knowledge, symptoms: Object.fromEntries(Object.entries(knowledge.symptoms).map(([id, symptom]) => [id, { ...symptom, grades: undefined }])) };
  const cases = readSolvedCases(join(import.meta.dirname, '../../cases')).value ?? [];

  it('have the very tables that they would have if no page told grades apart', () => {
    const ungraded = cases.map(({ file }) => file).filter((file) => file.observations.every((each) => each.severity === undefined));
    expect(ungraded.length).toBeGreaterThan(100);
    const differing = ungraded.filter((file) => {
      const { items } = evidenceOf(file, knowledge);
      return JSON.stringify(buildNet(file, items, knowledge).net) !== JSON.stringify(buildNet(file, items, without).net);
    });
    expect(differing.map((file) => file.id)).toEqual([]);
  });
});
