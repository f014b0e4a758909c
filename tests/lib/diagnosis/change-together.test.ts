import { describe, expect, it } from 'vitest';
import { cheaperTogether } from '@/lib/diagnosis';
import { independentScenarios, perfectRepair } from '@/lib/inference';

describe('changes made together before one proof', () => {
  // diagnosis.md 2.4: three independent faults, p = .5 .3 .1, costs 4 2 10; expected costs together and one at a time by enumeration there.
  const repairs = [perfectRepair(4, 0), perfectRepair(2, 1), perfectRepair(10, 2)];
  const scenarios = independentScenarios([0.5, 0.3, 0.1]);
  it.each([
    [3, 11.59854015 - 10.89781022],
    [6, 16.65693431 - 14.33576642],
    [20, 40.26277372 - 30.37956204],
  ])('save with a proof of %d what the sheet says', (proof, saves) => {
    const found = cheaperTogether(['a', 'b', 'c'], repairs, scenarios, proof);
    // The sheet gives eight digits.
    expect(found?.saves).toBeCloseTo(saves, 7);
    expect(found?.together.slice(0, 2).sort()).toEqual(['a', 'b']);
  });

  it('are not advised where one at a time is cheapest', () => {
    expect(cheaperTogether(['a', 'b', 'c'], repairs, scenarios, 1)).toBeUndefined();
  });

  it('tell how often the likeliest alone would have done it', () => {
    const found = cheaperTogether(['a', 'b', 'c'], repairs, scenarios, 3);
    // Of all cases with a fault (1 − .5 · .7 · .9 = .685), a and b cure those without the third (.65 · .9 = .585); a alone those with only the first (.5 · .7 · .9 = .315).
    expect(found?.cured).toBeCloseTo(0.585 / 0.685, 12);
    expect(found?.likeliestAlone).toEqual({ change: 'a', chance: expect.closeTo(0.315 / 0.585, 12) as number });
  });
});
