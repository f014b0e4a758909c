import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/**
 * Time per layer from the time of several layers: T = t/k. s. Source: definition; thumb on a watch ±1 s (estimate).
 * Worked: 10 layers in 152 s is 15.2 s.
 */
export const layerTime = defineFormula({
  id: 'layer-time',
  title: 'Time per layer',
  readings: [
    { id: 'time', title: 'time for the layers', kind: 'time', unit: 's', repeat: 1, min: 0.5, max: 1e6, limits: { fixed: 1 } },
    { id: 'layers', title: 'number of layers', kind: 'count', unit: '1', repeat: 1, min: 1, max: 1e5, usual: { value: 1, plusMinus: 0 } },
  ],
  result: 'time',
  unit: 's',
  source: 'T = t / k',
  evaluate: ({ time, layers }) => time / layers,
  explain: ({ time, layers }, each) => [`Layer time = ${formatValue(time, 's')} ÷ ${formatNumber(layers)} = ${formatValue(each, 's')}.`],
});
