import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/** Standard gravity, m/s²; exact by convention (NIST SP 811). Local gravity differs by up to 0.3 %. */
const GRAVITY = 9.80665;

/**
 * Air flow from the push of the jet on a flat plate on a scale: F = β ρ Q²/A, so Q = √(F·A/(β·ρ)) with F = m·9.80665 N.
 * The plate turns all air square; what slips past it or leaves at an angle lowers the reading, so a capture share divides it.
 * kg, m² and kg/m³ to m³/s. Source: air sheet 3.3. Worked: 1.00 g on 371.6 mm² at 1.2 kg/m³, β and capture 1, is 3.693 CFM.
 */
export const jetThrustOnScale = defineFormula({
  id: 'jet-thrust-on-scale',
  title: 'Push of the jet on a scale',
  readings: [
    // Drift and draught of a 0.01 g scale; estimate (sheet 3.4 takes 0.05 g for a coarser one).
    { id: 'push', title: 'scale reading', kind: 'mass', unit: 'g', repeat: 3, min: 0.02e-3, max: 0.5, limits: { fixed: 0.03e-3 } },
    { id: 'area', title: 'outlet area', kind: 'area', unit: 'mm²', repeat: 1, min: 1e-6, max: 0.1, limits: { share: 0.05 } },
    { id: 'density', title: 'air density', kind: 'density', unit: 'kg/m³', repeat: 1, min: 0.6, max: 1.5, usual: { value: 1.19, plusMinus: 0.05 } },
    // Momentum factor between a flat profile (1) and a 1/7 power law (1.020), sheet 3.1.
    { id: 'momentum', title: 'momentum factor', kind: 'ratio', unit: '1', repeat: 1, min: 1, max: 1.5, usual: { value: 1.015, plusMinus: 0.02 } },
    // Angle 2 % and spill 3 % as standard uncertainties (sheet 3.4) are ±6 % as limits.
    { id: 'capture', title: 'share of the jet that the plate turns square', kind: 'ratio', unit: '1', repeat: 1, min: 0.5, max: 1.1, usual: { value: 1, plusMinus: 0.06 } },
  ],
  result: 'volume-flow',
  unit: 'L/s',
  source: 'Q = √(F A / (β ρ))',
  evaluate: ({ push, area, density, momentum, capture }) => Math.sqrt((push * GRAVITY * area) / (capture * momentum * density)),
  explain: ({ push, area }, flow) => [
    `Push = ${formatValue(push, 'g')} × 9.807 m/s² = ${formatValue(push * GRAVITY, 'mN')}.`,
    `Flow = √(push × area ÷ (factors × density)) = ${formatValue(flow, 'L/s')} = ${formatValue(flow, 'L/min')}; mean speed ${formatNumber(flow / area)} m/s.`,
  ],
});
