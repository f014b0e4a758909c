import { defineFormula } from '../define-formula';

/**
 * Second reading less the first, any kind; of two temperatures it is a temperature difference. Scatter and limits of both
 * count; an error that both share is not taken out. Source: JCGM 100, 5.1.2. Worked: 20.00 ± 0.03 and 20.50 ± 0.03 mm
 * differ by 0.500 ± 0.048 mm.
 */
export const differenceOfTwo = defineFormula({
  id: 'difference-of-two',
  title: 'Difference of two readings',
  readings: [
    { id: 'first', title: 'first reading', kind: 'any', repeat: 3 },
    { id: 'second', title: 'second reading', kind: 'any', repeat: 3 },
  ],
  result: 'difference',
  source: 'd = x₂ − x₁',
  evaluate: ({ first, second }) => second - first,
  explain: () => ['Difference = second − first.'],
});
