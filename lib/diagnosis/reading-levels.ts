import type { KnownCheck, ReadingModel } from '../knowledge';
import type { Evidence } from './evidence';

/** The different models of how a reading comes out, the one nearest to healthy first: the levels 1 … L of its gate. */
export function orderedModels(healthy: ReadingModel, reads: readonly ReadingModel[]): ReadingModel[] {
  const models: ReadingModel[] = [];
  for (const read of reads) if (!models.some((model) => sameModel(model, read))) models.push(read);
  return models.sort((a, b) => distance(a, healthy) - distance(b, healthy));
}

/** True when two models say the same of a reading. */
export function sameModel(a: ReadingModel, b: ReadingModel): boolean {
  return a.shape === b.shape && a.median === b.median && a.spread === b.spread && sameSizes(a.multiplesOf, b.multiplesOf);
}

function sameSizes(a: readonly number[] = [], b: readonly number[] = []): boolean {
  return a.length === b.length && a.every((size, index) => size === b[index]);
}

function distance(model: ReadingModel, healthy: ReadingModel): number {
  return model.median > 0 && healthy.median > 0 ? Math.abs(Math.log(model.median / healthy.median)) : Math.abs(model.median - healthy.median);
}

/** How often a symptom that was seen shows when its size is measured: it may have been taken for another. Estimate. */
const SHOWS_WHEN_MEASURED = 0.9;

/**
 * What a reading with so many levels comes to by itself, as a table of its levels: healthy, unless the symptom whose size it is was
 * seen. Then it is odd whatever is behind the symptom, evenly over the odd levels; only which of them it is tells causes apart.
 * Worked: three levels, seen: 0.1, 0.45, 0.45.
 */
export function levelsByItself(levels: number, isSeen: boolean): number[] {
  const odd = isSeen && levels > 1 ? SHOWS_WHEN_MEASURED : 0;
  return Array.from({ length: levels }, (_, level) => (level === 0 ? 1 - odd : odd / (levels - 1)));
}

/** Whether the symptom that a check measures was last told as seen, up to a round. */
export function isMeasuredSeen({ measures }: Pick<KnownCheck, 'measures'>, items: readonly Evidence[], round = Infinity): boolean {
  if (measures === undefined) return false;
  let [seen, last] = [false, -1];
  for (const item of items) if (item.kind === 'symptom' && item.about === measures && item.round <= round && item.round >= last) [seen, last] = [item.seen, item.round];
  return seen;
}
