import { formatPercent, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Supply voltage from repeated readings, and what it does to a heater: power goes with V². V. Meter limits ±(0.5 % + 0.02 V) from
 * memory. Source: motion sheet 11.1 (23 instead of 24 V is −8.2 %). Measure on the low-voltage side only.
 * Worked: 23.0, 23.0 V against 24 V is 23.0 V.
 */
export const supplyVoltage = defineFormula({
  id: 'supply-voltage',
  title: 'Voltage of the supply',
  readings: [
    { id: 'voltage', title: 'voltage', kind: 'voltage', unit: 'V', repeat: 3, min: 0, max: 60, limits: { fixed: 0.02, share: 0.005 } },
    { id: 'rated', title: 'rated voltage', kind: 'voltage', unit: 'V', repeat: 1, min: 3, max: 60, usual: { value: 24, plusMinus: 0 } },
  ],
  result: 'voltage',
  unit: 'V',
  source: 'V̄; P/P₀ = (V/V₀)²',
  evaluate: ({ voltage }) => voltage,
  explain: ({ voltage, rated }) => [`Against ${formatValue(rated, 'V')} a heater gives ${formatPercent((voltage / rated) ** 2, 1)} of its power.`],
});
