import { costWithCheck, type Ahead, type Step } from './next-step';
import type { Standing } from './standing';

/** What the next step of a case is worth, and what each of the other checks would save. */
export interface MinutesToCure {
  /** What the rule weighed when it chose a check; undefined where the step is none. */
  readonly ahead: Ahead | undefined;
  /** Per check: minutes that it saves on average, money and giving up counted in (see standing.ts); may be negative. */
  readonly saves: ReadonlyMap<string, number>;
}

/**
 * The figures behind the next step, just as the rule (next-step.ts) weighed them, and what each of these checks saves by the
 * figures that pick one of them. `checks` are ids; those that are not open are passed over.
 */
export function minutesToCure(standing: Standing, step: Step, checks: readonly string[]): MinutesToCure {
  const open = checks.flatMap((id) => standing.checks.filter((check) => check.id === id));
  const cost = standing.orderOfChanges().cost;
  return { ahead: step.kind === 'check' ? step.ahead : undefined, saves: new Map(open.map((check) => [check.id, cost - costWithCheck(standing, check)])) };
}
