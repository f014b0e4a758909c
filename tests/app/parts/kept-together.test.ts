import { describe, expect, it } from 'vitest';
import { keptTogether } from '@/app/_parts/kept-together';

describe('figures keep their units', () => {
  // ISO 80000-1 (from memory): a space stands between number and unit symbol; here it must not break a line.
  it.each([
    ['a fan at 70 % speed', 'a fan at 70\u00a0% speed'],
    ['below 50 °C, then go on', 'below 50\u00a0°C, then go on'],
    ['1.2 L/s through 3 mm', '1.2\u00a0L/s through 3\u00a0mm'],
    ['8 mm³/s', '8\u00a0mm³/s'],
    ['± 0.99 s', '±\u00a00.99\u00a0s'],
  ])('%s', (text, kept) => { expect(keptTogether(text)).toBe(kept); });

  it('leaves words that only begin like a unit, and figures without one', () => {
    expect(keptTogether('5 make 12 holes, 3 million, 7 sides')).toBe('5 make 12 holes, 3 million, 7 sides');
  });
});
