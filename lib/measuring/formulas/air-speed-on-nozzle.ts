import type { Problem } from '@/lib/problems';
import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Air flow from the speed behind a nozzle of known opening: Q = k_p·k_b·A·V. A is the inner area where the speed is read,
 * k_p the mean over the centre speed, k_b above 1 when the meter throttles the jet. m/s and m² to m³/s.
 * Source: air sheet 3.1 (short rounded nozzle 0.95 to 0.98, from memory; budget of a vane on a nozzle in 3.4).
 * Worked: 9 m/s over 400 mm² with both factors 1 is 7.63 CFM.
 */
export const airSpeedOnNozzle = defineFormula({
  id: 'air-speed-on-nozzle',
  title: 'Air speed behind a nozzle of known opening',
  readings: [
    // Ordinary vane meter: ±(3 % + 0.2 m/s), from memory (sheet 3.1).
    { id: 'speed', title: 'air speed', kind: 'speed', unit: 'm/s', repeat: 3, min: 0, max: 60, limits: { fixed: 0.2, share: 0.03 } },
    // 1.5 % standard uncertainty in the sheet is ±2.6 % as limits.
    { id: 'area', title: 'inner area of the nozzle', kind: 'area', unit: 'mm²', repeat: 1, min: 1e-6, max: 0.1, limits: { share: 0.026 } },
    { id: 'profile', title: 'profile factor', kind: 'ratio', unit: '1', repeat: 1, min: 0.4, max: 1.1, usual: { value: 0.96, plusMinus: 0.07 } },
    { id: 'blockage', title: 'blockage factor', kind: 'ratio', unit: '1', repeat: 1, min: 0.8, max: 3, usual: { value: 1, plusMinus: 0.05 } },
  ],
  result: 'volume-flow',
  unit: 'L/s',
  source: 'Q = k_p k_b A V',
  evaluate: ({ speed, area, profile, blockage }) => profile * blockage * area * speed,
  explain: ({ speed, area, profile, blockage }, flow) => [
    `Flow = profile × blockage × area × speed = ${profile} × ${blockage} × ${formatValue(area, 'mm²')} × ${formatValue(speed, 'm/s')} = ${formatValue(flow, 'L/s')} = ${formatValue(flow, 'L/min')}.`,
  ],
  judge: ({ speed }) => (speed >= 0.5 ? [] : [belowStart(speed)]),
});

/** Vanes start to turn at 0.3 to 0.5 m/s (from memory, sheet 3.1). */
function belowStart(speed: number): Problem {
  return {
    code: 'below-start-speed', level: 'note', where: 'air speed',
    what: `${formatValue(speed, 'm/s')} is near the speed at which a vane starts to turn.`,
    next: 'Make the nozzle narrower, so that the air is faster, or fill a bag instead.',
  };
}
