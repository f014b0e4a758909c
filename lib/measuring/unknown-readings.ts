import { nearestName } from '@/lib/problems';
import type { Problem } from '@/lib/problems';
import type { ReadingSpec } from './formula';

/** A problem for each name that is none of the readings, with the nearest one that is. */
export function unknownReadings(specs: readonly ReadingSpec[], ids: readonly string[]): Problem[] {
  const known = specs.map((spec) => spec.id);
  return ids.filter((id) => !known.includes(id)).map((id) => {
    const near = nearestName(id, known);
    return {
      code: 'unknown-reading', level: 'stop', where: id, what: `This method has no reading called “${id}”.`,
      allowed: known.join(', '), next: near === undefined ? 'Use one of the names in the list.' : `Use ${near} if that is what you meant.`,
    };
  });
}
