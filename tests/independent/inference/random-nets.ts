import { mulberry32, type Gate, type GateFeed, type GateLink, type Inhibitor, type JointFactor, type LevelTable, type Net } from '@/lib/inference';
import { at } from './at';

export interface RandomShape {
  readonly causes: number;
  readonly gates: number;
  /** Largest number of ways in which one cause can be present. */
  readonly ways: number;
  /** Largest level of a gate. */
  readonly topLevel: number;
  readonly feeds: boolean;
  readonly inhibitors: number;
  readonly joints: number;
}

/** A net with every feature that the shape allows; small enough to be enumerated. */
export function randomNet(seed: number, shape: RandomShape): Net {
  const u = mulberry32(seed);
  const int = (from: number, to: number) => from + Math.floor(u() * (to - from + 1));
  const pick = (count: number, from: number): number[] => {
    const all = Array.from({ length: from }, (_, i) => i);
    return Array.from({ length: Math.min(count, from) }, () => at(all.splice(int(0, all.length - 1), 1), 0));
  };
  const table = (levels: number, silent: number): LevelTable => {
    if (u() < silent) return [1, ...Array.from({ length: levels - 1 }, () => 0)];
    const shares = Array.from({ length: levels }, () => 0.05 + u());
    const sum = shares.reduce((a, b) => a + b, 0);
    return shares.map((x) => x / sum);
  };
  let states = 1;
  const causes = Array.from({ length: shape.causes }, (_, i) => {
    const room = Math.floor(4096 / states / 2 ** (shape.causes - 1 - i)) - 1;
    const ways = int(1, Math.max(1, Math.min(shape.ways, room)));
    states *= ways + 1;
    return { weights: [0.3 + u(), ...Array.from({ length: ways }, () => 0.02 + 0.3 * u())] };
  });
  let combinations = 1;
  const gates: Gate[] = [];
  for (let g = 0; g < shape.gates; g++) {
    const levels = int(2, combinations > 32 ? 2 : shape.topLevel + 1);
    combinations *= levels;
    const links: GateLink[] = pick(int(0, Math.min(5, shape.causes)), shape.causes).map((cause) => ({
      cause,
      contributes: at(causes, cause).weights.slice(1).map(() => table(levels, 0.2)),
    }));
    const feeds: GateFeed[] = shape.feeds ? pick(int(0, 2), g).map((gate) => ({ gate, contributes: at(gates, gate).weights.slice(1).map(() => table(levels, 0.15)) })) : [];
    const inhibitedBy: Inhibitor[] = u() < 0.5 ? pick(int(0, shape.inhibitors), shape.causes).map((cause) => ({ cause, strength: u() })) : [];
    gates.push({ leak: table(levels, 0), links, weights: levelWeights(u, int, levels), ...(feeds.length > 0 ? { feeds } : {}), ...(inhibitedBy.length > 0 ? { inhibitedBy } : {}) });
  }
  const joints: JointFactor[] = Array.from({ length: shape.joints }, () => {
    const members = pick(int(2, 3), shape.causes);
    const size = members.reduce((product, cause) => product * at(causes, cause).weights.length, 1);
    return { causes: members, table: Array.from({ length: size }, () => 0.01 + 5 * u()) };
  });
  return { causes, gates, ...(joints.length > 0 ? { joints } : {}) };
}

/** Seen, not seen, one grade, at least one grade, not looked at, or a measurement. */
function levelWeights(u: () => number, int: (from: number, to: number) => number, levels: number): number[] {
  const kind = u();
  const all = Array.from({ length: levels }, (_, level) => level);
  const k = int(0, levels - 1);
  if (kind < 0.2) return all.map(() => 1);
  if (kind < 0.55) return all.map((level) => (level === k ? 1 : 0));
  if (kind < 0.7) return all.map((level) => (level >= k ? 1 : 0));
  if (kind < 0.8) return all.map((level) => (level <= k ? 0.7 : 0));
  return all.map(() => 0.05 + 2 * u());
}
