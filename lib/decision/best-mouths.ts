import { fanBranchesOf, type Air, type PathVariant } from '@/lib/airflow';
import { mapped } from '@/lib/elementary';
import { mostLikelyPoints } from './most-likely-points';
import { times } from './scaled-fact';

/**
 * The factor on the area of all mouths of a path at which its jets push hardest together, at the most likely values; below 1 where
 * smaller mouths do. No mouth grows beyond the duct before it. Mouths keep their shares, and two fans with ducts of their own count
 * together. Within 2 % of the factor. Throws where an area is not above 0 (see `operatingPoint`).
 *
 * Thrust over the logarithm of the area has one top: mouths are halved from the largest until it falls, then golden section closes in.
 * Worked: 5 CFM and 160 Pa (between line and parabola) on a 12 × 10 mm duct of 40 mm with three mitres, one mouth of 120 mm²: 0.56.
 */
export function bestMouthFactor(variant: PathVariant, air: Air): number {
  const known = FOUND.get(variant);
  if (known !== undefined) return known;
  const factor = Math.exp(logOfBest((log) => thrustOf(withMouths(variant, Math.exp(log)), air), Math.log(roomForMouths(variant))));
  FOUND.set(variant, factor);
  return factor;
}

/** Factors found before; a variant is never changed in place, and its air is that of its path. */
const FOUND = new WeakMap<PathVariant, number>();

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

function thrustOf(variant: PathVariant, air: Air): number {
  return mostLikelyPoints(variant, air).reduce((sum, { point }) => sum + point.jetThrust, 0);
}

/** Halvings of the mouths at most: down to a 256th of the largest. */
const MOST_HALVINGS = 8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Narrowings of a range of four to one: five leave 8 % of the factor between two places, and the better of two inside is the answer. */
const NARROWINGS = 5;

interface Tried {
  readonly at: number;
  readonly value: number;
}

/** Where a function with one top is largest at or below `top`, in units of a logarithm. */
function logOfBest(of: (log: number) => number, top: number): number {
  const tried = (at: number): Tried => ({ at, value: of(at) });
  let high = tried(top);
  let middle = tried(top - Math.LN2);
  let above = high;
  for (let k = 1; k < MOST_HALVINGS && middle.value > high.value; k += 1) {
    above = high;
    high = middle;
    middle = tried(high.at - Math.LN2);
  }
  return topBetween(tried, middle.at, above);
}

/** Golden section between a place and a place tried; the end itself where nothing below it does better. */
function topBetween(tried: (at: number) => Tried, from: number, end: Tried): number {
  let [low, high] = [from, end.at];
  let left = tried(high - GOLDEN * (high - low));
  let right = tried(low + GOLDEN * (high - low));
  for (let k = 0; k < NARROWINGS; k += 1) {
    if (left.value > right.value) { high = right.at; right = left; left = tried(high - GOLDEN * (high - low)); } else { low = left.at; left = right; right = tried(low + GOLDEN * (high - low)); }
  }
  const best = left.value > right.value ? left : right;
  return end.value >= best.value ? end.at : best.at;
}
