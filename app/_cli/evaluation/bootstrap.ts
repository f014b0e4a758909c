import { mulberry32 } from '@/lib/inference';
import { meanOf } from './probability-scores';

/** A mean over cases with its 95 % interval. */
export interface MeanWithInterval {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

export interface BootstrapOptions {
  /** How often the cases are drawn anew; default 2000. */
  readonly draws?: number;
  readonly seed?: number;
  /** One name per value: values of one name are drawn together, as one story told twice is not two. Default: each alone. */
  readonly groups?: readonly string[];
}

/**
 * Mean of one figure per case, and the percentile bootstrap interval (2.5 % … 97.5 %) over cases drawn with replacement.
 *
 * The same seed draws the same cases, so two figures over the same cases can be subtracted case by case first and the
 * interval of the difference is then a paired one. Source of the method: Efron 1979. Throws when there is no case.
 * Worked: 100 zeros and ones, half of each, give .5 with about .40 … .60 (standard error .05).
 */
export function bootstrapMean(values: readonly number[], options: BootstrapOptions = {}): MeanWithInterval {
  if (values.length === 0) throw new Error('bootstrapMean: got no values, expected at least one');
  const next = mulberry32(options.seed ?? 1);
  const groups = grouped(values, options.groups ?? values.map((_, index) => String(index)));
  const means = Array.from({ length: options.draws ?? 2000 }, () => meanOf(groups.flatMap(() => groups[Math.floor(next() * groups.length)] ?? []))).sort((a, b) => a - b);
  return { mean: meanOf(values), low: quantile(means, 0.025), high: quantile(means, 0.975) };
}

/**
 * Value below which `share` (0 … 1) of sorted numbers lie, linear between neighbours; NaN of nothing.
 * `quantile([1, 2, 3, 4], 0.5)` is 2.5.
 */
export function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)] ?? NaN;
  return below + (at - Math.floor(at)) * ((sorted[Math.ceil(at)] ?? NaN) - below);
}

function grouped(values: readonly number[], names: readonly string[]): number[][] {
  if (names.length !== values.length) throw new Error(`bootstrapMean: got ${names.length} group names for ${values.length} values, expected as many`);
  const groups = new Map<string, number[]>();
  values.forEach((value, index) => {
    const name = names[index] ?? '';
    groups.set(name, [...(groups.get(name) ?? []), value]);
  });
  return [...groups.values()];
}
