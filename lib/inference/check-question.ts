import { mapped } from '../elementary';
import { atIndex } from './at-index';
import type { Gate, LevelTable, Net } from './net';
import type { CauseFactor, Prepared } from './prepared';

/** Something that could be found out next. */
export interface Check {
  /** What the outcome depends on: the level of a gate of the net, of a gate not in the net, or the states of causes. */
  readonly on:
    | { readonly kind: 'gate'; readonly gate: number }
    | { readonly kind: 'new-gate'; readonly gate: Gate }
    | { readonly kind: 'states'; readonly causes: readonly number[] };
  /**
   * Per outcome: its probability at each level of the gate, or at each combination of the states (row-major, last
   * cause fastest). For every level the outcomes sum to 1. Yes/no is [[1, 0], [0, 1]]; a number falls into bins.
   */
  readonly outcomes: readonly (readonly number[])[];
  /** What taking the check costs, above 0, in any one unit (minutes). */
  readonly cost: number;
}

/**
 * A question put as products: the probability of everything up to a certain level is `constant` times one factor per
 * cause state. Such a question keeps the plan of the net, whatever its answer.
 */
export interface ProductForm {
  readonly constant: number;
  readonly factors: readonly CauseFactor[];
}

/** Throws when outcomes have the wrong length or do not sum to 1, or the cost is not above 0. */
export function checkOutcomes(net: Net, check: Check, name: string): void {
  const length = levelCount(net, check);
  if (!(check.cost > 0 && check.cost < Infinity)) throw new Error(`inference: ${name}: got cost ${check.cost}, expected a number above 0`);
  for (const outcome of check.outcomes)
    if (outcome.length !== length || outcome.some((p) => !(p >= 0))) throw new Error(`inference: ${name}: got outcome [${outcome.join(', ')}], expected ${length} probabilities`);
  for (let level = 0; level < length; level++) {
    let sum = 0;
    for (const outcome of check.outcomes) sum += outcome[level] ?? 0;
    if (Math.abs(sum - 1) > 1e-6) throw new Error(`inference: ${name}: outcomes sum to ${sum} at level ${level}, expected 1`);
  }
}

/** The gate that a check asks for, or undefined when it asks for states. */
export function gateOf(net: Net, on: Check['on']): Gate | undefined {
  switch (on.kind) {
    case 'gate':
      return atIndex(net.gates, on.gate, 'gate');
    case 'new-gate':
      return on.gate;
    case 'states':
      return undefined;
  }
}

/**
 * The gate that a check asks for, when its levels can be put as products: undefined when the check asks for states, or
 * when the gate is tied to others (something is known of it or of a gate that it feeds, an earlier gate feeds it, or a
 * cause inhibits it).
 */
export function productGate(prepared: Prepared, { on }: Check): Gate | undefined {
  const gate = gateOf(prepared.net, on);
  if (gate === undefined || isLookedAt(gate) || (gate.feeds ?? []).length > 0 || (gate.inhibitedBy ?? []).length > 0) return undefined;
  return on.kind === 'gate' && prepared.model.digits.some((digit) => digit.gate === on.gate) ? undefined : gate;
}

/** Cumulative product forms of such a gate, one per level below the top. */
export function cumulativeForms(gate: Gate): ProductForm[] {
  const forms: ProductForm[] = [];
  for (let level = 0; level + 1 < gate.weights.length; level++) {
    const factors = mapped(gate.links, ({ cause, contributes }) => ({ cause, factors: factorsUpTo(contributes, level) }));
    forms.push({ constant: upTo(gate.leak, level), factors });
  }
  return forms;
}

/** Chance of this level or a lower one in each state of a cause; absent it contributes nothing. */
function factorsUpTo(contributes: readonly LevelTable[], level: number): number[] {
  const factors = [1];
  for (const table of contributes) factors.push(upTo(table, level));
  return factors;
}

function isLookedAt(gate: Gate): boolean {
  return gate.weights.some((weight) => weight !== gate.weights[0]);
}

/** States of the causes in combination `index`, row-major, last cause fastest. */
export function combination(prepared: Prepared, causes: readonly number[], index: number): number[] {
  const states: number[] = [];
  let rest = index;
  for (const cause of [...causes].reverse()) {
    const count = stateCount(prepared.net, cause);
    states.unshift(rest % count);
    rest = Math.floor(rest / count);
  }
  return states;
}

export function stateCount(net: Net, cause: number): number {
  return atIndex(net.causes, cause, 'cause').weights.length;
}

/** Number of levels, or of combinations of states, that the outcomes of a check depend on. */
export function levelCount(net: Net, check: Check): number {
  if (check.on.kind === 'states') return check.on.causes.reduce((product, cause) => product * stateCount(net, cause), 1);
  return gateOf(net, check.on)?.weights.length ?? 0;
}

/** What a table gives to this level and all below. */
export function upTo(table: readonly number[], level: number): number {
  let sum = 0;
  for (let l = 0; l <= level; l++) sum += table[l] ?? 0;
  return sum;
}
