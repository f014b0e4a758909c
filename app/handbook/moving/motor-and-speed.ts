import { beltForce, collisionForce, electricalFrequency, holdingForce, motorTorque, windingVoltage } from '@/lib/motion';
import { rounded, settingOf, spread, type MovingFigure } from './moving-figure';

/** An invented axis: small motor of 0.4 N·m at 1.5 A, 4 mH, 20-tooth pulley, 12 V supply, half a kilogram, 2 N of friction. */
const AXIS = { torque: 0.4, current: 1.5, inductance: 4e-3, radius: 6.366e-3, cycle: 0.8e-3, supply: 12, mass: 0.5, friction: 2, rotor: 5e-6, stiffness: 50e3 };

/** Force, N, that the motor can pull at a speed (m/s): at speed its winding has no time to fill with current. */
export function pullAt(speed: number): number {
  const asked = windingVoltage(AXIS.current, electricalFrequency(speed, AXIS.cycle), AXIS.inductance);
  return holdingForce(AXIS.torque, AXIS.radius, Math.min(1, AXIS.supply / asked));
}

/** Force, N, that speeding up at an acceleration (m/s²) takes, friction and rotor counted. */
export function speedingUpForce(acceleration: number): number {
  return motorTorque(beltForce(AXIS.mass, acceleration, AXIS.friction), AXIS.radius, AXIS.rotor, acceleration) / AXIS.radius;
}

/** Peak force, N, when the carriage strikes an edge at a speed (m/s). */
export function strikeForce(speed: number): number {
  return collisionForce(speed, AXIS.stiffness, AXIS.mass);
}

const verdict = (force: number, pull: number): string => (force < pull ? 'it holds' : 'it loses steps');

export const motorAndSpeed: MovingFigure = {
  title: 'What pulls a motor out of step',
  sliders: [
    { label: 'Speed', from: 20, to: 600, step: 10, start: 150, words: (value) => `${value} mm/s` },
    { label: 'Acceleration', from: 500, to: 20_000, step: 500, start: 3000, words: (value) => `${value} mm/s²` },
  ],
  at: (values) => {
    const [speed, acceleration] = [settingOf(values, 0), settingOf(values, 1)];
    const [pull, needed, strike] = [pullAt(speed / 1000), speedingUpForce(acceleration / 1000), strikeForce(speed / 1000)];
    const along = (force: (speed: number) => number) => spread(10, 600, 120).map((x) => ({ x, y: force(x / 1000) }));
    return {
      x: { words: 'speed, mm/s', from: 0, to: 600 },
      y: { words: 'force at the belt, N', from: 0, to: 100 },
      lines: [
        { name: 'the motor can pull', as: 'strong', points: along(pullAt) },
        { name: `speeding up at ${acceleration} mm/s²`, as: 'plain', points: along(() => needed) },
        { name: 'striking a curled edge', as: 'ghost', points: along(strikeForce) },
      ],
      mark: { x: speed, y: pull, words: `${rounded(pull)} N` },
      said: `At ${speed} mm/s the motor can pull ${rounded(pull)} N. Speeding up takes ${rounded(needed)} N: ${verdict(needed, pull)}. Striking a hard edge takes up to ${rounded(strike)} N: ${verdict(strike, pull)}.`,
    };
  },
  columns: ['the motor can pull', 'speeding up takes', 'striking an edge takes'],
  row: (values) => {
    const speed = settingOf(values, 0) / 1000;
    return [`${rounded(pullAt(speed))} N`, `${rounded(speedingUpForce(settingOf(values, 1) / 1000))} N`, `${rounded(strikeForce(speed))} N`];
  },
  tabled: [50, 100, 200, 300, 400, 600],
  holds: 'An invented axis: 0.4 N·m at 1.5 A and 4 mH on 12 V, 20 teeth, 0.5 kg, 2 N of friction, edge and belt of 50 N/mm. The voltage that the turning motor makes itself is left out, so the true pull at speed is lower.',
};
