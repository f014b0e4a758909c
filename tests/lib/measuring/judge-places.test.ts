import { describe, expect, it } from 'vitest';
import { judgePlaces, type PlaceReading } from '@/lib/measuring';

const LIMIT = 0.3;
const place = (name: string, before: number | undefined, after: number): PlaceReading => ({ place: name, before: before === undefined ? undefined : { value: before, plusMinus: 0.08 }, after: { value: after, plusMinus: 0.08 } });

describe('judging a proof by several places', () => {
  // By hand from the rule: doubt of a difference is sqrt(0.08² + 0.08²) = 0.113.
  it.each([
    { name: 'every place inside the limit is cured', rows: [place('left', 1.42, 0.21), place('right', 0.18, 0.15)], verdict: 'cured', left: [] },
    { name: 'one place left beyond it is better', rows: [place('left', 1.42, 0.21), place('back-left', 1.1, 0.42)], verdict: 'better', left: ['back-left'] },
    { name: 'a change smaller than the doubt of both readings is no change', rows: [place('left', 0.5, 0.42)], verdict: 'no-change', left: ['left'] },
    { name: 'more places risen than fallen is worse', rows: [place('left', 0.4, 0.8), place('right', 0.4, 0.7), place('front', 0.9, 0.5)], verdict: 'worse', left: ['left', 'right', 'front'] },
    { name: 'without a reading before, staying beyond the limit is no change', rows: [place('left', undefined, 0.9)], verdict: 'no-change', left: ['left'] },
  ] as const)('$name', ({ rows, verdict, left }) => {
    const judged = judgePlaces(rows, LIMIT);
    expect(judged.verdict).toBe(verdict);
    expect(judged.left.map((row) => row.place)).toEqual(left);
  });

  it('says "unsure" of a place whose interval reaches across the limit', () => {
    expect(judgePlaces([place('left', 1, 0.26)], LIMIT).places[0]?.keeps).toBe('unsure');
  });

  it('turns everything round when more is better', () => {
    const judged = judgePlaces([place('left', 0.33, 0.8), place('right', 0.9, 0.85)], 0.75, 'at-least');
    expect(judged.verdict).toBe('cured');
    expect(judged.places.map((row) => [row.after.value, row.moved])).toEqual([[0.8, 'up'], [0.85, 'not-surely']]);
    expect(judgePlaces([place('left', 0.33, 0.5)], 0.75, 'at-least')).toMatchObject({ verdict: 'better', left: [{ place: 'left' }] });
  });

  it('does not judge nothing', () => {
    expect(() => judgePlaces([], LIMIT)).toThrow('no readings');
  });
});
