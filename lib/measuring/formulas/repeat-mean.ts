import { defineFormula } from '../define-formula';

/**
 * Mean of repeated readings of any kind. Scatter counts with Student's t; a typed ± counts as limits that all readings
 * share. Source: JCGM 100, 4.2. Worked: 19.98, 20.02, 20.00, 20.03, 19.99 mm, limits ±0.03 mm, is 20.004 ± 0.039 mm.
 */
export const repeatMean = defineFormula({
  id: 'repeat-mean',
  title: 'Mean of repeated readings',
  readings: [{ id: 'reading', title: 'reading', kind: 'any', repeat: 5 }],
  result: 'same',
  source: 'x̄ = Σx / n',
  evaluate: ({ reading }) => reading,
  explain: () => [],
});
