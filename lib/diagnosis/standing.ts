import { orderByOddsOverCost, type RepairScenario } from '../inference';
import type { Change } from './changes';
import type { OpenCheck } from './open-checks';
import { UNLISTED, type Drawn, type Scenario } from './scenarios';

/**
 * Minutes that giving up costs while all that was seen is still there: an evening, the search for help, the wait for it. With some of
 * it gone it costs that share less: whoever has two faults and mends one is better off. Estimate; DEVELOPERS.md shows what hangs on it.
 */
export const GIVING_UP = 600;
/** Causes below this chance are not gone after: nobody would go through them one by one. Estimate. */
const WORTH_TRYING = 0.03;
/** Changes that are weighed; further ones hardly ever come up before the case is cured. */
const MOST_CHANGES = 24;

/** Changes made before one proof, and what they cost together with it. */
export interface Batch {
  readonly changes: readonly Change[];
  readonly cost: number;
}

/** A check with what it is expected to take away of the doubt, bits. */
export interface ScoredCheck extends OpenCheck {
  readonly gain: number;
}

/**
 * Where a case stands: scenarios with their weights, and the checks and changes that are left. Never changed in place;
 * an answer or a failed change gives the next standing. Weights need not sum to 1: `total` is the chance of getting here.
 */
export class Standing {
  readonly scenarios: readonly Scenario[];
  /** Symptoms that were seen when the scenarios were drawn. */
  readonly symptoms: readonly string[];
  /** How many were ever seen in the case: a share that is left is a share of these, in every round. */
  readonly ever: number;
  readonly total: number;
  #chances: ReadonlyMap<number, number> | undefined;

  constructor(
    drawn: Drawn,
    readonly checks: readonly OpenCheck[],
    readonly changes: readonly Change[],
    readonly weights: readonly number[] = drawn.scenarios.map(() => 1 / drawn.scenarios.length),
    /** Number of each scenario among those first drawn: whether a change works in it is fixed by this. */
    private readonly numbers: readonly number[] = [...drawn.scenarios.keys()],
    private readonly rows: Rows = new Rows(),
  ) {
    this.scenarios = drawn.scenarios;
    this.symptoms = drawn.symptoms;
    this.ever = drawn.ever;
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

  /** Mean share of what was ever seen that is still there: 1 at first. */
  get left(): number {
    return this.scenarios.reduce((sum, scenario, s) => sum + (this.weights[s] ?? 0) * this.#shareLeft(scenario), 0) / this.total;
  }

  /** All or nothing where no symptom was told. */
  #shareLeft({ bySymptom }: Scenario): number {
    if (bySymptom.length === 0) return 1;
    return bySymptom.reduce((there, culprits) => there + Number(culprits.length > 0), 0) / this.ever;
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
    return new Standing(this, this.checks.filter((each) => each.id !== check.id), this.changes, weights, this.numbers, this.rows);
  }

  /**
   * Where the case stands when this change did not cure it, apart for each set of symptoms that went: the proof shows them.
   * What is missing of `total` was cured by it.
   */
  afterChange(change: Change): readonly { readonly gone: readonly string[]; readonly standing: Standing }[] {
    const parts = new Map<string, { gone: string[]; left: Left[] }>();
    for (const each of this.#left(change)) {
      const gone = this.symptoms.filter((_, m) => (each.was.bySymptom[m]?.length ?? 0) > 0 && each.next.bySymptom[m]?.length === 0);
      const key = gone.join();
      const part = parts.get(key);
      if (part) part.left.push(each);
      else parts.set(key, { gone, left: [each] });
    }
    return [...parts.values()].map(({ gone, left }) => ({ gone, standing: this.#standingOf(left, change) }));
  }

  /** The same without looking which symptoms went. */
  afterFailed(change: Change): Standing {
    return this.#standingOf(this.#left(change), change);
  }

  /**
   * The changes to try, by the odds of the share of the trouble that each serves over its cost, up to where giving up is cheaper;
   * and the expected cost of that, giving up with what is left by then included. A change that could only have cured symptoms which
   * are gone by then is passed over.
   */
  orderOfChanges(givingUp = GIVING_UP): { readonly changes: readonly Change[]; readonly cost: number } {
    const worth = (change: Change): number => [...change.removes].reduce((sum, [cause, chance]) => { const share = this.chances.get(cause) ?? 0; return share < WORTH_TRYING ? sum : sum + chance * share; }, 0);
    const weighed = this.changes.map((change) => ({ change, worth: worth(change) })).filter((row) => row.worth > 0)
      .sort((a, b) => b.worth / b.change.cost - a.worth / a.change.cost).slice(0, MOST_CHANGES).map((row) => row.change);
    const useful = this.#sharesServed(weighed);
    const order = orderByOddsOverCost(weighed.map((_, k) => useful[k] ?? 0), weighed.map((change) => change.cost)).flatMap((position) => weighed[position] ?? []);
    return this.#beforeGivingUp(order, givingUp);
  }

  /**
   * Per change: the share of what is left of the trouble of which it removes at least one culprit, on average. With one symptom that is
   * the chance that it removes something behind it.
   */
  #sharesServed(changes: readonly Change[]): number[] {
    const merged = new Map<string, { share: number; readonly bySymptom: Scenario['bySymptom'] }>();
    this.scenarios.forEach(({ bySymptom, behind }, s) => {
      const groups = bySymptom.length === 0 ? [behind] : bySymptom;
      const key = groups.join(';');
      const known = merged.get(key);
      if (known) known.share += (this.weights[s] ?? 0) / this.total;
      else merged.set(key, { share: (this.weights[s] ?? 0) / this.total, bySymptom: groups });
    });
    const groups = [...merged.values()];
    return changes.map(({ removes }) => groups.reduce((sum, { share, bySymptom }) => {
      const served = bySymptom.reduce((of, culprits) => of + 1 - culprits.reduce((none, cause) => none * (1 - (removes.get(cause) ?? 0)), 1), 0);
      return sum + (share * served) / bySymptom.length;
    }, 0));
  }

  #beforeGivingUp(order: readonly Change[], givingUp: number): { readonly changes: readonly Change[]; readonly cost: number } {
    const { paid, gone } = this.#walked(order);
    let spent = 0;
    let { left } = this;
    let best = { changes: [] as readonly Change[], cost: left * givingUp };
    order.forEach((_, tried) => {
      spent += paid[tried] ?? 0;
      left -= gone[tried] ?? 0;
      if (spent + left * givingUp < best.cost) best = { changes: order.slice(0, tried + 1), cost: spent + left * givingUp };
    });
    return best;
  }

  /** Per change of an order: what it costs on average, and the share of what was seen that it takes away. */
  #walked(order: readonly Change[]): { readonly paid: Float64Array; readonly gone: Float64Array } {
    const paid = new Float64Array(order.length);
    const gone = new Float64Array(order.length);
    const hashes = order.map((change) => hashOf(change.id));
    const serves = this.#serves(order);
    this.scenarios.forEach((scenario, s) => {
      const weight = (this.weights[s] ?? 0) / this.total;
      if (weight === 0) return;
      const { behind } = scenario;
      const culprits = this.rows.culpritsOf(scenario);
      let left = 2 ** behind.length - 1;
      let share = this.#shareLeft(scenario);
      for (let k = 0; k < order.length; k += 1) {
        const change = order[k];
        if (change === undefined || !isOfUse(culprits, left, serves[k] ?? 0)) continue;
        paid[k] = (paid[k] ?? 0) + weight * change.cost;
        const before = left;
        for (let position = 0; position < behind.length; position += 1) if ((left & (1 << position)) !== 0 && this.#isRemoved(s, change, hashes[k] ?? 0, behind[position] ?? UNLISTED)) left &= ~(1 << position);
        if (left === before) continue;
        const after = culprits.length === 0 ? Number(left !== 0) : stillThere(culprits, left) / this.ever;
        gone[k] = (gone[k] ?? 0) + weight * (share - after);
        share = after;
        if (share === 0) break;
      }
    });
    return { paid, gone };
  }

  /**
   * What it costs to make these batches one after the other, each with one proof, until nothing is left of the trouble, giving up with what is
   * left included; and the chance that nothing is left after the first. A batch of no use any more is passed over.
   */
  costOfBatches(batches: readonly Batch[], givingUp = GIVING_UP): { readonly cost: number; readonly cured: number } {
    let cost = 0;
    let cured = 0;
    const plans = batches.map((batch) => ({ ...batch, serves: this.#serves(batch.changes) }));
    this.scenarios.forEach((scenario, s) => {
      const weight = (this.weights[s] ?? 0) / this.total;
      const { behind } = scenario;
      const culprits = this.rows.culpritsOf(scenario);
      let left = 2 ** behind.length - 1;
      let share = this.#shareLeft(scenario);
      plans.forEach(({ changes, serves, cost: price }, number) => {
        if (weight === 0 || share === 0 || !changes.some((_, k) => isOfUse(culprits, left, serves[k] ?? 0))) return;
        cost += weight * price;
        for (const change of changes) behind.forEach((cause, position) => { if (this.#isRemoved(s, change, hashOf(change.id), cause)) left &= ~(1 << position); });
        share = culprits.length === 0 ? Number(left !== 0 || behind.length === 0) : stillThere(culprits, left) / this.ever;
        if (number === 0 && share === 0) cured += weight;
      });
      cost += weight * share * givingUp;
    });
    return { cost, cured };
  }

  /** Per change: a bit for every symptom that has a suspect which it removes. */
  #serves(order: readonly Change[]): number[] {
    const suspects = this.symptoms.map(() => new Set<number>());
    this.scenarios.forEach(({ bySymptom }, s) => { if ((this.weights[s] ?? 0) > 0) bySymptom.forEach((culprits, m) => { for (const cause of culprits) suspects[m]?.add(cause); }); });
    return order.map((change) => suspects.reduce((bits, causes, m) => { for (const cause of change.removes.keys()) if (causes.has(cause)) return bits | (1 << m); return bits; }, 0));
  }

  #isRemoved(s: number, change: Change, hash: number, cause: number): boolean {
    const chance = change.removes.get(cause);
    return chance !== undefined && luck(this.numbers[s] ?? s, hash, cause) < chance;
  }

  #left(change: Change): Left[] {
    const hash = hashOf(change.id);
    return this.scenarios.flatMap((was, s): Left[] => {
      const removed = was.present.filter((cause) => this.#isRemoved(s, change, hash, cause));
      const isLeft = (cause: number): boolean => !removed.includes(cause);
      const behind = was.behind.filter(isLeft);
      if (was.bySymptom.length === 0 && behind.length === 0 && was.behind.length > 0) return [];
      const next = removed.length === 0 ? was : { present: was.present.filter(isLeft), behind, bySymptom: was.bySymptom.map((culprits) => culprits.filter(isLeft)) };
      // Nothing of what was seen is there any more, by what was changed now or before: the proof shows it.
      if (next.bySymptom.length > 0 && next.bySymptom.every((culprits) => culprits.length === 0)) return [];
      return [{ was, next, weight: this.weights[s] ?? 0, number: this.numbers[s] ?? s }];
    });
  }

  #standingOf(left: readonly Left[], made: Change): Standing {
    return new Standing({ symptoms: this.symptoms, ever: this.ever, scenarios: left.map((each) => each.next) }, this.checks, this.changes.filter((each) => each.id !== made.id), left.map((each) => each.weight), left.map((each) => each.number), this.rows);
  }

  /** The scenarios as lib/inference takes them: equal ones merged, and nothing listed as a cause that no change removes. */
  repairScenarios(): RepairScenario[] {
    const merged = new Map<string, { share: number; present: readonly number[] }>();
    this.scenarios.forEach((scenario, s) => {
      const { behind } = scenario;
      const share = (this.weights[s] ?? 0) / this.total;
      const present = keepsOneUnlisted(scenario) || (scenario.bySymptom.length === 0 && behind.length === 0) ? [...behind, UNLISTED] : behind;
      const key = present.join();
      const known = merged.get(key);
      if (known) known.share += share;
      else merged.set(key, { share, present });
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

/** How many symptoms are still there, by their culprits and the bits of the causes that are left. */
function stillThere(culprits: readonly number[], left: number): number {
  let there = 0;
  for (const mask of culprits) if ((mask & (left | UNLISTED_BIT)) !== 0) there += 1;
  return there;
}

/** True when something unlisted keeps one of the symptoms there: no change of ours takes it away. */
function keepsOneUnlisted({ bySymptom }: Scenario): boolean {
  return bySymptom.some((culprits) => culprits.includes(UNLISTED));
}

interface Left {
  readonly was: Scenario;
  readonly next: Scenario;
  readonly weight: number;
  readonly number: number;
}

/** Chance that a change removes something that is behind it. */
export function chanceOfUse(change: Pick<Change, 'removes'>, scenarios: readonly RepairScenario[]): number {
  return scenarios.reduce((sum, { share, present }) => sum + share * (1 - present.reduce((left, cause) => left * (1 - (change.removes.get(cause) ?? 0)), 1)), 0);
}

/** Bit by which a symptom's culprits say that something unlisted keeps it there. */
const UNLISTED_BIT = 1 << 30;

/** True when a change serves a symptom that is still there; with no symptom told, always. */
function isOfUse(culprits: readonly number[], left: number, serves: number): boolean {
  if (culprits.length === 0) return true;
  for (let m = 0; m < culprits.length; m += 1) if ((serves & (1 << m)) !== 0 && ((culprits[m] ?? 0) & (left | UNLISTED_BIT)) !== 0) return true;
  return false;
}

/** What is asked again and again of the same scenarios: chances of the answers of checks (most scenarios are silent on most checks), and culprits as bits. */
class Rows {
  readonly #culprits = new Map<Scenario, readonly number[]>();
  readonly #kept = new Map<string, Map<readonly number[], readonly number[]>>();

  /** Per symptom: a bit for each cause of `behind` that keeps it there. */
  culpritsOf(scenario: Scenario): readonly number[] {
    const known = this.#culprits.get(scenario);
    if (known) return known;
    const bits = scenario.bySymptom.map((culprits) => culprits.reduce((mask, cause) => mask | (cause === UNLISTED ? UNLISTED_BIT : 1 << scenario.behind.indexOf(cause)), 0));
    this.#culprits.set(scenario, bits);
    return bits;
  }

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
