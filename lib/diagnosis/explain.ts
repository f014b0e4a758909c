import { answer, mulberry32, type Gate, type Net } from '../inference';
import { atWorkNow } from './build-net';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';

/** What one piece of evidence does to one cause, in decibans (10 · log10 of the odds factor; + speaks for, − against). */
export interface Weight {
  /** Symptom or check id; `circumstances` for machine, print and what was touched. */
  readonly about: string;
  readonly items: readonly Evidence[];
  /** With nothing else known. */
  readonly alone: number;
  /** When everything else is known and this comes last. */
  readonly leaveOneOut: number;
  /** Averaged over orders; the averages of all evidence sum exactly to the whole change in odds. */
  readonly averaged: number;
}

const SEED = 7;
/** Orders that are averaged when there are too many pieces to go through all subsets. */
const ORDERS = 24;
const MOST_SUBSETS = 64;

/**
 * Weights of every piece of evidence for every cause: result[cause][piece], pieces in the order of `evidencePieces`.
 * Exact average over all orders for up to 6 pieces, else over 24 seeded orders. Either way the averages of a cause sum
 * to its whole change in decibans. (Check values: diagnosis.md 2.5.)
 */
export function weightsOfEvidence(diagnosis: Pick<Diagnosis, 'net'>): ReadonlyMap<string, readonly Weight[]> {
  const { net, causes, gates } = diagnosis.net;
  const pieces = net.gates.flatMap((gate, index) => (isInformed(gate) ? [index] : []));
  const odds = oddsOfSubset(net, pieces);
  const all = pieces.map((_, piece) => piece);
  const averages = averaged(pieces.length, causes.length, odds);
  return new Map(causes.map((id, cause) => [id, pieces.map((gate, piece): Weight => ({
    about: gates[gate]?.about ?? '',
    items: gates[gate]?.items ?? [],
    alone: at(odds([piece]), cause) - at(odds([]), cause),
    leaveOneOut: at(odds(all), cause) - at(odds(all.filter((other) => other !== piece)), cause),
    averaged: at(averages[piece] ?? [], cause),
  }))]));
}

/** Decibans of a probability: 10 · log10(p / (1 − p)), kept within ±120. `decibans(0.1)` is −9.542. */
export function decibans(probability: number): number {
  const inside = Math.min(1 - 1e-12, Math.max(1e-12, probability));
  return 10 * Math.log10(inside / (1 - inside));
}

function isInformed(gate: Gate): boolean {
  return gate.weights.some((weight) => weight !== gate.weights[0]);
}

/** Log odds of every cause, in decibans, when only the pieces of a subset are known. Remembered per subset. */
function oddsOfSubset(net: Net, pieces: readonly number[]): (subset: readonly number[]) => readonly number[] {
  const known = new Map<string, readonly number[]>();
  return (subset) => {
    const key = [...subset].sort((a, b) => a - b).join();
    const earlier = known.get(key);
    if (earlier) return earlier;
    const kept = new Set(subset.map((piece) => pieces[piece]));
    const gates = net.gates.map((gate, index) => (kept.has(index) || !isInformed(gate) ? gate : { ...gate, weights: gate.weights.map(() => 1) }));
    const outcome = answer({ ...net, gates }, { levels: false });
    const odds = outcome.kind === 'answer' ? outcome.states.map((states) => decibans(atWorkNow(states))) : net.causes.map(() => 0);
    known.set(key, odds);
    return odds;
  };
}

function averaged(pieces: number, causes: number, odds: (subset: readonly number[]) => readonly number[]): number[][] {
  const sums = Array.from({ length: pieces }, () => Array.from({ length: causes }, () => 0));
  const add = (piece: number, before: readonly number[], after: readonly number[], share: number): void => {
    const row = sums[piece];
    if (row) for (let cause = 0; cause < causes; cause += 1) row[cause] = at(row, cause) + share * (at(after, cause) - at(before, cause));
  };
  if (2 ** pieces <= MOST_SUBSETS) {
    for (let mask = 0; mask < 2 ** pieces; mask += 1) {
      const subset = Array.from({ length: pieces }, (_, piece) => piece).filter((piece) => mask & (1 << piece));
      for (let piece = 0; piece < pieces; piece += 1) {
        if (mask & (1 << piece)) continue;
        add(piece, odds(subset), odds([...subset, piece]), shapleyShare(subset.length, pieces));
      }
    }
    return sums;
  }
  const uniform = mulberry32(SEED);
  for (let order = 0; order < ORDERS; order += 1) {
    const subset: number[] = [];
    for (const piece of shuffled(pieces, uniform)) {
      const before = odds(subset);
      subset.push(piece);
      add(piece, before, odds(subset), 1 / ORDERS);
    }
  }
  return sums;
}

/** Share of the orders of n pieces in which exactly these `before` pieces come first and this one next. */
function shapleyShare(before: number, n: number): number {
  let share = 1 / n;
  for (let k = 1; k <= before; k += 1) share *= k / (n - k);
  return share;
}

function shuffled(count: number, uniform: () => number): number[] {
  const order = Array.from({ length: count }, (_, index) => index);
  for (let last = count - 1; last > 0; last -= 1) {
    const other = Math.floor(uniform() * (last + 1));
    const kept = at(order, last);
    order[last] = at(order, other);
    order[other] = kept;
  }
  return order;
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? 0;
}
