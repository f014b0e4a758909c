import { exponential, naturalLog } from '@/lib/elementary';
import { perSample } from './per-sample';
import { normalShare } from './seeded-random';

/**
 * Chances, 0 to 1, that the path has a fault which nobody entered. They come from the diagnosis; in the samples a share as large
 * as each chance has the fault, more or less badly.
 */
export interface PathFaults {
  /** The inlet of the fan is covered in part. */
  readonly inlet: number;
  /** Air escapes between fan and duct. */
  readonly leak: number;
  /** At least one jet passes beside the spot that it should strike. */
  readonly misaimed: number;
}

/** Gap of a leak that matters, as a share of all mouths: a tenth to a half (a gap of a tenth of the area costs a tenth). Estimate. */
const GAP_SHARE = { least: 0.1, most: 0.5 } as const;
/** Loss of a covered inlet in units of largest pressure over free flow squared: 0.2 costs a tenth of the flow, 3 a half. Estimate. */
const INLET_LOSS = { least: 0.2, most: 3 } as const;
/** How far a misaimed jet passes beside its mark, m. Estimate. */
const PASSES_BY = { least: 4e-3, most: 12e-3 } as const;

/** Where a sample lies among those that have a fault of this chance: 0 to 1, or below 0 when it has none. Worked: deviate 3, chance 0.1 gives 0.987. */
export function placeInFault(share: number, chance: number): number {
  return chance > 0 ? (share - (1 - chance)) / chance : -1;
}

/** Extra gap between fan and duct per sample, as a share of all mouths; 0 for samples without the leak. */
export function gapShares(deviates: Float64Array, chance: number): Float64Array {
  return perSample(deviates, (deviate) => between(GAP_SHARE, placeInFault(normalShare(deviate), chance)));
}

/** Extra loss of a covered inlet per sample, in units of largest pressure over free flow squared. */
export function inletLosses(deviates: Float64Array, chance: number): Float64Array {
  return perSample(deviates, (deviate) => between(INLET_LOSS, placeInFault(normalShare(deviate), chance)));
}

/**
 * Extra miss of one of `jets` jets per sample, m. `chance` is that of at least one misaimed jet; each is taken to be so by itself,
 * with a chance of 1 − (1 − chance)^(1/jets). Aim is a matter of distance from the middle, so both ends of the deviate count.
 * Worked: 0.4 with two jets makes 0.2254 for each.
 */
export function missesOfFault(deviates: Float64Array, chance: number, jets: number): Float64Array {
  const ofEach = 1 - (1 - chance) ** (1 / jets);
  return perSample(deviates, (deviate) => between(PASSES_BY, placeInFault(2 * normalShare(Math.abs(deviate)) - 1, ofEach)));
}

/** Even steps of the logarithm from least to most; 0 below the fault. */
function between({ least, most }: { readonly least: number; readonly most: number }, place: number): number {
  return place <= 0 ? 0 : least * exponential(place * naturalLog(most / least));
}
