import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Height by which an edge has curled up: reading at the edge less reading at a flat place of the same height. m. Source: definition;
 * caliper ±0.03 mm, layer edge ±0.05 mm (motion sheet 1.3). Worked: 12.42, 12.38, 12.40 less 12.00 mm is 0.40 mm.
 */
export const curlHeight = defineFormula({
  id: 'curl-height',
  title: 'Height of a curled edge',
  readings: [
    { id: 'edge', title: 'height at the edge', kind: 'length', unit: 'mm', repeat: 3, min: 0, max: 1, limits: { fixed: 0.05e-3 } },
    { id: 'flat', title: 'height at a flat place', kind: 'length', unit: 'mm', repeat: 3, min: 0, max: 1, limits: { fixed: 0.03e-3 }, usual: { value: 0, plusMinus: 0 } },
  ],
  result: 'length',
  unit: 'mm',
  source: 'c = z_edge − z_flat',
  evaluate: ({ edge, flat }) => edge - flat,
  explain: ({ edge, flat }, curl) => [`Curl = ${formatValue(edge, 'mm', 4)} − ${formatValue(flat, 'mm', 4)} = ${formatValue(curl, 'mm')}.`],
});
