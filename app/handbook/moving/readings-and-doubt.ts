import { coverageFactor95 } from '@/lib/measuring';
import { rounded, settingOf, type MovingFigure } from './moving-figure';

/** Half-width of the 95 % range of a mean of n readings that scatter by `deviation`, in the unit of the deviation. */
export function doubtOfMean(count: number, deviation: number): number {
  return (coverageFactor95(count - 1) * deviation) / Math.sqrt(count);
}

/** Factor when the scatter is known from very many earlier readings. */
const KNOWN = coverageFactor95(1e9);
const COUNTS = Array.from({ length: 14 }, (_, i) => i + 2);

export const readingsAndDoubt: MovingFigure = {
  title: 'What one more reading brings',
  sliders: [
    { label: 'Readings', from: 2, to: 15, step: 1, start: 3, words: (value) => `${value} readings` },
    { label: 'Scatter of one reading (standard deviation)', from: 0.1, to: 1, step: 0.1, start: 0.4, words: (value) => `${value.toFixed(1)} s` },
  ],
  at: (values) => {
    const [count, deviation] = [settingOf(values, 0), settingOf(values, 1)];
    const doubt = doubtOfMean(count, deviation);
    const more = doubtOfMean(count + 1, deviation);
    return {
      x: { words: 'readings', from: 1, to: 15 },
      y: { words: '± of the mean, s', from: 0.05, to: 10, decades: true },
      lines: [
        { name: '± of the mean', as: 'strong', points: COUNTS.map((x) => ({ x, y: doubtOfMean(x, deviation) })) },
        { name: 'if the scatter were known', as: 'ghost', points: COUNTS.map((x) => ({ x, y: (KNOWN * deviation) / Math.sqrt(x) })) },
      ],
      mark: { x: count, y: doubt, words: `± ${rounded(doubt)} s` },
      said: `${count} readings that scatter by ${deviation.toFixed(1)} s give a mean ± ${rounded(doubt)} s. One more would make it ± ${rounded(more)} s.`,
    };
  },
  columns: ['± of the mean', 'one more brings'],
  row: (values) => {
    const [count, deviation] = [settingOf(values, 0), settingOf(values, 1)];
    const doubt = doubtOfMean(count, deviation);
    return [`± ${rounded(doubt)} s`, `${rounded(100 * (1 - doubtOfMean(count + 1, deviation) / doubt))} % less`];
  },
  tabled: [2, 3, 4, 5, 8, 12],
  holds: 'Only what scatters. What the tool itself is off by stays the same, however often you read it.',
};
