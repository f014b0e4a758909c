import type { ReadingModel } from '../knowledge';
import { latticeLikelihood } from '../motion';

/** Degrees of freedom of the heavy-tailed reading: a slip of the pen is likelier than a Gaussian admits. */
const TAIL = 4;
/** Share of readings that say nothing at all (wrong line, wrong unit, wrong thing measured). Estimate. */
export const STRAY = 0.05;
/** They may lie anywhere: evenly over so many times the range from the lowest to the highest model, three spreads beyond each. Estimate. */
const STRAY_WIDTH = 3;
/** No single reading may count for more than this, in decibans (diagnosis.md 1.2: cap any single measurement). */
const CAP_DECIBANS = 20;

/**
 * Likelihood of one reading under each of several models, the healthy one first, up to a common factor, largest 1.
 *
 * The reading's own uncertainty is folded into the spread. Tails are Student t with 4 degrees of freedom. A share of stray
 * readings lies anywhere under every model, so a reading far from all of them (a slipped decimal point) says next to nothing;
 * and the ratio between two models never exceeds 20 dB (100 : 1). A reading on the other side of healthy than a cause's own
 * cannot speak for that cause, however wide its model is: there it counts at most as a reading at the healthy median would. (A
 * cause whose median lies within one healthy spread of the healthy one is taken to err on both sides.)
 * For a ratio, `value` is the ratio and `standardUncertainty` its standard uncertainty.
 * A model of sizes that come in whole multiples (lost motor cycles, belt teeth) carries the lattice factor of motion sheet 1.3,
 * averaged over the spacings that are possible.
 * Worked numbers: models N(70, 10) and N(100, 10), t with 4 degrees of freedom: at 30 the pure t ratio is 11.4
 * (diagnosis.md 1.2), not 1.5e7. Healthy N(24, 0.4) and N(21, 1.5): 22.6 to 1 for the low one at 22, 1 to 9.2 at 25.4, 1 to 1 at 240 or at 2.4.
 */
export function readingLikelihoods(value: number, standardUncertainty: number, models: readonly ReadingModel[]): number[] {
  const [healthy] = models;
  if (healthy === undefined) return [];
  const stray = STRAY / (STRAY_WIDTH * rangeOf(models));
  const densities = models.map((model) => (1 - STRAY) * latticeFactor(value, standardUncertainty, model) * densityBeside(healthy, model, value, standardUncertainty) + stray);
  const largest = Math.max(...densities);
  const floor = 10 ** (-CAP_DECIBANS / 10);
  return densities.map((each) => Math.max(each / largest, floor));
}

/** From three spreads under the lowest median to three over the highest, on the scale of the models (logarithms for log-normal ones). */
function rangeOf(models: readonly ReadingModel[]): number {
  const ends = models.flatMap((model) => [middleOf(model) - 3 * model.spread, middleOf(model) + 3 * model.spread]);
  return Math.max(...ends) - Math.min(...ends);
}

const middleOf = ({ shape, median }: ReadingModel): number => (shape === 'normal' ? median : Math.log(median));

/** Density under a model; on the far side of healthy at most the healthy density times what the two are to one another at the healthy median. */
function densityBeside(healthy: ReadingModel, model: ReadingModel, value: number, standardUncertainty: number): number {
  const own = smoothDensity(value, standardUncertainty, model);
  const isOnBothSides = Math.abs(middleOf(model) - middleOf(healthy)) <= healthy.spread;
  if (isOnBothSides || (value - healthy.median) * (model.median - healthy.median) >= 0) return own;
  const atMedian = smoothDensity(healthy.median, standardUncertainty, model) / smoothDensity(healthy.median, standardUncertainty, healthy);
  return Math.min(own, atMedian * smoothDensity(value, standardUncertainty, healthy));
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
