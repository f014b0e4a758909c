import { formatNumber } from '@/lib/units';
import type { Problem } from '@/lib/problems';
import { defineFormula } from '../define-formula';

/**
 * Reading over reference, both of one kind. Meaningless for temperatures, whose zero is arbitrary in °C: the ratio is that of
 * kelvins. A reference of 0 is a problem. Source: JCGM 100, 5.1.6. Worked: 45 ± 2 over 60 ± 2 is 0.750 ± 0.047.
 */
export const ratioOfTwo = defineFormula({
  id: 'ratio-of-two',
  title: 'Ratio of two readings',
  readings: [
    { id: 'reading', title: 'reading', kind: 'any', repeat: 3 },
    { id: 'reference', title: 'reference', kind: 'any', repeat: 3 },
  ],
  result: 'ratio',
  source: 'r = x / x_ref',
  evaluate: ({ reading, reference }) => reading / reference,
  explain: ({ reading, reference }, ratio) => [`Ratio = ${formatNumber(reading, 4)} ÷ ${formatNumber(reference, 4)} = ${formatNumber(ratio)}.`],
  judge: ({ reference }) => (reference === 0 ? [zeroReference()] : []),
});

function zeroReference(): Problem {
  return { code: 'zero-reference', level: 'stop', where: 'reference', what: 'The reference is 0; nothing can be compared with it.', next: 'Measure a reference that is not zero.' };
}
