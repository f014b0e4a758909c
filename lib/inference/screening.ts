import { combination, gateOf, levelCount, productGate, upTo, type Check } from './check-question';
import type { LevelJoints } from './level-joints';
import type { Gate, GateLink } from './net';
import type { Prepared } from './prepared';
import type { Scenarios } from './scenarios';
import { setScaled } from './table-steps';

/**
 * Joint distribution of causes and outcome levels, estimated on scenarios: given a scenario the probability of a
 * level is a product over the causes present in it. Causes that were not drawn enter by their exact average.
 */
export class Screening {
  /** Share of every state over the scenarios; exact posterior for causes that were not drawn. */
  readonly marginals: Float64Array;
  readonly #holders: Holders;
  /** Weight of each scenario under the question at hand. */
  readonly #weights: Float64Array;
  /** Tables handed out by `jointsOf`, written again by its next call. */
  readonly #tables: Float64Array[] = [];

  constructor(
    private readonly prepared: Prepared,
    private readonly scenarios: Scenarios,
  ) {
    const { met, shares, isDrawn } = scenarios;
    const { firstState, states } = prepared;
    this.#holders = holdersOf(scenarios, states.length);
    this.#weights = new Float64Array(shares.length);
    this.marginals = states.slice();
    for (let cause = 0; cause < isDrawn.length; cause++) if (isDrawn[cause] === 1) this.#allAbsent(this.marginals, cause);
    setJointShares(this.marginals, shares, 1, met, firstState, this.#holders);
  }

  /** Causes that were not drawn but are asked for: with those met in the scenarios, all whose distribution the outcome can change. */
  undrawnOf({ on }: Check): readonly number[] {
    const { isDrawn } = this.scenarios;
    if (on.kind === 'states') return on.causes.filter((cause) => isDrawn[cause] === 0);
    const undrawn: number[] = [];
    for (const { cause } of gateOf(this.prepared.net, on)?.links ?? []) if (isDrawn[cause] === 0 && !undrawn.includes(cause)) undrawn.push(cause);
    return undrawn;
  }

  /** Undefined for a check that needs exact sweeps. Valid until the next call, and for the causes met and `undrawn` (see `undrawnOf`) only. */
  jointsOf(check: Check, undrawn: readonly number[]): LevelJoints | undefined {
    const { on } = check;
    if (on.kind === 'states') {
      const [free] = undrawn;
      return free === undefined ? this.#jointsOfStates(on.causes, levelCount(this.prepared.net, check)) : this.#jointsOfFreeCause(free);
    }
    const gate = productGate(this.prepared, check);
    return gate && this.#jointsOfGate(gate, undrawn);
  }

  /** Each level from itself and all below, less all below. */
  #jointsOfGate(gate: Gate, undrawn: readonly number[]): LevelJoints {
    const { met } = this.scenarios;
    const top = gate.weights.length - 1;
    const chances: number[] = [];
    const states: Float64Array[] = [];
    for (let level = 0; level <= top; level++) {
      const table = this.#table(level);
      if (level === top) table.set(this.marginals);
      chances.push(level === top ? 1 : this.#cumulative(gate, level, undrawn, table));
      states.push(table);
    }
    for (let level = top; level > 0; level--) {
      const [whole, part] = [states[level] ?? this.marginals, states[level - 1] ?? this.marginals];
      subtract(whole, part, met, this.prepared.firstState);
      subtract(whole, part, undrawn, this.prepared.firstState);
      chances[level] = Math.max(0, (chances[level] ?? 0) - (chances[level - 1] ?? 0));
    }
    return { chances, states };
  }

  /** Joint shares with this level of a gate and all below, written to `states`; returns the chance of them. */
  #cumulative({ leak, links }: Gate, level: number, undrawn: readonly number[], states: Float64Array): number {
    const { shares, isDrawn, met } = this.scenarios;
    const { firstState } = this.prepared;
    let base = upTo(leak, level);
    if (undrawn.length > 0) for (const link of links) if (isDrawn[link.cause] === 0) base *= this.#average(link, level);
    setScaled(this.#weights, 0, shares, base, shares.length);
    for (const { cause, contributes } of links) {
      let state = firstState[cause] ?? 0;
      for (const table of contributes) multiplyHeld(this.#weights, upTo(table, level), this.#holders, ++state);
    }
    const chance = total(this.#weights);
    setJointShares(states, this.#weights, chance, met, firstState, this.#holders);
    if (undrawn.length > 0) for (const link of links) if (isDrawn[link.cause] === 0) this.#fillIndependent(states, link, level, chance);
    return chance;
  }

  /** Joint shares of the causes met with each combination of the states of the causes asked for. */
  #jointsOfStates(causes: readonly number[], combinations: number): LevelJoints {
    const states = Array.from({ length: combinations }, (_, index) => this.#table(index));
    const chances = states.map((table, index) => {
      this.#weighCombination(causes, combination(this.prepared, causes, index));
      const chance = total(this.#weights);
      setJointShares(table, this.#weights, chance, this.scenarios.met, this.prepared.firstState, this.#holders);
      return chance;
    });
    return { chances, states };
  }

  /** Share of each scenario in which the causes are in just these states, else 0. */
  #weighCombination(causes: readonly number[], wanted: readonly number[]): void {
    const { firstState } = this.prepared;
    const matches = new Float64Array(this.#weights.length);
    this.#weights.set(this.scenarios.shares);
    causes.forEach((cause, n) => {
      const first = firstState[cause] ?? 0;
      const state = wanted[n] ?? 0;
      // Absent is what no state above 0 holds.
      matches.fill(state === 0 ? 1 : 0);
      const [from, to] = state === 0 ? [first + 1, firstState[cause + 1] ?? 0] : [first + state, first + state + 1];
      for (let h = this.#holders.starts[from] ?? 0; h < (this.#holders.starts[to] ?? 0); h++) matches[this.#holders.list[h] ?? 0] = state === 0 ? 0 : 1;
      for (let i = 0; i < matches.length; i++) this.#weights[i] = (this.#weights[i] ?? 0) * (matches[i] ?? 0);
    });
  }

  #jointsOfFreeCause(cause: number): LevelJoints {
    const { states, firstState } = this.prepared;
    const first = firstState[cause] ?? 0;
    const count = (firstState[cause + 1] ?? 0) - first;
    const chances = [...states.subarray(first, first + count)];
    const tables = chances.map((chance, k) => {
      const table = this.#table(k);
      setScaled(table, 0, this.marginals, chance, table.length);
      table.fill(0, first, first + count);
      table[first + k] = chance;
      return table;
    });
    return { chances, states: tables };
  }

  #table(index: number): Float64Array {
    return (this.#tables[index] ??= new Float64Array(this.marginals.length));
  }

  #allAbsent(states: Float64Array, cause: number): void {
    const first = this.prepared.firstState[cause] ?? 0;
    states.fill(0, first, this.prepared.firstState[cause + 1]);
    states[first] = 1;
  }

  /** Chance that a cause that was not drawn contributes this level at most. */
  #average({ cause, contributes }: GateLink, level: number): number {
    const first = this.prepared.firstState[cause] ?? 0;
    let sum = this.prepared.states[first] ?? 0;
    for (let k = 0; k < contributes.length; k++) sum += upTo(contributes[k] ?? [], level) * (this.prepared.states[first + 1 + k] ?? 0);
    return sum;
  }

  #fillIndependent(states: Float64Array, link: GateLink, level: number, chance: number): void {
    const first = this.prepared.firstState[link.cause] ?? 0;
    const average = this.#average(link, level);
    const scale = average > 0 ? chance / average : 0;
    states[first] = scale * (this.prepared.states[first] ?? 0);
    link.contributes.forEach((table, k) => (states[first + 1 + k] = scale * upTo(table, level) * (this.prepared.states[first + 1 + k] ?? 0)));
  }
}

/** Scenarios sorted by the states present in them: those of state s are from `starts[s]` up to `starts[s + 1]`. */
interface Holders {
  readonly starts: Int32Array;
  readonly list: Int32Array;
}

function holdersOf({ shares, present, starts: startOf }: Scenarios, states: number): Holders {
  const starts = new Int32Array(states + 1);
  for (const state of present) starts[state + 1] = (starts[state + 1] ?? 0) + 1;
  for (let s = 0; s < states; s++) starts[s + 1] = (starts[s + 1] ?? 0) + (starts[s] ?? 0);
  const list = new Int32Array(present.length);
  const next = starts.slice();
  for (let i = 0; i < shares.length; i++) {
    const end = startOf[i + 1] ?? 0;
    for (let n = startOf[i] ?? 0; n < end; n++) {
      const state = present[n] ?? 0;
      const to = next[state] ?? 0;
      list[to] = i;
      next[state] = to + 1;
    }
  }
  return { starts, list };
}

/** For the causes listed: sum of the weights of the scenarios with each state; state 0 takes what is left of `all`. */
function setJointShares(states: Float64Array, weights: Float64Array, all: number, causes: readonly number[], firstState: Int32Array, { starts, list }: Holders): void {
  for (const cause of causes) {
    const first = firstState[cause] ?? 0;
    const end = firstState[cause + 1] ?? 0;
    let absent = all;
    for (let s = first + 1; s < end; s++) {
      let sum = 0;
      const until = starts[s + 1] ?? 0;
      for (let n = starts[s] ?? 0; n < until; n++) sum += weights[list[n] ?? 0] ?? 0;
      states[s] = sum;
      absent -= sum;
    }
    states[first] = Math.max(0, absent);
  }
}

/** Multiplies the weights of all scenarios with this state. */
function multiplyHeld(weights: Float64Array, factor: number, { starts, list }: Holders, state: number): void {
  const until = starts[state + 1] ?? 0;
  for (let n = starts[state] ?? 0; n < until; n++) {
    const i = list[n] ?? 0;
    weights[i] = (weights[i] ?? 0) * factor;
  }
}

function subtract(whole: Float64Array, part: Float64Array, causes: readonly number[], firstState: Int32Array): void {
  for (const cause of causes) {
    const end = firstState[cause + 1] ?? 0;
    for (let s = firstState[cause] ?? 0; s < end; s++) whole[s] = Math.max(0, (whole[s] ?? 0) - (part[s] ?? 0));
  }
}

function total(weights: Float64Array): number {
  const count = weights.length;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += weights[i] ?? 0;
  return sum;
}
