import { combination, cumulativeForms, gateOf, levelCount, type Check, type ProductForm } from './check-question';
import type { LevelJoints } from './level-joints';
import type { Prepared } from './prepared';
import type { Scenarios } from './scenarios';

/**
 * Joint distribution of causes and outcome levels, estimated on scenarios: given a scenario the probability of a
 * level is a product over the causes present in it. Causes that were not drawn enter by their exact average.
 */
export class Screening {
  /** Share of every state over the scenarios; exact posterior for causes that were not drawn. */
  readonly marginals: Float64Array;
  /** Weight of each scenario under the question at hand. */
  readonly #weights: Float64Array;
  /** Tables handed out by `jointsOf`, written again by its next call. */
  readonly #tables: Float64Array[] = [];
  /** States present in the scenarios, one scenario after the other, and where each begins. */
  readonly #states: Int32Array;
  readonly #starts: Int32Array;
  /** Scenarios in which a state is present. */
  readonly #holders: Holders;

  constructor(
    private readonly prepared: Prepared,
    private readonly scenarios: Scenarios,
  ) {
    this.#weights = new Float64Array(scenarios.shares.length);
    this.#starts = Int32Array.of(0, ...runningTotals(scenarios.present.map(({ length }) => length)));
    this.#states = Int32Array.from(scenarios.present.flat());
    this.#holders = new Holders(scenarios.present, prepared.states.length);
    this.marginals = prepared.states.slice();
    scenarios.isDrawn.forEach((isDrawn, cause) => {
      if (isDrawn === 1) this.#allAbsent(this.marginals, cause, 1);
    });
    this.#accumulate(this.marginals, scenarios.shares);
  }

  /** Causes that were not drawn but are asked for: with those met in the scenarios, all whose distribution the outcome can change. */
  undrawnOf(check: Check): readonly number[] {
    const asked = check.on.kind === 'states' ? check.on.causes : (gateOf(this.prepared.net, check)?.links ?? []).map(({ cause }) => cause);
    return [...new Set(asked.filter((cause) => this.scenarios.isDrawn[cause] === 0))];
  }

  /** Undefined for a check that needs exact sweeps. Valid until the next call, and for `causes` only: those met and `undrawnOf`. */
  jointsOf(check: Check, causes: readonly number[]): LevelJoints | undefined {
    if (check.on.kind === 'states') return this.#jointsOfStates(check.on.causes, levelCount(this.prepared.net, check));
    const forms = cumulativeForms(this.prepared, check);
    return forms && this.#jointsOfGate(forms, causes);
  }

  #jointsOfGate(forms: readonly ProductForm[], causes: readonly number[]): LevelJoints {
    const states = [...forms.map((_, level) => this.#table(level)), this.#table(forms.length)];
    const upTo = forms.map((form, level) => this.#cumulative(form, states[level] ?? this.marginals));
    states[forms.length]?.set(this.marginals);
    for (let level = forms.length; level > 0; level--) this.#subtract(states[level], states[level - 1], causes);
    return { chances: [...upTo, 1].map((chance, level) => Math.max(0, chance - (level > 0 ? (upTo[level - 1] ?? 0) : 0))), states };
  }

  #subtract(whole: Float64Array | undefined, part: Float64Array | undefined, causes: readonly number[]): void {
    if (whole === undefined || part === undefined) return;
    const { firstState } = this.prepared;
    for (const cause of causes) {
      const end = firstState[cause + 1] ?? 0;
      for (let s = firstState[cause] ?? 0; s < end; s++) whole[s] = Math.max(0, (whole[s] ?? 0) - (part[s] ?? 0));
    }
  }

  #table(index: number): Float64Array {
    return (this.#tables[index] ??= new Float64Array(this.marginals.length));
  }

  #cumulative({ constant, factors }: ProductForm, states: Float64Array): number {
    const { firstState } = this.prepared;
    const { shares } = this.scenarios;
    let base = constant;
    for (const { cause, factors: perState } of factors) if (this.scenarios.isDrawn[cause] === 0) base *= this.#average(cause, perState);
    for (let i = 0; i < shares.length; i++) this.#weights[i] = base * (shares[i] ?? 0);
    for (const { cause, factors: perState } of factors) {
      const first = firstState[cause] ?? 0;
      for (let k = 1; k < perState.length; k++) this.#multiplyHolders(first + k, perState[k] ?? 0);
    }
    const chance = this.#accumulate(states, this.#weights);
    for (const { cause, factors: perState } of factors) if (this.scenarios.isDrawn[cause] === 0) this.#fillIndependent(states, cause, perState, chance);
    return chance;
  }

  #multiplyHolders(state: number, factor: number): void {
    const { list, starts } = this.#holders;
    const end = starts[state + 1] ?? 0;
    for (let n = starts[state] ?? 0; n < end; n++) {
      const i = list[n] ?? 0;
      this.#weights[i] = (this.#weights[i] ?? 0) * factor;
    }
  }

  #jointsOfStates(causes: readonly number[], combinations: number): LevelJoints {
    const [only] = causes;
    if (only !== undefined && causes.length === 1 && this.scenarios.isDrawn[only] === 0) return this.#jointsOfFreeCause(only, combinations);
    const chances: number[] = [];
    const states: Float64Array[] = [];
    for (let index = 0; index < combinations; index++) {
      this.#weighCombination(causes, combination(this.prepared, causes, index));
      const joint = this.#table(index);
      chances.push(this.#accumulate(joint, this.#weights));
      states.push(joint);
    }
    return { chances, states };
  }

  /** Share of each scenario in which the causes are in just these states, else 0. */
  #weighCombination(causes: readonly number[], wanted: readonly number[]): void {
    const { firstState } = this.prepared;
    const { shares, present } = this.scenarios;
    for (let i = 0; i < shares.length; i++) {
      const matches = causes.every((cause, n) => {
        const first = firstState[cause] ?? 0;
        const end = firstState[cause + 1] ?? 0;
        const found = present[i]?.find((state) => state > first && state < end) ?? first;
        return found === first + (wanted[n] ?? 0);
      });
      this.#weights[i] = matches ? (shares[i] ?? 0) : 0;
    }
  }

  #jointsOfFreeCause(cause: number, count: number): LevelJoints {
    const first = this.prepared.firstState[cause] ?? 0;
    const chances = Array.from({ length: count }, (_, k) => this.prepared.states[first + k] ?? 0);
    const states = chances.map((chance, k) => {
      const joint = this.#table(k);
      for (let s = 0; s < joint.length; s++) joint[s] = (this.marginals[s] ?? 0) * chance;
      joint.fill(0, first, first + count);
      joint[first + k] = chance;
      return joint;
    });
    return { chances, states };
  }

  /** Sums scenario weights into the states of all causes met; returns the total. */
  #accumulate(states: Float64Array, weights: Float64Array): number {
    const { firstState } = this.prepared;
    const { met } = this.scenarios;
    const starts = this.#starts;
    const present = this.#states;
    for (const cause of met) this.#allAbsent(states, cause, 0);
    let total = 0;
    for (let i = 0; i < weights.length; i++) {
      const weight = weights[i] ?? 0;
      const end = starts[i + 1] ?? 0;
      total += weight;
      for (let n = starts[i] ?? 0; n < end; n++) {
        const state = present[n] ?? 0;
        states[state] = (states[state] ?? 0) + weight;
      }
    }
    for (const cause of met) {
      const first = firstState[cause] ?? 0;
      const end = firstState[cause + 1] ?? 0;
      let absent = total;
      for (let s = first + 1; s < end; s++) absent -= states[s] ?? 0;
      states[first] = Math.max(0, absent);
    }
    return total;
  }

  #allAbsent(states: Float64Array, cause: number, total: number): void {
    const first = this.prepared.firstState[cause] ?? 0;
    const end = this.prepared.firstState[cause + 1] ?? 0;
    for (let s = first; s < end; s++) states[s] = s === first ? total : 0;
  }

  #average(cause: number, perState: readonly number[]): number {
    const first = this.prepared.firstState[cause] ?? 0;
    let sum = 0;
    for (let k = 0; k < perState.length; k++) sum += (perState[k] ?? 0) * (this.prepared.states[first + k] ?? 0);
    return sum;
  }

  #fillIndependent(states: Float64Array, cause: number, perState: readonly number[], chance: number): void {
    const first = this.prepared.firstState[cause] ?? 0;
    const average = this.#average(cause, perState);
    for (let k = 0; k < perState.length; k++) states[first + k] = average > 0 ? (chance * (perState[k] ?? 0) * (this.prepared.states[first + k] ?? 0)) / average : 0;
  }
}

function runningTotals(lengths: readonly number[]): number[] {
  let total = 0;
  return lengths.map((length) => (total += length));
}

/** Scenarios sorted by the states present in them. */
class Holders {
  readonly starts: Int32Array;
  readonly list: Int32Array;

  constructor(present: readonly (readonly number[])[], states: number) {
    this.starts = new Int32Array(states + 1);
    for (const own of present) for (const state of own) this.starts[state + 1] = (this.starts[state + 1] ?? 0) + 1;
    for (let s = 0; s < states; s++) this.starts[s + 1] = (this.starts[s + 1] ?? 0) + (this.starts[s] ?? 0);
    this.list = new Int32Array(this.starts[states] ?? 0);
    const next = this.starts.slice();
    present.forEach((own, i) => {
      for (const state of own) {
        const n = next[state] ?? 0;
        this.list[n] = i;
        next[state] = n + 1;
      }
    });
  }
}
