import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  aliasedHeight, beltForce, collisionForce, dampingFrom, distanceAfter, driveMarks, electricalFrequency, feederSpacing, fieldStiffness, followsCondition, frequencyAfterMass, heightLeft, heightOfPeriod, holdingForce, lagUnderLoad,
  largestAmplitude, layerBeat, matchMarks, motorTorque, pitchFromTension, rippleAmplitude, rippleSpacing, rotorAsMass, spacingOnWall, speedingUpDistance, steadyLength, tensionFromPitch, timedHeight, timedSpacing, windingVoltage,
} from '@/lib/motion';
import type { MarkMotor } from '@/lib/motion';
import { FORMULAS } from '@/lib/measuring';
import values from '../../independent/motion/values.json';

const mm = 1e-3;
/** Printed to four figures. */
const near = (found: number, printed: number, share = 6e-4): boolean => Math.abs(found - printed) <= share * Math.abs(printed);

describe('regular marks', () => {
  it('lie on slanted walls as tabulated', () => {
    const wrong = values.walls.filter(([motor, axis, angle, expected]) => {
      const found = spacingOnWall(Number(axis) * mm, (Number(angle) * Math.PI) / 180, motor as MarkMotor);
      return expected === null ? found !== Number.POSITIVE_INFINITY : !near(found / mm, Number(expected));
    });
    expect(wrong).toEqual([]);
  });

  it('have the spacings of their drive', () => {
    const rows = Object.entries(values.driveMarks).filter((row): row is [string, number[]] => Array.isArray(row[1]));
    expect(rows.length).toBe(3);
    const wrong = rows.filter(([name, expected]) => {
      const [teeth = 0, fullStepsPerTurn = 0] = name.split('/').map(Number);
      const found = driveMarks({ kind: 'belt', fullStepsPerTurn, teeth, beltPitch: 2 * mm }).map((mark) => mark.spacing / mm);
      return found.length !== expected.length || found.some((spacing, index) => !near(spacing, expected[index] ?? NaN, 1e-9));
    });
    expect(wrong).toEqual([]);
  });

  it('pitfall 8: from a feeder they shrink with the cross-section of the line', () => {
    const { filamentArea, lineArea } = values.feederLine;
    expect(values.feeder.filter(([turn = 0, spacing = 0]) => !near(feederSpacing(turn, filamentArea, lineArea), spacing, 1e-3))).toEqual([]);
    expect(feederSpacing(22.67, filamentArea, 2 * lineArea)).toBeCloseTo(feederSpacing(22.67, filamentArea, lineArea) / 2, 9);
    expect(heightOfPeriod(669.7 * mm, 0.2 * mm, 0.4) / mm).toBeCloseTo(0.335, 3);
    expect(() => feederSpacing(1, 1, 0)).toThrow('more than 0');
  });

  it('follow time through speed and layer time', () => {
    expect(timedSpacing(0.06, 20)).toBeCloseTo(1.2, 9);
    expect(timedHeight(0.2, 20, 15)).toBeCloseTo(0.267, 3);
  });

  it('beat with the steps of the height screw', () => {
    const wrong = values.beats.filter(([height, layers, rise]) => {
      const found = layerBeat(Number(height) * mm, 0.04 * mm);
      return layers === null ? found !== undefined : found === undefined || !near(found.layers, Number(layers), 1e-6) || !near(found.height / mm, Number(rise), 1e-6);
    });
    expect(wrong).toEqual([]);
  });

  it('pitfall 30: shorter than two layers they show at a false height', () => {
    const { spacing, layer, shown } = values.aliased;
    expect(aliasedHeight(spacing, layer)).toBeCloseTo(shown, 3);
    expect(aliasedHeight(1, layer)).toBe(1);
    expect(aliasedHeight(0.1, layer)).toBe(Number.POSITIVE_INFINITY);
  });

  it('pitfall 7: 2.0 mm fits a tooth and a 50 Hz swing at 100 mm/s, and both are named', () => {
    const origins = [...driveMarks({ kind: 'belt', fullStepsPerTurn: 200, teeth: 20, beltPitch: 2 * mm }), { origin: 'swing of the frame', spacing: rippleSpacing(0.1, 50), standard: 0.05 * mm }];
    const found = matchMarks({ length: 20.01 * mm, gaps: 10, edge: 0.05 * mm }, origins);
    expect(found.standard / mm).toBeCloseTo(0.0071, 4);
    expect(found.matches.map((match) => match.origin)).toEqual(expect.arrayContaining(['belt tooth', 'swing of the frame']));
    expect(found.severalFit).toBe(true);
  });

  it('find nothing where nothing fits, and weigh harmonics down', () => {
    const origins = [{ origin: 'tooth', spacing: 2 * mm }];
    expect(matchMarks({ length: 13.1 * mm, gaps: 10, edge: 0.05 * mm }, origins).matches).toEqual([]);
    const [half] = matchMarks({ length: 10 * mm, gaps: 10, edge: 0.05 * mm }, origins).matches;
    const [whole] = matchMarks({ length: 20 * mm, gaps: 10, edge: 0.05 * mm }, origins).matches;
    expect(half?.harmonic).toBe(2);
    // Half the spacing and a quarter of the weight.
    expect((half?.evidence ?? NaN) / (whole?.evidence ?? NaN)).toBeCloseTo(1 / 8, 6);
    expect(() => matchMarks({ length: 1, gaps: 0, edge: 1 }, origins)).toThrow('whole gaps');
  });

  it('give evidence of one on average over all spacings: no origin is favoured before measuring', () => {
    const origin = [{ origin: 'tooth', spacing: 2 * mm }];
    const steps = 20_000;
    let mean = 0;
    for (let index = 0; index < steps; index += 1) {
      // Spacings evenly spread in logarithm over the range 0.05 mm to 2 m of the alternative.
      const spacing = 0.05e-3 * (2 / 0.05e-3) ** (index / steps);
      mean += (matchMarks({ length: spacing, gaps: 1, edge: 0.05 * mm }, origin).matches.find((match) => match.harmonic === 1)?.evidence ?? 0) / steps;
    }
    // Only matches within two standard uncertainties count: 0.9545.
    expect(mean).toBeCloseTo(0.9545, 2);
  });

  it('are told apart by a second speed', () => {
    const at = (condition: number, spacing: number, standard = 0.03): { condition: number; spacing: number; standard: number } => ({ condition, spacing, standard });
    const table = [[at(50, 2), at(100, 4), 'follows'], [at(50, 2), at(100, 2.03), 'stays'], [at(50, 2), at(100, 3), 'neither'], [at(50, 2, 0.5), at(60, 2.2, 0.5), 'cannot-tell']] as const;
    expect(table.filter(([first, second, answer]) => followsCondition(first, second) !== answer)).toEqual([]);
    expect(() => followsCondition(at(50, 2), at(50, 2))).toThrow('different');
  });
});

describe('ringing', () => {
  const { ringing } = values;

  it('gives the check values', () => {
    expect(rippleSpacing(0.1, 50)).toBeCloseTo(2 * mm, 12);
    expect(speedingUpDistance(0.1, 0.005, 3) / mm).toBeCloseTo(ringing.accelerating, 4);
    expect(ringing.amplitudes.filter(([a = 0, f = 1, size = 0]) => Math.abs(largestAmplitude(a * mm, f) / mm - size) > 6e-5)).toEqual([]);
    expect(dampingFrom(1, Math.exp(-ringing.decrement))).toBeCloseTo(ringing.damping, 4);
    expect(heightLeft(ringing.damping, 5)).toBeCloseTo(ringing.after5, 4);
    expect(frequencyAfterMass(ringing.massFactor[0] ?? NaN)).toBeCloseTo(ringing.massFactor[1] ?? NaN, 3);
  });

  it('pitfall 5: the first ripple lies nearer than speed over frequency and would give 143 Hz for 50 Hz', () => {
    const first = distanceAfter(1 / 50, 0.1, 0.005, 3);
    expect(first / mm).toBeCloseTo(ringing.firstRipple, 2);
    expect(0.1 / first).toBeCloseTo(ringing.naive, -0.5);
    const late = distanceAfter(4 / 50, 0.1, 0.005, 3) - distanceAfter(3 / 50, 0.1, 0.005, 3);
    expect(0.1 / late).toBeCloseTo(50, 9);
  });

  it('vanishes where the speeding up lasts whole periods, and is capped for hard acceleration', () => {
    expect(rippleAmplitude(3, 50, 3 / 50)).toBeCloseTo(0, 12);
    expect(rippleAmplitude(1e6, 50, 0.1)).toBeCloseTo(0.1 / (2 * Math.PI * 50), 6);
    const positive = fc.double({ min: 0.1, max: 100, noNaN: true });
    fc.assert(fc.property(positive, positive, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (a, f, change) => rippleAmplitude(a, f, change) <= largestAmplitude(a, f) * (1 + 1e-12)));
  });

  it('leaves no steady stretch on a short wall', () => {
    expect(steadyLength(3 * mm, 0.1, 0.005, 3)).toBe(0);
    expect(steadyLength(20 * mm, 0.1, 0.005, 3) / mm).toBeCloseTo(20 - 2 * ringing.accelerating, 3);
    expect(speedingUpDistance(0.01, 0.02, 3)).toBe(0);
    expect(() => speedingUpDistance(1, 0, 0)).toThrow('more than 0');
    expect(() => dampingFrom(0, 1)).toThrow('above 0');
  });
});

describe('belts and forces', () => {
  const mass = values.beltMass * mm;

  it('ring as tabulated', () => {
    expect(values.belts.filter(([span = 0, tension = 0, pitch = 0]) => Math.abs(pitchFromTension(tension, span * mm, mass) - pitch) > 0.06)).toEqual([]);
  });

  it('come back from pitch to tension, the same as the measuring formula', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: 0.05, max: 1, noNaN: true }), (tension, span) => {
      const pitch = pitchFromTension(tension, span, mass);
      if (pitch < 10 || pitch > 1000) return true;
      const exact = (kind: 'frequency' | 'length' | 'linear-density', value: number) => [{ kind, value, plusMinus: 0 }];
      const formula = FORMULAS['belt-tension-from-pitch'].compute({ pitch: exact('frequency', pitch), span: exact('length', span), mass: exact('linear-density', mass) });
      return Math.abs(tensionFromPitch(pitch, span, mass) / tension - 1) < 1e-12 && Math.abs((formula.value?.result.value ?? NaN) / tension - 1) < 1e-12;
    }));
  });

  it('pitfall 27: the second harmonic reads four times the tension', () => {
    expect(tensionFromPitch(220, 0.15, mass) / tensionFromPitch(110, 0.15, mass)).toBeCloseTo(4, 12);
    expect(() => tensionFromPitch(0, 1, 1)).toThrow('above 0');
  });

  it('give the force budget of the sheet', () => {
    const { forces } = values;
    const radius = 40 * mm / (2 * Math.PI);
    const force = beltForce(0.5, 3);
    const found: [number, number][] = [
      [force, forces.force], [motorTorque(force, radius, 0, 3), forces.torque], [motorTorque(0, radius, 2.2e-6, 3), forces.rotorTorque], [rotorAsMass(2.2e-6, radius), forces.rotorMass],
      [holdingForce(0.4, radius), forces.hold], [holdingForce(0.4, radius, 0.85, 'one'), forces.holdOne], [lagUnderLoad(0.25) ?? NaN, forces.lag], [electricalFrequency(0.2, 0.8 * mm), forces.electrical],
      [windingVoltage(1.5, 250, 3e-3), forces.winding], [collisionForce(0.1, 50e3, 0.5), forces.collision], [fieldStiffness(0.4, 200, radius) / 1000, forces.field],
    ];
    // Printed to two or three figures.
    expect(found.filter(([value, printed]) => !near(value, printed, 6e-3))).toEqual([]);
    expect(lagUnderLoad(1.01)).toBeUndefined();
  });
});
