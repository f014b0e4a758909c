import { mapped } from '../elementary';
import { checkCause, checkJoint } from './check-net';
import { laterGatesFirst } from './gate-order';
import { takeLarger } from './folded-causes';
import { liftedRow, type LevelRow } from './level-row';
import type { Inhibitor, Net } from './net';
import { GateReducer, type Distribution, type ReducedGate } from './reduced-gate';
import { scaledByLargest } from './scaled-by-largest';

/**
 * The net with everything multiplied in that needs no bookkeeping: what remains is a set of *digits* (gates whose
 * level must be remembered while causes are summed out) and three kinds of causes.
 *
 * - free: touches no digit; its posterior is its weights.
 * - folded: touches one digit only; it is merged with the leak of that digit.
 * - swept: the rest; these are summed out one by one.
 */
export interface Model {
  /** Index of state 0 of each cause in flat arrays over all states; the last entry is the number of states. */
  readonly firstState: Int32Array;
  /** Weight of every state, each cause scaled to sum 1, findings that concern one cause alone multiplied in. */
  readonly weights: Float64Array;
  /** Natural log of all that was scaled away; −Infinity when the evidence is impossible. */
  readonly logConstant: number;
  readonly digits: readonly Digit[];
  readonly swept: readonly SweptCause[];
  readonly free: readonly number[];
  readonly joints: readonly JointTable[];
}

export interface Digit {
  readonly gate: number;
  /** Number of classes of levels that must be told apart. */
  readonly radix: number;
  /** Class of each level; −1 when ruled out. */
  readonly classOfLevel: readonly number[];
  /** Factor of each class at closing. */
  readonly weights: Float64Array;
  /** See `liftedRow`. */
  readonly lift: number;
  readonly leak: Distribution;
  /** The leak together with earlier gates whose level is known. */
  readonly base: Distribution;
  readonly folded: readonly FoldedCause[];
  /** Later digits that this one contributes to once it is closed: one row per class. */
  readonly feeds: readonly { readonly into: number; readonly rows: readonly (LevelRow | undefined)[] }[];
  readonly inhibitors: readonly Inhibitor[];
}

export interface FoldedCause {
  readonly cause: number;
  /** One distribution per present state; undefined when the state contributes nothing. */
  readonly contributes: readonly (Distribution | undefined)[];
}

export interface SweptCause {
  readonly cause: number;
  /** Number of its states, absent included. */
  readonly states: number;
  readonly touches: readonly { readonly digit: number; readonly rows: readonly (LevelRow | undefined)[] }[];
  /** Its state stays in the frontier for a joint factor or for a gate that it inhibits. */
  readonly kept: boolean;
}

export interface JointTable {
  readonly causes: readonly number[];
  /** Scaled to a largest entry of 1. */
  readonly table: Float64Array;
}

/** The model of a net. Throws when a table that takes part is malformed, unless they are known to be well-formed. */
export function modelOf(net: Net, isChecked = false): Model {
  const joints = net.joints ?? [];
  if (!isChecked) net.causes.forEach(checkCause);
  if (!isChecked) for (const joint of joints) checkJoint(net, joint);
  const weights = stateWeights(net);
  const reducer = new GateReducer(net, weights.firstState, weights.values, isChecked);
  for (const gate of laterGatesFirst(net)) reducer.reduce(gate);
  const gates = reducer.reduced;
  const kept = new Set([...joints.flatMap((joint) => joint.causes), ...gates.flatMap((gate) => gate.inhibitors.map(({ cause }) => cause))]);
  const touches = touchesPerCause(net, gates);
  const scaledJoints = mapped(joints, (joint) => scaledByLargest(joint.table));
  return {
    firstState: weights.firstState,
    weights: weights.values,
    logConstant: reducer.logConstant + scaleCauses(weights) + scaledJoints.reduce((sum, { logScale }) => sum + logScale, 0),
    ...partition(net, gates, touches, kept, weights),
    joints: mapped(joints, (joint, index) => ({ causes: joint.causes, table: scaledJoints[index]?.values ?? new Float64Array() })),
  };
}

/** Posterior-shaped view of a flat array over all states: one row per cause. */
export function rowsPerCause(firstState: Int32Array, flat: Float64Array): number[][] {
  const rows: number[][] = [];
  for (let cause = 0; cause + 1 < firstState.length; cause++) {
    const row: number[] = [];
    const end = firstState[cause + 1] ?? 0;
    // Array.from on a view walks an iterator: thirty times slower for rows of two.
    for (let s = firstState[cause] ?? 0; s < end; s++) row.push(flat[s] ?? 0);
    rows.push(row);
  }
  return rows;
}

interface StateWeights {
  readonly firstState: Int32Array;
  readonly values: Float64Array;
  logScale: number;
}

interface RawTouch {
  readonly gate: number;
  readonly contributes: readonly (Distribution | undefined)[];
}

function stateWeights(net: Net): StateWeights {
  const firstState = new Int32Array(net.causes.length + 1);
  net.causes.forEach((cause, i) => (firstState[i + 1] = (firstState[i] ?? 0) + cause.weights.length));
  const values = new Float64Array(firstState[net.causes.length] ?? 0);
  const result = { firstState, values, logScale: 0 };
  net.causes.forEach(({ weights }, i) => values.set(weights, firstState[i]));
  result.logScale = scaleCauses(result);
  return result;
}

/** Scales the weights of every cause to sum 1 and returns the natural log of all that was divided out so far. */
function scaleCauses({ firstState, values, logScale }: StateWeights): number {
  let log = logScale;
  for (let cause = 0; cause + 1 < firstState.length; cause++) {
    const end = firstState[cause + 1] ?? 0;
    let sum = 0;
    for (let s = firstState[cause] ?? 0; s < end; s++) sum += values[s] ?? 0;
    log += Math.log(sum);
    if (sum > 0) for (let s = firstState[cause] ?? 0; s < end; s++) values[s] = (values[s] ?? 0) / sum;
  }
  return log;
}

function touchesPerCause(net: Net, gates: readonly ReducedGate[]): RawTouch[][] {
  const touches: RawTouch[][] = mapped(net.causes, () => []);
  gates.forEach((gate, index) => {
    for (const link of gate.links) touches[link.cause]?.push({ gate: index, contributes: link.contributes });
  });
  return touches;
}

function partition(net: Net, gates: readonly ReducedGate[], touches: RawTouch[][], kept: ReadonlySet<number>, weights: StateWeights) {
  const free: number[] = [];
  const swept: SweptCause[] = [];
  const folded: FoldedCause[][] = mapped(gates, () => []);
  const lifts = liftPerGate(gates, touches, weights);
  touches.forEach((own, cause) => {
    const [only] = own;
    if (only === undefined && !kept.has(cause)) free.push(cause);
    else if (only !== undefined && own.length === 1 && !kept.has(cause)) folded[only.gate]?.push({ cause, contributes: only.contributes });
    else swept.push({ cause, states: net.causes[cause]?.weights.length ?? 1, kept: kept.has(cause), touches: mapped(own, (touch) => ({ digit: touch.gate, rows: lifted(touch.contributes, lifts[touch.gate]) })) });
  });
  const indexOf = new Map(gates.map((gate, index) => [gate, index]));
  const digits = mapped(gates, (gate, index) => digitOf(gate, folded[index] ?? [], lifts, indexOf));
  return { free, swept, digits };
}

function digitOf(gate: ReducedGate, folded: readonly FoldedCause[], lifts: Float64Array, indexOf: ReadonlyMap<ReducedGate, number>): Digit {
  const lift = lifts[indexOf.get(gate) ?? 0] ?? 1;
  const weights = gate.weights.slice();
  const top = gate.radix - 1;
  weights[top] = (weights[top] ?? 0) / lift;
  const feeds = mapped(gate.feeds, ({ into, contributes }) => {
    const target = indexOf.get(into) ?? 0;
    return { into: target, rows: lifted(contributes, lifts[target]) };
  });
  return {
    gate: gate.gate,
    radix: gate.radix,
    classOfLevel: gate.classOfLevel,
    weights,
    lift,
    leak: gate.leak,
    base: baseOf(gate),
    folded,
    feeds,
    inhibitors: gate.inhibitors,
  };
}

function baseOf(gate: ReducedGate): Distribution {
  const base = gate.leak.slice();
  for (const row of gate.settled) takeLarger(base, row);
  return base;
}

function lifted(contributes: readonly (Distribution | undefined)[], lift = 1): (LevelRow | undefined)[] {
  return mapped(contributes, (distribution) => distribution && liftedRow(distribution, lift));
}

/** One over a bound on the prior chance of the top class, so that a fully explained frontier weighs about 1. */
function liftPerGate(gates: readonly ReducedGate[], touches: RawTouch[][], { firstState, values }: StateWeights): Float64Array {
  const reach = new Float64Array(gates.length);
  gates.forEach(({ leak, settled }, gate) => (reach[gate] = topOf(leak) + settled.reduce((sum, row) => sum + topOf(row), 0)));
  for (let cause = 0; cause < touches.length; cause++) {
    const first = firstState[cause] ?? 0;
    for (const { gate, contributes } of touches[cause] ?? [])
      for (let k = 0; k < contributes.length; k++) {
        const row = contributes[k];
        if (row !== undefined) reach[gate] = (reach[gate] ?? 0) + (values[first + 1 + k] ?? 0) * topOf(row);
      }
  }
  const indexOf = new Map(gates.map((gate, index) => [gate, index]));
  for (const gate of gates)
    for (const feed of gate.feeds) {
      const into = indexOf.get(feed.into) ?? 0;
      reach[into] = (reach[into] ?? 0) + feed.contributes.reduce((most, row) => Math.max(most, row ? topOf(row) : 0), 0);
    }
  return reach.map((mass) => (mass > 0 ? Math.min(1 / mass, 1e150) : 1));
}

function topOf(distribution: Distribution): number {
  return distribution[distribution.length - 1] ?? 0;
}
