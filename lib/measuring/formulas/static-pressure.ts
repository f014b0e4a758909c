import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Static pressure: gauge reading less the reading with the fan off. Pa. With the outlet sealed it is the largest pressure that
 * the fan can build. Source: air sheet 3.2 (gauge limits ±1.25 Pa in 3.2). Worked: 65.7 less 0.7 Pa is 65.0 Pa.
 */
export const staticPressure = defineFormula({
  id: 'static-pressure',
  title: 'Static pressure at a tap',
  readings: [
    { id: 'gauge', title: 'gauge reading', kind: 'pressure', unit: 'Pa', repeat: 3, min: -2000, max: 20_000, limits: { fixed: 1.25, share: 0.01 } },
    { id: 'zero', title: 'gauge reading with the fan off', kind: 'pressure', unit: 'Pa', repeat: 1, min: -500, max: 500, usual: { value: 0, plusMinus: 1 } },
  ],
  result: 'pressure',
  unit: 'Pa',
  source: 'p = p_gauge − p_zero',
  evaluate: ({ gauge, zero }) => gauge - zero,
  explain: ({ gauge, zero }, pressure) => [`Pressure = ${formatValue(gauge, 'Pa')} − ${formatValue(zero, 'Pa')} = ${formatValue(pressure, 'Pa')} = ${formatValue(pressure, 'mmH2O')}.`],
});
