import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Belt tension from the pitch of a plucked span: T = 4·μ·L²·f². Span between two tangent points, at least 40 mm (20 teeth of
 * 2 mm); stiffness makes short spans read high, and the second harmonic four times too high. m, Hz, kg/m to N.
 * Source: motion sheet 10 (a 6 mm belt of 2 mm pitch: 7.569 g/m in one source, 8.4 g/m from memory; the usual value spans both).
 * Worked: 110 Hz on 150 mm at 7.569 g/m is 8.24 N.
 */
export const beltTensionFromPitch = defineFormula({
  id: 'belt-tension-from-pitch',
  title: 'Belt tension from its pitch',
  readings: [
    { id: 'pitch', title: 'pitch of the plucked belt', kind: 'frequency', unit: 'Hz', repeat: 3, min: 10, max: 1000, limits: { fixed: 2 } },
    { id: 'span', title: 'free length of the belt', kind: 'length', unit: 'mm', repeat: 1, min: 0.04, max: 2, limits: { fixed: 2e-3 } },
    { id: 'mass', title: 'mass per length of the belt', kind: 'linear-density', unit: 'g/m', repeat: 1, min: 1e-3, max: 0.1, limits: { share: 0.01 }, usual: { value: 7.98e-3, plusMinus: 0.42e-3 } },
  ],
  result: 'force',
  unit: 'N',
  source: 'T = 4 μ L² f²',
  evaluate: ({ pitch, span, mass }) => 4 * mass * span ** 2 * pitch ** 2,
  explain: ({ pitch, span, mass }, tension) => [
    `Tension = 4 × ${formatValue(mass, 'g/m')} × (${formatValue(span, 'mm')})² × (${formatValue(pitch, 'Hz')})² = ${formatValue(tension, 'N')}.`,
  ],
});
