import { formatNumber } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Number of things counted, such as strings between two posts. One count is taken as exact unless a ± is typed; several counts
 * are averaged with their scatter. Source: JCGM 100, 4.2. Worked: 12, 14, 13 is 13.0 ± 2.5.
 */
export const countOf = defineFormula({
  id: 'count-of',
  title: 'Number counted',
  readings: [{ id: 'count', title: 'count', kind: 'count', unit: '1', repeat: 1, min: 0, max: 1e6 }],
  result: 'count',
  unit: '1',
  source: 'n̄',
  evaluate: ({ count }) => count,
  explain: (_, count) => [`Counted ${formatNumber(count)}.`],
});
