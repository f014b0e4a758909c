import { naturalLog } from '../elementary';

/**
 * Sum, over some causes, of the entropy in bits of their states, times `total`.
 *
 * `states` holds joint probabilities P(state, something) and `positions` says where in it those of the causes are, so
 * that each cause's states sum to `total` = P(something): −Σ x log2 x + causes · total log2 total. One cause at .5/.5
 * with total 1 gives 1.
 */
export function entropyTimesTotal(states: Float64Array, total: number, positions: Int32Array, causes: number): number {
  // Counted by hand: an iterator over a typed array costs half the time here.
  const count = positions.length;
  let nats = 0;
  for (let n = 0; n < count; n++) {
    const x = states[positions[n] ?? 0] ?? 0;
    if (x > NOTHING) nats -= x * naturalLog(x);
  }
  return (nats + (total > NOTHING ? causes * total * naturalLog(total) : 0)) / Math.LN2;
}

/** Below this x log x is 0 for any sum. */
const NOTHING = 1e-300;
