import { formatNumber, formatPercent, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Diameter that counts for the volume of filament that may be oval: d = √(d₁·d₂), measured across and at right angles to it. m.
 * Source: motion sheet 4.2. Worked: 1.71 and 1.79 mm is 1.7495 mm.
 */
export const filamentDiameter = defineFormula({
  id: 'filament-diameter',
  title: 'Filament diameter, also when oval',
  readings: [
    { id: 'across', title: 'diameter', kind: 'length', unit: 'mm', repeat: 5, min: 0.5e-3, max: 5e-3, limits: { fixed: 0.02e-3 } },
    { id: 'turned', title: 'diameter turned by 90°', kind: 'length', unit: 'mm', repeat: 5, min: 0.5e-3, max: 5e-3, limits: { fixed: 0.02e-3 } },
  ],
  result: 'length',
  unit: 'mm',
  source: 'd = √(d₁ d₂)',
  evaluate: ({ across, turned }) => Math.sqrt(across * turned),
  explain: ({ across, turned }, diameter) => [
    `Diameter = √(${formatValue(across, 'mm', 4)} × ${formatValue(turned, 'mm', 4)}) = ${formatValue(diameter, 'mm', 4)}; out of round by ${formatPercent(Math.abs(across - turned) / diameter, 1)}.`,
    `Against 1.75 mm the flow is ${formatNumber((diameter / 1.75e-3) ** 2, 4)} times.`,
  ],
});
