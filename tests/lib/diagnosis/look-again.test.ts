import { describe, expect, it } from 'vitest';
import { CONFLICTING, HARDLY_TOGETHER, lookAgain } from '@/lib/diagnosis';
import { readContent } from '@/content/read-content';
import { chanceSeen, everyState, oracleKnowledge } from './oracle-knowledge';
import { diagnosed, file, look } from './told';

const oracle = oracleKnowledge();
const clash = { observations: [look('f0', 'seen'), look('f1', 'not-seen'), look('f3', 'not-seen')] };

/** ln of the probability of some marks on findings, by enumeration of all states. */
const logOf = (marks: Readonly<Record<string, boolean>>): number =>
  Math.log(everyState().reduce((sum, { states, chance }) => sum + Object.entries(marks).reduce((product, [id, on]) => product * (on ? chanceSeen(id as 'f0', states) : 1 - chanceSeen(id as 'f0', states)), chance), 0));

describe('conflict of what was told', () => {
  it('has the values of the sheet', () => {
    // diagnosis.md 2.4
    expect(diagnosed(clash, oracle).conflict).toBeCloseTo(0.507943, 6);
    expect(diagnosed({ observations: ['f0', 'f1', 'f3'].map((id) => look(id, 'seen')) }, oracle).conflict).toBeCloseTo(-2.36038, 5);
  });

  it('names the answer whose withdrawal lowers it most, by enumeration', () => {
    const marks = { f0: true, f1: false, f3: false };
    const without = Object.keys(marks).map((left) => {
      const rest = Object.fromEntries(Object.entries(marks).filter(([id]) => id !== left));
      return { left, conflict: Object.entries(rest).reduce((sum, [id, on]) => sum + logOf({ [id]: on }), 0) - logOf(rest) };
    });
    const [best] = without.sort((a, b) => a.conflict - b.conflict);
    const found = lookAgain(diagnosed(clash, oracle), file(clash), oracle);
    expect(found?.about).toBe(best?.left);
    expect(found?.conflictWithout).toBeCloseTo(best?.conflict ?? NaN, 12);
  });

  it('tells what would follow: the leader of the case without that answer', () => {
    const found = lookAgain(diagnosed(clash, oracle), file(clash), oracle);
    const rest = clash.observations.filter((each) => (each as { symptom: string }).symptom !== found?.about);
    expect(found?.leaderWithout?.id).toBe(diagnosed({ observations: rest }, oracle).causes[0]?.id);
  });

  it('says nothing of a single answer, and nothing when withdrawing only makes it worse', () => {
    expect(lookAgain(diagnosed({ observations: [look('f0', 'seen')] }, oracle), file({}), oracle)).toBeUndefined();
    const agreeing = { observations: [look('f0', 'seen'), look('f3', 'seen')] };
    expect(lookAgain(diagnosed(agreeing, oracle), file(agreeing), oracle)).toBeUndefined();
  });

  it('rises past each limit the more two answers exclude each other, by enumeration', () => {
    expect([CONFLICTING, HARDLY_TOGETHER]).toEqual([2, Math.log(1000)]);
    // One cause of prior .1 shows both f0 and f1, each but for a chance of `off`, and either comes by itself with that chance; f0 seen, f1 not.
    const passed = [0.2, 0.005, 1e-5].map((off) => {
      const one = (id: 'f0' | 'f1') => { const { [id]: symptom } = oracle.symptoms; const link = symptom?.links.d0; if (!symptom || !link) throw new Error('the net of 4 causes lacks a link'); return { ...symptom, leak: off, links: { d0: { ...link, chance: 1 - off } } }; };
      const { d0 } = oracle.causes;
      if (!d0) throw new Error('the net of 4 causes lacks a cause');
      const exclusive = { ...oracle, causes: { d0 }, symptoms: { f0: one('f0'), f1: one('f1') } };
      const [shown, byItself] = [1 - off * (1 - off), off];
      const seen = 0.1 * shown + 0.9 * byItself;
      const both = 0.1 * shown * (1 - shown) + 0.9 * byItself * (1 - byItself);
      const { conflict } = diagnosed({ observations: [look('f0', 'seen'), look('f1', 'not-seen')] }, exclusive);
      expect(conflict).toBeCloseTo(Math.log((seen * (1 - seen)) / both), 10);
      return [conflict > CONFLICTING, conflict > HARDLY_TOGETHER];
    });
    expect(passed).toEqual([[false, false], [true, false], [true, true]]);
  });

  it('stays below its limits on the content where answers agree', () => {
    const { knowledge } = readContent().value ?? {};
    if (!knowledge) throw new Error('no content');
    const agreeing = diagnosed({ observations: [look('curled-edges', 'seen'), look('displaced-layers', 'seen'), look('lifted-corners', 'not-seen')] }, knowledge);
    expect(agreeing.conflict).toBeLessThan(CONFLICTING);
  });
});
