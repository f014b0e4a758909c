import { waysInTurns, weighedChecks, type WaysOn } from './next-step';
import type { Prospect } from './prospect';
import type { Standing } from './standing';

/** What lies ahead of a case: with changes alone, and with each of some checks taken first. Plain data. */
export interface MinutesToCure {
  readonly now: Prospect;
  /** Per check, its own minutes included; that with the least cost first. */
  readonly withCheck: ReadonlyMap<string, Prospect>;
}

/** The ways on of a case as a person is told them. */
export interface WaysOfCase {
  /** The checks that the rule weighs: one of them may be the next step. */
  readonly weighed: WaysOn;
  /** All of `weighed`, and the other checks that a page shows. */
  readonly shown: WaysOn;
}

/**
 * Weighs the checks of the rule, and those of `shown` (ids) that are open besides, by all that comes after each. Where the rule picks by
 * fixed orders (next-step.ts), a page picks by these figures themselves, so that none of the five has more to save than the one advised;
 * in drawn sessions both ways cost the same (DEVELOPERS.md). In turns, a check at a time.
 */
export function* waysOfCase(standing: Standing, shown: readonly string[]): Generator<undefined, WaysOfCase> {
  const weighed = yield* waysInTurns(standing, weighedChecks(standing));
  const known = new Set(weighed.checks.map(({ check }) => check.id));
  const others = yield* waysInTurns(standing, standing.scoredChecks().filter(({ id }) => shown.includes(id) && !known.has(id)));
  return { weighed, shown: { now: weighed.now, checks: [...weighed.checks, ...others.checks].sort((a, b) => a.cost - b.cost) } };
}

/** What a page tells of the ways on. */
export function minutesToCure({ now, checks }: WaysOn): MinutesToCure {
  return { now, withCheck: new Map(checks.map(({ check, after }) => [check.id, after])) };
}
