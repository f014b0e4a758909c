import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Spacing of regular marks: length over k spacings, λ = ℓ/k. m. Each end is found to ±u of an edge, so k spacings measured together are k
 * times sharper than one. k is the number of gaps, not of marks. Source: motion sheet 2.5 (u = √2·u_edge/k).
 * Worked: 10 gaps over 20.0 mm is 2.00 mm.
 */
export const spacing = defineFormula({
  id: 'spacing',
  title: 'Spacing of regular marks',
  readings: [
    // Two ends, each within ±0.087 mm (standard 0.05): together ±0.12 mm as limits.
    { id: 'length', title: 'length over the gaps', kind: 'length', unit: 'mm', repeat: 1, min: 0.1e-3, max: 2, limits: { fixed: 0.12e-3 } },
    { id: 'gaps', title: 'number of gaps', kind: 'count', unit: '1', repeat: 1, min: 1, max: 1000 },
  ],
  result: 'length',
  unit: 'mm',
  source: 'λ = ℓ / k',
  evaluate: ({ length, gaps }) => length / gaps,
  explain: ({ length, gaps }, each) => [`Spacing = ${formatValue(length, 'mm', 4)} ÷ ${formatNumber(gaps)} = ${formatValue(each, 'mm')}.`],
  judge: ({ gaps }) =>
    gaps >= 3
      ? []
      : [{ code: 'few-gaps', level: 'note', where: 'number of gaps', what: 'With fewer than 3 gaps a miscount changes the answer most.', next: 'Measure over more gaps if the marks go on.' }],
});
