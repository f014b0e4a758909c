import { fanBranchesOf, type Air, type PathVariant, type UncertainInputs } from '@/lib/airflow';
import { mapped } from '@/lib/elementary';
import { mostLikelyPoints } from './most-likely-points';
import { times } from './scaled-fact';

/**
 * The factor on the area of all mouths of a path at which its jets push hardest together, at the most likely values; below 1 where
 * smaller mouths do. No mouth grows beyond the duct before it. Mouths keep their shares, and two fans with ducts of their own count
 * together. As entered, or at the `centre` that readings leave. Within 1 % of the factor. Throws where an area is not above 0 (see
 * `operatingPoint`).
 *
 * Thrust over the logarithm of the area has one top: mouths are halved from the largest until it falls, then parabolas close in.
 * Worked: 5 CFM and 160 Pa (between line and parabola) on a 12 × 10 mm duct of 40 mm with three mitres, one mouth of 120 mm²: 0.56.
 */
export function bestMouthFactor(variant: PathVariant, air: Air, centre?: UncertainInputs): number {
  if (centre !== undefined) return searched(variant, air, centre);
  const known = FOUND.get(variant);
  if (known !== undefined) return known;
  const factor = searched(variant, air);
  FOUND.set(variant, factor);
  return factor;
}

/** Factors found before of paths as entered; a variant is never changed in place, and its air is that of its path. */
const FOUND = new WeakMap<PathVariant, number>();

function searched(variant: PathVariant, air: Air, centre?: UncertainInputs): number {
  return Math.exp(logOfBest((log) => thrustOf(withMouths(variant, Math.exp(log)), air, centre), Math.log(roomForMouths(variant))));
}

/** How much larger every mouth can get, as a factor on its area, until the first is as large as the duct before it. */
export function roomForMouths(variant: PathVariant): number {
  let room = Number.POSITIVE_INFINITY;
  for (const { network, outletIndices } of fanBranchesOf(variant)) {
    network.outlets.forEach(({ area, branchArea }, k) => {
      // What a grille covers is mouth as well.
      const { open } = variant.outlets[outletIndices[k] ?? -1] ?? {};
      room = Math.min(room, (branchArea * (open?.value ?? 1)) / area);
    });
  }
  return room;
}

/** The path with the area of every mouth times a factor above 0: slots get higher and keep their width, circles stay round. */
export function withMouths(variant: PathVariant, factor: number): PathVariant {
  const outlets = mapped(variant.outlets, (outlet) => {
    const { mouth } = outlet;
    const sides = mouth.shape === 'circle'
      ? { width: times(mouth.width, Math.sqrt(factor)), height: times(mouth.height, Math.sqrt(factor)) }
      : { height: times(mouth.height, factor) };
    return { ...outlet, mouth: { ...mouth, ...sides } };
  });
  return { ...variant, outlets };
}

function thrustOf(variant: PathVariant, air: Air, centre: UncertainInputs | undefined): number {
  return mostLikelyPoints(variant, air, centre).reduce((sum, { point }) => sum + point.jetThrust, 0);
}

/** Halvings of the mouths at most: down to a 256th of the largest. */
const MOST_HALVINGS = 8;
/** Steps of the parabola: from places a factor of two apart three bring the top to within a hundredth. */
const PARABOLAS = 3;

interface Tried {
  readonly at: number;
  readonly value: number;
}

/** Where a function with one top is largest at or below `top`, in units of a logarithm. */
function logOfBest(of: (log: number) => number, top: number): number {
  const tried = (at: number): Tried => ({ at, value: of(at) });
  let above = tried(top);
  let high = above;
  let low = tried(top - Math.LN2);
  for (let k = 1; k < MOST_HALVINGS && low.value > high.value; k += 1) {
    above = high;
    high = low;
    low = tried(high.at - Math.LN2);
  }
  // With the largest still the best, the top lies between it and its half, or at it.
  const places = above === high ? [low, tried(top - Math.LN2 / 2), above] as const : [low, high, above] as const;
  return topOfParabolas(tried, places);
}

/** The top between three places in rising order, the middle one the highest or the last one: the parabola through them, again and again. */
function topOfParabolas(tried: (at: number) => Tried, [first, second, third]: readonly [Tried, Tried, Tried]): number {
  let [low, middle, high] = [first, second, third];
  for (let k = 0; k < PARABOLAS; k += 1) {
    const at = vertexOf(low, middle, high);
    if (k === PARABOLAS - 1 || Math.abs(at - middle.at) < 1e-3) return at;
    const next = tried(at);
    const [left, right] = next.at < middle.at ? [next, middle] : [middle, next];
    if (left.value > right.value) { middle = left; high = right; } else { low = left; middle = right; }
  }
  return middle.at;
}

/** Top of the parabola through three places, kept between the outer ones; the best of them where it has none. */
function vertexOf(low: Tried, middle: Tried, high: Tried): number {
  const [rise, fall] = [(middle.value - low.value) / (middle.at - low.at), (high.value - middle.value) / (high.at - middle.at)];
  const bend = (fall - rise) / (high.at - low.at);
  if (!(bend < 0)) return high.value > middle.value ? high.at : middle.at;
  return Math.min(high.at, Math.max(low.at, (low.at + middle.at) / 2 - rise / (2 * bend)));
}
