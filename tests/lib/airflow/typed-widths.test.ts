import { describe, expect, it } from 'vitest';
import { airOfPath, drawInputs, inputLayout, printColumn, readAirPath, samplePath, variantOfToday, type AirPath, type SampledPath, type UncertainInputs } from '@/lib/airflow';
import { neededOfSamples } from '@/lib/cooling';
import { airChanges, taskOf } from '@/lib/decision/air-options';
import { updateBySides } from '@/lib/decision/air-samples';
import { compareAirOptions } from '@/lib/decision';
import { findings } from './given';

const FAN = { kind: 'blower', claim: 'measured', freeFlow: '0.72 ± 0.12 L/s', maxPressure: '118 ± 30 Pa', outlet: { width: '20 mm', height: '12 mm' } };
const DUCT = { section: { width: '20 mm', height: '12 mm' }, length: '30 mm' };
const MOUTH = { name: 'a', width: '14 mm', height: '4 mm', ending: 'open' };

function read(parts: object): AirPath {
  const { value, problems } = readAirPath(JSON.stringify({ schema: 'leeward/air-path', version: 1, fan: FAN, duct: DUCT, outlets: [MOUTH], leaks: [], ...parts }));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

const sampled = (path: AirPath): SampledPath => samplePath(variantOfToday(path), airOfPath(path), drawInputs(inputLayout(1, 1), 4000, 5));

function logsOf(values: Float64Array): { logs: number[]; mean: number; spread: number } {
  const logs = Array.from(values, Math.log);
  const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
  return { logs, mean, spread: Math.sqrt(logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / logs.length) };
}

/** Logarithmic standard deviation of the log-normal law that has the mean `value` and the standard deviation `plusMinus / 1.96`. */
const told = (value: number, plusMinus: number): number => Math.sqrt(Math.log(1 + (plusMinus / 1.96 / value) ** 2));

describe('the width that was typed', () => {
  it.each([['0.72 ± 0.12 L/s', 0.12, 1], ['0.72 ± 0.12 L/s', 0.12, 80], ['0.72 ± 0.3 L/s', 0.3, 2], ['0.72 ± 0.02 L/s', 0.02, 30]])('of a largest pressure counts, whatever the flow is known to: %s, ± %f, 118 ± %f Pa', (freeFlow, ofFlow, ofPressure) => {
    const { fan } = sampled(read({ fan: { ...FAN, freeFlow, maxPressure: `118 ± ${ofPressure} Pa` } }));
    const [flow, pressure] = [logsOf(fan.freeFlow), logsOf(fan.maxPressure)];
    const together = flow.logs.reduce((sum, log, s) => sum + (log - flow.mean) * ((pressure.logs[s] ?? 0) - pressure.mean), 0) / flow.logs.length;
    // As a speed moves both: the part of the pressure that goes with the flow is twice the flow's own, or all of it.
    const withFlow = Math.min(2 * told(0.72, ofFlow), told(118, ofPressure));
    expect(findings([
      { what: 'flow', ours: flow.spread, theirs: told(0.72, ofFlow), within: 0.01 },
      { what: 'pressure', ours: pressure.spread, theirs: told(118, ofPressure), within: 0.02 },
    ])).toEqual([]);
    // Sampling error of a slope over 4000 samples, times three.
    expect(Math.abs(together / flow.spread - withFlow)).toBeLessThan((3 * told(118, ofPressure)) / Math.sqrt(4000));
  });

  it('is only usual where none was typed: twice the share of the flow, as a speed moves both', () => {
    const share = (claim: string): number => { const { fan } = read({ fan: { ...FAN, claim, freeFlow: '0.72 L/s', maxPressure: '118 Pa' } }); return fan.maxPressure.plusMinus / fan.maxPressure.value; };
    expect([share('measured'), share('data-sheet'), share('advertised')].map((each) => Number(each.toFixed(3)))).toEqual([0.25, 0.3, 0.9]);
  });

  it('of a mouth counts in its area: twice for a circle, and with what a grille leaves open', () => {
    const areaSpread = (outlet: object): number => {
      const [first] = sampled(read({ outlets: [{ name: 'a', ending: 'open', ...outlet }] })).outlets;
      return logsOf((first?.flow ?? new Float64Array(1)).map((flow, s) => flow / (first?.speed[s] ?? 1))).spread;
    };
    expect(findings([
      { what: 'circle', ours: areaSpread({ diameter: '10 ± 1 mm' }), theirs: 2 * told(10, 1), within: 0.01 },
      { what: 'slot', ours: areaSpread({ width: '14 ± 1 mm', height: '4 ± 0.4 mm' }), theirs: Math.hypot(told(14, 1), told(4, 0.4)), within: 0.01 },
      { what: 'grille', ours: areaSpread({ width: '14 ± 0.1 mm', height: '4 ± 0.1 mm', open: '60 ± 20 %' }), theirs: Math.hypot(told(14, 0.1), told(4, 0.1), told(60, 20)), within: 0.01 },
    ])).toEqual([]);
  });

  it('of a circle counts in the duct as the same circle taken a deviation larger', () => {
    const spreadOf = (diameter: string): number => logsOf(sampled(read({ duct: { section: { diameter }, length: '10 mm', bends: [1, 2, 3, 4].map(() => ({ kind: 'mitre', angle: '90°' })) }, outlets: [{ ...MOUTH, height: '12 mm' }] })).flow).spread;
    expect(spreadOf('10 ± 3 mm')).toBeGreaterThan(1.1 * spreadOf('10 ± 0.1 mm'));
  });

  it('of the size of a branch widens the flow through it', () => {
    const spreadOf = (width: string): number => {
      const branch = { section: { width, height: '5 ± 0.05 mm' }, length: '40 mm', bends: [1, 2, 3].map(() => ({ kind: 'mitre', angle: '90°' })) };
      return logsOf(sampled(read({ outlets: [{ ...MOUTH, width: '9 mm', branch }] })).flow).spread;
    };
    expect(spreadOf('9 ± 3 mm')).toBeGreaterThan(1.15 * spreadOf('9 ± 0.1 mm'));
  });
});

describe('what the print is known to', () => {
  const inputs = drawInputs(inputLayout(1, 1), 5, 1);
  /** All else in the middle, one input of the print at a deviate of 1.5. */
  const moved = (name: 'layer-height' | 'nozzle-temperature'): UncertainInputs => {
    const only: UncertainInputs = { ...inputs, multipliers: new Map(), deviates: new Float64Array(inputs.deviates.length) };
    printColumn(only, name).fill(1.5);
    return only;
  };
  const path = read({ print: { polymer: 'PLA', layerTime: '11 s', layerHeight: '0.2 ± 0.08 mm', nozzleTemperature: '210 ± 20 °C', chamberTemperature: '26 °C' } });
  const task = taskOf(path);

  it('moves the need as a layer that much higher, and a melt that much hotter, would', () => {
    const higher = { ...task, layerHeight: 0.2e-3 * Math.exp(1.5 * told(0.2, 0.08)) };
    const hotter = { ...task, nozzleTemperature: task.nozzleTemperature + (1.5 * 20) / 1.96 };
    const still = { ...inputs, multipliers: new Map<number, Map<number, Float64Array>>(), deviates: new Float64Array(inputs.deviates.length) };
    expect(findings([
      { what: 'height', ours: neededOfSamples(task, moved('layer-height'))[3] ?? 0, theirs: neededOfSamples(higher, still)[3] ?? 1, within: 1e-9 },
      { what: 'melt', ours: neededOfSamples(task, moved('nozzle-temperature'))[3] ?? 0, theirs: neededOfSamples(hotter, still)[3] ?? 1, within: 1e-9 },
    ])).toEqual([]);
    expect((neededOfSamples(higher, still)[0] ?? 0) / (neededOfSamples(task, still)[0] ?? 1)).toBeGreaterThan(1.2);
  });

  it('is told by how the part came out: a side that held speaks against high layers, one that curled for them', () => {
    // Layers so slow that some of the samples do on the side that faces the outlet.
    const slow = read({ print: { polymer: 'PLA', layerTime: '18 s', layerHeight: '0.2 ± 0.08 mm', nozzleTemperature: '210 °C', chamberTemperature: '26 °C' } });
    const [leave] = airChanges(slow, variantOfToday(slow), airOfPath(slow)).changes;
    if (leave === undefined) throw new Error('a change expected');
    const drawn = drawInputs(inputLayout(1, 1), 2000, 3);
    const today = samplePath(leave.variant, airOfPath(path), drawn);
    const [held = 0, curled = 0] = [true, false].map((holds) => printColumn(updateBySides([{ direction: 0, held: holds }], leave, airOfPath(path), drawn, today).inputs, 'layer-height').reduce((sum, deviate) => sum + deviate, 0) / 2000);
    // The mean of 2000 draws is known to 0.022, with copies among them to some 0.03.
    expect([held < -0.15, curled > held + 0.3]).toEqual([true, true]);
  });

  it('widens the need where the layer height is not told', () => {
    const width = (print: object): number => { const { high, low } = compareAirOptions(read({ print: { polymer: 'PLA', layerTime: '11 s', nozzleTemperature: '210 °C', chamberTemperature: '26 °C', ...print } }), [], { samples: 1000 }).need.coefficient; return high / low; };
    expect(width({})).toBeGreaterThan(1.1 * width({ layerHeight: '0.2 mm' }));
  });

  it('asks for next to nothing where the melt is hardly warmer than it holds its shape at', () => {
    const [barely, usual] = [440, 540].map((nozzleTemperature) => neededOfSamples({ ...task, polymer: 'PA', nozzleTemperature }, inputs));
    expect(barely?.every((need, s) => need >= 0 && need < 0.5 * (usual?.[s] ?? 0))).toBe(true);
  });
});
