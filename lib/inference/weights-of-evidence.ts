import { mulberry32 } from '../elementary';
import { answer, LIMIT_UNITS } from './answer';
import type { JointFactor, Net } from './net';

/** One piece of evidence that can be put in or left out. */
export type EvidenceItem =
  | { readonly kind: 'gate'; readonly gate: number; readonly weights: readonly number[] }
  | { readonly kind: 'cause'; readonly cause: number; readonly factors: readonly number[] }
  | { readonly kind: 'joint'; readonly joint: JointFactor };

/** What each item says for or against one cause. All in decibans, 10·log10 of an odds ratio; positive speaks for it. */
export interface WeightsOfEvidence {
  /** Log odds before and after all items. */
  readonly prior: number;
  readonly posterior: number;
  readonly items: readonly ItemWeight[];
}

export interface ItemWeight {
  /** Change of the log odds when this item is the only one. */
  readonly alone: number;
  /** Change when it is added last. */
  readonly leaveOneOut: number;
  /** Mean change over orders in which the items may come in; over all items these sum to posterior − prior. */
  readonly orderAveraged: number;
}

export interface WeightsOptions {
  /** Largest number of orders; all of them are used when there are no more than this. Default 24. */
  readonly orders?: number;
  readonly seed?: number;
  /** States of the cause that count as "it is this cause"; default every present state. */
  readonly states?: readonly number[];
  readonly limitUnits?: number;
}

/**
 * Weight of evidence of each item for each of the causes listed, in the order listed.
 *
 * `base` is the net without the items (their gates not looked at). With more items than can be permuted in
 * `orders` orders, seeded random orders and their reverses are averaged; the sum over items stays exact.
 * Throws when a subset of the items is too dense or impossible. A single finding with likelihood ratio 10 weighs 10 dB.
 */
export function weightsOfEvidence(base: Net, items: readonly EvidenceItem[], causes: readonly number[], options: WeightsOptions = {}): WeightsOfEvidence[] {
  const odds = new SubsetOdds(base, items, causes, options);
  const none = items.map(() => false);
  const all = items.map(() => true);
  const prior = odds.of(none);
  const posterior = odds.of(all);
  const only = items.map((_, item) => odds.of(flipped(none, item)));
  const without = items.map((_, item) => odds.of(flipped(all, item)));
  const averaged = averageOverOrders(odds, items.length, causes.length, options);
  return causes.map((_, c) => ({
    prior: prior[c] ?? 0,
    posterior: posterior[c] ?? 0,
    items: items.map((_, item) => ({
      alone: (only[item]?.[c] ?? 0) - (prior[c] ?? 0),
      leaveOneOut: (posterior[c] ?? 0) - (without[item]?.[c] ?? 0),
      orderAveraged: averaged[item]?.[c] ?? 0,
    })),
  }));
}

/** The net with the chosen items put in. */
export function withEvidence(base: Net, items: readonly EvidenceItem[]): Net {
  const causes = [...base.causes];
  const gates = [...base.gates];
  const joints = [...(base.joints ?? [])];
  for (const item of items) {
    switch (item.kind) {
      case 'gate': {
        const gate = gates[item.gate];
        if (gate !== undefined) gates[item.gate] = { ...gate, weights: gate.weights.map((weight, level) => weight * (item.weights[level] ?? 0)) };
        break;
      }
      case 'cause': {
        const cause = causes[item.cause];
        if (cause !== undefined) causes[item.cause] = { weights: cause.weights.map((weight, k) => weight * (item.factors[k] ?? 0)) };
        break;
      }
      case 'joint':
        joints.push(item.joint);
        break;
    }
  }
  return { causes, gates, joints };
}

/** 10·log10 of the odds that the cause is in one of the states, from its posterior row. */
export function decibans(row: readonly number[], states?: readonly number[]): number {
  const counts = (state: number) => (states === undefined ? state > 0 : states.includes(state));
  const sum = (wanted: boolean) => row.reduce((total, p, state) => (counts(state) === wanted ? total + p : total), 0);
  return 10 * Math.log10(sum(true) / sum(false));
}

class SubsetOdds {
  readonly #known = new Map<string, readonly number[]>();

  constructor(
    private readonly base: Net,
    private readonly items: readonly EvidenceItem[],
    private readonly causes: readonly number[],
    private readonly options: WeightsOptions,
  ) {}

  of(isIn: readonly boolean[]): readonly number[] {
    const key = isIn.map((put) => (put ? '1' : '0')).join('');
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = answer(withEvidence(this.base, this.items.filter((_, item) => isIn[item] === true)), { limitUnits: this.options.limitUnits ?? LIMIT_UNITS, levels: false });
    if (found.kind !== 'answer') throw new Error(`inference: evidence ${key} is ${found.kind}, expected every subset of the items to have an answer`);
    const odds = this.causes.map((cause) => decibans(found.states[cause] ?? [], this.options.states));
    this.#known.set(key, odds);
    return odds;
  }
}

function averageOverOrders(odds: SubsetOdds, items: number, causes: number, options: WeightsOptions): number[][] {
  const orders = ordersOf(items, options.orders ?? 24, mulberry32(options.seed ?? 1));
  const sums = Array.from({ length: items }, () => new Array<number>(causes).fill(0));
  for (const order of orders) {
    const isIn = new Array<boolean>(items).fill(false);
    let before = odds.of(isIn);
    for (const item of order) {
      isIn[item] = true;
      const after = odds.of(isIn);
      const row = sums[item] ?? [];
      for (let c = 0; c < causes; c++) row[c] = (row[c] ?? 0) + ((after[c] ?? 0) - (before[c] ?? 0)) / orders.length;
      before = after;
    }
  }
  return sums;
}

/** All orders when there are no more than `most`, else random ones, each with its reverse so that ends even out. */
function ordersOf(items: number, most: number, random: () => number): number[][] {
  const all = Array.from({ length: items }, (_, item) => item);
  let count = 1;
  for (let i = 2; i <= items && count <= most; i++) count *= i;
  if (count <= most) return permutations(all);
  return Array.from({ length: Math.max(1, Math.floor(most / 2)) }, () => shuffled(all, random)).flatMap((order) => [order, [...order].reverse()]);
}

function permutations(list: readonly number[]): number[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((first) => permutations(list.filter((other) => other !== first)).map((rest) => [first, ...rest]));
}

function shuffled(list: readonly number[], random: () => number): number[] {
  const left = [...list];
  const out: number[] = [];
  while (left.length > 0) out.push(...left.splice(Math.floor(random() * left.length), 1));
  return out;
}

function flipped(isIn: readonly boolean[], item: number): boolean[] {
  return isIn.map((put, i) => (i === item ? !put : put));
}
