import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { driveLengths, expectedLatticeEvidence, explainShifts, latticeLikelihood, lostSteps, motorsFromShift, rotationTest, shiftFromMotors } from '@/lib/motion';
import type { Drive, Shift, ShiftMachine, ShiftMechanism } from '@/lib/motion';
import library from '../../independent/motion/library-values.json';
import values from '../../independent/motion/values.json';

const mm = 1e-3;
const belt = (teeth: number, fullStepsPerTurn: number): Drive => ({ kind: 'belt', fullStepsPerTurn, beltPitch: 2 * mm, teeth });
const usual = belt(20, 200);
const movingBed: ShiftMachine = { kinematics: 'moving-bed', x: usual };
const crossed: ShiftMachine = { kinematics: 'crossed-belts', x: usual };
const shift = (x: number, y?: number, more: Partial<Shift> = {}): Shift => ({ x: x * mm, ...(y === undefined ? {} : { y: y * mm }), standard: 0.05 * mm, ...more });

function chances(shifts: readonly Shift[], machine = movingBed): Record<ShiftMechanism, number> {
  const { value, problems } = explainShifts(shifts, machine);
  if (value === undefined) throw new Error(JSON.stringify(problems));
  return Object.fromEntries(value.mechanisms.map((one) => [one.mechanism, one.chance])) as Record<ShiftMechanism, number>;
}

describe('drive lengths', () => {
  it('are those of the table', () => {
    const wrong = values.drives.flatMap((row) => {
      const found = driveLengths(belt(row.teeth, row.steps));
      const pairs = [[found.travelPerTurn, row.turn], [found.fullStep, row.step], [found.electricalCycle, row.cycle], [found.coincidence ?? NaN, row.coincidence]] as const;
      const near = pairs.every(([value, expected]) => Math.abs(value / mm - expected) < 1e-9) && Math.abs((found.pulleyRadius ?? NaN) / mm - row.radius) < 6e-4;
      return near ? [] : [`${row.teeth}/${row.steps}: ${JSON.stringify(found)}`];
    });
    expect(wrong).toEqual([]);
    const screw = driveLengths({ kind: 'screw', fullStepsPerTurn: 200, lead: 8 * mm });
    expect([screw.fullStep / mm, screw.electricalCycle / mm]).toEqual([expect.closeTo(0.04, 12), expect.closeTo(0.16, 12)]);
  });

  it('shrink by a gear in front of the pulley', () => {
    expect(driveLengths({ ...usual, ratio: 2 }).electricalCycle).toBeCloseTo(0.4 * mm, 12);
    expect(() => driveLengths({ kind: 'screw', fullStepsPerTurn: 200, lead: 0 })).toThrow('positive');
  });
});

describe('lattice likelihood', () => {
  it('gives the check values and those of a term-by-term sum', () => {
    const sheet = values.lattice.filter(([d = 0, e = 1, u = 1, value = 0]) => Math.abs(latticeLikelihood(d, e, u) - value) > 6e-4);
    const summed = library.likelihood.filter((row) => {
      const whole = latticeLikelihood(row.shift, row.spacing, row.u);
      const rest = latticeLikelihood(row.shift, row.spacing, row.u, { withoutZero: true });
      return Math.abs(whole - row.value) > 1e-9 * Math.max(1, row.value) || Math.abs(rest - row.withoutZero) > 1e-9 * Math.max(1, row.withoutZero);
    });
    expect([sheet, summed]).toEqual([[], []]);
    const { shifts, spacing, u, product } = values.latticePair;
    expect(shifts.reduce((whole, d) => whole * latticeLikelihood(d, spacing, u), 1)).toBeCloseTo(product, 1);
  });

  it('depends on uncertainty over spacing as tabulated', () => {
    const wrong = values.byRatio.filter(([ratio = 1, on = 0, off = 0]) => Math.abs(latticeLikelihood(0, 1, ratio) - on) > 6e-3 || Math.abs(latticeLikelihood(0.5, 1, ratio) - off) > 6e-4);
    expect(wrong).toEqual([]);
    const evidence = values.expectedEvidence.filter(([ratio = 1, value = 0]) => Math.abs(expectedLatticeEvidence(ratio) - value) > 6e-4);
    expect(evidence).toEqual([]);
    expect(library.expected.filter((row) => Math.abs(expectedLatticeEvidence(row.ratio) - row.value) > 1e-6)).toEqual([]);
  });

  it('averages to one over a period: no lattice is favoured before measuring', () => {
    fc.assert(fc.property(fc.double({ min: 0.03, max: 1.2, noNaN: true }), fc.double({ min: 0.1, max: 3, noNaN: true }), (ratio, spacing) => {
      const count = 400;
      const mean = Array.from({ length: count }, (_, i) => latticeLikelihood((i / count) * spacing, spacing, ratio * spacing)).reduce((sum, value) => sum + value, 0) / count;
      return Math.abs(mean - 1) < 1e-6;
    }));
  });

  it('repeats with the spacing and does not care about the sign', () => {
    const size = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(fc.property(size, fc.integer({ min: -4, max: 4 }), (d, n) => Math.abs(latticeLikelihood(d, 0.8, 0.1) - latticeLikelihood(-d + n * 0.8, 0.8, 0.1)) < 1e-6));
  });

  it('pitfall 2: never exceeds 0.4 spacings over u, so a fine lattice does not win by being near', () => {
    // Neighbouring points add up to 1 % at the coarse end.
    fc.assert(fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ min: 0.01, max: 0.29, noNaN: true }), (d, ratio) => latticeLikelihood(d, 1, ratio) <= (1.01 * 0.4) / ratio));
    expect(latticeLikelihood(4, 2, 0.05) / latticeLikelihood(4, 0.8, 0.05)).toBeCloseTo(2 / 0.8, 6);
  });

  it('refuses a spacing or an uncertainty of nothing', () => {
    expect(() => latticeLikelihood(1, 0, 0.1)).toThrow('above 0');
    expect(() => latticeLikelihood(1, 1, 0)).toThrow('above 0');
    expect(() => expectedLatticeEvidence(5)).toThrow('0.01 to 2');
  });
});

describe('layer shifts', () => {
  it('give the worked posterior', () => {
    const found = chances([shift(1.58)]);
    for (const mechanism of ['motor-slip', 'tooth-jump', 'slipping-fixing', 'part-moved'] as const) expect(Math.abs(found[mechanism] - values.posterior[mechanism])).toBeLessThan(6e-4);
  });

  it('pitfall 1: 0.2 mm is one full step and yet no slip of a 20-tooth pulley', () => {
    expect(chances([shift(0.2)])['motor-slip']).toBeLessThan(0.02);
  });

  it('multiply over several shifts of one print', () => {
    expect(chances([shift(1.58), shift(0.83)])['motor-slip']).toBeGreaterThan(chances([shift(1.58)])['motor-slip']);
    expect(chances([shift(1.58), shift(1.15)])['motor-slip']).toBeLessThan(0.01);
  });

  it('pitfall 3: with crossed belts, equal steps on both axes are one motor', () => {
    const { value } = explainShifts([shift(0.41, -0.39)], crossed);
    expect(value?.movedMotors).toEqual(['b']);
    expect(value?.mechanisms[0]?.mechanism).toBe('motor-slip');
    // The same sizes on a moving bed need two motors at once.
    expect(chances([shift(0.41, -0.39)])['motor-slip']).toBeLessThan(0.3);
  });

  it('do not blame one motor of crossed belts for a shift along one axis', () => {
    const { value } = explainShifts([shift(0.8, 0)], crossed);
    expect(value?.movedMotors).toEqual(['a', 'b']);
    expect(chances([shift(0.8, 0)], crossed)['part-moved']).toBeGreaterThan(0.2);
    expect(explainShifts([shift(0.8)], crossed).problems.map((problem) => problem.code)).toEqual(['one-axis-only']);
  });

  it('pitfall 4: say when cycles and teeth cannot be told apart by size', () => {
    const fine = explainShifts([shift(2)], { kinematics: 'moving-bed', x: belt(20, 400) }).value;
    expect([fine?.slipAndToothDiffer, fine?.sizeTellsSlip]).toEqual([false, true]);
    expect(explainShifts([shift(2)], movingBed).value?.slipAndToothDiffer).toBe(true);
  });

  it('say when the measurement is too coarse for the lattice', () => {
    expect(explainShifts([shift(1.6, undefined, { standard: 0.3 * mm })], movingBed).value?.sizeTellsSlip).toBe(false);
  });

  it('clear every motor when the part has turned', () => {
    expect(chances([shift(1.6, undefined, { turned: true })])['part-moved']).toBe(1);
    expect(chances([shift(1.6, undefined, { turned: false })])['part-moved']).toBeLessThan(chances([shift(1.6)])['part-moved']);
  });

  it('consider a restart only where there was a pause', () => {
    expect(chances([shift(1.15)])['power-loss']).toBe(0);
    expect(chances([shift(1.15, undefined, { atPause: true })])['power-loss']).toBeGreaterThan(0.3);
  });

  it('know a tooth jump from a slip when the size allows it', () => {
    expect(chances([shift(1.99), shift(2.02)])['tooth-jump']).toBeGreaterThan(0.9);
    expect(explainShifts([shift(2)], { kinematics: 'moving-bed', x: { kind: 'screw', fullStepsPerTurn: 200, lead: 8 * mm } }).value?.mechanisms.find((one) => one.mechanism === 'tooth-jump')?.chance).toBe(0);
  });

  it('have chances that make one', () => {
    fc.assert(fc.property(fc.double({ min: 0.2, max: 6, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), fc.constantFrom(movingBed, crossed), (x, y, machine) => {
      const whole = explainShifts([shift(x, y)], machine).value?.mechanisms.reduce((sum, one) => sum + one.chance, 0);
      return whole === undefined || Math.abs(whole - 1) < 1e-9;
    }));
  });

  it('refuse what says nothing', () => {
    const table: [readonly Shift[], ShiftMachine, string][] = [
      [[shift(1)], { kinematics: 'delta', x: usual }, 'not-applicable'], [[], movingBed, 'missing-reading'], [[shift(0.1)], movingBed, 'too-small-to-tell'],
      [[shift(1, undefined, { standard: 0 })], movingBed, 'out-of-range'], [[shift(Number.NaN)], movingBed, 'out-of-range'], [[{ standard: 1e-4 }], movingBed, 'too-small-to-tell'],
    ];
    const wrong = table.filter(([shifts, machine, code]) => explainShifts(shifts, machine).problems[0]?.code !== code || explainShifts(shifts, machine).value !== undefined);
    expect(wrong.map(([, , code]) => code)).toEqual([]);
  });
});

describe('crossed belts and rotation', () => {
  it('decode a shift into motors', () => {
    const { x, y, u, cycle, a, b, standard } = values.crossed;
    const found = lostSteps(x, y, cycle, u);
    expect([found.a, found.b]).toEqual([expect.closeTo(a, 9), expect.closeTo(b, 9)]);
    expect(found.standard).toBeCloseTo(standard, 3);
    expect(() => lostSteps(1, 1, 0, 1)).toThrow('more than 0');
  });

  it('come back from motors unchanged', () => {
    const size = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(fc.property(size, size, (x, y) => {
      const back = shiftFromMotors(motorsFromShift(x, y));
      return Math.abs(back.x - x) < 1e-12 && Math.abs(back.y - y) < 1e-12;
    }));
  });

  it('test whether a part turned', () => {
    const { apart, u, standardDegrees } = values.rotation;
    const found = rotationTest(0, 0.3, apart, u);
    expect((found.standard * 180) / Math.PI).toBeCloseTo(standardDegrees, 3);
    expect([found.turned, rotationTest(0, 0.5, apart, u).turned]).toEqual([false, true]);
    expect(() => rotationTest(0, 1, 0, 1)).toThrow('above 0');
  });
});
