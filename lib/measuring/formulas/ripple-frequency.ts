import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Frequency of ripples beside a corner: f = k·v/ℓ, k ripples over the length ℓ at the steady speed v. Count from ripple to ripple,
 * not from the corner, and beyond the stretch on which the nozzle still gains speed. m/s, m to Hz.
 * Source: motion sheet 3 (u_v 2 %). Worked: 100 mm/s, 5 ripples over 10 mm is 50 Hz.
 */
export const rippleFrequency = defineFormula({
  id: 'ripple-frequency',
  title: 'Frequency of the ripples after a corner',
  readings: [
    { id: 'speed', title: 'wall speed', kind: 'speed', unit: 'mm/s', repeat: 1, min: 1e-3, max: 2, limits: { share: 0.035 } },
    { id: 'length', title: 'length of the ripples', kind: 'length', unit: 'mm', repeat: 3, min: 0.1e-3, max: 0.5, limits: { fixed: 0.12e-3 } },
    { id: 'ripples', title: 'number of ripples', kind: 'count', unit: '1', repeat: 1, min: 1, max: 200 },
  ],
  result: 'frequency',
  unit: 'Hz',
  source: 'f = k v / ℓ',
  evaluate: ({ speed, length, ripples }) => (ripples * speed) / length,
  explain: ({ speed, length, ripples }, frequency) => [
    `Spacing = ${formatValue(length, 'mm')} ÷ ${formatNumber(ripples)} = ${formatValue(length / ripples, 'mm')}; frequency = ${formatValue(speed, 'mm/s')} ÷ spacing = ${formatValue(frequency, 'Hz')}.`,
  ],
  judge: (_, frequency) =>
    // Usual, no source: motion sheet 3.
    frequency >= 10 && frequency <= 150
      ? []
      : [{ code: 'unlikely-ripple', level: 'note', where: 'ripples', what: `${formatValue(frequency, 'Hz')} is outside what frames usually do (10 to 150 Hz).`, next: 'Check whether the wall was long enough to reach the speed, or whether the marks are those of a belt or a motor.' }],
});
