import { formatPercent, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Filament that moved over filament that was asked for: (before − after)/asked, where before and after are the distances from a
 * fixed edge to a mark. m to a ratio; below 1 too little came. Feed slowly: fast feeding adds back pressure. Source: motion
 * sheet 4.3 (0.5 mm in 100 is 0.5 %). Worked: asked 100, before 120, after 23.5 mm is 0.965.
 */
export const extrudedLength = defineFormula({
  id: 'extruded-length',
  title: 'Filament moved against filament asked for',
  readings: [
    { id: 'asked', title: 'length asked for', kind: 'length', unit: 'mm', repeat: 1, min: 0.01, max: 1, limits: { fixed: 0 } },
    { id: 'before', title: 'distance to the mark before', kind: 'length', unit: 'mm', repeat: 1, min: 0.01, max: 2, limits: { fixed: 0.5e-3 } },
    { id: 'after', title: 'distance to the mark after', kind: 'length', unit: 'mm', repeat: 1, min: 0, max: 2, limits: { fixed: 0.5e-3 } },
  ],
  result: 'ratio',
  unit: '%',
  source: 'r = (L_before − L_after) / L_asked',
  evaluate: ({ asked, before, after }) => (before - after) / asked,
  explain: ({ asked, before, after }, ratio) => [
    `Moved ${formatValue(before - after, 'mm', 4)} of ${formatValue(asked, 'mm', 4)} asked for: ${formatPercent(ratio, 1)}.`,
  ],
});
