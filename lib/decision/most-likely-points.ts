import { curveAlone, fanBranchesOf, fanCurveOf, operatingPoint, type Air, type FanBranch, type OperatingPoint, type PathVariant } from '@/lib/airflow';

/** A fan with what it feeds, and where the two meet at the most likely values. */
export interface MostLikelyPoint extends FanBranch {
  readonly point: OperatingPoint;
}

/**
 * The operating points of a path at the most likely value of everything in it: one, or two where each of two fans has a duct of
 * its own, the first fan's first. SI; throws where an area is not above 0 (see `operatingPoint`, which also has the worked number).
 */
export function mostLikelyPoints(variant: PathVariant, air: Air): MostLikelyPoint[] {
  const { second } = variant.fan;
  const first = fanCurveOf(variant.fan, air);
  return fanBranchesOf(variant).map((branch) => ({ ...branch, point: operatingPoint(branch.fan === 'second' && second !== undefined ? curveAlone(second, air) : first, branch.network, air) }));
}
