import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/** Full-scale voltage over the sense resistor, reference voltage for full scale and inner resistance of the class of driver that
 *  is set in rms; formula from memory, two published pairs agree (motion sheet 11.4). */
const FULL_SCALE = 0.325;
const FULL_REFERENCE = 2.5;
const INNER = 0.02;

/**
 * Rms motor current of drivers that are set in rms by a voltage on a pin: I = (V_ref/2.5)·0.325/(√2·(R_s + 0.02)). V, Ω to A. The peak
 * is larger by √2. Worked: 0.75 V with 0.11 Ω is 0.53 A.
 */
export const driverCurrentRms = defineFormula({
  id: 'driver-current-rms',
  title: 'Motor current of a driver set in rms',
  readings: [
    { id: 'reference', title: 'reference voltage', kind: 'voltage', unit: 'V', repeat: 3, min: 0.01, max: 3, limits: { fixed: 0.01, share: 0.005 } },
    { id: 'sense', title: 'sense resistor', kind: 'resistance', unit: 'Ω', repeat: 1, min: 0.01, max: 1, limits: { share: 0.05 }, usual: { value: 0.11, plusMinus: 0.0055 } },
  ],
  result: 'current',
  unit: 'A',
  source: 'I_rms = V_ref/2.5 · 0.325 / (√2 (R_s + 0.02))',
  evaluate: ({ reference, sense }) => ((reference / FULL_REFERENCE) * FULL_SCALE) / (Math.SQRT2 * (sense + INNER)),
  explain: (_, current) => [`Current ${formatValue(current, 'A')} rms; that is ${formatValue(current * Math.SQRT2, 'A')} peak.`],
});
