import { describe, expect, it } from 'vitest';
import { readContent } from '@/content/read-content';
import type { Casebook } from '@/lib/cases';
import { casebookFactor, casebookOf, curedCauses, isProvenCure, type TaughtCase } from '@/lib/diagnosis';
import { chainKnowledge } from './toy-knowledge';
import { diagnosed, file, look } from './told';

const book = (cases: number, cured: Record<string, number>, more: Partial<Casebook> = {}): Casebook => ({ cases, here: cases, cured, ...more });

describe('what a casebook does to a cause', () => {
  it('is the mean of a Beta law with a hundred cases of its own, as odds', () => {
    // By hand: (0.1 · 100 + 2) / 104 = 0.115385, odds 0.130435; before 0.111111.
    expect(casebookFactor(0.1, 'd0', book(4, { d0: 2 }))).toBeCloseTo(1.173913, 6);
    expect(casebookFactor(0.1, 'd1', book(4, { d0: 2 }))).toBeCloseTo((10 / 94) / (0.1 / 0.9), 12);
  });

  it('never moves the odds by more than 6 dB', () => {
    expect(casebookFactor(0.005, 'd0', book(50, { d0: 50 }))).toBeCloseTo(3.981072, 6);
    expect(casebookFactor(0.005, 'd0', book(9999, {}))).toBeCloseTo(1 / 3.981072, 6);
  });

  it('is nothing without one, and where it is left out', () => {
    expect([casebookFactor(0.1, 'd0', undefined), casebookFactor(0.1, 'd0', book(4, { d0: 4 }, { leftOut: true }))]).toEqual([1, 1]);
  });

  it('stands in the ranking before anything was seen', () => {
    const facts = { observations: [look('curl', 'seen')] };
    const before = (more: object): number | undefined => diagnosed({ ...facts, ...more }, chainKnowledge()).causes.find(({ id }) => id === 'd0')?.before;
    expect(before({})).toBeCloseTo(0.1, 12);
    expect(before({ casebook: book(4, { d0: 2 }) })).toBeCloseTo(12 / 104, 9);
    expect(before({ casebook: book(4, { d0: 2 }, { leftOut: true }) })).toBeCloseTo(0.1, 12);
  });
});

describe('what a proven case teaches', () => {
  const anyRemedy = Object.values(readContent().value?.knowledge.remedies ?? {})[0];
  if (anyRemedy === undefined) throw new Error('the content does not read');
  const known = chainKnowledge();
  const knowledge = { ...known, remedies: { fix: { ...anyRemedy, id: 'fix', cures: { d0: { chance: 0.9, said: '', basis: { estimate: 'toy' }, statedIn: '' } } } } };
  const proven = file({ observations: [look('curl', 'seen'), look('curl', 'not-seen', 2)], rounds: [{ number: 1, remedy: 'fix', fittedOn: '2026-11-20', verdict: 'cured' }], state: 'closed' });

  it('is how likely its change cured each cause, as enumeration has it', () => {
    /*
     * d0: absent 0.9, cured 0.09, still there 0.01. The curl fires in the first round and not in the second: through d0 when
     * cured (0.8), or by itself and gone by luck (0.02 · 0.2). d1 must not show it: the same factor in all three.
     */
    const [absent, cured, still] = [0.9 * (0.984 - 0.98), 0.09 * (0.984 - 0.98 * 0.2), 0.01 * 0.2 * (0.984 - 0.98)];
    expect(curedCauses(proven, knowledge)?.get('d0')).toBeCloseTo(cured / (absent + cured + still), 9);
    expect([...(curedCauses(proven, knowledge)?.keys() ?? [])]).toEqual(['d0']);
  });

  it('does not hang on what the casebook had taught it', () => {
    expect(curedCauses({ ...proven, casebook: book(9, { d0: 9 }) }, knowledge)).toEqual(curedCauses(proven, knowledge));
  });

  it('is nothing before a proof, or where it did not cure', () => {
    expect([isProvenCure(proven), isProvenCure({ ...proven, state: 'open' }), isProvenCure({ ...proven, rounds: [{ number: 1, verdict: 'better' }] })]).toEqual([true, false, false]);
  });
});

describe('a casebook', () => {
  const taught = (machine: string | undefined, cured: Record<string, number>): TaughtCase => ({ file: { machine: machine === undefined ? {} : { name: machine } }, cured: new Map(Object.entries(cured)) });
  const cases = [taught('no. 3', { d0: 0.9 }), taught('no. 3', { d0: 0.8, d1: 0.3 }), taught('no. 1', { d0: 0.5 }), taught('no. 1', { d0: 0.7 }), taught('no. 1', { d2: 1 }), taught(undefined, { d0: 1 })];

  it('counts every case of this machine, and each fault of another one once', () => {
    // On this machine two; on no. 1 the first with d0 and the one with d2; and the nameless one.
    expect(casebookOf(cases, { machine: { name: 'no. 3' } })).toEqual({ cases: 5, here: 2, machine: 'no. 3', cured: { d0: 3.2, d1: 0.3, d2: 1 } });
    expect(casebookOf(cases, { machine: { name: 'no. 1' } })).toMatchObject({ cases: 5, here: 3, machine: 'no. 1' });
  });

  it('takes cases without a machine for other machines', () => {
    expect(casebookOf(cases, { machine: {} })).toEqual({ cases: 4, here: 0, cured: { d0: 2.4, d2: 1 } });
  });

  it('is none without a case', () => {
    expect(casebookOf([], { machine: {} })).toBeUndefined();
  });
});
