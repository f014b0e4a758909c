import { answer, mulberry32, type Gate, type LevelTable, type Net } from '../inference';
import { atWorkNow } from './build-net';

/** Range of a chance over plausible readings of the figures behind it. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** Standard deviation of the log odds by which every figure is shaken (natural log). Choice after diagnosis.md 4. */
const NOISE = 0.5;
const SEED = 20260521;

/**
 * 90 % range of every cause's chance when priors, links and leaks of the knowledge base are each off by a random
 * factor on their odds (log odds normal, standard deviation 0.5), over `copies` copies. The same seed every time, so the
 * same case shows the same band.
 */
export function likelyRange(net: Net, copies: number): Band[] {
  if (copies === 0) return [];
  const normal = normalDraws(mulberry32(SEED));
  const chances: number[][] = net.causes.map(() => []);
  for (let copy = 0; copy < copies; copy += 1) {
    const outcome = answer(shaken(net, normal));
    if (outcome.kind !== 'answer') continue;
    outcome.states.forEach((states, cause) => chances[cause]?.push(atWorkNow(states)));
  }
  return chances.map((list) => {
    const sorted = list.sort((a, b) => a - b);
    return { low: quantile(sorted, 0.05), high: quantile(sorted, 0.95) };
  });
}

function shaken(net: Net, normal: () => number): Net {
  return {
    ...net,
    causes: net.causes.map((cause) => {
      const factor = Math.exp(NOISE * normal());
      return { weights: cause.weights.map((weight, state) => (state === 0 ? weight : weight * factor)) };
    }),
    gates: net.gates.map((gate): Gate => ({
      ...gate,
      leak: shakenTable(gate.leak, normal()),
      links: gate.links.map((link) => {
        const shift = normal();
        return { cause: link.cause, contributes: link.contributes.map((table) => shakenTable(table, shift)) };
      }),
    })),
  };
}

/** The odds of contributing nothing are multiplied by one factor; what is contributed keeps its proportions. */
function shakenTable(table: LevelTable, shift: number): LevelTable {
  const nothing = table[0] ?? 1;
  if (nothing >= 1 || nothing <= 0) return table;
  const odds = (nothing / (1 - nothing)) * Math.exp(NOISE * shift);
  const next = odds / (1 + odds);
  return table.map((share, level) => (level === 0 ? next : (share * (1 - next)) / (1 - nothing)));
}

function quantile(sorted: readonly number[], share: number): number {
  const position = share * (sorted.length - 1);
  const below = sorted[Math.floor(position)] ?? 0;
  const above = sorted[Math.ceil(position)] ?? below;
  return below + (above - below) * (position - Math.floor(position));
}

/** Standard normal draws from uniform ones (Box and Muller 1958). */
function normalDraws(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
