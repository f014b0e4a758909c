import { formatNumber, formatValue } from '@/lib/units';
import { defineFormula } from '../define-formula';

/** A line with rounded flanks is narrower in the mean than at its widest by this share of its height: 1 − π/4. */
const FLANK = 1 - Math.PI / 4;

/**
 * New flow multiplier from the wall of a hollow box one line thick: M = M_old·(w_t − c·h)/(w_m − c·h), c = 1 − π/4, because a
 * caliper touches the bulges of lines with rounded flanks. m to a ratio. Source: motion sheet 4.4.
 * Worked: aimed 0.45, measured 0.48, layer 0.2 mm is 0.9314.
 */
export const singleWallFlow = defineFormula({
  id: 'single-wall-flow',
  title: 'Flow multiplier from a single wall',
  readings: [
    { id: 'wall', title: 'measured wall', kind: 'length', unit: 'mm', repeat: 8, min: 0.05e-3, max: 5e-3, limits: { fixed: 0.02e-3 }, once: { fixed: 0.035e-3 } },
    { id: 'aimed', title: 'line width set', kind: 'length', unit: 'mm', repeat: 1, min: 0.1e-3, max: 5e-3, limits: { fixed: 0 } },
    { id: 'layer', title: 'layer height', kind: 'length', unit: 'mm', repeat: 1, min: 0.02e-3, max: 2e-3, limits: { fixed: 0 } },
    { id: 'multiplier', title: 'flow multiplier now', kind: 'ratio', unit: '1', repeat: 1, min: 0.2, max: 3, usual: { value: 1, plusMinus: 0 } },
  ],
  result: 'ratio',
  unit: '1',
  source: 'M = M_old (w_t − c h) / (w_m − c h), c = 1 − π/4',
  evaluate: ({ wall, aimed, layer, multiplier }) => (multiplier * (aimed - FLANK * layer)) / (wall - FLANK * layer),
  explain: ({ wall, aimed, layer }, multiplier) => [
    `Mean thickness is ${formatValue(FLANK * layer, 'mm', 2)} less than the caliper touches: ${formatValue(wall - FLANK * layer, 'mm')} measured, ${formatValue(aimed - FLANK * layer, 'mm')} aimed for.`,
    `New multiplier ${formatNumber(multiplier, 4)}.`,
  ],
  judge: ({ wall, aimed, layer }) =>
    wall >= layer && aimed >= layer
      ? []
      : [{ code: 'line-taller-than-wide', level: 'stop', where: 'layer height', what: 'The layer is higher than the line is wide.', allowed: 'a layer height up to the line width', next: 'Check the layer height, the line width and the measured wall.' }],
});
