import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airOfPath, curveFromEnds, curveFromPoints, drawInputs, electricalFit, fanBranchesOf, fanCurveOf, fansAtWork, fansInParallel, fansInSeries, inputLayout, operatingPoint, parallelAt, predictedReading, pressureOnCurve,
  readAirPath, samplePath, shapeEitherWay, twoFansInParallel, twoFansInSeries, updateByReadings, variantOfToday,
  type AirPath, type DuctNetwork, type FanCurve, type PathVariant, type SampledPath, type UncertainInputs,
} from '@/lib/airflow';
import { compareAirOptions } from '@/lib/decision';
import published from '../../independent/airflow/values.json';
import { findings } from './given';

/** Closed forms worked out by hand; the solver stops at 1e-13 of its interval. */
const CLOSED = 1e-9;
/** The printed table is good to its last digit. */
const PRINTED = 0.0006;
const LITRE = 1e-3;
const small = curveFromEnds(60, 2 * LITRE, 1);
const strong = curveFromEnds(100, LITRE, 1);
const thick = { density: 2, viscosity: 2e-5 };

/** A duct that asks k2·Q² and nothing else. */
const plainDuct = (k2: number): DuctNetwork => ({ mode: 'static', fanOutletArea: 1, trunkArea: 1, trunk: [], leaks: [], outlets: [{ name: 'a', ending: 'open', area: 1 / Math.sqrt(k2), branchArea: 1 / Math.sqrt(k2), dischargeCoefficient: 1, elements: [] }] });

describe('two unlike fans with straight curves, against hand calculation', () => {
  it('in series add their pressures at each flow, beyond the free flow of the weaker too', () => {
    // p = 100·(1 − Q) + 60·(1 − Q/2) = 160 − 130·Q, Q in L/s: 0 at 16/13.
    const pair = fansInSeries(strong, small);
    expect(findings([
      { what: 'sealed', ours: pair.maxPressure, theirs: 160, within: CLOSED },
      { what: 'free', ours: pair.freeFlow, theirs: (16 / 13) * LITRE, within: CLOSED },
      { what: 'at 0.5 L/s', ours: pressureOnCurve(pair, 0.5 * LITRE), theirs: 95, within: CLOSED },
      { what: 'at 1.1 L/s, where the stronger takes 10 Pa', ours: pressureOnCurve(pair, 1.1 * LITRE), theirs: 17, within: CLOSED },
    ])).toEqual([]);
  });

  it('side by side add their flows at each pressure, and the stronger pushes air back through the weaker', () => {
    // Q = (1 − p/100) + 2·(1 − p/60) = 3 − 13·p/300: 0 at 900/13 Pa, where the weaker passes −4/13 L/s.
    const pair = fansInParallel(strong, small);
    const sealed = parallelAt(strong, small, 0);
    expect(findings([
      { what: 'free', ours: pair.freeFlow, theirs: 3 * LITRE, within: CLOSED },
      { what: 'sealed', ours: pair.maxPressure, theirs: 900 / 13, within: CLOSED },
      { what: 'back through the weaker', ours: sealed.second, theirs: (-4 / 13) * LITRE, within: CLOSED },
      { what: 'out of the stronger', ours: sealed.first, theirs: (4 / 13) * LITRE, within: CLOSED },
      { what: 'at 5/6 L/s', ours: pressureOnCurve(pair, (5 / 6) * LITRE), theirs: 50, within: CLOSED },
    ])).toEqual([]);
  });

  it('meet a duct where the straight lines meet its parabola', () => {
    // 1e8·Q² = 160 − 130e3·Q, and Q = 3e-3 − 13e-3·p/300 with p = 1e8·Q².
    const [a, b] = [1e8, 13e-3 / 300];
    const series = (-130e3 + Math.sqrt(130e3 ** 2 + 4 * a * 160)) / (2 * a);
    const parallel = (-1 + Math.sqrt(1 + 4 * a * b * 3e-3)) / (2 * a * b);
    expect(findings([
      { what: 'series', ours: operatingPoint(fansInSeries(strong, small), plainDuct(a), thick).flow, theirs: series, within: CLOSED },
      { what: 'parallel', ours: operatingPoint(fansInParallel(strong, small), plainDuct(a), thick).flow, theirs: parallel, within: CLOSED },
    ])).toEqual([]);
  });

  it('follow the formula of a parabola beyond its ends', () => {
    const round = curveFromEnds(60, 2 * LITRE, 2);
    // Sealed: 1 − 0.6·(1 + r²) = 2·r, so r = (−2 + √4.96)/1.2 flows back through the parabola at 60·(1 + r²) Pa.
    const back = (-2 + Math.sqrt(4.96)) / 1.2;
    // Series, parabola of 100 Pa and 1 L/s before the line of 60 Pa and 2 L/s: 160 − 30·Q − 100·Q² = 0.
    const free = (-30 + Math.sqrt(900 + 64_000)) / 200;
    expect(findings([
      { what: 'sealed', ours: fansInParallel(strong, round).maxPressure, theirs: 60 * (1 + back ** 2), within: CLOSED },
      { what: 'flow back', ours: parallelAt(strong, round, 0).second, theirs: -2 * back * LITRE, within: CLOSED },
      { what: 'free', ours: fansInSeries(curveFromEnds(100, LITRE, 2), small).freeFlow, theirs: free * LITRE, within: CLOSED },
      { what: 'pushed back by a quarter, line', ours: shapeEitherWay(strong, -0.25), theirs: 1.25, within: CLOSED },
      { what: 'pushed back by a quarter, parabola', ours: shapeEitherWay(round, -0.25), theirs: 1.0625, within: CLOSED },
    ])).toEqual([]);
  });
});

const FROM_POINTS = curveFromPoints([[0, 90], [0.5e-3, 80], [1e-3, 45], [1.4e-3, 0]].map(([flow = 0, pressure = 0]) => ({ flow, pressure })));
const STALLED = curveFromPoints([[0, 70], [0.3e-3, 50], [0.6e-3, 62], [0.9e-3, 40], [1.3e-3, 0]].map(([flow = 0, pressure = 0]) => ({ flow, pressure })));

describe('two unlike fans, relations', () => {
  const curve = fc.record({ pressure: fc.double({ min: 20, max: 400, noNaN: true }), flow: fc.double({ min: 2e-4, max: 5e-3, noNaN: true }), exponent: fc.double({ min: 1, max: 2.2, noNaN: true }) })
    .map(({ pressure, flow, exponent }) => curveFromEnds(pressure, flow, exponent));
  const share = fc.double({ min: 0, max: 1, noNaN: true });

  it('are the published equal pairs when both are the same fan', () => {
    const one = curveFromEnds(100, LITRE, 1);
    expect(findings(published.twoFans.flatMap(([kappa = 0, , series = 0, parallel = 0]) => {
      const duct = plainDuct((kappa * 100) / 1e-6);
      return [
        { what: `series ${kappa}`, ours: operatingPoint(fansInSeries(one, one), duct, thick).flow * 1000, theirs: series, within: PRINTED },
        { what: `parallel ${kappa}`, ours: operatingPoint(fansInParallel(one, one), duct, thick).flow * 1000, theirs: parallel, within: PRINTED },
      ];
    }))).toEqual([]);
  });

  it('are exactly the equal pair when both curves are the same, whatever the curve', () => {
    fc.assert(fc.property(fc.oneof(curve, fc.constant(FROM_POINTS)), share, (one, q) => {
      const pairs: [FanCurve, FanCurve][] = [[fansInSeries(one, one), twoFansInSeries(one)], [fansInParallel(one, one), twoFansInParallel(one)]];
      for (const [unlike, equal] of pairs) {
        expect(unlike.freeFlow / equal.freeFlow).toBeCloseTo(1, 9);
        expect(unlike.maxPressure / equal.maxPressure).toBeCloseTo(1, 9);
        expect(unlike.shape(q)).toBeCloseTo(equal.shape(q), 9);
      }
    }), { numRuns: 60 });
  });

  it('do not depend on which of the two is named first', () => {
    fc.assert(fc.property(fc.oneof(curve, fc.constant(STALLED)), curve, share, (a, b, q) => {
      for (const pair of [fansInSeries, fansInParallel]) {
        expect(pair(a, b).freeFlow / pair(b, a).freeFlow).toBeCloseTo(1, 9);
        expect(pair(a, b).maxPressure / pair(b, a).maxPressure).toBeCloseTo(1, 9);
        expect(pair(a, b).shape(q)).toBeCloseTo(pair(b, a).shape(q), 7);
      }
    }), { numRuns: 60 });
  });

  it('fall all the way, and lie between the two: sealed side by side, free in series', () => {
    fc.assert(fc.property(curve, curve, (a, b) => {
      const [series, parallel] = [fansInSeries(a, b), fansInParallel(a, b)];
      const between = (value: number, ends: readonly number[]): boolean => value >= Math.min(...ends) * (1 - 1e-9) && value <= Math.max(...ends) * (1 + 1e-9);
      expect(between(parallel.maxPressure, [a.maxPressure, b.maxPressure])).toBe(true);
      expect(between(series.freeFlow, [a.freeFlow, b.freeFlow])).toBe(true);
      for (const pair of [series, parallel]) {
        const shares = Array.from({ length: 21 }, (_, k) => pair.shape(k / 20));
        expect(shares.every((y, k) => k === 0 || y < (shares[k - 1] ?? 0) + 1e-9)).toBe(true);
      }
    }), { numRuns: 60 });
  });

  it('give less than the better one alone where they do not suit: side by side on a tight duct, in series on an open one', () => {
    const flow = (fan: FanCurve, k2: number): number => operatingPoint(fan, plainDuct(k2), thick).flow;
    expect(flow(fansInParallel(strong, small), 1e10)).toBeLessThan(flow(strong, 1e10));
    expect(flow(fansInSeries(strong, small), 1e6)).toBeLessThan(flow(small, 1e6));
    expect(flow(fansInParallel(strong, small), 1e6)).toBeGreaterThan(flow(small, 1e6));
    expect(flow(fansInSeries(strong, small), 1e10)).toBeGreaterThan(flow(strong, 1e10));
  });
});

const BLOWER = { kind: 'blower', claim: 'measured', freeFlow: '1 L/s', maxPressure: '120 Pa', voltage: '24 V', current: '0.1 A', outlet: { width: '20 mm', height: '12 mm' } };
const AXIAL = { kind: 'axial', claim: 'data-sheet', freeFlow: '1.6 L/s', maxPressure: '45 Pa', voltage: '24 V', current: '0.06 A', outlet: { diameter: '34 mm' } };
const POINTS = { ...AXIAL, points: 'flow (L/s); pressure (Pa)\n0; 45\n0.6; 34\n1.1; 20\n1.6; 0' };
const MIDDLE = { ...AXIAL, midPoint: { flow: '0.8 L/s', pressure: '28 Pa' } };
const MOUTH = { width: '14 mm', height: '4 mm', distance: '14 mm' };

function file(fan: object, more: object = {}): string {
  return JSON.stringify({ schema: 'leeward/air-path', version: 1, fan, duct: { section: { width: '20 mm', height: '12 mm' }, length: '30 mm' }, outlets: [{ name: 'a', fan: 1, ...MOUTH }, { name: 'b', fan: 2, ...MOUTH }], leaks: [], ...more });
}

function read(fan: object, more: object = {}): AirPath {
  const { value, problems } = readAirPath(file(fan, more));
  if (value === undefined) throw new Error(problems.map((problem) => `${problem.where}: ${problem.code}`).join(', '));
  return value;
}

const still = (inputs: UncertainInputs): UncertainInputs => ({ ...inputs, multipliers: new Map(), deviates: new Float64Array(inputs.deviates.length) });
const solve = (path: AirPath, variant: PathVariant = variantOfToday(path)): SampledPath => samplePath(variant, airOfPath(path), still(drawInputs(inputLayout(2, 1), 3, 1)));
const SECONDS: readonly [string, object][] = [['a band', AXIAL], ['a table', POINTS], ['a point between', MIDDLE]];
const ARRANGEMENTS = ['series', 'parallel', 'own-ducts'] as const;

describe('two unlike fans on a path', () => {
  it.each(SECONDS.flatMap(([what, second]) => ARRANGEMENTS.map((arrangement) => [what, arrangement, second] as const)))('in every sample agree with the full solver within a thousandth: %s, %s', (_, arrangement, second) => {
    const path = read({ ...BLOWER, arrangement, second });
    const sampled = solve(path);
    const air = airOfPath(path);
    const full = fanBranchesOf(variantOfToday(path)).map(({ fan, network }) => operatingPoint(fanCurveOf(fan === 'second' && path.fan.second !== undefined ? path.fan.second : path.fan, air), network, air));
    expect(full).toHaveLength(arrangement === 'own-ducts' ? 2 : 1);
    expect(findings([
      { what: 'flow', ours: sampled.flow[2] ?? 0, theirs: full.reduce((sum, point) => sum + point.flow, 0), within: 1e-3 },
      { what: 'pressure of the first', ours: sampled.pressure[2] ?? 0, theirs: full[0]?.pressure ?? 0, within: 2e-3 },
      ...full.flatMap((point) => point.outlets).map((outlet) => ({ what: `speed ${outlet.name}`, ours: sampled.outlets[outlet.name === 'a' ? 0 : 1]?.speed[2] ?? 0, theirs: outlet.jetSpeed, within: 1e-3 })),
    ])).toEqual([]);
  });

  it.each(ARRANGEMENTS)('give sample by sample what the equal pair gives, when the second is the same fan and moves with the first: %s', (arrangement) => {
    const equal = read({ ...BLOWER, arrangement, count: 2 });
    const unlike = read({ ...BLOWER, arrangement, second: BLOWER });
    const inputs = drawInputs(inputLayout(2, 1), 200, 4);
    const [one, two] = [samplePath(variantOfToday(equal), airOfPath(equal), inputs), samplePath({ ...variantOfToday(unlike), secondFanSlot: 0 }, airOfPath(unlike), inputs)];
    const apart = Array.from(one.flow, (flow, s) => Math.max(Math.abs((two.flow[s] ?? 0) / flow - 1), Math.abs((two.pressure[s] ?? 0) / (one.pressure[s] ?? 1) - 1), Math.abs((two.outlets[1]?.speed[s] ?? 0) / (one.outlets[1]?.speed[s] ?? 1) - 1)));
    expect(Math.max(...apart)).toBeLessThan(1e-5);
    const works = [fansAtWork(variantOfToday(equal), one), fansAtWork(variantOfToday(unlike), two)].map((fans) => fans.map((fan) => [fan.flow[7], fan.pressure[7], fan.freeFlow[7]]));
    works[0]?.flat().forEach((value, k) => expect((works[1]?.flat()[k] ?? 0) / (value ?? 1)).toBeCloseTo(1, 4));
  });

  it('share the work: flows add side by side, pressures add in series, and who works against whom is told', () => {
    const tight = { outlets: [{ name: 'a', ...MOUTH, height: '0.6 mm' }] };
    const parallel = compareAirOptions(read({ ...BLOWER, arrangement: 'parallel', second: AXIAL }, tight), [], { samples: 300 });
    const leave = parallel.options.find((option) => option.id === 'leave');
    expect(leave?.fans.map((fan) => [fan.name, fan.overpowered > 0.9, fan.flow.value < 0])).toEqual([['part fan', false, false], ['second fan', true, true]]);
    expect(leave?.sideEffects.map((effect) => effect.kind)).toContain('fans-at-odds');
    const path = read({ ...BLOWER, arrangement: 'series', second: AXIAL });
    const sampled = solve(path);
    const [first, second] = fansAtWork(variantOfToday(path), sampled);
    expect((first?.pressure[0] ?? 0) + (second?.pressure[0] ?? 0)).toBeCloseTo(sampled.pressure[0] ?? 0, 3);
    expect(fansAtWork(variantOfToday(read(BLOWER)), solve(read(BLOWER)))).toEqual([]);
  });

  it.each([['tight', '0.4 mm'], ['usual', '4 mm'], ['open', '11 mm']])('in every sample stand each on its own curve, with the same pressure side by side and the same flow in series: %s', (_, height) => {
    const outlets = { outlets: [{ name: 'a', ...MOUTH, height }] };
    const vague = { kind: 'axial', frame: '40 x 10' };
    const inputs = drawInputs(inputLayout(2, 1), 400, 8);
    // The law that the full solver's curves follow, written down once more: forward, and pushed back.
    const stands = (fan: SampledPath['fan'] | undefined, s: number, flow: number): number => {
      const q = flow / (fan?.freeFlow[s] ?? NaN);
      const weight = fan?.shapeWeight[s] ?? NaN;
      const lost = (1 - weight) * Math.abs(q) + weight * q * q;
      return (fan?.maxPressure[s] ?? NaN) * (q >= 0 ? 1 - lost : 1 + lost);
    };
    for (const arrangement of ['parallel', 'series'] as const) {
      const path = read({ ...BLOWER, arrangement, second: vague }, outlets);
      const sampled = samplePath(variantOfToday(path), airOfPath(path), inputs);
      const works = fansAtWork(variantOfToday(path), sampled);
      const { pair } = sampled.fan;
      const off = Array.from(sampled.flow, (_, s) => {
        const [first, second] = [pair?.first, pair?.second].map((fan, k) => stands(fan, s, works[k]?.flow[s] ?? NaN));
        const pressure = sampled.pressure[s] ?? NaN;
        const scale = Math.max(pair?.first.maxPressure[s] ?? 1, pair?.second.maxPressure[s] ?? 1);
        return arrangement === 'parallel' ? Math.max(Math.abs((first ?? NaN) - pressure), Math.abs((second ?? NaN) - pressure)) / scale : Math.abs((first ?? NaN) + (second ?? NaN) - pressure) / scale;
      });
      expect(Math.max(...off), arrangement).toBeLessThan(1e-5);
    }
  });

  it('take a reading of the fan as one of the first by itself', () => {
    const path = read({ ...BLOWER, arrangement: 'parallel', second: AXIAL });
    const inputs = drawInputs(inputLayout(2, 1), 500, 5);
    const reading = { what: 'free-flow' as const, outlet: undefined, value: 0.9e-3, plusMinus: 0.02e-3 };
    const { path: after } = updateByReadings(variantOfToday(path), airOfPath(path), inputs, [reading], 5);
    const flows = Array.from(after.fan.pair?.first.freeFlow ?? []).sort((a, b) => a - b);
    expect(Math.abs((flows[250] ?? 0) / 0.9e-3 - 1)).toBeLessThan(0.02);
  });

  it('take a reading of the second as one of the second by itself, with the weight that the law of Gauss gives every sample', () => {
    const path = read({ ...BLOWER, arrangement: 'parallel', second: AXIAL });
    const [variant, air, inputs] = [variantOfToday(path), airOfPath(path), drawInputs(inputLayout(2, 1), 2000, 6)];
    const before = samplePath(variant, air, inputs).fan.pair;
    const mean = (values: ArrayLike<number> | undefined, weight: (s: number) => number = () => 1): number => {
      const weights = Array.from(values ?? [], (_, s) => weight(s));
      return Array.from(values ?? []).reduce((sum, value, s) => sum + value * (weights[s] ?? 0), 0) / weights.reduce((sum, each) => sum + each, 0);
    };
    const value = 1.15 * mean(before?.second.freeFlow);
    const plusMinus = 0.1 * value;
    const reading = readAirPath(file({ ...BLOWER, arrangement: 'parallel', second: AXIAL }, { measured: [{ what: 'free-flow', fan: 'second', value: { value: value * 1000, unit: 'L/s', plusMinus: plusMinus * 1000 } }] })).value?.measured ?? [];
    expect(reading).toMatchObject([{ what: 'free-flow', fan: 'second' }]);
    const after = updateByReadings(variant, air, inputs, [{ ...reading[0], what: 'free-flow', outlet: undefined, fan: 'second', value, plusMinus }], 6).path.fan.pair;
    const weighed = mean(before?.second.freeFlow, (s) => Math.exp(-0.5 * (((before?.second.freeFlow[s] ?? 0) - value) / (plusMinus / 1.96)) ** 2));
    expect(Math.abs(mean(after?.second.freeFlow) / weighed - 1)).toBeLessThan(0.01);
    expect(Math.abs(weighed / mean(before?.second.freeFlow) - 1)).toBeGreaterThan(0.03);
    expect(Math.abs(mean(after?.first.freeFlow) / mean(before?.first.freeFlow) - 1)).toBeLessThan(0.02);
    const speed = predictedReading({ what: 'fan-speed', outlet: undefined, fan: 'second', value: 1, plusMinus: 1 }, variantOfToday(read({ ...BLOWER, arrangement: 'parallel', second: { ...AXIAL, speed: '6000 rpm' } })), samplePath(variant, air, inputs));
    expect(Math.abs(mean(speed) / (100 * (mean(before?.second.freeFlow) / (path.fan.second?.freeFlow.value ?? 1))) - 1)).toBeLessThan(1e-6);
  });

  it('say what is amiss with a reading of a fan that is not there, and with ducts that no outlet or every outlet shares', () => {
    const notes = (fan: object, more: object = {}): string[] => readAirPath(file(fan, more)).problems.filter((problem) => problem.code !== 'assumed').map((problem) => `${problem.level} ${problem.code} ${problem.where}`);
    const measured = [{ what: 'free-flow', fan: 'second', value: '1 L/s' }];
    expect(notes(BLOWER, { measured })).toEqual(['note no-second-fan measured[1].fan']);
    expect(notes({ ...BLOWER, count: 2, arrangement: 'parallel' }, { measured })).toEqual(['note no-second-fan measured[1].fan']);
    expect(notes({ ...BLOWER, arrangement: 'parallel', second: AXIAL }, { measured: [{ what: 'static-pressure', fan: 'second', value: '20 Pa' }] })).toEqual(['note no-second-fan measured[1].fan']);
    expect(notes({ ...BLOWER, arrangement: 'parallel', second: AXIAL }, { measured })).toEqual([]);
    const own = { ...BLOWER, arrangement: 'own-ducts', second: AXIAL };
    expect(notes(own)).toEqual([]);
    expect(notes(own, { outlets: [{ name: 'a', ...MOUTH }] })).toEqual(['note fan-feeds-nothing outlets']);
    expect(notes(own, { outlets: [{ name: 'a', ...MOUTH }, { name: 'b', ...MOUTH }] })).toEqual(['note fan-feeds-nothing outlets']);
    const allOnSecond = readAirPath(file(own, { outlets: [{ name: 'a', ...MOUTH, fan: 2 }, { name: 'b', ...MOUTH, fan: 2 }] })).problems.filter(({ code }) => code === 'fan-feeds-nothing');
    expect(allOnSecond.map(({ what }) => what)).toEqual([expect.stringMatching(/^Every outlet is said to be fed by the second fan/)]);
  });

  it('on offer are held against what fans of their size move, each by itself', () => {
    // 25 CFM against 300 Pa is over half a watt of moving air wherever the curve bends, out of the 0.6 W that the second draws.
    const fan = { kind: 'blower', frame: '50 x 15', claim: 'advertised', voltage: '24 V' };
    const offer = { candidates: [{ name: 'twin', price: 9, fan: { ...fan, freeFlow: '5 CFM', maxPressure: '100 Pa', current: '0.1 A', second: { ...fan, freeFlow: '25 CFM', maxPressure: '300 Pa', current: '0.025 A' } } }] };
    const twin = compareAirOptions(read(BLOWER, offer), [], { samples: 100 }).options.find((option) => option.kind === 'new-fan');
    expect([twin?.credibility?.verdict, twin?.credibilityOfSecond?.verdict]).toEqual(['credible', 'impossible']);
  });

  it('blow with both their outlets into one duct when they stand side by side', () => {
    const network = (fan: object): DuctNetwork | undefined => fanBranchesOf(variantOfToday(read(fan)))[0]?.network;
    expect((network({ ...BLOWER, count: 2, arrangement: 'parallel' })?.fanOutletArea ?? 0) * 1e6).toBeCloseTo(480, 6);
    expect((network({ ...BLOWER, arrangement: 'parallel', second: { ...BLOWER, outlet: { width: '10 mm', height: '10 mm' } } })?.fanOutletArea ?? 0) * 1e6).toBeCloseTo(340, 6);
    expect((network({ ...BLOWER, count: 2, arrangement: 'series' })?.fanOutletArea ?? 0) * 1e6).toBeCloseTo(240, 6);
  });

  it('draw their currents together, and the one that suits the output less decides', () => {
    const states = (second: object): object => Object.fromEntries(electricalFit(read({ ...BLOWER, arrangement: 'parallel', second }).fan, read(BLOWER, { output: { voltage: '24 V', currentLimit: '0.15 A' } }).output).map((point) => [point.id, point.state]));
    expect(states(AXIAL)).toMatchObject({ voltage: 'fits', 'running-current': 'stop' });
    expect(states({ ...AXIAL, current: '0.01 A', voltage: '12 V' })).toMatchObject({ voltage: 'stop', 'running-current': 'fits' });
    expect(states({ kind: 'axial' })).toMatchObject({ 'running-current': 'look' });
  });

  it('are asked for in the file, with every fault at its place; a file of before reads as before', () => {
    const told = (fan: object): string[] => readAirPath(file(fan)).problems.filter((problem) => problem.level === 'stop').map((problem) => `${problem.code} ${problem.where}`);
    expect(told({ ...BLOWER, arrangement: 'parallel', second: { ...AXIAL, freeFlow: 'much' } })).toEqual(['not-a-quantity fan.second.freeFlow']);
    expect(told({ ...BLOWER, count: 1, second: AXIAL })).toEqual(['second-of-one fan.second']);
    expect(told({ ...BLOWER, count: 2, arrangement: 'series', second: { ...AXIAL, count: 2 } })).toEqual(['unknown-key fan.second.count']);
    expect(told({ ...BLOWER, second: { ...MIDDLE, midPoint: { flow: '9 L/s', pressure: '28 Pa' } } })).toEqual(['beyond-free-flow fan.second.midPoint.flow']);
    expect(read({ ...BLOWER, count: 2, arrangement: 'series' }).fan).toMatchObject({ count: 2, arrangement: 'series', second: undefined });
    expect(read({ ...BLOWER, second: AXIAL }).fan).toMatchObject({ count: 2, arrangement: 'parallel', second: { count: 1, arrangement: 'single', kind: 'axial' } });
  });
});
