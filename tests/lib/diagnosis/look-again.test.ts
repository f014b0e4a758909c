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

  it('rises beyond its limits on the content where answers exclude each other', () => {
    const { knowledge } = readContent().value ?? {};
    if (!knowledge) throw new Error('no content');
    const agreeing = diagnosed({ observations: [look('curled-edges', 'seen'), look('displaced-layers', 'seen'), look('lifted-corners', 'not-seen')] }, knowledge);
    expect(agreeing.conflict).toBeLessThan(CONFLICTING);
    expect(HARDLY_TOGETHER).toBeCloseTo(6.9078, 4);
  });
});
