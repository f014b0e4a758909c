import { describe, expect, it } from 'vitest';
import { cheaperTogether, Standing, type ProvenChange } from '@/lib/diagnosis';

/** Three independent faults, each with a perfect change, given that at least one is there; a proof costs `proof` each time. */
const CHANCES = [0.5, 0.3, 0.1];
const COSTS = [4, 2, 10];
const worlds = Array.from({ length: 8 }, (_, bits) => ({ faults: [0, 1, 2].filter((fault) => (bits >> fault) & 1), chance: CHANCES.reduce((product, chance, fault) => product * ((bits >> fault) & 1 ? chance : 1 - chance), 1) })).slice(1);
const standing = new Standing({ symptoms: ['s'], ever: 1, scenarios: worlds.map(({ faults }) => ({ present: faults, behind: faults, bySymptom: [faults] })) }, [], [], worlds.map(({ chance }) => chance));
const changes = (proof: number): ProvenChange[] => ['a', 'b', 'c'].map((id, fault) => ({ proof, change: { id, minutes: 0, money: 0, cost: (COSTS[fault] ?? 0) + proof, removes: new Map([[fault, 1]]) } }));

describe('changes made together before one proof', () => {
  // diagnosis.md 2.4: expected costs together and one at a time by enumeration there.
  it.each([
    [3, 11.59854015 - 10.89781022],
    [6, 16.65693431 - 14.33576642],
    [20, 40.26277372 - 30.37956204],
  ])('save with a proof of %d what the sheet says', (proof, saves) => {
    const found = cheaperTogether(standing, changes(proof), 0);
    // The sheet gives eight digits.
    expect(found?.saves).toBeCloseTo(saves, 7);
    expect(found?.together.slice(0, 2).sort()).toEqual(['a', 'b']);
  });

  it('are not advised where one at a time is cheapest', () => {
    expect(cheaperTogether(standing, changes(1), 0)).toBeUndefined();
  });

  it('tell how often the likeliest alone would have done it', () => {
    const found = cheaperTogether(standing, changes(3), 0);
    // Of all cases with a fault (1 − .5 · .7 · .9 = .685), a and b cure those without the third (.65 · .9 = .585); a alone those with only the first (.5 · .7 · .9 = .315).
    expect(found?.cured).toBeCloseTo(0.585 / 0.685, 12);
    expect(found?.likeliestAlone).toEqual({ change: 'a', chance: expect.closeTo(0.315 / 0.585, 12) as number });
  });

  it('count half a cure half, and pay the proof of each its own', () => {
    // Two symptoms, two faults, both there for sure: singly 4 + 7 and 2 + 1; together 4 + 2 and the longer proof.
    const both = new Standing({ symptoms: ['s', 't'], ever: 2, scenarios: [{ present: [0, 1], behind: [0, 1], bySymptom: [[0], [1]] }] }, [], [], [1]);
    const [a, b] = changes(0);
    if (!a || !b) throw new Error('no changes');
    const priced = [{ ...a, proof: 7, change: { ...a.change, cost: 11 } }, { ...b, proof: 1, change: { ...b.change, cost: 3 } }];
    expect(cheaperTogether(both, priced, 600)).toMatchObject({ saves: 1, cured: 1, likeliestAlone: { chance: 0 } });
    expect(both.costOfBatches([{ changes: [a.change], cost: 4 }], 600)).toEqual({ cost: 304, cured: 0 });
  });
});
