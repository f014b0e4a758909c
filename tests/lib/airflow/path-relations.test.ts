import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airOfPath, curveAtSpeed, curveFromEnds, drawInputs, fanBranchesOf, fanCurveOf, frictionFactor, inputLayout, normalDeviate, normalShare, operatingPoint, readAirPath,
  readingConflicts, samplePath, stratifiedNormals, updateByReadings, variantOfToday, type AirPath, type PathVariant, type UncertainInputs,
} from '@/lib/airflow';
import { FOUR_CFM, SHEET_AIR, sheetDuct } from './given';

const demo = readAirPath(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8')).value;
if (demo === undefined) throw new Error('the demo path should read');
const path: AirPath = demo;
const today = variantOfToday(path);
const air = airOfPath(path);
const median = (values: Float64Array): number => values.slice().sort()[values.length >> 1] ?? Number.NaN;
const still = (inputs: UncertainInputs): UncertainInputs => ({ ...inputs, multipliers: new Map(), deviates: new Float64Array(inputs.deviates.length) });

describe('relations that must hold whatever the numbers', () => {
  it('moves flow with the speed and pressure with its square on a duct without friction', () => {
    fc.assert(fc.property(fc.double({ min: 0.3, max: 3, noNaN: true }), fc.double({ min: 1, max: 6, noNaN: true }), (ratio, slot) => {
      const curve = curveFromEnds(150, FOUR_CFM, 1.5);
      const duct = sheetDuct(slot, 15, { frictionless: true });
      const slow = operatingPoint(curve, duct, SHEET_AIR);
      const fast = operatingPoint(curveAtSpeed(curve, ratio), duct, SHEET_AIR);
      expect(fast.flow / slow.flow).toBeCloseTo(ratio, 6);
      expect(fast.pressure / slow.pressure / ratio ** 2).toBeCloseTo(1, 5);
    }), { numRuns: 40 });
  });

  it('gives each half of a symmetric duct half of the air', () => {
    const point = operatingPoint(curveFromEnds(150, FOUR_CFM, 1), sheetDuct(2.5, 15), SHEET_AIR);
    expect(point.outlets[0]?.flow).toBeCloseTo(point.flow / 2, 12);
  });

  it('lets less out of the outlets the more leaks', () => {
    const out = [0, 2, 5, 10, 20].map((leak) => operatingPoint(curveFromEnds(150, FOUR_CFM, 1), sheetDuct(2.5, 15, { leak: leak * 1e-6 }), SHEET_AIR).outlets[0]?.flow ?? 0);
    expect(out.every((flow, k) => k === 0 || flow < (out[k - 1] ?? 0))).toBe(true);
  });

  it('keeps friction continuous and positive through the blend', () => {
    const factors = Array.from({ length: 400 }, (_, k) => frictionFactor({ shape: 'circle', diameter: 0.01 }, 2000 + 6 * k, 0.002));
    expect(Math.max(...factors.slice(1).map((factor, k) => Math.abs(factor - (factors[k] ?? 0))))).toBeLessThan(2e-4);
  });

  it('spends all of the air’s power somewhere: shares add to one', () => {
    const shares = operatingPoint(curveFromEnds(150, FOUR_CFM, 1), sheetDuct(2.5, 15, { leak: 5e-6 }), SHEET_AIR).lossShares;
    expect(shares.reduce((sum, loss) => sum + loss.share, 0)).toBeCloseTo(1, 9);
  });
});

describe('the sampled path', () => {
  const variants: [string, PathVariant][] = [
    ['the demo', today],
    ['static mode', { ...today, duct: { ...today.duct, mode: 'static' } }],
    ['thin slots', { ...today, outlets: today.outlets.map((outlet) => ({ ...outlet, ending: 'thin' as const })) }],
    ['a curve from points', { ...today, fan: { ...today.fan, shape: { kind: 'points', points: [[0, 118], [0.3e-3, 90], [0.5e-3, 50], [0.72e-3, 0]].map(([flow = 0, pressure = 0]) => ({ flow, pressure })) } } }],
    ['a leak at the fork', { ...today, leaks: today.leaks.map((leak) => ({ ...leak, at: 'fork' as const })) }],
  ];

  it.each(variants)('agrees with the full solver within a thousandth: %s', (_, variant) => {
    const sampled = samplePath(variant, air, still(drawInputs(inputLayout(1, 1), 3, 1)));
    const network = fanBranchesOf(variant)[0]?.network;
    if (network === undefined) throw new Error('a network expected');
    const full = operatingPoint(fanCurveOf(variant.fan, air), network, air);
    expect(Math.abs((sampled.flow[2] ?? 0) / full.flow - 1)).toBeLessThan(0.001);
    full.outlets.forEach((outlet, k) => expect(Math.abs((sampled.outlets[k]?.speed[2] ?? 0) / outlet.jetSpeed - 1)).toBeLessThan(0.001));
  });

  it('leaves out less than a quarter percent by reading friction once, in nineteen of twenty samples, against the settled ones', () => {
    const inputs = drawInputs(inputLayout(1, 1), 400, 9);
    const quick = samplePath(today, air, inputs).flow;
    const { columns } = inputs.layout;
    const apart = Array.from({ length: 400 }, (_, s) => {
      // A sample alone is its own middle, so friction settles at its own flow.
      const alone = Float64Array.from({ length: columns }, (_unused, column) => inputs.deviates[column * 400 + s] ?? 0);
      const settled = samplePath(today, air, { count: 1, layout: inputs.layout, deviates: alone, multipliers: new Map() }).flow[0] ?? 0;
      return Math.abs((quick[s] ?? 0) / settled - 1);
    }).sort((a, b) => a - b);
    expect(apart[380]).toBeLessThan(0.0025);
    expect(apart[399]).toBeLessThan(0.005);
  });

  it('gives each of two fans with ducts of their own the flow of a single one', () => {
    const pair: PathVariant = { ...today, fan: { ...today.fan, count: 2, arrangement: 'own-ducts' } };
    const inputs = still(drawInputs(inputLayout(1, 1), 2, 1));
    const both = samplePath(pair, air, inputs);
    expect(both.fanCount).toBe(2);
    expect(both.flow[1] ?? 0).toBeGreaterThan(1.2 * (samplePath(today, air, inputs).flow[1] ?? 0));
  });

  it('repeats itself for the same seed and not for another', () => {
    const flows = (seed: number): number[] => Array.from(samplePath(today, air, drawInputs(inputLayout(1, 1), 50, seed)).flow);
    expect(flows(7)).toEqual(flows(7));
    expect(flows(7)).not.toEqual(flows(8));
  });

  it('draws stratified normal deviates', () => {
    const column = stratifiedNormals(1000, 2, 5).subarray(1000);
    expect(column.reduce((sum, z) => sum + z, 0) / 1000).toBeCloseTo(0, 9);
    expect(column.reduce((sum, z) => sum + z * z, 0) / 1000).toBeCloseTo(1, 2);
    expect(normalDeviate(0.975)).toBeCloseTo(1.959964, 6);
    expect(normalShare(1.959964)).toBeCloseTo(0.975, 6);
  });
});

describe('readings', () => {
  const inputs = drawInputs(inputLayout(1, 1), 2000, 3);

  it('pull the samples to what was read and make the band narrower', () => {
    const before = samplePath(today, air, inputs);
    const reading = { what: 'outlet-speed' as const, outlet: 0, value: 3.2, plusMinus: 0.4 };
    const after = updateByReadings(today, air, inputs, [reading], 3);
    expect(Math.abs(median(after.path.outlets[0]?.speed ?? new Float64Array(1)) - 3.2)).toBeLessThan(0.25);
    const spread = (values: Float64Array): number => { const sorted = values.slice().sort(); return (sorted[1900] ?? 0) - (sorted[100] ?? 0); };
    expect(spread(after.path.outlets[0]?.speed ?? before.flow)).toBeLessThan(0.6 * spread(before.outlets[0]?.speed ?? before.flow));
  });

  it('agree with the exact posterior where one is known: a normal prior of the logarithm and one reading of it', () => {
    const { value, plusMinus } = path.fan.freeFlow;
    const priorSpread = plusMinus / 1.96 / value;
    const reading = { what: 'free-flow' as const, outlet: undefined, value: 1.15 * value, plusMinus: 0.1 * value };
    const readSpread = 0.1 / 1.96;
    const after = updateByReadings(today, air, inputs, [reading], 3).path.fan.freeFlow.map((flow) => flow / value);
    const weight = priorSpread ** 2 / (priorSpread ** 2 + readSpread ** 2);
    const mean = after.reduce((sum, flow) => sum + flow, 0) / after.length;
    const spread = Math.sqrt(after.reduce((sum, flow) => sum + (flow - mean) ** 2, 0) / after.length);
    // Sampling error of 2000 moved samples, and the prior is log-normal: a fifth of the posterior spread.
    expect(Math.abs(mean - (1 + weight * 0.15))).toBeLessThan(0.012);
    expect(spread / Math.sqrt(weight * readSpread ** 2)).toBeGreaterThan(0.85);
    expect(spread / Math.sqrt(weight * readSpread ** 2)).toBeLessThan(1.15);
  });

  it('change nothing when there are none', () => {
    expect(updateByReadings(today, air, inputs, [], 3).inputs).toBe(inputs);
  });

  it('that cannot both hold are told by name, and consistent ones are not', () => {
    const prior = samplePath(today, air, inputs);
    const read = (left: number, right: number, flow: number): string[] => readingConflicts([
      { what: 'flow-in-duct', outlet: undefined, value: flow, plusMinus: 0.05 * flow },
      { what: 'outlet-speed', outlet: 0, value: left, plusMinus: 0.08 * left },
      { what: 'outlet-speed', outlet: 1, value: right, plusMinus: 0.08 * right },
    ], today, prior).map((conflict) => conflict.sentence);
    expect(read(4, 5.6, 0.4e-3)).toEqual([]);
    expect(read(2, 9.5, 0.4e-3).join(' ')).toMatch(/cannot both hold unless|does not fit the path/u);
  });
});
