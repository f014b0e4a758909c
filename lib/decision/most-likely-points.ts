import { likelyBranches, operatingPoint, type Air, type LikelyBranch, type LossShare, type OperatingPoint, type PathVariant, type UncertainInputs } from '@/lib/airflow';

/** A fan with what it feeds, and where the two meet at the most likely values. */
export interface MostLikelyPoint extends LikelyBranch {
  readonly point: OperatingPoint;
}

/**
 * The operating points of a path at the most likely value of everything in it: one, or two where each of two fans has a duct of
 * its own, the first fan's first. As entered, or at the `centre` that readings leave (see `centreOfSamples`). SI; throws where an area
 * is not above 0 (see `operatingPoint`, which also has the worked number).
 */
export function mostLikelyPoints(variant: PathVariant, air: Air, centre?: UncertainInputs): MostLikelyPoint[] {
  return likelyBranches(variant, air, centre).map((branch) => ({ ...branch, point: operatingPoint(branch.curve, branch.network, air) }));
}

/** Where the power of the air goes on the whole path, shares of 1, biggest first. Of two ducts every place says which it belongs to. */
export function lossSharesOf(points: readonly MostLikelyPoint[]): LossShare[] {
  const lost = points.reduce((sum, { point }) => sum + point.lostPower, 0);
  const shares = points.flatMap(({ fan, point }) => point.lossShares.map(({ label, group, share }): LossShare => ({
    label: points.length > 1 ? `${label.replace(/, duct$/u, '')}, duct of fan ${fan === 'first' ? 1 : 2}` : label,
    group, share: share * (point.lostPower / lost),
  })));
  return shares.sort((a, b) => b.share - a.share);
}
