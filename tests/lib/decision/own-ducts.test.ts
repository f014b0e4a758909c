import { describe, expect, it } from 'vitest';
import { airOfPath, readAirPath, variantOfToday, type AirPath, type AirPathResult } from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import { mostLikelyPoints } from '@/lib/decision/most-likely-points';

const FAN = { kind: 'blower', claim: 'measured', freeFlow: '1 L/s', maxPressure: '120 Pa', outlet: { width: '20 mm', height: '12 mm' } };
const WEAK = { ...FAN, freeFlow: '0.6 L/s', maxPressure: '60 Pa' };
const MITRE = { kind: 'mitre', angle: '90°' };

function read(parts: object): AirPath {
  const { value, problems } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, leaks: [], duct: { mode: 'static', section: { width: '20 mm', height: '12 mm' }, length: '30 mm', bends: [MITRE] }, ...parts }));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

const outlet = (fan: number | undefined, name = 'a'): object => ({ name, width: '14 mm', height: '4 mm', ...(fan === undefined ? {} : { fan }) });
const alone = (fan: object, parts: object = {}): AirPath => read({ fan, outlets: [outlet(undefined)], ...parts });
const pair = (first: object, second: object | undefined, parts: object = {}): AirPath =>
  read({ fan: { ...first, count: 2, arrangement: 'own-ducts', ...(second === undefined ? {} : { second }) }, outlets: [outlet(1), outlet(2, 'b')], ...parts });
const result = (path: AirPath): AirPathResult => compareAirOptions(path, [], { samples: 50 });
const slopes = (path: AirPath, words: string): Record<string, number> => Object.fromEntries(result(path).sensitivity.filter(({ change }) => change.endsWith(words)).map(({ change, speedPerPercent }) => [change.slice(0, change.length - words.length), speedPerPercent]));

describe('where the pressure is lost on two ducts', () => {
  it('is told of both: two alike have half of every share of one by itself', () => {
    const one = result(alone(FAN)).lossShares;
    const both = result(pair(FAN, undefined)).lossShares;
    expect(both).toHaveLength(2 * one.length);
    expect(one.length).toBeGreaterThan(3);
    for (const { label, share } of one) {
      const halves = [1, 2].map((fan) => `${label.replace(/, duct$/u, '').replace(/, a$/u, fan === 1 ? ', a' : ', b')}, duct of fan ${fan}`);
      expect(halves.map((half) => both.find((loss) => loss.label === half)?.share)).toEqual([share / 2, share / 2].map((half) => expect.closeTo(half, 9) as number));
    }
  });

  it('adds up to the whole, the ducts as the powers that their fans put in, the largest first', () => {
    const path = pair(FAN, WEAK, { leaks: [{ at: 'fork', area: '8 mm²' }] });
    const { lossShares } = result(path);
    expect(lossShares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    // Without credit for the motion at the fan all that a fan puts in is pressure times flow.
    const [strong = 0, weak = 0] = mostLikelyPoints(variantOfToday(path), airOfPath(path)).map(({ point }) => point.pressure * point.flow);
    const ofFirst = lossShares.filter(({ label }) => label.endsWith('duct of fan 1')).reduce((sum, { share }) => sum + share, 0);
    expect(ofFirst).toBeCloseTo(strong / (strong + weak), 6);
    expect(lossShares.map(({ share }) => share)).toEqual(lossShares.map(({ share }) => share).sort((a, b) => b - a));
  });

  it('names no duct where there is one', () => {
    expect(result(alone(FAN)).lossShares.filter(({ label }) => label.includes('of fan'))).toEqual([]);
  });
});

describe('what one per cent more does on two ducts', () => {
  it.each([['first', pair(FAN, WEAK), ', fan 1', ', fan 2'], ['second', pair(WEAK, FAN), ', fan 2', ', fan 1']])('is nothing at the stronger fan (the %s), and at the other what it is for that one by itself', (_, path, strong, weak) => {
    expect(Object.values(slopes(path, strong))).toEqual([0, 0, 0, 0, 0]);
    const single = slopes(alone(WEAK), '');
    expect(single['fan speed']).toBeGreaterThan(0.9);
    for (const [change, slope] of Object.entries(single)) expect(slopes(path, weak)[change]).toBeCloseTo(slope, 8);
    expect(Object.keys(slopes(path, weak))).toEqual(Object.keys(single));
  });

  it('is tried on both together where they are alike, or nearer to each other than the step', () => {
    const single = slopes(alone(FAN), '');
    for (const path of [pair(FAN, undefined), pair(FAN, { ...FAN, freeFlow: '1.005 L/s' })]) {
      for (const [change, slope] of Object.entries(single)) expect(slopes(path, ', both fans')[change]).toBeCloseTo(slope, 2);
      expect(result(path).sensitivity).toHaveLength(5);
    }
  });

  it('counts a gap at the outlet of the slower fan only', () => {
    const gapAt = (at: string): AirPath => pair(FAN, WEAK, { leaks: [{ at, area: '20 mm²' }] });
    expect(slopes(gapAt('b'), ', fan 2')['area of the leaks']).toBeLessThan(-0.02);
    expect(slopes(gapAt('a'), ', fan 2')['area of the leaks']).toBe(0);
  });
});

describe('thrust and best mouths of two ducts', () => {
  it('are those of both: two alike push twice as hard as one, with twice its best area', () => {
    const [one, both] = [result(alone(FAN)), result(pair(FAN, undefined))];
    expect(both.jetThrust / one.jetThrust).toBeCloseTo(2, 9);
    expect([both.outletArea / one.outletArea, both.bestOutletArea / one.bestOutletArea]).toEqual([expect.closeTo(2, 9), expect.closeTo(2, 6)]);
  });
});

describe('what limits two fans with a duct each', () => {
  const wide = { name: 'b', width: '30 mm', height: '20 mm', fan: 2 };
  // One fan before a narrow slot, the same fan before a mouth that hardly holds it back.
  const unlike = (first: object, second: object): AirPath => read({ fan: { ...FAN, count: 2, arrangement: 'own-ducts' }, duct: { mode: 'static', section: { width: '30 mm', height: '20 mm' }, length: '10 mm', bends: [] }, outlets: [first, second] });
  const slot = { name: 'a', width: '10 mm', height: '1 mm', fan: 1 };

  it('is told of the fan that feeds the slowest outlet, not of both together', () => {
    const found = result(unlike(slot, wide));
    const slowest = [...found.outlets].sort((a, b) => a.speed.value - b.speed.value)[0];
    const fans = found.options.find(({ kind }) => kind === 'leave')?.fans ?? [];
    expect(found.bottleneckOfFan).toBe(slowest?.name === 'a' ? 1 : 2);
    const share = fans[(found.bottleneckOfFan ?? 1) - 1]?.shareOfFreeFlow.value ?? NaN;
    expect(found.bottleneck).toBe(share > 0.8 ? 'fan' : share < 0.5 ? 'duct' : 'both');
    expect(found.bottleneck).not.toBe(found.today.shareOfFreeFlow.value > 0.8 ? 'fan' : found.today.shareOfFreeFlow.value < 0.5 ? 'duct' : 'both');
  });

  it('names no fan where all air goes through one duct', () => {
    expect(result(alone(FAN)).bottleneckOfFan).toBeUndefined();
  });
});
