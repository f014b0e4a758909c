import { beforeCallingHelp, orderByOddsOverCost, type RepairScenario, type RepairSequence } from '../inference';
import type { Change } from './changes';
import type { OpenCheck } from './open-checks';
import type { Scenario } from './scenarios';

/** Minutes that giving up costs: an evening, the search for help, the wait for it. Estimate; DEVELOPERS.md shows what hangs on it. */
export const GIVING_UP = 600;
/** Causes below this chance are not gone after: nobody would go through them one by one. Estimate. */
const WORTH_TRYING = 0.03;
/** Changes that are weighed; further ones hardly ever come up before the case is cured. */
const MOST_CHANGES = 24;

/** A check with what it is expected to take away of the doubt, bits. */
export interface ScoredCheck extends OpenCheck {
  readonly gain: number;
}

/**
 * Where a case stands: scenarios with their weights, and the checks and changes that are left. Never changed in place;
 * an answer or a failed change gives the next standing. Weights need not sum to 1: `total` is the chance of getting here.
 */
export class Standing {
  readonly total: number;
  #chances: ReadonlyMap<number, number> | undefined;

  constructor(
    readonly scenarios: readonly Scenario[],
    readonly weights: readonly number[],
    readonly checks: readonly OpenCheck[],
    readonly changes: readonly Change[],
    /** Number of each scenario among those first drawn: whether a change works in it is fixed by this. */
    private readonly numbers: readonly number[] = [...scenarios.keys()],
    private readonly rows: Rows = new Rows(),
  ) {
    this.total = weights.reduce((sum, weight) => sum + weight, 0);
  }

  /** Per cause, by number: chance that it is behind what is seen. Causes that are behind it in no scenario are left out. */
  get chances(): ReadonlyMap<number, number> {
    if (this.#chances) return this.#chances;
    const sums = new Map<number, number>();
    this.scenarios.forEach(({ behind }, s) => { for (const cause of behind) sums.set(cause, (sums.get(cause) ?? 0) + (this.weights[s] ?? 0)); });
    this.#chances = new Map([...sums].map(([cause, sum]) => [cause, sum / this.total]));
    return this.#chances;
  }

  /** Chance of the likeliest cause; 0 when nothing listed is behind it. */
  get leader(): number {
    return Math.max(0, ...this.chances.values());
  }

  /** Every check that hears of a cause worth going after, with its expected loss of doubt. */
  scoredChecks(): ScoredCheck[] {
    const isWorthIt = (cause: number): boolean => (this.chances.get(cause) ?? 0) >= WORTH_TRYING;
    const position = new Map([...this.chances.keys()].map((cause, index) => [cause, index]));
    const doubt = [...this.chances.values()].reduce((sum, chance) => sum + entropy(chance), 0);
    return this.checks.filter((check) => [...check.hears].some(isWorthIt)).map((check) => ({ ...check, gain: Math.max(0, doubt - this.#doubtAfter(check, position)) }));
  }

  /** Chance of each answer of a check. */
  answerChances(check: Pick<OpenCheck, 'id'>): number[] {
    const asked = this.#open(check.id);
    return asked.answers.map((_, answer) => this.scenarios.reduce((sum, scenario, s) => sum + (this.weights[s] ?? 0) * (this.rows.of(asked, scenario)[answer] ?? 0), 0) / this.total);
  }

  /** Where the case stands after this answer; the check is done with. */
  afterAnswer(check: Pick<OpenCheck, 'id'>, answer: number): Standing {
    const asked = this.#open(check.id);
    const weights = this.scenarios.map((scenario, s) => (this.weights[s] ?? 0) * (this.rows.of(asked, scenario)[answer] ?? 0));
    return new Standing(this.scenarios, weights, this.checks.filter((each) => each.id !== check.id), this.changes, this.numbers, this.rows);
  }

  /** Where the case stands when this change did not cure it; what is missing of `total` was cured by it. */
  afterFailed(change: Change): Standing {
    const hash = hashOf(change.id);
    const left = this.scenarios.flatMap((scenario, s) => {
      const number = this.numbers[s] ?? s;
      const isRemoved = (cause: number): boolean => luck(number, hash, cause) < (change.removes.get(cause) ?? 0);
      const behind = scenario.behind.filter((cause) => !isRemoved(cause));
      if (behind.length === 0 && scenario.behind.length > 0) return [];
      const next = behind.length === scenario.behind.length ? scenario : { behind, present: scenario.present.filter((cause) => !isRemoved(cause)) };
      return [{ next, weight: this.weights[s] ?? 0, number }];
    });
    return new Standing(left.map((each) => each.next), left.map((each) => each.weight), this.checks, this.changes.filter((each) => each.id !== change.id), left.map((each) => each.number), this.rows);
  }

  /** The changes to try, by odds over cost, up to where giving up is cheaper; and the expected cost of that, giving up included. */
  orderOfChanges(givingUp = GIVING_UP): RepairSequence & { readonly changes: readonly Change[] } {
    const scenarios = this.repairScenarios();
    const worth = (change: Change): number => [...change.removes].reduce((sum, [cause, chance]) => { const share = this.chances.get(cause) ?? 0; return share < WORTH_TRYING ? sum : sum + chance * share; }, 0);
    const weighed = this.changes.map((change) => ({ change, worth: worth(change) })).filter((row) => row.worth > 0)
      .sort((a, b) => b.worth / b.change.cost - a.worth / a.change.cost).slice(0, MOST_CHANGES).map((row) => row.change);
    const order = orderByOddsOverCost(weighed.map((change) => chanceOfUse(change, scenarios)), weighed.map((change) => change.cost));
    const { order: tried, cost } = beforeCallingHelp(order, weighed, scenarios, givingUp);
    return { order: tried, cost, changes: tried.flatMap((position) => weighed[position] ?? []) };
  }

  /** The scenarios as lib/inference takes them: equal ones merged, and nothing listed as a cause that no change removes. */
  repairScenarios(): RepairScenario[] {
    const merged = new Map<string, { share: number; present: readonly number[] }>();
    this.scenarios.forEach(({ behind }, s) => {
      const share = (this.weights[s] ?? 0) / this.total;
      const key = behind.join();
      const known = merged.get(key);
      if (known) known.share += share;
      else merged.set(key, { share, present: behind.length === 0 ? [-1] : behind });
    });
    return [...merged.values()];
  }

  #open(id: string): OpenCheck {
    const check = this.checks.find((each) => each.id === id);
    if (!check) throw new Error(`Standing: got check ${id}, expected one that is open`);
    return check;
  }

  #doubtAfter(check: OpenCheck, position: ReadonlyMap<number, number>): number {
    const causes = position.size;
    const sums = new Float64Array(check.answers.length * causes);
    const totals = new Float64Array(check.answers.length);
    this.scenarios.forEach((scenario, s) => {
      const weight = this.weights[s] ?? 0;
      if (weight === 0) return;
      const row = this.rows.of(check, scenario);
      for (let answer = 0; answer < totals.length; answer += 1) {
        const share = weight * (row[answer] ?? 0);
        totals[answer] = (totals[answer] ?? 0) + share;
        for (const cause of scenario.behind) {
          const at = answer * causes + (position.get(cause) ?? 0);
          sums[at] = (sums[at] ?? 0) + share;
        }
      }
    });
    let doubt = 0;
    totals.forEach((total, answer) => {
      if (total === 0) return;
      for (let cause = 0; cause < causes; cause += 1) doubt += (total / this.total) * entropy(Math.min(1, (sums[answer * causes + cause] ?? 0) / total));
    });
    return doubt;
  }
}

/** Chance that a change removes something that is behind it. */
export function chanceOfUse(change: Pick<Change, 'removes'>, scenarios: readonly RepairScenario[]): number {
  return scenarios.reduce((sum, { share, present }) => sum + share * (1 - present.reduce((left, cause) => left * (1 - (change.removes.get(cause) ?? 0)), 1)), 0);
}

/** Chances of the answers of checks, kept for scenarios that come up again; most scenarios are silent on most checks. */
class Rows {
  readonly #kept = new Map<string, Map<readonly number[], readonly number[]>>();

  of(check: OpenCheck, { present }: Scenario): readonly number[] {
    let rows = this.#kept.get(check.id);
    if (!rows) this.#kept.set(check.id, (rows = new Map([[NOBODY, check.chances(NOBODY)]])));
    const known = rows.get(present);
    if (known) return known;
    const heard = present.some((cause) => check.hears.has(cause));
    const row = heard ? check.chances(present) : (rows.get(NOBODY) ?? []);
    rows.set(present, row);
    return row;
  }
}

const NOBODY: readonly number[] = [];

function entropy(chance: number): number {
  return chance > 0 && chance < 1 ? -(chance * Math.log2(chance) + (1 - chance) * Math.log2(1 - chance)) : 0;
}

/** A number in [0, 1) that is the same whenever the same change meets the same cause in the same scenario. */
function luck(scenario: number, change: number, cause: number): number {
  let mixed = Math.imul(scenario + 1, 0x9e3779b1) ^ Math.imul(change, 0x85ebca6b) ^ Math.imul(cause + 1, 0xc2b2ae35);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x7feb352d);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x846ca68b);
  return ((mixed ^ (mixed >>> 16)) >>> 0) / 4294967296;
}

function hashOf(id: string): number {
  let hash = 7;
  for (let at = 0; at < id.length; at += 1) hash = Math.imul(hash, 31) + id.charCodeAt(at) | 0;
  return hash;
}
