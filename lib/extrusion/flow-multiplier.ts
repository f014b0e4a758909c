import { FLANK } from './line-volume';

/**
 * New flow multiplier from a wall of one line, m. The caliper touches the bulges of rounded flanks, so a share of the layer height
 * comes off both the aimed and the measured width: M·(w_t − c·h)/(w_m − c·h), c = 1 − π/4. With `flanks: 'square'` the plain
 * ratio w_t/w_m. Widths at least the layer height; throws otherwise. Source: motion sheet 4.4.
 * Aimed 0.45, measured 0.48, layer 0.2 mm: 0.9314 rounded, 0.9375 square.
 */
export function newFlowMultiplier(multiplier: number, aimed: number, measured: number, layerHeight: number, flanks: 'rounded' | 'square' = 'rounded'): number {
  if (!(multiplier > 0) || !(layerHeight > 0) || !(aimed >= layerHeight) || !(measured >= layerHeight)) {
    throw new Error(`newFlowMultiplier: got multiplier ${multiplier}, aimed ${aimed}, measured ${measured}, layer ${layerHeight}, expected positive numbers and widths from the layer height up`);
  }
  const flank = flanks === 'rounded' ? FLANK * layerHeight : 0;
  return (multiplier * (aimed - flank)) / (measured - flank);
}

/** Mean thickness, m, of a wall of one rounded line whose bulges measure `width`: w − (1 − π/4)·h. 0.45, 0.2 mm: 0.4071 mm. */
export function meanWall(width: number, layerHeight: number): number {
  return width - FLANK * layerHeight;
}
