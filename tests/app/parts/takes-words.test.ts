import { expect, it } from 'vitest';
import { takesWords } from '@/app/_parts/takes-words';

it('says how long a thing takes, and of what only waits how long', () => {
  const said = [{ minutes: 5 }, { minutes: 45, waitMinutes: 35 }, { minutes: 375, waitMinutes: 360 }].map((way) => takesWords(way).replaceAll(/[\u00A0\u202F]/gu, ' '));
  expect(said).toEqual(['5 min', '45 min, of which 35 min waiting', '6 h 15, of which 6 h waiting']);
});
