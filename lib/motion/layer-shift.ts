import type { Problem, Reading } from '@/lib/problems';
import { motorsFromShift } from './crossed-belts';
import { driveLengths } from './drive';
import type { Drive } from './drive';
import { NO_DISCRIMINATION, latticeLikelihood } from './lattice-likelihood';

/** How the nozzle is moved: one motor per axis, two motors on crossed belts, or three arms. */
export type Kinematics = 'moving-bed' | 'crossed-belts' | 'delta';

/** What can displace layers. A fixing is a grub screw, a coupler or a belt clamp. */
export const SHIFT_MECHANISMS = ['motor-slip', 'tooth-jump', 'slipping-fixing', 'part-moved', 'power-loss'] as const;
export type ShiftMechanism = (typeof SHIFT_MECHANISMS)[number];

/** One step in the wall, in m, with the standard uncertainty of each axis. An axis that was not measured is left out. */
export interface Shift {
  readonly x?: number;
  readonly y?: number;
  readonly standard: number;
  /** Outcome of the rotation test, when it was made. */
  readonly turned?: boolean;
  /** True when it happened at a pause, a filament change or a supply dip. */
  readonly atPause?: boolean;
}

export interface ShiftMachine {
  readonly kinematics: Kinematics;
  /** Drive of X, or of both motors with crossed belts. */
  readonly x: Drive;
  /** Drive of Y; that of X when left out. */
  readonly y?: Drive;
}

export interface MechanismChance {
  readonly mechanism: ShiftMechanism;
  readonly chance: number;
  /** How much better it fits than "any value at all". */
  readonly evidence: number;
}

export interface ShiftFinding {
  /** Likeliest first; chances sum to 1. */
  readonly mechanisms: readonly MechanismChance[];
  /** Motors that moved in any of the shifts: x, y on a moving bed; a, b with crossed belts. */
  readonly movedMotors: readonly ('x' | 'y' | 'a' | 'b')[];
  /** False when the measurement is too coarse for the lattice of full electrical cycles. */
  readonly sizeTellsSlip: boolean;
  /** False when every tooth jump is also a whole number of cycles, so that size cannot part the two. */
  readonly slipAndToothDiffer: boolean;
}

/** Chances before the sizes are looked at; modelling choice of the worked example in motion sheet 1.3, no source. */
export const USUAL_SHIFT_CHANCES: Readonly<Record<ShiftMechanism, number>> = {
  'motor-slip': 0.5,
  'tooth-jump': 0.15,
  'slipping-fixing': 0.15,
  'part-moved': 0.2,
  'power-loss': 0,
};

/** A restart after a pause re-aligns the rotor anywhere; estimate. */
const POWER_LOSS_AT_PAUSE = 0.3;
/** Two motors or two fixings that give way in one instant: estimate. */
const TWO_AT_ONCE = 0.05;
/** A part that came loose usually turns as well; chance that it does not: estimate. */
const MOVED_WITHOUT_TURNING = 0.3;

/**
 * Which mechanism shifted the layers, from the sizes of one or more shifts of one print. Sizes multiply: several shifts show a
 * lattice that one cannot. Machines with three arms have no lattice in X and Y: a problem. Source: motion sheet 1.2 to 1.4.
 * Worked: 1.58 ± 0.05 mm on a 0.8 mm cycle: slip 0.894, tooth 0, fixing 0.046, part moved 0.061.
 */
export function explainShifts(shifts: readonly Shift[], machine: ShiftMachine, chances = USUAL_SHIFT_CHANCES): Reading<ShiftFinding> {
  const problems = refuse(shifts, machine);
  if (problems.some((problem) => problem.level === 'stop')) return { value: undefined, problems };
  const motions = shifts.map((shift) => motorMotions(shift, machine));
  const paused = shifts.some((shift) => shift.atPause === true);
  const scored = SHIFT_MECHANISMS.map((mechanism) => {
    const evidence = shifts.reduce((product, shift, index) => product * evidenceOf(mechanism, shift, motions[index] ?? []), 1);
    const before = mechanism === 'power-loss' && paused ? Math.max(POWER_LOSS_AT_PAUSE, chances[mechanism]) : chances[mechanism];
    return { mechanism, evidence, weight: before * evidence };
  });
  const whole = scored.reduce((total, one) => total + one.weight, 0);
  const mechanisms = scored
    .map(({ mechanism, evidence, weight }) => ({ mechanism, evidence, chance: whole === 0 ? 0 : weight / whole }))
    .sort((first, second) => second.chance - first.chance);
  return { value: { mechanisms, ...factsOf(motions, machine) }, problems };
}

/** Belt movement of one motor in one shift. */
interface Motion {
  readonly motor: 'x' | 'y' | 'a' | 'b';
  readonly size: number;
  readonly standard: number;
  readonly cycle: number;
  readonly tooth: number | undefined;
  readonly moved: boolean;
}

function motorMotions({ x, y, standard }: Shift, machine: ShiftMachine): readonly Motion[] {
  const first = driveLengths(machine.x);
  const second = driveLengths(machine.y ?? machine.x);
  const motion = (motor: Motion['motor'], size: number, doubt: number, cycle: number, tooth: number | undefined): Motion =>
    ({ motor, size, standard: doubt, cycle, tooth, moved: Math.abs(size) > 3 * doubt });
  if (machine.kinematics === 'crossed-belts' && x !== undefined && y !== undefined) {
    const { a, b } = motorsFromShift(x, y);
    const doubt = Math.SQRT2 * standard;
    return [motion('a', a, doubt, first.electricalCycle, first.tooth), motion('b', b, doubt, first.electricalCycle, first.tooth)];
  }
  // With crossed belts one axis alone shows half of what a motor moved.
  const half = machine.kinematics === 'crossed-belts' ? 0.5 : 1;
  const scaled = (tooth: number | undefined): number | undefined => (tooth === undefined ? undefined : tooth * half);
  return [
    ...(x === undefined ? [] : [motion('x', x, standard, first.electricalCycle * half, scaled(first.tooth))]),
    ...(y === undefined ? [] : [motion('y', y, standard, second.electricalCycle * half, scaled(second.tooth))]),
  ];
}

function evidenceOf(mechanism: ShiftMechanism, shift: Shift, motions: readonly Motion[]): number {
  if (shift.turned === true && mechanism !== 'part-moved') return 0;
  const moved = motions.filter((motion) => motion.moved);
  const together = moved.length > 1 ? TWO_AT_ONCE : 1;
  switch (mechanism) {
    case 'motor-slip':
      return together * product(moved, (motion) => latticeLikelihood(motion.size, motion.cycle, motion.standard, { withoutZero: true }));
    case 'tooth-jump':
      return together * product(moved, (motion) => (motion.tooth === undefined ? 0 : latticeLikelihood(motion.size, motion.tooth, motion.standard, { withoutZero: true })));
    case 'slipping-fixing':
      return together;
    case 'part-moved':
      return shift.turned === false ? MOVED_WITHOUT_TURNING : 1;
    case 'power-loss':
      return shift.atPause === true ? 1 : 0;
    default: {
      const never: never = mechanism;
      throw new Error(`evidenceOf: unknown mechanism ${String(never)}`);
    }
  }
}

function product(motions: readonly Motion[], factor: (motion: Motion) => number): number {
  return motions.reduce((total, motion) => total * factor(motion), 1);
}

function factsOf(motions: readonly (readonly Motion[])[], machine: ShiftMachine): Omit<ShiftFinding, 'mechanisms'> {
  const moved = motions.flat().filter((motion) => motion.moved);
  const lengths = driveLengths(machine.x);
  return {
    movedMotors: [...new Set(moved.map((motion) => motion.motor))],
    sizeTellsSlip: moved.some((motion) => motion.standard < NO_DISCRIMINATION * motion.cycle),
    slipAndToothDiffer: lengths.tooth === undefined || lengths.coincidence === undefined || lengths.coincidence > lengths.tooth * (1 + 1e-9),
  };
}

function refuse(shifts: readonly Shift[], machine: ShiftMachine): readonly Problem[] {
  const where = 'layer shift';
  if (machine.kinematics === 'delta') {
    return [{ code: 'not-applicable', level: 'stop', where, what: 'With three arms a lost step has no fixed size on the part.', next: 'Look for the cause by touch: arms, belts and carriages.' }];
  }
  if (shifts.length === 0) return [{ code: 'missing-reading', level: 'stop', where, what: 'No shift was measured.', next: 'Measure the step in the wall on one face at least.' }];
  const problems: Problem[] = [];
  for (const [index, shift] of shifts.entries()) {
    const at = shifts.length === 1 ? where : `${where} ${index + 1}`;
    const sizes = [shift.x, shift.y].filter((size) => size !== undefined);
    if (!(shift.standard > 0) || sizes.some((size) => !Number.isFinite(size))) {
      problems.push({ code: 'out-of-range', level: 'stop', where: at, what: 'The shift needs a size and an uncertainty above zero.', next: 'Measure the step again, on two opposite faces.' });
    } else if (!sizes.some((size) => Math.abs(size) > 3 * shift.standard)) {
      problems.push({ code: 'too-small-to-tell', level: 'stop', where: at, what: 'The shift is no larger than the doubt about it.', next: 'Measure more finely, or look at a larger shift.' });
    } else if (machine.kinematics === 'crossed-belts' && sizes.length === 1) {
      problems.push({ code: 'one-axis-only', level: 'note', where: at, what: 'With crossed belts one axis shows only half of what a motor moved.', next: 'Measure the other axis too; equal steps on both mean one motor.' });
    }
  }
  return problems;
}
