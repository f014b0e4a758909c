import { formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Size of a layer shift from the steps measured on two opposite faces, signs in one common direction: d = (a + b)/2. A change of
 * wall thickness moves the faces in opposite senses and drops out. m. Source: motion sheet 1.3 (caliper ±0.03 mm, edge bulge
 * ±0.05 mm on each edge, resolution 0.01 mm: standard uncertainty 0.0445 mm on one face).
 * Worked: 1.62 and 1.54 mm is 1.580 mm, standard uncertainty 0.032 mm.
 */
export const shiftSize = defineFormula({
  id: 'shift-size',
  title: 'Size of a layer shift on two opposite faces',
  readings: [
    { id: 'face', title: 'step on one face', kind: 'length', unit: 'mm', repeat: 1, min: -0.3, max: 0.3, limits: { fixed: 0.03e-3 } },
    { id: 'opposite', title: 'step on the opposite face', kind: 'length', unit: 'mm', repeat: 1, min: -0.3, max: 0.3, limits: { fixed: 0.03e-3 } },
    // Four edges with ±0.05 mm each, halved by the mean of two faces: together as one edge.
    { id: 'bulge', title: 'bulge of the layer edges', kind: 'length', unit: 'mm', repeat: 1, min: -1e-3, max: 1e-3, usual: { value: 0, plusMinus: 0.05e-3 } },
  ],
  result: 'length',
  unit: 'mm',
  source: 'd = (a + b) / 2',
  evaluate: ({ face, opposite, bulge }) => (face + opposite) / 2 + bulge,
  explain: ({ face, opposite }, size) => [`Shift = (${formatValue(face, 'mm')} + ${formatValue(opposite, 'mm')}) ÷ 2 = ${formatValue(size, 'mm')}.`],
});
