import { waitingOf } from './frontier';
import { modelOf, rowsPerCause, type Model } from './model';
import type { Answer, Cost, Gate, Net, TooDense } from './net';
import { stepsInOrder, type Step } from './plan';
import { sameShape } from './same-shape';
import { Sweep, type Posterior } from './sweep';
import { sweepOrder } from './sweep-order';

export interface AnswerOptions {
  /** Cost above which no sweep is run; default `LIMIT_UNITS`. */
  readonly limitUnits?: number;
  /** Gates that nothing is known of whose `levels` are wanted all the same; each costs one sweep per level. */
  readonly predict?: readonly number[];
  /** False saves the extra sweeps that tell apart levels which the main sweep had merged; `levels` is then empty there. */
  readonly levels?: boolean;
}

/** The evidence contradicts the net: no combination of causes gives it any probability. */
export interface Impossible {
  readonly kind: 'impossible';
}

export type Outcome = ({ readonly kind: 'answer' } & Answer) | ({ readonly kind: 'too-dense' } & TooDense) | Impossible;

/** Largest cost of a sweep that is run unasked: about 0.1 s and 60 MB. Estimate from the bench of this project. */
export const LIMIT_UNITS = 3e7;

/**
 * Exact posterior of every cause given everything observed.
 *
 * Returns `too-dense` instead when the sweep would cost more than `limitUnits`, and `impossible` when the evidence
 * has probability 0, which tables without zeros rule out. Throws on malformed tables and indices.
 *
 * One cause with prior 0.1, seen through a link of 0.8 with leak 0.02: posterior 0.1 · 0.804 / 0.0984 = 0.81707….
 */
export function answer(net: Net, options: AnswerOptions = {}): Outcome {
  const run = runOf(net, options.limitUnits ?? LIMIT_UNITS);
  if (run.kind !== 'run') return run;
  return { kind: 'answer', ...answerOf(run, run.sweep.backward(run.sweep.model.weights, true), options) };
}

/** Natural log of the evidence alone, without the posterior; −Infinity when it is impossible, undefined when it is too dense. */
export function logEvidenceOf(net: Net, limitUnits = LIMIT_UNITS): number | undefined {
  const run = runOf(net, limitUnits);
  if (run.kind === 'too-dense') return undefined;
  return run.kind === 'run' ? run.sweep.logEvidence : -Infinity;
}

/** A finished forward pass. */
export interface Run {
  readonly kind: 'run';
  readonly net: Net;
  readonly sweep: Sweep;
  readonly cost: Cost;
}

/** Plans and runs the forward pass; an earlier plan is taken over where only numbers have changed since. */
export function runOf(net: Net, limitUnits: number, earlier?: Run): Run | ({ readonly kind: 'too-dense' } & TooDense) | Impossible {
  const model = modelOf(net);
  if (model.logConstant === -Infinity) return { kind: 'impossible' };
  const { steps, cost } = earlier && fitsPlanOf(earlier, net, model) ? { steps: earlier.sweep.steps, cost: earlier.cost } : planOf(model);
  if (cost.units > limitUnits) return { kind: 'too-dense', cost, confirmFirst: cheaperWithout(net, model) };
  const sweep = new Sweep(model, steps);
  return sweep.forward(model.weights) === -Infinity ? { kind: 'impossible' } : { kind: 'run', net, sweep, cost };
}

/** The shape of a model rests on gates, joint factors and the number of states; where those are the very same it need not be looked at. */
function fitsPlanOf({ net: before, sweep }: Run, net: Net, model: Model): boolean {
  const sameParts = net.gates === before.gates && net.joints === before.joints && model.firstState.length === sweep.model.firstState.length;
  return sameParts ? model.firstState.every((first, cause) => first === sweep.model.firstState[cause]) : sameShape(model, sweep.model);
}

function planOf(model: Model): { readonly steps: readonly Step[]; readonly cost: Cost } {
  const waiting = waitingOf(model);
  const { order, cost } = sweepOrder(model, waiting);
  return { steps: stepsInOrder(model, waiting, order), cost };
}

/** The answer that a finished run and its backward pass give. */
export function answerOf({ net, sweep, cost }: Run, posterior: Posterior, { predict = [], levels: wanted = true }: AnswerOptions): Answer {
  const { model, logEvidence } = sweep;
  const levels: (readonly number[])[] = net.gates.map((gate) => knownLevels(gate));
  const leakAlone = net.gates.map(() => 0);
  model.digits.forEach(({ gate, classOfLevel }, digit) => {
    levels[gate] = levelsOfClasses(net.gates[gate], classOfLevel, posterior.classes[digit] ?? new Float64Array()) ?? (wanted ? levelsByTrial(net, gate) : []);
    leakAlone[gate] = posterior.leakAlone[digit] ?? 0;
  });
  for (const gate of predict) if (levels[gate]?.length === 0) levels[gate] = levelsByTrial(net, gate);
  if (wanted) net.gates.forEach((gate, index) => {
    if (levels[index]?.length === 0 && gate.weights.some((weight) => weight !== gate.weights[0])) levels[index] = levelsByTrial(net, index);
  });
  return { states: rowsPerCause(model.firstState, posterior.states), silent: rowsPerCause(model.firstState, posterior.silent), logEvidence, leakAlone, levels, cost };
}

/** One level is certain, or nothing can be said without a sweep. */
function knownLevels(gate: Gate): readonly number[] {
  const possible = gate.weights.filter((weight) => weight > 0).length;
  return possible === 1 ? gate.weights.map((weight) => (weight > 0 ? 1 : 0)) : [];
}

/** Undefined when a class holds several possible levels, which the posterior of the classes cannot tell apart. */
function levelsOfClasses(gate: Gate | undefined, classOfLevel: readonly number[], classes: Float64Array): number[] | undefined {
  const isPossible = (level: number) => (gate?.weights[level] ?? 0) > 0;
  const possibleClasses = classOfLevel.filter((c, level) => c >= 0 && isPossible(level));
  if (new Set(possibleClasses).size < possibleClasses.length) return undefined;
  return classOfLevel.map((c, level) => (c >= 0 && isPossible(level) ? (classes[c] ?? 0) : 0));
}

/** Probability of each level of a gate, from the evidence of the net with that level pinned. */
function levelsByTrial(net: Net, index: number): number[] {
  const weights = net.gates[index]?.weights ?? [];
  const logs = weights.map((_, pinned) => logEvidenceWith(net, index, weights.map((weight, level) => (level === pinned ? weight : 0))));
  const largest = Math.max(...logs);
  const shares = logs.map((log) => Math.exp(log - largest));
  const sum = shares.reduce((a, b) => a + b, 0);
  return shares.map((share) => share / sum);
}

function logEvidenceWith(net: Net, index: number, weights: readonly number[]): number {
  const gates = net.gates.map((gate, g) => (g === index ? { ...gate, weights } : gate));
  return logEvidenceOf({ ...net, gates }, Infinity) ?? -Infinity;
}

/** Gates that take part, cheapest remaining sweep first when nothing were known of that gate. One try at an order each: there are many. */
function cheaperWithout(net: Net, model: Model): number[] {
  const unitsWithout = model.digits.map(({ gate: index }) => {
    const gates = net.gates.map((gate, g) => (g === index ? { ...gate, weights: gate.weights.map(() => 1) } : gate));
    const without = modelOf({ ...net, gates });
    return { index, units: sweepOrder(without, waitingOf(without), 1).cost.units };
  });
  return unitsWithout.sort((a, b) => a.units - b.units).map(({ index }) => index);
}
