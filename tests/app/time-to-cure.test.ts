import { describe, expect, it } from 'vitest';
import { aheadOf, savesWords, worthWords } from '@/app/case/time-to-cure';
import type { Ahead } from '@/lib/diagnosis';

const at = (minutes: number, cured: number, money = 0, left = 1 - cured): Ahead['now'] => ({ minutes, worst: minutes, cured, left, money });
const words = (now: Ahead['now'], after: Ahead['now']): string | undefined => worthWords({ now, after })?.replaceAll(/[\u00A0\u202F]/gu, ' ');

describe('what taking the check first is worth', () => {
  // The differences are reckoned by hand.
  it.each([
    ['slower and likelier', at(89, 0.28), at(135, 0.4), 'Checking first raises the chance of a cure from 28 % to 40 %, but takes 46 min longer on average.'],
    ['as long and likelier', at(89, 0.28), at(89.5, 0.4), 'Checking first raises the chance of a cure from 28 % to 40 %.'],
    ['quicker and likelier', at(135, 0.28), at(70, 0.4), 'Checking first saves 1 h 05 on average and raises the chance of a cure from 28 % to 40 %.'],
    ['quicker and as likely', at(89, 0.4), at(55, 0.41), 'Checking first saves 34 min on average.'],
    ['quicker and less likely', at(89, 0.4), at(55, 0.3), 'Checking first saves 34 min on average. It can also show that going on costs more than giving up: if no other check follows, 30 % are cured instead of 40 %.'],
    // 96.4 and 92.6 stand below as 1 h 36 and 1 h 33.
    ['quicker by what the two shown times differ', at(96.4, 0.4), at(92.6, 0.4), 'Checking first saves 3 min on average.'],
    ['quicker, cheaper and less likely', at(164, 0.91, 20.4), at(159, 0.88, 14), 'Checking first saves 5 min and about 6 € for parts on average. It can also show that going on costs more than giving up: if no other check follows, 88 % are cured instead of 91 %.'],
    ['cheaper alone', at(89, 0.4, 20), at(89.4, 0.4, 12), 'Checking first saves about 8 € for parts on average.'],
    ['cheaper and slower', at(89, 0.4, 20), at(95, 0.4, 12), 'Checking first saves about 8 € for parts on average, but takes 6 min longer.'],
    ['quicker and dearer', at(89, 0.4, 12), at(55, 0.4, 20), 'Checking first saves 34 min on average, but costs about 8 € more for parts.'],
    ['slower, and leaves less where it is not cured', at(89, 0.4, 0, 0.5), at(95, 0.41, 0, 0.3), 'Checking first leaves 30 % of the trouble instead of 50 %, but takes 6 min longer on average.'],
    ['neither quicker nor likelier', at(89, 0.4), at(95, 0.41), undefined],
  ])('is said shortly when it is %s', (_, now, after, expected) => {
    expect(words(now, after)).toBe(expected);
  });

  it('is not said while there is no check to take', () => {
    expect(worthWords(undefined)).toBeUndefined();
  });
});

describe('what each of the other checks saves', () => {
  // By hand: minutes, 3 min a unit of money, 600 min for the share that is left.
  it.each([
    ['time alone', at(89, 1), at(55, 1), '34 min'],
    ['parts: 10 · 3 − 5', at(50, 1, 20), at(55, 1, 10), '25 min'],
    ['a likelier cure: 0.1 · 600 − 20', at(50, 0.4), at(70, 0.5), '40 min'],
    ['time, parts and cure: 10 + 3 + 60', at(60, 0.4, 6), at(50, 0.5, 5), '1 h 13'],
    ['half a minute', at(50, 1), at(49.6, 1), 'nothing'],
    ['less than it takes', at(50, 1), at(58, 1), 'nothing'],
  ])('is all of it as minutes: %s', (_, now, after, expected) => {
    expect(savesWords({ now, after }).replaceAll(/[\u00A0\u202F]/gu, ' ')).toBe(expected);
  });

  it('is told of a check that was weighed, against changes alone', () => {
    const minutes = { now: at(50, 1), withCheck: new Map([['a', at(40, 1)]]) };
    expect([aheadOf('a', minutes), aheadOf('b', minutes), aheadOf('a', undefined)]).toEqual([{ now: at(50, 1), after: at(40, 1) }, undefined, undefined]);
  });
});
