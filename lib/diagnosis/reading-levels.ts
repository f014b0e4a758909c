import type { ReadingModel } from '../knowledge';

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
