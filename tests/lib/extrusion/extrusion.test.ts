import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  FLANK, deliveryPattern, diameterOfOval, driedShare, dryingTime, feedPerLength, filamentArea, filamentPressure, filamentSpeed, firstLayer, flowErrorFromDiameter, flowFactorForDiameter, lineFlow, meanWall, meltLimit, meltingPower,
  newFlowMultiplier, newStepsPerLength, newTravelPerTurn, pressureFactor, pressureFactorOfFlow, rectangleArea, roundedArea, spacingWithoutGaps, vapourVolume, widthOfRounded,
} from '@/lib/extrusion';
import type { Delivery, DeliveryPattern } from '@/lib/extrusion';
import { FORMULAS } from '@/lib/measuring';
import library from '../../independent/extrusion/library-values.json';
import values from '../../independent/extrusion/values.json';

const mm = 1e-3;
/** Half of the last printed figure of four. */
const near = (found: number, printed: number, share = 6e-4): boolean => Math.abs(found - printed) <= share * Math.abs(printed);
const lengths = fc.double({ min: 0.05, max: 1, noNaN: true });

describe('line volume', () => {
  const { lines } = values;
  const [width, height] = [lines.width * mm, lines.height * mm];

  it('gives both models of the sheet', () => {
    const found = ([['rectangle', rectangleArea(width, height)], ['rounded', roundedArea(width, height)]] as const).flatMap(([model, area]) => {
      const flow = lineFlow(area, 60 * mm);
      const printed = model === 'rectangle' ? [lines.rectangle, lines.feedRectangle, lines.flowRectangle, lines.speedRectangle] : [lines.rounded, lines.feedRounded, lines.flowRounded, lines.speedRounded];
      const ours = [area * 1e6, feedPerLength(area, 1.75 * mm), flow * 1e9, filamentSpeed(flow, 1.75 * mm) * 1e3];
      return ours.filter((value, index) => !near(value, printed[index] ?? NaN));
    });
    expect(found).toEqual([]);
    expect(values.filament.filter(([d = 0, area = 0]) => !near(filamentArea(d * mm) * 1e6, area, 1e-6))).toEqual([]);
  });

  it('pitfall 9: the two models differ by a tenth', () => {
    expect(roundedArea(width, height) / rectangleArea(width, height)).toBeCloseTo(0.9046, 4);
    expect(FLANK).toBeCloseTo(0.214602, 6);
  });

  it('comes back from area to width, and fills its spacing without gaps', () => {
    fc.assert(fc.property(lengths, lengths, (a, b) => {
      const [w, h] = [Math.max(a, b), Math.min(a, b)];
      const area = roundedArea(w, h);
      return Math.abs(widthOfRounded(area, h) - w) < 1e-12 && Math.abs(spacingWithoutGaps(w, h) * h - area) < 1e-12 && area <= rectangleArea(w, h);
    }));
  });

  it('refuses a line higher than wide', () => {
    expect(() => roundedArea(0.1, 0.2)).toThrow('at least as wide as high');
    expect(() => rectangleArea(0, 0.2)).toThrow('above 0');
  });
});

describe('filament and feeder', () => {
  it('turn diameter errors into flow errors', () => {
    expect(values.diameters.filter(([d = 0, d0 = 1, percent = 0]) => !near(100 * flowErrorFromDiameter(d, d0), percent, 5e-3))).toEqual([]);
    const [across = 0, turned = 0, mean = 0] = values.oval;
    expect(diameterOfOval(across, turned)).toBeCloseTo(mean, 4);
    const [actual = 0, assumed = 0, factor = 0] = values.factor;
    expect(flowFactorForDiameter(actual, assumed)).toBeCloseTo(factor, 4);
  });

  it('pitfall 10: both forms of the feeder setting agree, and are each other’s inverse', () => {
    const { steps, asked, moved, newSteps, turn, newTurn, microsteps } = values.feeder;
    expect(newStepsPerLength(steps, asked, moved)).toBeCloseTo(newSteps, 3);
    expect(newTravelPerTurn(turn, asked, moved)).toBeCloseTo(newTurn, 4);
    fc.assert(fc.property(lengths, lengths, (one, other) => Math.abs((newStepsPerLength(microsteps / turn, one, other) * newTravelPerTurn(turn, one, other)) / microsteps - 1) < 1e-12));
    expect(() => newStepsPerLength(93, 100, 0)).toThrow('above 0');
  });
});

describe('flow multiplier', () => {
  const { aimed, measured, layer, square, rounded, mean, invented } = values.multiplier;

  it('allows for the rounded flanks', () => {
    expect(newFlowMultiplier(1, aimed, measured, layer, 'square')).toBeCloseTo(square, 6);
    expect(newFlowMultiplier(1, aimed, measured, layer)).toBeCloseTo(rounded, 4);
  });

  it('pitfall 29: peak width taken as mean thickness invents a tenth too much', () => {
    expect(meanWall(aimed, layer)).toBeCloseTo(mean, 4);
    expect(aimed / meanWall(aimed, layer) - 1).toBeCloseTo(invented, 3);
  });

  it('leaves a right wall alone, and agrees with the measuring formula', () => {
    fc.assert(fc.property(fc.double({ min: 0.25, max: 1.2, noNaN: true }), fc.double({ min: 0.25, max: 1.2, noNaN: true }), fc.double({ min: 0.05, max: 0.24, noNaN: true }), (target, wall, height) => {
      const exact = (value: number) => [{ kind: 'length' as const, value: value * mm, plusMinus: 0 }];
      const formula = FORMULAS['single-wall-flow'].compute({ wall: exact(wall), aimed: exact(target), layer: exact(height) }).value?.result.value ?? NaN;
      return Math.abs(newFlowMultiplier(1.1, target, target, height) - 1.1) < 1e-12 && Math.abs(newFlowMultiplier(1, target, wall, height) - formula) < 1e-9;
    }));
    expect(() => newFlowMultiplier(1, 0.1, 0.4, 0.2)).toThrow('widths');
  });
});

describe('flow limits', () => {
  it('are of the size in the sheet', () => {
    expect(values.meltLimits.filter(([zone = 0, fourier = 1, flow = 0]) => !near(meltLimit(zone * mm, fourier) * 1e9, flow, 6e-3))).toEqual([]);
    expect(values.pressure.filter(([before = 0, after = 1, n = 1, factor = 0]) => !near(pressureFactor(before, after, n), factor))).toEqual([]);
    expect(filamentPressure(40, 1.75 * mm) / 1e6).toBeCloseTo(values.filamentPressureMPa, 1);
    expect(meltingPower(10e-9, 1240, 1800, 190, 30e3)).toBeCloseTo(values.meltingPower, 1);
    expect(() => meltLimit(0, 0.3)).toThrow('above 0');
    expect(() => pressureFactor(0.4, 0, 1)).toThrow('above 0');
  });

  it('ask for more pressure with more flow, less than in proportion when the melt thins', () => {
    // Square root of 2 and 2 by the power law itself; and flow and bore must agree: at one speed in the bore, n 1 leaves (before/after)² of the pressure.
    expect(pressureFactorOfFlow(5, 10, 0.5)).toBeCloseTo(1.414_214, 6);
    expect(pressureFactorOfFlow(5, 10, 1)).toBe(2);
    expect(pressureFactorOfFlow(1, 0.25, 1) * pressureFactor(0.4, 0.2, 1)).toBeCloseTo(4, 12);
    expect(() => pressureFactorOfFlow(0, 5, 1)).toThrow('above 0');
  });
});

describe('under-extrusion', () => {
  const at = (...rows: [flow: number, share: number, standard?: number][]): Delivery[] => rows.map(([flow, share, standard = 0.01]) => ({ flow: flow * 1e-9, share, standard }));
  const table: [string, Delivery[], DeliveryPattern][] = [
    ['the same deficit at every flow', at([2, 0.95], [5, 0.95], [10, 0.95]), 'same-at-all-flows'],
    ['a deficit that grows', at([2, 1], [5, 0.97], [10, 0.88]), 'grows-with-flow'],
    ['a constant and a growing deficit', at([2, 0.95], [10, 0.85]), 'grows-with-flow'],
    ['nothing missing', at([2, 1], [5, 0.995], [10, 1.005]), 'enough'],
    ['too coarse to tell', at([2, 0.96, 0.05], [5, 0.93, 0.05]), 'cannot-tell'],
    ['a deficit whose growth cannot be ruled out', at([2, 0.95, 0.02], [4, 0.94, 0.02]), 'cannot-tell'],
    ['more than was asked for', at([2, 1.06], [10, 1.06]), 'enough'],
  ];
  it('is read from its pattern over flow', () => {
    const wrong = table.flatMap(([name, deliveries, pattern]) => {
      const found = deliveryPattern(deliveries).value?.pattern;
      return found === pattern ? [] : [`${name}: ${found ?? 'none'}, expected ${pattern}`];
    });
    expect(wrong).toEqual([]);
  });

  it('points to settings or to what gives way, and to heat when heat helps', () => {
    expect(deliveryPattern(at([2, 0.95], [10, 0.95])).value?.suspects).toContain('feeder-calibration');
    expect(deliveryPattern(at([2, 0.95], [10, 0.95])).value?.suspects).not.toContain('partial-clog');
    expect(deliveryPattern(at([2, 1], [10, 0.85])).value?.suspects).toContain('partial-clog');
    expect(deliveryPattern(at([2, 1], [10, 0.85]), { hotterHelps: true }).value?.suspects).not.toContain('partial-clog');
  });

  it('pitfall 11: one flow alone tells neither a setting nor a clog', () => {
    expect(deliveryPattern(at([5, 0.9])).problems.map((problem) => problem.code)).toEqual(['one-flow-only']);
    expect(deliveryPattern(at([5, 0.9], [6, 0.9])).problems.map((problem) => problem.code)).toEqual(['one-flow-only']);
    expect(deliveryPattern(at([5, 0.9], [10, Number.NaN])).problems.map((problem) => problem.code)).toEqual(['out-of-range']);
  });

  it('does not depend on the order of the readings', () => {
    const readings = fc.array(fc.tuple(fc.double({ min: 1, max: 20, noNaN: true }), fc.double({ min: 0.5, max: 1.1, noNaN: true })), { minLength: 2, maxLength: 5 });
    fc.assert(fc.property(readings, (rows) => {
      const there = deliveryPattern(at(...rows)).value;
      const back = deliveryPattern(at(...[...rows].reverse())).value;
      return there?.pattern === back?.pattern && Math.abs((there?.growth ?? 0) - (back?.growth ?? 0)) < 1e-9;
    }));
  });
});

describe('first layer and water', () => {
  it('spread or starve with the gap', () => {
    const wrong = values.firstLayer.filter(([error = 0, fill = 0, width = 0]) => {
      const found = firstLayer(0.2, 0.45, error);
      return !near(found.fill, fill, 1e-3) || !near(found.width, width, 1e-3);
    });
    expect(wrong).toEqual([]);
    expect(values.firstLayerRounded.filter(([error = 0, width = 0]) => !near(firstLayer(0.2, 0.45, error, 'rounded').width, width, 1.2e-3))).toEqual([]);
    expect(() => firstLayer(0.2, 0.45, -0.2)).toThrow('gap above 0');
  });

  it('dry by the series for a round thread', () => {
    // Printed to four decimals: half of the last one.
    expect(values.drying.filter(([share = 0, time = 0]) => Math.abs(dryingTime(1, 1, share) - time) > 5.1e-5)).toEqual([]);
    expect(library.times.filter((row) => !near(dryingTime(1, 1, row.share), row.time, 1e-6))).toEqual([]);
    expect(library.shares.filter((row) => Math.abs(driedShare(row.time) - row.share) > 1e-6)).toEqual([]);
    expect(values.dryingHours.filter(([diffusivity = 1, hours = 0]) => !near(dryingTime(0.875 * mm, diffusivity, 0.95) / 3600, hours, 6e-3))).toEqual([]);
    expect(dryingTime(1.425 * mm, 1e-11, 0.95) / dryingTime(0.875 * mm, 1e-11, 0.95)).toBeCloseTo(2.65, 2);
    fc.assert(fc.property(fc.double({ min: 0, max: 2, noNaN: true }), fc.double({ min: 1e-6, max: 1, noNaN: true }), (time, more) => driedShare(time + more) >= driedShare(time) - 1e-6));
    expect(() => dryingTime(1, 1, 1)).toThrow('between 0 and 1');
  });

  it('swell to more than the plastic itself', () => {
    // Printed per gram of plastic in cm³: 1e-3 m³/kg.
    expect(vapourVolume(0.001, 473.15) * 1e3).toBeCloseTo(values.vapour, 2);
  });
});
