import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Scale of a machine from two sizes of one print: s = (m₂ − m₁)/(L₂ − L₁). Line width and squashed edges add the same to both sizes
 * and drop out; a single cube cannot tell them from shrinkage. m to a ratio. Source: motion sheet 5.4.
 * Worked: 20.12 and 99.92 mm for 20 and 100 mm is 0.9975.
 */
export const scaleFactor = defineFormula({
  id: 'scale-factor',
  title: 'Scale from two sizes',
  readings: [
    { id: 'small', title: 'small size measured', kind: 'length', unit: 'mm', repeat: 3, min: 1e-3, max: 1, limits: { fixed: 0.03e-3 } },
    { id: 'large', title: 'large size measured', kind: 'length', unit: 'mm', repeat: 3, min: 1e-3, max: 2, limits: { fixed: 0.03e-3 } },
    { id: 'drawnSmall', title: 'small size drawn', kind: 'length', unit: 'mm', repeat: 1, min: 1e-3, max: 1, limits: { fixed: 0 } },
    { id: 'drawnLarge', title: 'large size drawn', kind: 'length', unit: 'mm', repeat: 1, min: 1e-3, max: 2, limits: { fixed: 0 } },
  ],
  result: 'ratio',
  unit: '1',
  source: 's = (m₂ − m₁) / (L₂ − L₁)',
  evaluate: ({ small, large, drawnSmall, drawnLarge }) => (large - small) / (drawnLarge - drawnSmall),
  explain: ({ small, drawnSmall }, scale) => [
    `Scale ${formatNumber(scale, 5)}; both sizes are off by a further ${formatValue(small - scale * drawnSmall, 'mm', 2)} that does not grow with size.`,
  ],
  judge: ({ drawnSmall, drawnLarge }) =>
    drawnLarge > drawnSmall
      ? []
      : [{ code: 'sizes-in-wrong-order', level: 'stop', where: 'large size drawn', what: 'The large size is not larger than the small one.', next: 'Swap the two sizes.' }],
});
