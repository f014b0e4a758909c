import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import { nextChecks, possibilitiesOf, standingOf } from '@/lib/diagnosis';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, look } from './told';

const base = readContent().value?.knowledge;
const [anyRemedy, anyMethod] = [Object.values(base?.remedies ?? {})[0], Object.values(base?.methods ?? {})[0]];
if (anyRemedy === undefined || anyMethod === undefined) throw new Error('the content does not read');
const known = chainKnowledge();
const remedy = (id: string, cause: string) => ({ ...anyRemedy, id, cures: { [cause]: { chance: 0.9, said: '', basis: { estimate: 'toy' }, statedIn: '' } } });
const knowledge = {
  ...known,
  checks: Object.fromEntries(Object.entries(known.checks).map(([id, check]) => [id, { ...check, methods: ['by-eye'] }])),
  methods: { 'by-eye': { ...anyMethod, id: 'by-eye', takes: 'look', minutes: 5, waitMinutes: 0, needs: [] } },
  // No page of the check speaks of "else".
  remedies: { fix: remedy('fix', 'd0'), other: remedy('other', 'else') },
};
const seen = [look('curl', 'seen'), look('curl', 'seen', 2)];
const found = (answer: string, round: number) => ({ check: 'look', answer, round });

/** Whether the check is asked for by the list of next checks, and by the plan; the two must agree. */
function isOpen(facts: object): boolean {
  const diagnosis = diagnosed(facts, knowledge);
  const [listed, planned] = [nextChecks(diagnosis, knowledge).some(({ check }) => check === 'look'), standingOf(diagnosis, possibilitiesOf(knowledge)).checks.some(({ id }) => id === 'look')];
  expect(listed).toBe(planned);
  return listed;
}

describe('a check', () => {
  it('is open until it is answered', () => {
    expect(isOpen({ observations: [look('curl', 'seen')] })).toBe(true);
    expect(isOpen({ observations: [look('curl', 'seen')], findings: [found('no', 1)] })).toBe(false);
  });

  it('is put off for the round in which nobody could tell', () => {
    expect(isOpen({ observations: [look('curl', 'seen')], findings: [found('cant-tell', 1)] })).toBe(false);
    expect(isOpen({ observations: seen, findings: [found('cant-tell', 1)], rounds: [{ number: 1, remedy: 'other', verdict: 'no-change' }, { number: 2 }] })).toBe(true);
  });

  it('is open again after a change that may have cured what it hears of, and only then', () => {
    const after = (id: string): object => ({ observations: seen, findings: [found('yes', 1)], rounds: [{ number: 1, remedy: id, verdict: 'better' }, { number: 2 }] });
    expect(isOpen(after('fix'))).toBe(true);
    expect(isOpen(after('other'))).toBe(false);
    expect(isOpen({ ...after('fix'), findings: [found('yes', 1), found('no', 2)] })).toBe(false);
  });
});

describe('what is told in several rounds', () => {
  it('counts as one reading while the figures agree, and as two once they are well apart', () => {
    if (base === undefined) throw new Error('the content does not read');
    const read = (value: number, round: number) => ({ check: 'extruded-length', result: { quantity: 'ratio', value, plusMinus: 0.02, unit: '' }, round });
    const gates = (second: number): number => diagnosed({
      observations: [look('starved-everywhere', 'seen'), look('starved-everywhere', 'seen', 2)], findings: [read(0.84, 1), read(second, 2)],
      rounds: [{ number: 1, remedy: 'lower-idler-pressure', verdict: 'better' }, { number: 2 }],
    }, base).net.gates.filter(({ about }) => about === 'extruded-length').length;
    expect([gates(0.85), gates(1)]).toEqual([1, 2]);
  });

  it('has room for a detail whose symptom was told in an earlier round, but not once that one is gone', () => {
    const { curl, shift } = known.symptoms;
    if (curl === undefined || shift === undefined) throw new Error('no chain');
    const detailed = { ...knowledge, symptoms: { curl, shift: { ...shift, detailOf: 'curl', followsFrom: {} } } };
    const about = (...observations: object[]): string[] => diagnosed({ observations }, detailed).net.gates.map((gate) => gate.about);
    expect(about(look('curl', 'seen'), look('shift', 'seen', 2))).toEqual(['curl', 'shift']);
    expect(about(look('curl', 'seen'), look('curl', 'not-seen', 2), look('shift', 'seen', 2))).toEqual(['curl']);
  });
});
