import type { Knowledge, KnownCheck, KnownMethod } from '../knowledge';
import { UNATTENDED } from './changes';

/** A way of taking a check, and which of its tools are not at hand. */
export interface WayToCheck {
  readonly method: KnownMethod;
  readonly lacks: readonly string[];
}

/** A person's own minutes for a check by this method: hands in full, waiting at a quarter. 75 min, of which 60 wait: 30. */
export function ownMinutesOfMethod({ minutes, waitMinutes = 0 }: Pick<KnownMethod, 'minutes' | 'waitMinutes'>): number {
  return minutes - (1 - UNATTENDED) * waitMinutes;
}

/**
 * The method that takes fewest own minutes, those with all tools at hand before those without; undefined where a check has
 * none. 45 min with 35 of them waiting (18.75 own) come before 20 min of hands.
 */
export function cheapestMethod({ methods }: Pick<KnownCheck, 'methods'>, knowledge: Pick<Knowledge, 'methods'>, lacking: readonly string[] = []): WayToCheck | undefined {
  const ways = methods.flatMap((id) => {
    const method = knowledge.methods[id];
    return method ? [{ method, lacks: method.needs.filter((tool) => lacking.includes(tool)) }] : [];
  });
  return ways.sort((a, b) => Number(a.lacks.length > 0) - Number(b.lacks.length > 0) || ownMinutesOfMethod(a.method) - ownMinutesOfMethod(b.method))[0];
}
