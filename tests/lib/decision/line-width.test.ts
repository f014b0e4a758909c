import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAirPath } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';

describe('the width of the lines', () => {
  it('cancels: heat and surface of a line grow alike with it', () => {
    // Per metre of line: heat density · capacity · width · height over the surface width that is open to the air.
    const heatOverSurface = (width: number): number => (1240 * 1800 * width * 0.2e-3) / width;
    expect(heatOverSurface(0.3e-3)).toBeCloseTo(heatOverSurface(1e-3), 9);
    const needAt = (lineWidth: string): object => {
      const sheet = JSON.parse(readFileSync(`${import.meta.dirname}/../../scenarios/greenhouse-hinge/air-path.json`, 'utf8')) as { print: object };
      const read = readAirPath(JSON.stringify({ ...sheet, print: { ...sheet.print, lineWidth } }));
      if (read.value === undefined) throw new Error('line width: the path does not read');
      return compareAirOptions(read.value, [], { samples: 200 }).need;
    };
    expect(needAt('0.3 mm')).toEqual(needAt('1.0 mm'));
  });
});
