import { curveAtSpeed, fanBranchesOf, operatingPoint, type Air, type AirPathResult, type DuctNetwork, type FanCurve, type PathVariant } from '@/lib/airflow';
import { withMouths } from './best-mouths';

/** Step of a change, as a share: small enough for a slope, large enough to stand clear of rounding. */
const STEP = 0.01;

/**
 * Percent of air speed at the slowest outlet for one percent more of each thing, by trying it on the full network.
 * Worked: one percent more fan speed gives very nearly one percent more air speed.
 */
export function sensitivityOf(variant: PathVariant, curve: FanCurve, air: Air): AirPathResult['sensitivity'] {
  const network = fanBranchesOf(variant)[0]?.network;
  if (network === undefined) return [];
  const speed = (fan: FanCurve, duct: DuctNetwork): number => Math.min(...operatingPoint(fan, duct, air).outlets.map((outlet) => outlet.jetSpeed));
  const now = speed(curve, network);
  const slope = (fan: FanCurve, duct: DuctNetwork): number => (speed(fan, duct) / now - 1) / STEP;
  return [
    { change: 'fan speed', speedPerPercent: slope(curveAtSpeed(curve, 1 + STEP), network) },
    { change: 'free flow of the fan at the same pressure', speedPerPercent: slope({ ...curve, freeFlow: scaled(curve.freeFlow) }, network) },
    { change: 'pressure of the fan at the same free flow', speedPerPercent: slope({ ...curve, maxPressure: scaled(curve.maxPressure) }, network) },
    { change: 'area of the outlets', speedPerPercent: slope(curve, fanBranchesOf(withMouths(variant, 1 + STEP))[0]?.network ?? network) },
    { change: 'area of the leaks', speedPerPercent: variant.leaks.length === 0 ? 0 : slope(curve, withWiderGaps(network)) },
  ];
}

function withWiderGaps(network: DuctNetwork): DuctNetwork {
  return {
    ...network,
    leaks: network.leaks.map((leak) => ({ ...leak, area: scaled(leak.area) })),
    outlets: network.outlets.map((outlet) => ({ ...outlet, leakArea: scaled(outlet.leakArea ?? 0) })),
  };
}

function scaled<T extends number>(value: T): T {
  return (value * (1 + STEP)) as T;
}
