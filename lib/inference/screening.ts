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
  readonly #isDrawn: Uint8Array;
  /** Factor of each state for the question at hand; 1 except for the causes that it concerns. */
  readonly #factorOf: Float64Array;
  readonly #weights: Float64Array;

  constructor(
    private readonly prepared: Prepared,
    private readonly scenarios: Scenarios,
  ) {
    this.#isDrawn = new Uint8Array(prepared.firstState.length - 1);
    for (const cause of scenarios.drawn) this.#isDrawn[cause] = 1;
    this.#factorOf = new Float64Array(prepared.states.length).fill(1);
    this.#weights = new Float64Array(scenarios.shares.length);
    this.marginals = prepared.states.slice();
    this.#accumulate(this.marginals, scenarios.shares);
  }

  /** Causes whose distribution can change with the outcome of the check. */
  causesFor(check: Check): readonly number[] {
    const asked = check.on.kind === 'states' ? check.on.causes : (gateOf(this.prepared.net, check)?.links ?? []).map(({ cause }) => cause);
    const alsoChanged = new Set(asked.filter((cause) => this.#isDrawn[cause] === 0));
    return alsoChanged.size === 0 ? this.scenarios.drawn : [...this.scenarios.drawn, ...alsoChanged];
  }

  /** Undefined for a check that needs exact sweeps. */
  jointsOf(check: Check): LevelJoints | undefined {
    if (check.on.kind === 'states') return this.#jointsOfStates(check.on.causes, levelCount(this.prepared.net, check));
    const forms = cumulativeForms(this.prepared, check);
    return forms && this.#jointsOfGate(forms);
  }

  #jointsOfGate(forms: readonly ProductForm[]): LevelJoints {
    const chances: number[] = [];
    const states: Float64Array[] = [];
    let below: Float64Array | undefined;
    let chanceBelow = 0;
    for (let level = 0; level <= forms.length; level++) {
      const form = forms[level];
      const cumulative = form === undefined ? this.marginals : new Float64Array(this.marginals.length);
      const chance = form === undefined ? 1 : this.#cumulative(form, cumulative);
      chances.push(Math.max(0, chance - chanceBelow));
      states.push(below === undefined ? cumulative : difference(cumulative, below));
      below = cumulative;
      chanceBelow = chance;
    }
    return { chances, states };
  }

  #cumulative({ constant, factors }: ProductForm, states: Float64Array): number {
    const { firstState } = this.prepared;
    const { shares, present } = this.scenarios;
    let base = constant;
    for (const { cause, factors: perState } of factors) {
      const first = firstState[cause] ?? 0;
      if (this.#isDrawn[cause] === 0) base *= this.#average(cause, perState);
      else for (let k = 0; k < perState.length; k++) this.#factorOf[first + k] = (this.#factorOf[first + k] ?? 1) * (perState[k] ?? 0);
    }
    for (let i = 0; i < shares.length; i++) {
      let p = base * (shares[i] ?? 0);
      for (const state of present[i] ?? []) p *= this.#factorOf[state] ?? 1;
      this.#weights[i] = p;
    }
    const chance = this.#accumulate(states, this.#weights);
    for (const { cause, factors: perState } of factors) {
      if (this.#isDrawn[cause] === 0) this.#fillIndependent(states, cause, perState, chance);
      else this.#factorOf.fill(1, firstState[cause], firstState[cause + 1]);
    }
    return chance;
  }

  #jointsOfStates(causes: readonly number[], combinations: number): LevelJoints {
    const [only] = causes;
    if (only !== undefined && causes.length === 1 && this.#isDrawn[only] === 0) return this.#jointsOfFreeCause(only, combinations);
    const chances: number[] = [];
    const states: Float64Array[] = [];
    for (let index = 0; index < combinations; index++) {
      this.#weighCombination(causes, combination(this.prepared, causes, index));
      const joint = new Float64Array(this.marginals.length);
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
      const joint = this.marginals.map((p) => p * chance);
      joint.fill(0, first, first + count);
      joint[first + k] = chance;
      return joint;
    });
    return { chances, states };
  }

  /** Sums scenario weights into the states of all drawn causes; returns the total. */
  #accumulate(states: Float64Array, weights: Float64Array): number {
    const { firstState } = this.prepared;
    const { present, drawn } = this.scenarios;
    for (const cause of drawn) states.fill(0, firstState[cause], firstState[cause + 1]);
    let total = 0;
    for (let i = 0; i < present.length; i++) {
      const weight = weights[i] ?? 0;
      if (weight === 0) continue;
      total += weight;
      for (const state of present[i] ?? []) states[state] = (states[state] ?? 0) + weight;
    }
    for (const cause of drawn) {
      const first = firstState[cause] ?? 0;
      let absent = total;
      for (let s = first + 1; s < (firstState[cause + 1] ?? 0); s++) absent -= states[s] ?? 0;
      states[first] = Math.max(0, absent);
    }
    return total;
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

function difference(a: Float64Array, b: Float64Array): Float64Array {
  const out = new Float64Array(a.length);
  for (let i = 0; i < a.length; i++) out[i] = Math.max(0, (a[i] ?? 0) - (b[i] ?? 0));
  return out;
}
