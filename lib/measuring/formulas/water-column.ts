import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

const GRAVITY = 9.80665;

/**
 * Pressure from a bent tube with water, laid at a slope: p = ρ·g·ℓ·sin α, where ℓ is the distance between the two water levels
 * along the tube. m, rad to Pa. Upright tube: α = 90°. Source: hydrostatics; 1 mm of upright water is 9.80665 Pa at
 * 1000 kg/m³ (air sheet 1). Worked: 10 mm, 90°, 1000 kg/m³ is 98.07 Pa.
 */
export const waterColumn = defineFormula({
  id: 'water-column',
  title: 'Pressure from a water tube',
  readings: [
    { id: 'distance', title: 'distance between the water levels along the tube', kind: 'length', unit: 'mm', repeat: 3, min: 0, max: 2, limits: { fixed: 0.5e-3 } },
    { id: 'slope', title: 'slope of the tube', kind: 'angle', unit: '°', repeat: 1, min: 0.02, max: Math.PI / 2, limits: { fixed: 0.009 }, usual: { value: Math.PI / 2, plusMinus: 0.05 } },
    // Tap water between 10 and 30 °C: 999.7 to 995.7 kg/m³, from memory.
    { id: 'density', title: 'density of the water', kind: 'density', unit: 'kg/m³', repeat: 1, min: 700, max: 1300, usual: { value: 998, plusMinus: 2.5 } },
  ],
  result: 'pressure',
  unit: 'Pa',
  source: 'p = ρ g ℓ sin α',
  evaluate: ({ distance, slope, density }) => density * GRAVITY * distance * Math.sin(slope),
  explain: ({ distance, slope }, pressure) => [
    `Height = ${formatValue(distance, 'mm')} × sin ${formatValue(slope, '°')} = ${formatValue(distance * Math.sin(slope), 'mm')}; pressure ${formatValue(pressure, 'Pa')}.`,
  ],
});
