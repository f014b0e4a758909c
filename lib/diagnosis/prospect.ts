import { MINUTES_PER_PRICE } from './changes';
import type { OpenCheck } from './open-checks';
import { GIVING_UP, type Standing } from './standing';

/** What is to come from some point on. Minutes are a person's own: hands in full, printing and other waiting at a quarter. */
export interface Prospect {
  /** Chance that it is cured in the end; the rest is given up. */
  readonly cured: number;
  /** Share of what was seen that is still there in the end, on average: 0 where it is cured, up to 1 where it is given up. */
  readonly left: number;
  /** Expected minutes until it is cured or given up. */
  readonly minutes: number;
  /** Expected price of the parts bought on the way. */
  readonly money: number;
  /** Nine times in ten it is over sooner than this. */
  readonly worst: number;
}

/** One way it may end. Chances of several endings are relative to their sum. */
export interface Ending {
  readonly chance: number;
  readonly minutes: number;
  readonly money: number;
  /** Share of what was seen that is still there; 0: cured. */
  readonly left: number;
}

/**
 * Expected minutes and money, the minutes that nine in ten stay within, the share that is cured, and what is left. No ending at all is nought.
 * Worked: cured after 10 min (0.6), cured after 30 min and a part at 8 (0.35), given up after 50 min with half of it left (0.05): 19 min, 30 min, 2.8, 0.95, 0.025.
 */
export function prospectOf(endings: readonly Ending[]): Prospect {
  const total = endings.reduce((sum, ending) => sum + ending.chance, 0);
  if (total === 0) return { cured: 0, left: 0, minutes: 0, money: 0, worst: 0 };
  const mean = (figure: (ending: Ending) => number): number => endings.reduce((sum, ending) => sum + ending.chance * figure(ending), 0) / total;
  // A hair below nine tenths, so that a sum that is nine tenths but for rounding counts as reached.
  let left = 0.9 * total * (1 - 1e-12);
  const worst = [...endings].sort((a, b) => a.minutes - b.minutes).find((ending) => (left -= ending.chance) <= 0);
  return { cured: mean((ending) => Number(ending.left === 0)), left: mean((ending) => ending.left), minutes: mean((ending) => ending.minutes), money: mean((ending) => ending.money), worst: worst?.minutes ?? 0 };
}

/**
 * Expected cost, min: the person's own minutes, money at its worth in minutes, and `givingUp` for the share that is left.
 * Worked: 60 min and a part at 10 on average, 30 % of it left, giving up 600 min: 60 + 3 · 10 + .3 · 600 = 270 min.
 */
export function costOf({ minutes, money, left }: Pick<Prospect, 'minutes' | 'money' | 'left'>, givingUp = GIVING_UP): number {
  return minutes + MINUTES_PER_PRICE * money + left * givingUp;
}

/** Parts less likely than this share of the whole are followed without looking which symptoms went. */
const SPLIT = 0.1;

/**
 * How it ends when from here on only changes are made, each with its proof, the order reckoned anew after every one that
 * did not cure it, until giving up is cheaper. Chances sum to the standing's total.
 */
export function endingsOfChanges(standing: Standing, givingUp = GIVING_UP, whole = standing.total): readonly Ending[] {
  const change = standing.total > 0 ? standing.orderOfChanges(givingUp).changes[0] : undefined;
  if (change === undefined) return standing.total > 0 ? [{ chance: standing.total, minutes: 0, money: 0, left: standing.left }] : [];
  const parts = standing.total < SPLIT * whole ? [standing.afterFailed(change)] : standing.afterChange(change).map((part) => part.standing);
  const rest = parts.flatMap((part) => endingsOfChanges(part, givingUp, whole));
  const cured = standing.total - parts.reduce((sum, part) => sum + part.total, 0);
  return [{ chance: cured, minutes: 0, money: 0, left: 0 }, ...rest].map((ending) => ({ ...ending, minutes: ending.minutes + change.minutes, money: ending.money + change.money }));
}

/** How it ends when this check is taken first, its own minutes included, and only changes are made after its answer. */
export function endingsWithCheck(standing: Standing, check: Pick<OpenCheck, 'id' | 'minutes' | 'answers'>, givingUp = GIVING_UP): readonly Ending[] {
  return check.answers
    .flatMap((_, answer) => endingsOfChanges(standing.afterAnswer(check, answer), givingUp, standing.total))
    .map((ending) => ({ ...ending, minutes: ending.minutes + check.minutes }));
}
