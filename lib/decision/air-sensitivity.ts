import { curveAtSpeed, likelyBranches, operatingPoint, type Air, type AirPathResult, type DuctNetwork, type FanCurve, type PathVariant, type UncertainInputs } from '@/lib/airflow';
import { withMouths } from './best-mouths';

/** Step of a change, as a share: small enough for a slope, large enough to stand clear of rounding. */
const STEP = 0.01;

/** A fan with the duct that it feeds, and the same duct with wider mouths. */
interface Way {
  readonly curve: FanCurve;
  readonly network: DuctNetwork;
  readonly wider: DuctNetwork;
}

const CHANGES: readonly { readonly change: string; readonly of: (way: Way) => Pick<Way, 'curve' | 'network'> }[] = [
  { change: 'fan speed', of: ({ curve, network }) => ({ curve: curveAtSpeed(curve, 1 + STEP), network }) },
  { change: 'free flow of the fan at the same pressure', of: ({ curve, network }) => ({ curve: { ...curve, freeFlow: scaled(curve.freeFlow) }, network }) },
  { change: 'pressure of the fan at the same free flow', of: ({ curve, network }) => ({ curve: { ...curve, maxPressure: scaled(curve.maxPressure) }, network }) },
  { change: 'area of the outlets', of: ({ curve, wider }) => ({ curve, network: wider }) },
  { change: 'area of the leaks', of: ({ curve, network }) => ({ curve, network: withWiderGaps(network) }) },
];

/**
 * Percent of air speed at the slowest outlet of the whole path for one percent more of each thing, by trying it on the full network.
 * Where two fans have ducts of their own each is tried by itself; ducts whose slowest outlets are within the step of each other are
 * tried together, as more air from one alone would only leave the other the slowest.
 * As entered, or at the `centre` that readings leave. Worked: one percent more fan speed gives very nearly one percent more air speed.
 */
export function sensitivityOf(variant: PathVariant, air: Air, centre?: UncertainInputs): AirPathResult['sensitivity'] {
  const wider = likelyBranches(withMouths(variant, 1 + STEP), air, centre);
  const ways = likelyBranches(variant, air, centre).map(({ curve, network }, k): Way => ({ curve, network, wider: wider[k]?.network ?? network }));
  const speeds = ways.map((way) => slowest(way, air));
  const now = Math.min(...speeds);
  return triedTogether(speeds).flatMap(({ words, has }) => CHANGES.map(({ change, of }) => ({
    change: `${change}${words}`,
    speedPerPercent: (Math.min(...ways.map((way, k) => (has(k) ? slowest(of(way), air) : (speeds[k] ?? now)))) / now - 1) / STEP,
  })));
}

/** Which ducts are changed at once, and how their rows are told apart. */
function triedTogether(speeds: readonly number[]): readonly { readonly words: string; readonly has: (way: number) => boolean }[] {
  if (speeds.length < 2) return [{ words: '', has: () => true }];
  if (Math.max(...speeds) <= Math.min(...speeds) * (1 + STEP)) return [{ words: ', both fans', has: () => true }];
  // The slower one first: at the other nothing changes the slowest outlet.
  return [...speeds.keys()].sort((a, b) => (speeds[a] ?? 0) - (speeds[b] ?? 0)).map((own) => ({ words: `, fan ${own + 1}`, has: (way) => way === own }));
}

function slowest({ curve, network }: Pick<Way, 'curve' | 'network'>, air: Air): number {
  return Math.min(...operatingPoint(curve, network, air).outlets.map((outlet) => outlet.jetSpeed));
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
