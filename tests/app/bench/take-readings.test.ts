import { describe, expect, it } from 'vitest';
import { takeReadings } from '@/app/_measure/take-readings';
import { readContent } from '@/content/read-content';

const whole = readContent().value?.knowledge;
const method = whole?.methods['compare-outlets-with-meter'];
const check = whole?.checks['outlet-share-weaker'];
if (!method || !check) throw new Error('take readings: got no method that compares two outlets');
const taken = (weaker: readonly string[], stronger: readonly string[]) => takeReadings(method, { reading: weaker, reference: stronger }, {}, {}, check.answer);

describe('two sides held against one another', () => {
  it('give their ratio', () => {
    expect(taken(['2.4', '2.3', '2.5'], ['6.8', '6.9', '6.7']).outcome?.result.value).toBeCloseTo(2.4 / 6.8, 9);
  });

  it('give no result when the weaker reads more than the stronger, and say which to change', () => {
    const slip = taken(['6.8', '6.9', '6.7'], ['2.4', '2.3', '2.5']);
    expect(slip.outcome).toBeUndefined();
    expect(slip.byField.get('reading')).toMatchObject({ level: 'stop', next: expect.stringContaining('stronger side') as unknown });
  });

  it('may be alike, and then either may read a little more', () => {
    expect(taken(['6.9', '6.7', '6.8'], ['6.8', '6.9', '6.7']).outcome?.result.value).toBeCloseTo(1, 9);
    expect(taken(['6.9', '6.6', '7.0'], ['6.8', '6.7', '6.6']).outcome).toBeDefined();
  });
});
