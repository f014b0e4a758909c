import { answerOf, LIMIT_UNITS, runOf, type AnswerOptions, type Impossible, type Run } from './answer';
import { drawPresent, drawStates } from './draws';
import { modelOf, rowsPerCause, type Model } from './model';
import type { Answer, Cost, Gate, Net, TooDense } from './net';
import { sameShape } from './same-shape';
import { Sweep } from './sweep';

/** Evidence on one cause alone: a factor for each of its states, state 0 first. */
export interface CauseFactor {
  readonly cause: number;
  readonly factors: readonly number[];
}

/** What a what-if run gives: the posterior of the causes and the evidence. */
export interface Lookahead {
  /** Natural log of the evidence, the supposed part included; −Infinity when that is impossible. */
  readonly logEvidence: number;
  /** Probability of every state of every cause, flat in the order of `Prepared.firstState`. */
  readonly states: Float64Array;
  /** As `states`, together with the cause contributing to no gate that takes part. */
  readonly silent: Float64Array;
}

export type Preparation = { readonly kind: 'prepared'; readonly prepared: Prepared } | ({ readonly kind: 'too-dense' } & TooDense) | Impossible;

/**
 * Runs the forward pass of a net once and keeps plan and tables, so that what-if questions cost one sweep each.
 * Same outcomes and errors as `answer`. Where only numbers differ from an `earlier` net, its plan is taken over.
 */
export function prepare(net: Net, options: AnswerOptions = {}, earlier?: Prepared): Preparation {
  const run = runOf(net, options.limitUnits ?? LIMIT_UNITS, earlier?.run);
  return run.kind === 'run' ? { kind: 'prepared', prepared: new Prepared(run, options) } : run;
}

export class Prepared {
  readonly cost: Cost;
  readonly logEvidence: number;
  /** Position of state 0 of each cause in flat arrays over all states; one entry more than there are causes. */
  readonly firstState: Int32Array;
  /** Posterior of every state, flat. */
  readonly states: Float64Array;
  /** Probability of every state together with the cause contributing to no gate that takes part (see `Answer.silent`), flat. */
  readonly silent: Float64Array;
  readonly #posterior;
  readonly #options: AnswerOptions;
  #answer: Answer | undefined;
  #trial: Sweep | undefined;

  constructor(
    /** The finished forward pass. */
    readonly run: Run,
    options: AnswerOptions,
  ) {
    this.#options = options;
    this.cost = run.cost;
    this.logEvidence = run.sweep.logEvidence;
    this.firstState = run.sweep.model.firstState;
    this.#posterior = run.sweep.backward(run.sweep.model.weights, true);
    this.states = this.#posterior.states;
    this.silent = this.#posterior.silent;
  }

  get net(): Net {
    return this.run.net;
  }

  get model(): Model {
    return this.run.sweep.model;
  }

  /** The full answer, as `answer(net)` gives it. */
  get answer(): Answer {
    this.#answer ??= answerOf(this.run, this.#posterior, this.#options);
    return this.#answer;
  }

  /**
   * Posterior when further evidence on single causes is supposed; the plan is reused.
   * A finding that would be absent is such evidence: a factor of 1 − link on each of its causes.
   */
  whatIfFactors(changes: readonly CauseFactor[]): Lookahead {
    return this.lookAhead(this.#weightsWith(changes));
  }

  /** The evidence alone of `whatIfFactors`, at half its price. */
  logEvidenceIf(changes: readonly CauseFactor[]): number {
    return this.#trialSweep().forward(this.#weightsWith(changes));
  }

  #weightsWith(changes: readonly CauseFactor[]): Float64Array {
    const weights = this.model.weights.slice();
    for (const { cause, factors } of changes) {
      const first = this.firstState[cause] ?? 0;
      const count = (this.firstState[cause + 1] ?? first) - first;
      if (factors.length !== count) throw new Error(`inference: what-if on cause ${cause}: got ${factors.length} factors, expected ${count}`);
      factors.forEach((factor, k) => (weights[first + k] = (weights[first + k] ?? 0) * factor));
    }
    return weights;
  }

  /** Posterior with these weights per state in place of `model.weights`; they need not sum to 1. */
  lookAhead(weights: Float64Array): Lookahead {
    return runOn(this.#trialSweep(), weights);
  }

  /** A second set of tables for what-if runs, so that the draws still find those of the answer. */
  #trialSweep(): Sweep {
    return (this.#trial ??= new Sweep(this.model, this.run.sweep.steps));
  }

  /** Posterior with one gate added, or put in the place of gate `replaces`. Plans anew. */
  whatIfGate(gate: Gate, replaces?: number): Lookahead | ({ readonly kind: 'too-dense' } & TooDense) {
    const gates = replaces === undefined ? [...this.net.gates, gate] : this.net.gates.map((old, index) => (index === replaces ? gate : old));
    return this.whatIfNet({ ...this.net, gates });
  }

  /**
   * Posterior of a changed net over the same causes; reuses the plan when only numbers have changed.
   * `isChecked` spares the tables another look when they were made from ones that are well-formed.
   */
  whatIfNet(net: Net, isChecked = false): Lookahead | ({ readonly kind: 'too-dense' } & TooDense) {
    const model = modelOf(net, isChecked);
    if (model.logConstant === -Infinity) return impossible(model.weights.length);
    if (sameShape(model, this.model)) {
      return runOn(new Sweep(model, this.run.sweep.steps, this.#trialSweep()), model.weights);
    }
    const run = runOf(net, this.#options.limitUnits ?? LIMIT_UNITS);
    if (run.kind === 'too-dense') return run;
    if (run.kind === 'impossible') return impossible(model.weights.length);
    const { states, silent } = run.sweep.backward(run.sweep.model.weights, false);
    return { logEvidence: run.sweep.logEvidence, states, silent };
  }

  /** `count` exact draws of all causes from the joint posterior, one byte per cause and row; repeatable by seed. */
  draws(count: number, seed: number): Uint8Array {
    return drawStates(this.run.sweep, count, seed);
  }

  /** The same draws as lists of the states present (positions as in `firstState`); of the free causes only `free` are drawn. */
  presentDraws(count: number, seed: number, free: readonly number[]): number[][] {
    const present = Array.from({ length: count }, (): number[] => []);
    drawPresent(this.run.sweep, count, seed, free, (draw, cause, state) => present[draw]?.push((this.firstState[cause] ?? 0) + state));
    return present;
  }

  /** A flat array over states as one row per cause. */
  rows(flat: Float64Array): number[][] {
    return rowsPerCause(this.firstState, flat);
  }
}

function runOn(sweep: Sweep, weights: Float64Array): Lookahead {
  const logEvidence = sweep.forward(weights);
  if (logEvidence === -Infinity) return impossible(weights.length);
  const { states, silent } = sweep.backward(weights, false);
  return { logEvidence, states, silent };
}

function impossible(states: number): Lookahead {
  return { logEvidence: -Infinity, states: new Float64Array(states), silent: new Float64Array(states) };
}
