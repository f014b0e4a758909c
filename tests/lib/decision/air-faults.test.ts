import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { airOfPath, drawInputs, gapShares, inletLosses, inputLayout, missesOfFault, normalDeviate, placeInFault, readAirPath, samplePath, stratifiedNormals, variantOfToday, type AirPath, type AirPathResult, type PathFaults } from '@/lib/airflow';
import { compareAirOptions, faultsFromDiagnosis } from '@/lib/decision';

const { value } = readAirPath(readFileSync('tests/scenarios/greenhouse-hinge/air-path.json', 'utf8'));
if (value === undefined) throw new Error('the demo path should read');
// Sides that came out well or badly are a reading of the whole; here only the chances and the readings of the air speak.
const path: AirPath = { ...value, measured: [], print: { ...value.print, sides: [] } };
const NONE: PathFaults = { inlet: 0, leak: 0, misaimed: 0 };
const run = (faults: Partial<PathFaults>, measured: AirPath['measured'] = []): AirPathResult => compareAirOptions({ ...path, measured }, [], { faults: { ...NONE, ...faults } });
const chanceOf = (result: AirPathResult, kind: string): number => result.options.find((option) => option.kind === kind)?.chance ?? Number.NaN;

describe('faults that nobody entered', () => {
  it('are in as large a share of the samples as their chance says', () => {
    const deviates = stratifiedNormals(1000, 1, 4);
    const share = (values: Float64Array): number => values.filter((each) => each > 0).length / 1000;
    // Stratified: 100 of 1000 slices lie above the nine tenths; one slice either way at the edge.
    expect([share(gapShares(deviates, 0.1)), share(inletLosses(deviates, 0.3)), share(missesOfFault(deviates, 0.2, 1))].map((each) => Math.round(100 * each))).toEqual([10, 30, 20]);
    expect(Math.max(...gapShares(deviates, 0.1))).toBeLessThanOrEqual(0.5);
    expect(gapShares(deviates, 0).some((each) => each > 0)).toBe(false);
  });

  it('strike at least one of several jets with the chance of the fault, not each of them', () => {
    const deviates = stratifiedNormals(4000, 4, 5);
    for (const jets of [2, 4]) {
      const misses = Array.from({ length: jets }, (_, k) => missesOfFault(deviates.subarray(4000 * k, 4000 * (k + 1)), 0.4, jets));
      const any = Array.from({ length: 4000 }, (_, s) => misses.some((each) => (each[s] ?? 0) > 0)).filter(Boolean).length / 4000;
      // Three standard errors of 4,000 draws.
      expect(Math.abs(any - 0.4), `${jets} jets`).toBeLessThan(0.024);
    }
  });

  it('leave the duct what it asks: a covered inlet takes its pressure before the tap', () => {
    const [air, inputs] = [airOfPath(path), drawInputs(inputLayout(1, 1), 500, 9)];
    const asked = (faults: PathFaults): number[] => {
      const { flow, pressure } = samplePath(variantOfToday({ ...path, candidates: [] }, faults), air, inputs);
      return Array.from(flow, (each, s) => (pressure[s] ?? 0) / each ** 2);
    };
    const [covered, without] = [asked({ ...NONE, inlet: 0.5 }), asked(NONE)];
    // Friction is read at the share of the middle sample, which has no fault: what remains is that share.
    expect(Math.max(...covered.map((each, s) => Math.abs(each / (without[s] ?? 1) - 1)))).toBeLessThan(0.01);
    const flows = samplePath(variantOfToday({ ...path, candidates: [] }, { ...NONE, inlet: 0.5 }), air, inputs).flow;
    const usual = samplePath(variantOfToday({ ...path, candidates: [] }), air, inputs).flow;
    expect(flows.filter((each, s) => each < 0.95 * (usual[s] ?? 0)).length / 500).toBeGreaterThan(0.4);
  });

  it('are placed by hand: deviate at 0.95 of a normal law is half way into a fault of one in ten', () => {
    expect(placeInFault(0.95, 0.1)).toBeCloseTo(0.5, 12);
    expect(gapShares(Float64Array.of(normalDeviate(0.95)), 0.1)[0]).toBeCloseTo(0.1 * Math.sqrt(5), 5);
    expect(placeInFault(0.9, 0.05)).toBeLessThan(0);
  });

  it('change nothing at chance 0', () => {
    const plain = compareAirOptions(path);
    expect(run({}).options).toEqual(plain.options);
    expect([plain.faults, run({}).faults]).toEqual([[], []]);
  });

  it('take air away, and their cure brings it back', () => {
    const without = run({});
    const leaky = run({ leak: 0.6 });
    expect(leaky.today.flow.value).toBeGreaterThan(without.today.flow.value);
    expect(leaky.outlets[0]?.speed.low ?? 9).toBeLessThan(0.95 * (without.outlets[0]?.speed.low ?? 0));
    expect(chanceOf(leaky, 'seal-leak') - chanceOf(leaky, 'leave')).toBeGreaterThan(chanceOf(without, 'seal-leak') - chanceOf(without, 'leave'));
    expect(chanceOf(run({ misaimed: 0.6 }), 're-aim') - chanceOf(run({ misaimed: 0.6 }), 'leave')).toBeGreaterThan(chanceOf(without, 're-aim') - chanceOf(without, 'leave'));
    expect(run({ inlet: 0.6 }).today.flow.low).toBeLessThan(0.9 * without.today.flow.low);
  });

  it('are believed less after readings that fit a sound path, and more after readings that do not', () => {
    const sound = run({});
    const speeds = (factor: number): AirPath['measured'] => sound.outlets.map((outlet, k) => ({ what: 'outlet-speed' as const, outlet: k, value: factor * outlet.speed.value, plusMinus: 0.1 * outlet.speed.value }));
    const freeFlow = { what: 'free-flow' as const, outlet: undefined, value: path.fan.freeFlow.value, plusMinus: 0.05 * path.fan.freeFlow.value };
    const after = (factor: number): number => run({ leak: 0.4 }, [freeFlow, ...speeds(factor)]).faults.find(({ cause }) => cause === 'leaking-duct-seal')?.after ?? Number.NaN;
    expect(after(1.05)).toBeLessThan(0.3);
    expect(after(0.78)).toBeGreaterThan(0.55);
  });

  it('come out of a diagnosis by the names of the knowledge base', () => {
    expect(faultsFromDiagnosis([{ id: 'leaking-duct-seal', present: 0.4 }, { id: 'weak-part-fan', present: 0.9 }, { id: 'outlet-misaimed', present: 0.99 }])).toEqual({ inlet: 0, leak: 0.4, misaimed: 0.9 });
  });
});
