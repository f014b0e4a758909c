import type { ReadingModel } from '../knowledge';
import { latticeLikelihood } from '../motion';

/** Degrees of freedom of the heavy-tailed reading: a slip of the pen is likelier than a Gaussian admits. */
const TAIL = 4;
/** Share of readings that say nothing at all (wrong line, wrong unit, wrong thing measured). Estimate. */
export const STRAY = 0.05;
/** No single reading may count for more than this, in decibans (diagnosis.md 1.2: cap any single measurement). */
const CAP_DECIBANS = 20;

/**
 * Likelihood of one reading under each of several models, up to a common factor, largest 1.
 *
 * The reading's own uncertainty is folded into the spread. Tails are Student t with 4 degrees of freedom, a share of
 * stray readings is allowed for, and the ratio between two models never exceeds 20 dB (100 : 1), so one mistyped
 * reading cannot convict a cause. For a ratio, `value` is the ratio and `standardUncertainty` its standard uncertainty.
 * A model of sizes that come in whole multiples (lost motor cycles, belt teeth) carries the lattice factor of motion sheet 1.3,
 * averaged over the spacings that are possible.
 * Worked number: models N(70, 10) and N(100, 10), t with 4 degrees of freedom: at 30 the pure t ratio is 11.4
 * (diagnosis.md 1.2), not 1.5e7.
 */
export function readingLikelihoods(value: number, standardUncertainty: number, models: readonly ReadingModel[]): number[] {
  const densities = models.map((model) => density(value, standardUncertainty, model));
  const largest = Math.max(...densities);
  if (!(largest > 0)) return models.map(() => 1);
  const floor = 10 ** (-CAP_DECIBANS / 10);
  return densities.map((each) => Math.max((1 - STRAY) * (each / largest) + STRAY * floor, floor));
}

/** Student-t density (4 degrees of freedom) of a standardised deviation; at 0 it is 0.375. */
export function studentDensity(deviation: number): number {
  const constant = 0.375;
  return constant * (1 + (deviation * deviation) / TAIL) ** (-(TAIL + 1) / 2);
}

/** Finest that a step in a wall is known, m: edges of layers bulge (motion sheet 1.3, mean of two faces). */
const FINEST_STEP = 0.03e-3;

/** How much better the reading fits "a whole multiple" than "any size"; 1 for a model of any size. */
function latticeFactor(value: number, standardUncertainty: number, { multiplesOf = [] }: ReadingModel): number {
  if (multiplesOf.length === 0) return 1;
  const standard = Math.max(standardUncertainty, FINEST_STEP);
  return multiplesOf.reduce((sum, spacing) => sum + latticeLikelihood(value, spacing, standard, { withoutZero: true }), 0) / multiplesOf.length;
}

function density(value: number, standardUncertainty: number, model: ReadingModel): number {
  return latticeFactor(value, standardUncertainty, model) * smoothDensity(value, standardUncertainty, model);
}

function smoothDensity(value: number, standardUncertainty: number, model: ReadingModel): number {
  if (model.shape === 'normal') {
    const spread = Math.hypot(model.spread, standardUncertainty);
    return studentDensity((value - model.median) / spread) / spread;
  }
  const smallest = model.median * 1e-3;
  const inside = Math.max(value, smallest);
  const spread = Math.hypot(model.spread, Math.min(standardUncertainty / inside, 3));
  return studentDensity(Math.log(inside / model.median) / spread) / spread;
}
