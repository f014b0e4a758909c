import { FLANK } from './line-volume';

/** What a wrong gap does to the first layer. */
export interface FirstLayer {
  /** Plastic over room: above 1 squashed, below 1 starved. */
  readonly fill: number;
  /** Width of the line, m. */
  readonly width: number;
}

/**
 * First layer of height h and width w (m) printed at a gap that is wrong by `error` (m, below 0 too close): the volume stays, so
 * fill is h/(h + δ). Width with square flanks w·fill, rounded A/g + (1 − π/4)·g. The gap must stay above 0; throws otherwise.
 * Source: motion sheet 5.1. h 0.2, w 0.45, −0.05 mm: fill 1.333, width 0.60 mm square; 0.575 mm rounded.
 */
export function firstLayer(height: number, width: number, error: number, flanks: 'rounded' | 'square' = 'square'): FirstLayer {
  const gap = height + error;
  if (!(height > 0) || !(width >= height) || !(gap > 0)) throw new Error(`firstLayer: got height ${height}, width ${width}, error ${error}, expected width ≥ height > 0 and a gap above 0`);
  const fill = height / gap;
  if (flanks === 'square') return { fill, width: width * fill };
  const area = width * height - FLANK * height ** 2;
  return { fill, width: area / gap + FLANK * gap };
}
