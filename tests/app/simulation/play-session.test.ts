import { describe, expect, it } from 'vitest';
import { culprits, drawSession, isSeen } from '@/app/_cli/simulation/draw-session';
import { playSession } from '@/app/_cli/simulation/play-session';
import { policies } from '@/app/_cli/simulation/policies';
import { readContent } from '@/content/read-content';
import { possibilitiesOf } from '@/lib/diagnosis';

const knowledge = readContent().value?.knowledge;
if (!knowledge) throw new Error('the content does not read');

describe('a simulated session', () => {
  const sessions = Array.from({ length: 200 }, (_, number) => drawSession(knowledge, 1, number));

  it('is the same for the same seed and number, and another for another', () => {
    expect(drawSession(knowledge, 1, 7)).toEqual(sessions[7]);
    expect(drawSession(knowledge, 2, 7)).not.toEqual(sessions[7]);
  });

  it('begins with a complaint that is seen and has a listed cause', () => {
    expect(sessions.filter((session) => !isSeen(session, session.told[0] ?? '', session.causes) || culprits(session, session.causes).size === 0)).toEqual([]);
  });

  it('has no detail left once the symptom of it is gone', () => {
    const details = sessions.flatMap((session) => [...session.setOff].flatMap(([id, by]) => (by.detailOf === undefined ? [] : [{ session, id, whole: by.detailOf }])));
    const nobody = new Set<string>();
    expect(details.some(({ session, id }) => session.setOff.get(id)?.byItself === true)).toBe(true);
    expect(details.filter(({ session, id, whole }) => isSeen(session, id, nobody) && !isSeen(session, whole, nobody))).toEqual([]);
  });

  it('has nothing left to cure when no cause is left, and never more culprits than causes', () => {
    expect(sessions.filter((session) => culprits(session, new Set()).size > 0)).toEqual([]);
    expect(sessions.filter((session) => [...culprits(session, session.causes)].some((cause) => !session.causes.has(cause)))).toEqual([]);
  });

  it('ends under every policy, costs no less than its minutes, and counts giving up by what is left where it is not cured', () => {
    const possible = possibilitiesOf(knowledge);
    const givingUp = 600;
    const all = policies(knowledge);
    expect(all.length).toBeGreaterThan(5);
    const session = sessions[3];
    if (!session) throw new Error('no session');
    const wrong = all.flatMap((policy) => {
      const played = playSession(session, policy, knowledge, { givingUp, draws: 100, possible });
      const again = playSession(session, policy, knowledge, { givingUp, draws: 100, possible });
      // At least one of the things told is left then.
      const isSound = played.cost >= played.minutes + (played.isCured ? 0 : givingUp / session.told.length) - 1e-9 && JSON.stringify(played) === JSON.stringify(again);
      return isSound ? [] : [`${policy.name}: ${JSON.stringify(played)}`];
    });
    expect(wrong).toEqual([]);
  });
});
