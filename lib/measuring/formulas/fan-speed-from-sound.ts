import { formatNumber, formatValue } from '@/lib/units';
import type { Problem } from '@/lib/problems';
import { defineFormula } from '../define-formula';

/**
 * Fan speed from the pitch of its blades: n = f/N. Hz and a counted number of blades to turns per second. A wrong count
 * is the whole error: one blade of 31 is 3.2 %. Source: motion sheet 9. Worked: 2912 Hz with 52 blades is 3360 rpm.
 */
export const fanSpeedFromSound = defineFormula({
  id: 'fan-speed-from-sound',
  title: 'Fan speed from its sound',
  readings: [
    { id: 'pitch', title: 'pitch', kind: 'frequency', unit: 'Hz', repeat: 3, min: 20, max: 20_000, limits: { fixed: 3 } },
    { id: 'blades', title: 'number of blades', kind: 'count', unit: '1', repeat: 1, min: 2, max: 120 },
  ],
  result: 'rotation-speed',
  unit: 'rpm',
  source: 'n = f / N',
  evaluate: ({ pitch, blades }) => pitch / blades,
  explain: ({ pitch, blades }, speed) => [`Speed = ${formatValue(pitch, 'Hz')} ÷ ${formatNumber(blades)} blades = ${formatValue(speed, 'rpm')}.`],
  judge: ({ blades }) => (Number.isInteger(blades) ? [] : [halfBlade(blades)]),
});

function halfBlade(blades: number): Problem {
  return { code: 'not-whole', level: 'stop', where: 'number of blades', what: `${formatNumber(blades)} is not a whole number of blades.`, next: 'Count the blades with the fan unplugged, then type a whole number.' };
}
