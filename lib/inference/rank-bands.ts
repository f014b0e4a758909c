import { mulberry32 } from '../elementary';
import type { Gate, LevelTable, Net } from './net';
import type { Lookahead, Prepared } from './prepared';

export interface RankBand {
  /** 5th and 95th percentile, over the copies, of the chance of the cause (see `chances`). */
  readonly low: number;
  readonly high: number;
  /** Best and worst rank, 1 first, between which it stays in 90 % of the copies. */
  readonly bestRank: number;
  readonly worstRank: number;
  /** Share of the copies in which it is first. */
  readonly first: number;
}

export interface RankBandOptions {
  /** Number of perturbed copies; default 100. */
  readonly copies?: number;
  /** Standard deviation of the noise on every log odds, nats; default 0.5, which is a factor of 1.65 either way. */
  readonly sd?: number;
  readonly seed?: number;
  /** Chance of every cause by which it is ranked, from the posterior of a copy; default that it is present in any state. */
  readonly chances?: (copy: Lookahead) => Float64Array;
}

/**
 * How far the ranking of the causes depends on numbers that are estimates: one band per cause.
 *
 * Every prior, link and leak that takes part is moved by independent normal noise in log odds, and the net is
 * answered again with the same plan. Numbers that are 0 or 1 stay. The same seed gives the same bands.
 */
export function rankBands(prepared: Prepared, options: RankBandOptions = {}): RankBand[] {
  const normal = normalNoise(mulberry32(options.seed ?? 1), options.sd ?? 0.5);
  const { firstState, net } = prepared;
  const present = (seen: Lookahead): Float64Array => Float64Array.from(net.causes, (_, cause) => 1 - (seen.states[firstState[cause] ?? 0] ?? 0));
  const chances = options.chances ?? present;
  const copies: Float64Array[] = [];
  for (let copy = 0; copy < (options.copies ?? 100); copy++) {
    const seen = prepared.whatIfNet(perturbed(net, normal), true);
    if ('kind' in seen || seen.logEvidence === -Infinity) continue;
    copies.push(chances(seen));
  }
  const ranks = copies.map(ranksOf);
  return net.causes.map((_, cause) => bandOf(cause, copies, ranks));
}

/** The net with noise in log odds on every prior, link and leak of the gates that take part. */
export function perturbed(net: Net, noise: () => number): Net {
  const table = (levels: LevelTable): LevelTable => movedTable(levels, noise());
  const isFed = new Set(net.gates.flatMap((gate) => (gate.feeds ?? []).map((feed) => feed.gate)));
  const gateOf = (gate: Gate, index: number): Gate => {
    if (!isFed.has(index) && gate.weights.every((weight) => weight === gate.weights[0])) return gate;
    return {
      ...gate,
      leak: table(gate.leak),
      links: gate.links.map((link) => ({ cause: link.cause, contributes: link.contributes.map(table) })),
      ...(gate.feeds === undefined ? {} : { feeds: gate.feeds.map((feed) => ({ gate: feed.gate, contributes: feed.contributes.map(table) })) }),
    };
  };
  const causes = net.causes.map(({ weights }) => {
    const factor = Math.exp(noise());
    return { weights: weights.map((weight, k) => (k === 0 ? weight : weight * factor)) };
  });
  return { ...net, causes, gates: net.gates.map(gateOf) };
}

/** Independent normal numbers with mean 0 (Box and Muller's transform). */
export function normalNoise(random: () => number, sd: number): () => number {
  return () => sd * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** The chance of any level above 0 moves in log odds; the levels keep their proportions. */
function movedTable(levels: LevelTable, shift: number): LevelTable {
  const silent = levels[0] ?? 0;
  if (silent === 1 || silent === 0) return levels;
  const heard = 1 - silent;
  const moved = heard / (heard + silent * Math.exp(-shift));
  return levels.map((p, level) => (level === 0 ? 1 - moved : (p * moved) / heard));
}

function bandOf(cause: number, copies: readonly Float64Array[], ranks: readonly Int32Array[]): RankBand {
  const probabilities = Float64Array.from(copies, (copy) => copy[cause] ?? 0).sort();
  const places = Float64Array.from(ranks, (rank) => rank[cause] ?? 0).sort();
  return {
    low: quantile(probabilities, 0.05),
    high: quantile(probabilities, 0.95),
    bestRank: Math.round(quantile(places, 0.05)),
    worstRank: Math.round(quantile(places, 0.95)),
    first: places.filter((place) => place === 1).length / Math.max(1, places.length),
  };
}

function ranksOf(present: Float64Array): Int32Array {
  const order = Array.from(present.keys()).sort((a, b) => (present[b] ?? 0) - (present[a] ?? 0) || a - b);
  const ranks = new Int32Array(present.length);
  order.forEach((cause, position) => (ranks[cause] = position + 1));
  return ranks;
}

function quantile(sorted: Float64Array, q: number): number {
  const position = q * (sorted.length - 1);
  const low = sorted[Math.floor(position)] ?? NaN;
  const high = sorted[Math.ceil(position)] ?? NaN;
  return low + (high - low) * (position - Math.floor(position));
}
