import { atIndex } from './at-index';
import { checkOutcomes, combination, cumulativeForms, gateOf, levelCount, stateCount, type Check, type ProductForm } from './check-question';
import { entropyBits } from './entropy';
import type { Prepared } from './prepared';
import { scenariosOf, type Scenarios } from './scenarios';

export interface CheckScore {
  /** Position of the check in the list that was ranked. */
  readonly check: number;
  /** Expected drop of the sum of the entropies of all causes, bits. */
  readonly drop: number;
  /** `drop` divided by the check's cost. */
  readonly dropPerCost: number;
  /** Probability of each outcome. */
  readonly outcomes: readonly number[];
  /** False when the score rests on draws: the check was not among the leaders that were looked at exactly. */
  readonly isExact: boolean;
}

export interface RankingOptions {
  /** Draws for the first screening. */
  readonly draws?: number;
  /** How many leaders of the screening are looked at exactly. */
  readonly exact?: number;
  readonly seed?: number;
}

/**
 * All checks, largest expected entropy drop per cost first.
 *
 * Every check is scored on `draws` exact joint draws (default 400); the best `exact` of them (default 6), and those
 * that the draws cannot score, get exact look-ahead sweeps. Leaders keep their places above the merely screened.
 */
export function rankChecks(prepared: Prepared, checks: readonly Check[], options: RankingOptions = {}): CheckScore[] {
  checks.forEach((check, index) => checkOutcomes(prepared.net, check, `check ${index}`));
  const drawn = checks.flatMap(({ on }) => (on.kind === 'states' && on.causes.length > 1 ? on.causes : []));
  const screening = new Screening(prepared, scenariosOf(prepared, options.draws ?? 400, options.seed ?? 1, drawn));
  const screened = checks.map((check, index) => scoreOf(index, check, screening.score(check), false));
  const byGain = screened.filter((score) => score !== undefined).sort((a, b) => b.dropPerCost - a.dropPerCost);
  const leaders = byGain.slice(0, options.exact ?? 6).map(({ check }) => check);
  const tied = checks.map((_, index) => index).filter((index) => screened[index] === undefined);
  const exact = [...leaders, ...tied].map((index) => ({ ...expectedEntropyDrop(prepared, atIndex(checks, index, 'check')), check: index }));
  exact.sort((a, b) => b.dropPerCost - a.dropPerCost);
  return [...exact, ...byGain.slice(leaders.length)];
}

/**
 * Exact expected drop, in bits, of the summed entropies of all causes when a check is taken.
 *
 * One sweep per level of the check but one. For a gate that is tied to others, one planned sweep per level.
 * Two causes, f0 and f1 seen: the worked values are those of `next.*` in tests/independent/inference/values.json.
 */
export function expectedEntropyDrop(prepared: Prepared, check: Check): CheckScore {
  checkOutcomes(prepared.net, check, 'check');
  const perLevel = jointWithLevels(prepared, check);
  const { firstState, states } = prepared;
  return scoreOf(0, check, gain(check, perLevel, firstState, states), true);
}

/** P(state of a cause, level of the check | evidence): one flat row per level. */
interface LevelJoint {
  readonly chance: number;
  readonly states: Float64Array;
}

interface Gain {
  readonly drop: number;
  readonly outcomes: readonly number[];
}

function scoreOf(index: number, check: Check, found: Gain, isExact: boolean): CheckScore;
function scoreOf(index: number, check: Check, found: Gain | undefined, isExact: boolean): CheckScore | undefined;
function scoreOf(index: number, check: Check, found: Gain | undefined, isExact: boolean): CheckScore | undefined {
  return found && { check: index, drop: found.drop, dropPerCost: found.drop / check.cost, outcomes: found.outcomes, isExact };
}

function gain(check: Check, perLevel: readonly LevelJoint[], firstState: Int32Array, now: Float64Array, onlyCauses?: readonly number[]): Gain {
  const causes = onlyCauses ?? Array.from({ length: firstState.length - 1 }, (_, cause) => cause);
  const entropyOf = (states: Float64Array, total: number) => causes.reduce((sum, cause) => sum + entropyBits(states, firstState[cause] ?? 0, firstState[cause + 1] ?? 0, total), 0);
  let after = 0;
  const outcomes: number[] = [];
  const mixed = new Float64Array(now.length);
  for (const likelihood of check.outcomes) {
    mixed.fill(0);
    let chance = 0;
    perLevel.forEach((level, l) => {
      const p = likelihood[l] ?? 0;
      if (p === 0) return;
      chance += p * level.chance;
      for (const cause of causes) for (let s = firstState[cause] ?? 0; s < (firstState[cause + 1] ?? 0); s++) mixed[s] = (mixed[s] ?? 0) + p * (level.states[s] ?? 0);
    });
    outcomes.push(chance);
    after += chance * entropyOf(mixed, chance);
  }
  return { drop: entropyOf(now, 1) - after, outcomes };
}

function jointWithLevels(prepared: Prepared, check: Check): LevelJoint[] {
  if (check.on.kind === 'states') return jointWithStates(prepared, check.on.causes, levelCount(prepared.net, check));
  const forms = cumulativeForms(prepared, check);
  return forms === undefined ? jointWithTiedGate(prepared, check) : differences(prepared, forms.map((form) => supposed(prepared, form)));
}

function supposed(prepared: Prepared, { constant, factors }: ProductForm): LevelJoint {
  const { logEvidence, states } = prepared.whatIfFactors(factors);
  const chance = constant * Math.exp(logEvidence - prepared.logEvidence);
  return { chance, states: states.map((p) => p * chance) };
}

/** Single levels from cumulative ones. Rounding is 1e-16 of everything, which a score does not feel. */
function differences(prepared: Prepared, cumulative: readonly LevelJoint[]): LevelJoint[] {
  const all = [...cumulative, { chance: 1, states: prepared.states }];
  return all.map(({ chance, states }, level) => {
    const below = all[level - 1];
    if (below === undefined) return { chance, states };
    return { chance: Math.max(0, chance - below.chance), states: states.map((p, s) => Math.max(0, p - (below.states[s] ?? 0))) };
  });
}

/** Each combination of states is clamped in turn; all absent is what the others leave. */
function jointWithStates(prepared: Prepared, causes: readonly number[], combinations: number): LevelJoint[] {
  const rest = { chance: 1, states: prepared.states.slice() };
  const clamped: LevelJoint[] = [];
  for (let index = 1; index < combinations; index++) {
    const states = combination(prepared, causes, index);
    const factors = causes.map((cause, i) => ({ cause, factors: Array.from({ length: stateCount(prepared.net, cause) }, (_, k) => (k === states[i] ? 1 : 0)) }));
    const joint = supposed(prepared, { constant: 1, factors });
    rest.chance = Math.max(0, rest.chance - joint.chance);
    joint.states.forEach((p, s) => (rest.states[s] = Math.max(0, (rest.states[s] ?? 0) - p)));
    clamped.push(joint);
  }
  return [rest, ...clamped];
}

function jointWithTiedGate(prepared: Prepared, check: Check): LevelJoint[] {
  const gate = gateOf(prepared.net, check);
  if (gate === undefined) return [];
  const replaces = check.on.kind === 'gate' ? check.on.gate : undefined;
  return gate.weights.map((weight, pinned) => {
    const pinnedGate = { ...gate, weights: gate.weights.map((_, level) => (level === pinned ? weight : 0)) };
    const seen = prepared.whatIfGate(pinnedGate, replaces);
    if ('kind' in seen) throw new Error(`inference: look-ahead at level ${pinned} needs ${seen.cost.units} units, expected at most the limit given to prepare`);
    const chance = Math.exp(seen.logEvidence - prepared.logEvidence);
    return { chance, states: seen.states.map((p) => p * chance) };
  });
}

/** Scores on scenarios: the probability of each level is a product over the causes present in a scenario. */
class Screening {
  readonly #marginals: Float64Array;
  readonly #drawnCauses: readonly number[];
  /** Factor of each state for the question at hand; 1 except for the causes that it concerns. */
  readonly #factorOf: Float64Array;

  constructor(
    private readonly prepared: Prepared,
    private readonly scenarios: Scenarios,
  ) {
    const { firstState, states } = prepared;
    this.#drawnCauses = scenarios.isDrawn.flatMap((isDrawn, cause) => (isDrawn ? [cause] : []));
    this.#factorOf = new Float64Array(states.length).fill(1);
    this.#marginals = states.slice();
    for (const cause of this.#drawnCauses) this.#marginals.fill(0, firstState[cause], firstState[cause + 1]);
    this.#accumulate(this.#marginals, scenarios.shares);
  }

  /** Undefined for a check that needs exact sweeps. */
  score(check: Check): Gain | undefined {
    const perLevel = check.on.kind === 'states' ? this.#levelsOfStates(check.on.causes, levelCount(this.prepared.net, check)) : this.#levelsOfGate(check);
    if (perLevel === undefined) return undefined;
    const linked = check.on.kind === 'states' ? check.on.causes : (gateOf(this.prepared.net, check)?.links ?? []).map(({ cause }) => cause);
    const alsoChanged = [...new Set(linked)].filter((cause) => this.scenarios.isDrawn[cause] === false);
    return gain(check, perLevel, this.prepared.firstState, this.#marginals, [...this.#drawnCauses, ...alsoChanged]);
  }

  #levelsOfGate(check: Check): LevelJoint[] | undefined {
    const forms = cumulativeForms(this.prepared, check);
    if (forms === undefined) return undefined;
    const all = [...forms.map((form) => this.#cumulative(form)), { chance: 1, states: this.#marginals }];
    return all.map(({ chance, states }, level) => {
      const below = all[level - 1];
      return below === undefined ? { chance, states } : { chance: chance - below.chance, states: states.map((p, s) => Math.max(0, p - (below.states[s] ?? 0))) };
    });
  }

  #cumulative({ constant, factors }: ProductForm): LevelJoint {
    const { firstState } = this.prepared;
    const { shares, present, isDrawn } = this.scenarios;
    let base = constant;
    for (const { cause, factors: perState } of factors) {
      if (isDrawn[cause] === false) base *= this.#average(cause, perState);
      else perState.forEach((factor, k) => this.#factorOf[(firstState[cause] ?? 0) + k] = (this.#factorOf[(firstState[cause] ?? 0) + k] ?? 1) * factor);
    }
    const weights = new Float64Array(shares.length);
    for (let i = 0; i < weights.length; i++) {
      let p = base * (shares[i] ?? 0);
      for (const state of present[i] ?? []) p *= this.#factorOf[state] ?? 1;
      weights[i] = p;
    }
    const states = new Float64Array(this.#factorOf.length);
    const chance = this.#accumulate(states, weights);
    for (const { cause, factors: perState } of factors) {
      if (isDrawn[cause] === false) this.#fillIndependent(states, cause, perState, chance);
      else this.#factorOf.fill(1, firstState[cause], firstState[cause + 1]);
    }
    return { chance, states };
  }

  #levelsOfStates(causes: readonly number[], combinations: number): LevelJoint[] {
    const [only] = causes;
    if (only !== undefined && causes.length === 1 && this.scenarios.isDrawn[only] === false) return this.#levelsOfFreeCause(only, combinations);
    const { firstState } = this.prepared;
    const { shares, present } = this.scenarios;
    return Array.from({ length: combinations }, (_, index) => {
      const wanted = combination(this.prepared, causes, index).map((k, i) => ({ k, first: firstState[causes[i] ?? 0] ?? 0, end: firstState[(causes[i] ?? 0) + 1] ?? 0 }));
      const matches = (states: readonly number[]) => wanted.every(({ k, first, end }) => (k > 0 ? states.includes(first + k) : !states.some((state) => state > first && state < end)));
      const weights = shares.map((share, i) => (matches(present[i] ?? []) ? share : 0));
      const states = new Float64Array(this.#marginals.length);
      return { chance: this.#accumulate(states, weights), states };
    });
  }

  #levelsOfFreeCause(cause: number, states: number): LevelJoint[] {
    const first = this.prepared.firstState[cause] ?? 0;
    return Array.from({ length: states }, (_, k) => {
      const chance = this.prepared.states[first + k] ?? 0;
      const joint = this.#marginals.map((p) => p * chance);
      joint.fill(0, first, first + states);
      joint[first + k] = chance;
      return { chance, states: joint };
    });
  }

  /** Sums scenario weights into the states of all drawn causes; returns the total. */
  #accumulate(states: Float64Array, weights: Float64Array): number {
    const { firstState } = this.prepared;
    let total = 0;
    this.scenarios.present.forEach((present, i) => {
      const weight = weights[i] ?? 0;
      total += weight;
      for (const state of present) states[state] = (states[state] ?? 0) + weight;
    });
    for (const cause of this.#drawnCauses) {
      const first = firstState[cause] ?? 0;
      let present = 0;
      for (let s = first + 1; s < (firstState[cause + 1] ?? 0); s++) present += states[s] ?? 0;
      states[first] = Math.max(0, total - present);
    }
    return total;
  }

  #average(cause: number, perState: readonly number[]): number {
    const first = this.prepared.firstState[cause] ?? 0;
    return perState.reduce((sum, factor, k) => sum + factor * (this.prepared.states[first + k] ?? 0), 0);
  }

  #fillIndependent(states: Float64Array, cause: number, perState: readonly number[], chance: number): void {
    const first = this.prepared.firstState[cause] ?? 0;
    const average = this.#average(cause, perState);
    perState.forEach((factor, k) => (states[first + k] = average > 0 ? (chance * factor * (this.prepared.states[first + k] ?? 0)) / average : 0));
  }
}
