import { mapped } from '../elementary';
import { checkGate } from './check-net';
import type { Gate, Inhibitor, LevelTable, Net } from './net';
import { scaledByLargest } from './scaled-by-largest';

/** Probability per class of levels; may sum to less than 1 when a level is ruled out. */
export type Distribution = Float64Array;

/** A gate with its levels merged into as few classes as what is known of it can tell apart; always two or more. */
export interface ReducedGate {
  readonly gate: number;
  readonly radix: number;
  readonly classOfLevel: readonly number[];
  readonly weights: Float64Array;
  readonly leak: Distribution;
  /** Contributions of earlier gates whose level is known. */
  readonly settled: Distribution[];
  readonly links: readonly { readonly cause: number; readonly contributes: readonly (Distribution | undefined)[] }[];
  readonly feeds: readonly { readonly into: ReducedGate; readonly contributes: readonly (Distribution | undefined)[] }[];
  readonly inhibitors: readonly Inhibitor[];
}

/**
 * Reduces gates one by one, later gates before those that feed them.
 *
 * Two neighbouring levels fall into one class when nothing known weighs them differently and they feed later gates
 * alike, or when both are impossible. Impossible levels at the top are dropped: a level never falls again. A seen
 * level of a graded gate thus needs two classes (below, at), and a gate that was looked at and not seen needs one:
 * it is a factor on each of its causes.
 */
export class GateReducer {
  readonly reduced: ReducedGate[] = [];
  logConstant = 0;
  /** What later gates make of each level of an earlier one. */
  readonly #toLater = new Map<number, { into: ReducedGate; perLevel: (Distribution | undefined)[] }[]>();
  readonly #factors = new Map<number, number[]>();

  constructor(
    private readonly net: Net,
    private readonly firstState: Int32Array,
    /** Multiplied in place by what one-class gates say of their causes. */
    private readonly weights: Float64Array,
    private readonly isChecked: boolean,
  ) {}

  reduce(index: number): void {
    const gate = this.net.gates[index];
    if (gate === undefined) return;
    const toLater = this.#toLater.get(index) ?? [];
    const factors = this.#factors.get(index);
    const saysNothing = toLater.length === 0 && factors === undefined && gate.weights.every((weight) => weight === gate.weights[0]);
    if (saysNothing) {
      if (gate.weights[0] !== 1) this.logConstant += Math.log(gate.weights[0] ?? 0);
      return;
    }
    if (!this.isChecked) checkedOnce(this.net, index, gate);
    const { values: weights, logScale } = scaledByLargest(factors === undefined ? gate.weights : gate.weights.map((weight, level) => weight * (factors[level] ?? 1)));
    this.logConstant += logScale;
    if (logScale === -Infinity) return;
    const inhibitors = (gate.inhibitedBy ?? []).filter(({ strength }) => strength > 0);
    const classOfLevel = classesOf(weights, mapped(toLater, ({ perLevel }) => perLevel), inhibitors.length > 0);
    if (Math.max(...classOfLevel) === 0) this.#multiplyIn(gate, classOfLevel, toLater);
    else this.#keep(index, gate, weights, classOfLevel, toLater, inhibitors);
  }

  /** One class: the gate is a product over its causes, its feeds and the leak. */
  #multiplyIn(gate: Gate, classOfLevel: readonly number[], toLater: readonly { into: ReducedGate; perLevel: readonly (Distribution | undefined)[] }[]): void {
    this.logConstant += Math.log(shareOfLowest(gate.leak, classOfLevel));
    for (const { cause, contributes } of gate.links) {
      let state = this.firstState[cause] ?? 0;
      for (const table of contributes) {
        state++;
        this.weights[state] = (this.weights[state] ?? 0) * shareOfLowest(table, classOfLevel);
      }
    }
    for (const feed of gate.feeds ?? []) {
      const old = this.#factors.get(feed.gate);
      this.#factors.set(feed.gate, [1, ...feed.contributes.map((table) => shareOfLowest(table, classOfLevel))].map((factor, level) => factor * (old?.[level] ?? 1)));
    }
    settle(toLater, classOfLevel.indexOf(0));
  }

  #keep(index: number, gate: Gate, weights: Float64Array, classOfLevel: readonly number[], toLater: readonly { into: ReducedGate; perLevel: readonly (Distribution | undefined)[] }[], inhibitors: readonly Inhibitor[]): void {
    const radix = Math.max(...classOfLevel) + 1;
    const levelOfClass = Array.from({ length: radix }, (_, c) => classOfLevel.indexOf(c));
    const possible = levelOfClass.filter((level) => (weights[level] ?? 0) > 0);
    const onlyLevel = possible.length === 1 ? possible[0] : undefined;
    if (onlyLevel !== undefined) settle(toLater, onlyLevel);
    const reduced: ReducedGate = {
      gate: index,
      radix,
      classOfLevel,
      weights: new Float64Array(levelOfClass.map((level) => weights[level] ?? 0)),
      leak: reachable(perClass(gate.leak, classOfLevel, radix)),
      settled: [],
      links: linksAtWork(gate, classOfLevel, radix),
      feeds: onlyLevel === undefined ? mapped(toLater, ({ into, perLevel }) => ({ into, contributes: levelOfClass.map((level) => perLevel[level]) })) : [],
      inhibitors,
    };
    this.reduced.push(reduced);
    for (const feed of gate.feeds ?? []) {
      const perLevel = [undefined, ...mapped(feed.contributes, (table) => contribution(table, classOfLevel, radix))];
      if (perLevel.some((row) => row !== undefined)) this.#toLater.set(feed.gate, [...(this.#toLater.get(feed.gate) ?? []), { into: reduced, perLevel }]);
    }
  }
}

/** Gates are read-only, so each object is checked once however often it is reused in what-if runs. */
const checked = new WeakMap<Gate, Net['causes']>();

function checkedOnce(net: Net, index: number, gate: Gate): void {
  if (checked.get(gate) === net.causes) return;
  checkGate(net, index, gate);
  checked.set(gate, net.causes);
}

function classesOf(weights: Float64Array, toLater: readonly (readonly (Distribution | undefined)[])[], inhibited: boolean): number[] {
  const classes = [0];
  for (let level = 1; level < weights.length; level++) {
    const weight = weights[level];
    const isAlike = weight === weights[level - 1] && (weight === 0 || toLater.every((perLevel) => sameNumbers(perLevel[level - 1], perLevel[level])));
    classes.push((classes[level - 1] ?? 0) + (isAlike ? 0 : 1));
  }
  const top = classes[classes.length - 1] ?? 0;
  const topIsRuledOut = top > 0 && weights[weights.length - 1] === 0 && !(inhibited && (weights[0] ?? 0) > 0);
  if (topIsRuledOut) for (let level = 0; level < classes.length; level++) if (classes[level] === top) classes[level] = -1;
  return classes;
}

function settle(toLater: readonly { into: ReducedGate; perLevel: readonly (Distribution | undefined)[] }[], level: number): void {
  for (const { into, perLevel } of toLater) {
    const row = perLevel[level];
    if (row !== undefined) into.settled.push(row);
  }
}

/** The part of a table that falls into class 0. */
function shareOfLowest(table: LevelTable, classOfLevel: readonly number[]): number {
  let sum = 0;
  for (let level = 0; level < table.length; level++) if (classOfLevel[level] === 0) sum += table[level] ?? 0;
  return sum;
}

function linksAtWork(gate: Gate, classOfLevel: readonly number[], radix: number): ReducedGate['links'] {
  const links: { cause: number; contributes: (Distribution | undefined)[] }[] = [];
  for (const link of gate.links) {
    const contributes: (Distribution | undefined)[] = [];
    let isAtWork = false;
    for (const table of link.contributes) {
      const row = contribution(table, classOfLevel, radix);
      contributes.push(row);
      isAtWork ||= row !== undefined;
    }
    if (isAtWork) links.push({ cause: link.cause, contributes });
  }
  return links;
}

function perClass(table: LevelTable, classOfLevel: readonly number[], radix: number): Distribution {
  const out = new Float64Array(radix);
  for (let level = 0; level < table.length; level++) {
    const c = classOfLevel[level] ?? -1;
    if (c >= 0) out[c] = (out[c] ?? 0) + (table[level] ?? 0);
  }
  return out;
}

/** The classes that a table reaches, or undefined when it can only contribute level 0. */
function contribution(table: LevelTable, classOfLevel: readonly number[], radix: number): Distribution | undefined {
  const distribution = perClass(table, classOfLevel, radix);
  for (let c = 0; c < radix; c++) if (distribution[c] !== (c === 0 ? 1 : 0)) return distribution;
  return undefined;
}

/**
 * A leak that is certain to reach above the lowest class leaves it 1e-150: far below the last digit of any answer,
 * yet enough to read from the lowest class how often nothing else contributes.
 */
function reachable(leak: Distribution): Distribution {
  if (leak[0] === 0) leak[0] = 1e-150;
  return leak;
}

function sameNumbers(a: Distribution | undefined, b: Distribution | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.every((x, i) => x === b[i]);
}
