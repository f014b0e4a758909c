import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Peak motor current that a driver allows, from its reference voltage: I = V_ref/(k·R_s). k is 8 or 5 by driver class, R_s stands
 * on the small resistors beside the driver. V, Ω to A. The rms value is smaller by √2. Source: motion sheet 11.4.
 * Worked: 0.96 V, k 8, 0.1 Ω is 1.2 A peak, 0.849 A rms.
 */
export const driverCurrent = defineFormula({
  id: 'driver-current',
  title: 'Motor current from the reference voltage',
  readings: [
    { id: 'reference', title: 'reference voltage', kind: 'voltage', unit: 'V', repeat: 3, min: 0.01, max: 5, limits: { fixed: 0.01, share: 0.005 } },
    { id: 'factor', title: 'factor of the driver', kind: 'ratio', unit: '1', repeat: 1, min: 1, max: 20, limits: { fixed: 0 }, usual: { value: 8, plusMinus: 0 } },
    // Sense resistors are usually 1 % parts; driver tolerance 5 % on top; estimate.
    { id: 'sense', title: 'sense resistor', kind: 'resistance', unit: 'Ω', repeat: 1, min: 0.01, max: 1, limits: { share: 0.05 } },
  ],
  result: 'current',
  unit: 'A',
  source: 'I_peak = V_ref / (k R_s)',
  evaluate: ({ reference, factor, sense }) => reference / (factor * sense),
  explain: ({ reference, factor, sense }, current) => [
    `Peak current = ${formatValue(reference, 'V')} ÷ (${formatNumber(factor)} × ${formatValue(sense, 'Ω')}) = ${formatValue(current, 'A')}; that is ${formatValue(current / Math.SQRT2, 'A')} rms.`,
  ],
});
