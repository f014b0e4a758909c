import type { Knowledge, KnownCheck } from '../knowledge';
import { cheapestMethod, ownMinutesOfMethod } from './cheapest-method';
import { outcomesOf, type CheckOutcome } from './check-outcomes';
import { closedChecks } from './closed-checks';
import type { Diagnosis } from './diagnose';
import { presentNow } from './having-a-hand';

/** A check that could be taken next, by its cheapest method. */
export interface NextCheck {
  readonly check: string;
  readonly method: string;
  /** Minutes from start to end, waiting included. */
  readonly minutes: number;
  /** Minutes of the person alone: hands, and a quarter of what only waits. */
  readonly own: number;
  /** Expected loss of doubt: the drop of the summed entropy of all causes, in bits. */
  readonly gain: number;
  /** Tools that it needs and the case says are not at hand; such checks come after all others. */
  readonly lacks: readonly string[];
  readonly outcomes: readonly CheckOutcome[];
}

export interface NextCheckOptions {
  /** Tools that are not at hand. */
  readonly lacksTools?: readonly string[];
  /** How many checks are worked out exactly; the others are left out as hopeless. Default all. */
  readonly most?: number;
}

/**
 * Every check that is open (see closed-checks.ts) and could move something, best first: most expected loss of doubt per minute of one's own.
 * Exact: each possible outcome is worked out by a run of its own.
 */
export function nextChecks(diagnosis: Diagnosis, knowledge: Knowledge, options: NextCheckOptions = {}): NextCheck[] {
  const closed = closedChecks(diagnosis);
  const shares = sharesActing(diagnosis);
  const doubt = summedEntropy(presentNow(diagnosis.prepared.states, diagnosis.prepared.firstState), shares);
  const found: NextCheck[] = [];
  for (const check of promising(diagnosis, knowledge, closed, options.most)) {
    const way = cheapestMethod(check, knowledge, options.lacksTools);
    if (!way) continue;
    const outcomes = outcomesOf(check, way.method, diagnosis);
    const left = outcomes.reduce((sum, outcome) => sum + outcome.chance * summedEntropy(outcome.present, shares), 0);
    found.push({ check: check.id, method: way.method.id, minutes: way.method.minutes, own: ownMinutesOfMethod(way.method), gain: Math.max(0, doubt - left), lacks: way.lacks, outcomes });
  }
  const worth = (next: NextCheck): number => next.gain / next.own;
  return found.sort((a, b) => Number(a.lacks.length > 0) - Number(b.lacks.length > 0) || worth(b) - worth(a) || (a.check < b.check ? -1 : 1));
}

/** Entropy of independent yes-no questions with these chances, in bits; each counted with its share (1 when left out). */
export function summedEntropy(chances: ArrayLike<number>, shares: readonly number[] = []): number {
  let sum = 0;
  for (let index = 0; index < chances.length; index += 1) {
    const p = chances[index] ?? 0;
    if (p > 0 && p < 1) sum -= (shares[index] ?? 1) * (p * Math.log2(p) + (1 - p) * Math.log2(1 - p));
  }
  return sum;
}

/** Per cause of the net: the share of its presence that had a hand in this failure. Doubt about the rest is of no use now. */
function sharesActing(diagnosis: Diagnosis): number[] {
  const byId = new Map(diagnosis.causes.map((cause) => [cause.id, cause.present > 0 ? cause.probability / cause.present : 0]));
  return diagnosis.net.causes.map((id) => byId.get(id) ?? 0);
}

/** Checks by an upper bound of what they can settle: the entropy of the causes that they hear of. */
function promising(diagnosis: Diagnosis, knowledge: Knowledge, closed: ReadonlySet<string>, most = Infinity): KnownCheck[] {
  const chance = new Map(diagnosis.causes.map((cause) => [cause.id, cause.probability]));
  const bound = (check: KnownCheck): number => summedEntropy([...Object.keys(check.yes), ...Object.keys(check.reads)].map((id) => chance.get(id) ?? 0));
  return Object.values(knowledge.checks)
    .filter((check) => !closed.has(check.id))
    .map((check) => ({ check, bound: bound(check) }))
    .filter((row) => row.bound > 0.02)
    .sort((a, b) => b.bound - a.bound)
    .slice(0, most)
    .map((row) => row.check);
}
