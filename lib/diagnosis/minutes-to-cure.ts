import { costWithCheck } from './next-step';
import type { OpenCheck } from './open-checks';
import { endingsOfChanges, prospectOf, type Ending, type Prospect } from './prospect';
import type { Standing } from './standing';

/** What a case would still take when only changes are made from here on, and what each check would do for that. */
export interface MinutesToCure {
  readonly now: Prospect;
  /** What is to come when the first of the checks is taken first, its own minutes included. */
  readonly after: Prospect | undefined;
  /** Per check: minutes that it saves on average, money and giving up counted in (see standing.ts); may be negative. */
  readonly saves: ReadonlyMap<string, number>;
}

/**
 * Own minutes until the case is cured or given up, now and after the first of these checks, and what each of them saves;
 * how often it is cured stands apart. `checks` are ids; those that are not open are passed over.
 *
 * Draws from the exact posterior stand for the ways it may be. Changes are tried by odds over cost, each followed by its
 * proof print, and given up where going on would cost more. A check re-weights the draws by how well each explains its answer.
 */
export function minutesToCure(standing: Standing, checks: readonly string[]): MinutesToCure {
  const open = checks.flatMap((id) => standing.checks.filter((check) => check.id === id));
  const cost = standing.orderOfChanges().cost;
  return {
    now: prospectOf(endingsOfChanges(standing)),
    after: open[0] && prospectOf(endingsAfter(standing, open[0])),
    saves: new Map(open.map((check) => [check.id, cost - costWithCheck(standing, check)])),
  };
}

function endingsAfter(standing: Standing, check: OpenCheck): Ending[] {
  return check.answers
    .flatMap((_, answer) => endingsOfChanges(standing.afterAnswer(check, answer), standing.total))
    .map((ending) => ({ ...ending, minutes: ending.minutes + check.minutes }));
}
