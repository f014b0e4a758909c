import type { NextCheck } from './next-checks';
import { costWithCheck } from './next-step';
import { endingsOfChanges, prospectOf, type Prospect } from './prospect';
import type { Standing } from './standing';

/** What a case would still take when only changes are made from here on, and what each check would do for that. */
export interface MinutesToCure {
  readonly now: Prospect;
  /** Per check: what is to come when it is taken first, its own minutes included. */
  readonly after: ReadonlyMap<string, Prospect>;
  /** Per check: minutes that it saves on average, money and giving up counted in (see standing.ts); may be negative. */
  readonly saves: ReadonlyMap<string, number>;
}

/**
 * Own minutes until the case is cured or given up, now and after each of these checks; how often it is cured stands apart.
 *
 * Draws from the exact posterior stand for the ways it may be. Changes are tried by odds over cost, each followed by its
 * proof print, and given up where going on would cost more. A check re-weights the draws by how well each explains its answer.
 */
export function minutesToCure(standing: Standing, checks: readonly Pick<NextCheck, 'check'>[]): MinutesToCure {
  const cost = standing.orderOfChanges().cost;
  const after = new Map<string, Prospect>();
  const saves = new Map<string, number>();
  for (const { check: id } of checks) {
    const check = standing.checks.find((each) => each.id === id);
    if (!check) continue;
    const standings = check.answers.map((_, answer) => standing.afterAnswer(check, answer)).filter((each) => each.total > 0);
    after.set(id, prospectOf(standings.flatMap((each) => endingsOfChanges(each).endings.map((ending) => ({ ...ending, minutes: ending.minutes + check.minutes })))));
    saves.set(id, cost - costWithCheck(standing, check));
  }
  return { now: prospectOf(endingsOfChanges(standing).endings), after, saves };
}
