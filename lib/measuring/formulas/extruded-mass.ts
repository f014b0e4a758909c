import { formatPercent, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Filament that came out, weighed, over filament asked for: m/(ρ·A·L) with A = π·d²/4. kg, m, kg/m³ to a ratio. Source: motion
 * sheet 4.4 (polylactide 1.24 g/cm³: 2.983 g per metre of 1.75 mm). Needs at least 1 m on a 0.01 g scale: shorter is a note.
 * Worked: 2.983 g of 1 m, 1.75 mm, 1.24 g/cm³ is 1.000.
 */
export const extrudedMass = defineFormula({
  id: 'extruded-mass',
  title: 'Plastic weighed against filament asked for',
  readings: [
    { id: 'mass', title: 'mass that came out', kind: 'mass', unit: 'g', repeat: 3, min: 0.01e-3, max: 1, limits: { fixed: 0.02e-3 } },
    { id: 'asked', title: 'length asked for', kind: 'length', unit: 'mm', repeat: 1, min: 0.05, max: 20, limits: { fixed: 0 } },
    { id: 'diameter', title: 'filament diameter', kind: 'length', unit: 'mm', repeat: 3, min: 0.5e-3, max: 5e-3, limits: { fixed: 0.02e-3 }, usual: { value: 1.75e-3, plusMinus: 0.05e-3 } },
    { id: 'density', title: 'density of the plastic', kind: 'density', unit: 'g/cm³', repeat: 1, min: 500, max: 5000, limits: { share: 0.02 }, usual: { value: 1240, plusMinus: 25 } },
  ],
  result: 'ratio',
  unit: '%',
  source: 'r = m / (ρ π d²/4 L)',
  evaluate: ({ mass, asked, diameter, density }) => mass / (density * (Math.PI / 4) * diameter ** 2 * asked),
  explain: ({ mass, asked, diameter, density }, ratio) => [
    `Asked for ${formatValue(density * (Math.PI / 4) * diameter ** 2 * asked, 'g')}, weighed ${formatValue(mass, 'g')}: ${formatPercent(ratio, 1)}.`,
  ],
  judge: ({ asked }) =>
    asked >= 1
      ? []
      : [{ code: 'short-sample', level: 'note', where: 'length asked for', what: `${formatValue(asked, 'mm')} of filament weighs too little for a kitchen scale.`, next: 'Feed at least 1000 mm if the filament allows it.' }],
});
