import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Air flow from the time in which a bag of known volume fills: Q = V/t, m³ and s to m³/s. Bag 0.5 to 200 L, 1 to 600 s.
 * What leaks past the tape and the pressure that a stiff bag builds are not in the ±.
 * Source: air sheet 3.3 (30 L in 20.0 s is 3.178 CFM). Worked: 6.0 ± 0.3 L in 15.2, 14.8, 15.6 s is 0.395 ± 0.026 L/s.
 */
export const bagFill = defineFormula({
  id: 'bag-fill',
  title: 'Time to fill a bag of known volume',
  readings: [
    // A bag measured by weighing its water holds within some percent; estimate, wide enough for folds.
    { id: 'volume', title: 'bag volume', kind: 'volume', unit: 'L', repeat: 1, min: 0.5e-3, max: 0.2, limits: { share: 0.1 } },
    // A thumb on a stopwatch: about half a second for start and stop together when there is one run only; estimate.
    { id: 'time', title: 'time to fill', kind: 'time', unit: 's', repeat: 3, min: 1, max: 600, once: { fixed: 0.5 } },
  ],
  result: 'volume-flow',
  unit: 'L/s',
  source: 'Q = V / t',
  evaluate: ({ volume, time }) => volume / time,
  explain: ({ volume, time }, flow) => [
    `Flow = volume ÷ time = ${formatValue(volume, 'L')} ÷ ${formatValue(time, 's')} = ${formatValue(flow, 'L/s')} = ${formatValue(flow, 'L/min')}.`,
  ],
});
