import { mulberry32, type Gate, type Net } from '@/lib/inference';
import { at } from './at';

/**
 * The net that the Python program makes from the same seed: two-state causes, two-level gates, nothing looked at.
 * Priors .005 … .080, links .1 … .9, leaks .002 … .032, all rounded to three digits; kMin … kMax causes per gate.
 */
export function seededNet(causes: number, gates: number, kMin: number, kMax: number, seed: number): Net {
  const u = mulberry32(seed);
  const rounded = (x: number) => Math.floor(x * 1000 + 0.5) / 1000;
  const priors = Array.from({ length: causes }, () => rounded(0.005 + 0.075 * u()));
  return {
    causes: priors.map((p) => ({ weights: [1 - p, p] })),
    gates: Array.from({ length: gates }, (): Gate => {
      const count = kMin + Math.floor(u() * (kMax - kMin + 1));
      const left = Array.from({ length: causes }, (_, i) => i);
      const links = Array.from({ length: count }, (_, t) => {
        const s = t + Math.floor(u() * (causes - t));
        [left[t], left[s]] = [at(left, s), at(left, t)];
        const q = rounded(0.1 + 0.8 * u());
        return { cause: at(left, t), contributes: [[1 - q, q]] };
      });
      const leak = rounded(0.002 + 0.03 * u());
      return { leak: [1 - leak, leak], links, weights: [1, 1] };
    }),
  };
}

/** The net with these gates seen and these looked at and not seen. */
export function observed(net: Net, positive: readonly number[], negative: readonly number[] = []): Net {
  const weights = new Map<number, readonly number[]>([...positive.map((g) => [g, [0, 1]] as const), ...negative.map((g) => [g, [1, 0]] as const)]);
  return { ...net, gates: net.gates.map((gate, g) => ({ ...gate, weights: weights.get(g) ?? gate.weights })) };
}

export function range(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, i) => from + i);
}

/**
 * A case as it comes in: causes are drawn from their priors until two or more are present, gates follow from them,
 * `positives` seen gates are reported and `negatives` of the others were looked at.
 */
export function simulatedCase(net: Net, positives: number, negatives: number, seed: number): Net {
  const u = mulberry32(seed);
  const wanted = Math.max(2, Math.round(positives / 4));
  for (;;) {
    const isPresent = net.causes.map(() => false);
    for (let i = 0; i < wanted; i++) isPresent[Math.floor(u() * isPresent.length)] = true;
    const seen: number[] = [];
    const unseen: number[] = [];
    net.gates.forEach((gate, g) => {
      let silent = at(gate.leak, 0);
      for (const link of gate.links) if (isPresent[link.cause] === true) silent *= at(at(link.contributes, 0), 0);
      (u() < silent ? unseen : seen).push(g);
    });
    if (seen.length >= positives) return observed(net, pick(seen, positives, u), pick(unseen, Math.min(negatives, unseen.length), u));
  }
}

function pick(list: readonly number[], count: number, u: () => number): number[] {
  const left = [...list];
  return Array.from({ length: count }, () => at(left.splice(Math.floor(u() * left.length), 1), 0));
}
