import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { airOfPath, drawInputs, fanBranchesOf, fanCurveOf, inputLayout, operatingPoint, readAirPath, samplePath, variantOfToday, type AirPath, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { effectiveCount } from '@/lib/decision/effective-count';

const FAN = { kind: 'blower', claim: 'measured', freeFlow: '1 L/s', maxPressure: '120 Pa', outlet: { width: '20 mm', height: '12 mm' } };

function read(text: string): AirPath {
  const { value, problems } = readAirPath(text);
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

function described(parts: object): AirPath {
  return read(JSON.stringify({
    schema: 'leeward/air-path', version: 1, fan: FAN, duct: { section: { width: '20 mm', height: '12 mm' }, length: '30 mm' },
    outlets: ['a', 'b'].map((name) => ({ name, width: '14 mm', height: '4 mm' })), leaks: [], ...parts,
  }));
}

describe('the sampling error of a chance', () => {
  const demo = read(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8'));
  const SEEDS = 20;
  let results: readonly AirPathResult[] = [];
  beforeAll(() => { results = Array.from({ length: SEEDS }, (_, k) => compareAirOptions(demo, [], { seed: k + 1 })); });

  it('is as large as the chance moves from seed to seed, copies of samples and all', () => {
    const ratios = (results[0]?.options ?? []).map(({ id }) => {
      const each = results.flatMap((result) => result.options.filter((option) => option.id === id));
      const mean = each.reduce((sum, option) => sum + option.chance, 0) / SEEDS;
      const moved = Math.sqrt(each.reduce((sum, option) => sum + (option.chance - mean) ** 2, 0) / (SEEDS - 1));
      return { id, ratio: moved / (each.reduce((sum, option) => sum + option.chanceError, 0) / SEEDS) };
    });
    // A standard deviation from 20 seeds is known to a sixth; two of them above 1. Stratified draws move less than independent ones.
    expect(ratios.filter(({ ratio }) => ratio > 1.33 || ratio < 0.3)).toEqual([]);
    expect(ratios).toHaveLength(9);
  });

  it('counts copies: 4 of 4 different ones, 2 of two pairs, 1.6 of three alike and one', () => {
    expect([[1, 2, 3, 4], [2, 1, 2, 1], [1, 1, 2, 1], []].map((values) => effectiveCount(Float64Array.from(values)))).toEqual([4, 2, 1.6, 0]);
  });
});

describe('a gap where two fans have ducts of their own', () => {
  const pair = { ...FAN, count: 2, arrangement: 'own-ducts' };
  const outlets = [{ name: 'a', width: '14 mm', height: '4 mm', fan: 1 }, { name: 'b', width: '14 mm', height: '4 mm', fan: 2 }];
  const gap = (area: string): object[] => [{ at: 'fan', area }];

  it('is there once, half at each fan: together they lose what two single paths with half of it lose', () => {
    const both = described({ fan: pair, outlets, leaks: gap('12 mm²') });
    const one = described({ outlets: [outlets[0]].map((outlet) => ({ ...outlet, fan: undefined })), leaks: gap('6 mm²') });
    const leak = (path: AirPath): number => {
      const inputs = drawInputs(inputLayout(1, 1), 2, 1);
      return samplePath(variantOfToday(path), airOfPath(path), { ...inputs, multipliers: new Map(), deviates: new Float64Array(inputs.deviates.length) }).leakFlow[1] ?? 0;
    };
    expect(leak(both) / (2 * leak(one))).toBeCloseTo(1, 6);
    expect(fanBranchesOf(variantOfToday(both)).map(({ network }) => network.leaks.reduce((sum, each) => sum + each.area, 0))).toEqual([6e-6, 6e-6].map((area) => expect.closeTo(area, 12) as number));
  });
});

describe('what one percent more of the leaks does', () => {
  const ofLeaks = (leaks: object[]): number => compareAirOptions(described({ leaks }), [], { samples: 50 }).sensitivity.find(({ change }) => change === 'area of the leaks')?.speedPerPercent ?? Number.NaN;

  it('counts a gap at an outlet, as a gap a tenth wider does', () => {
    const speed = (area: number): number => {
      const path = described({ leaks: [{ at: 'b', area: `${area} mm²` }] });
      const [branch] = fanBranchesOf(variantOfToday(path));
      if (branch === undefined) throw new Error('a branch expected');
      return Math.min(...operatingPoint(fanCurveOf(path.fan, airOfPath(path)), branch.network, airOfPath(path)).outlets.map((outlet) => outlet.jetSpeed));
    };
    const slope = Math.log(speed(22) / speed(18)) / Math.log(22 / 18);
    expect(slope).toBeLessThan(-0.02);
    expect(ofLeaks([{ at: 'b', area: '20 mm²' }]) / slope).toBeCloseTo(1, 1);
  });

  it('is nothing without one', () => {
    expect(ofLeaks([])).toBe(0);
  });
});
