import type { Net } from './net';

/**
 * Indices of all gates, later gates (those that are fed) before the gates that feed them.
 *
 * Throws when feeds form a cycle. A net without feeds keeps its order.
 */
export function laterGatesFirst(net: Net): readonly number[] {
  const state = new Uint8Array(net.gates.length);
  const earlierFirst: number[] = [];
  for (let gate = 0; gate < net.gates.length; gate++) visit(net, gate, state, earlierFirst);
  return earlierFirst.reverse();
}

const BUSY = 1;
const DONE = 2;

function visit(net: Net, gate: number, state: Uint8Array, earlierFirst: number[]): void {
  if (state[gate] === DONE) return;
  if (state[gate] === BUSY) throw new Error(`inference: gate ${gate} feeds itself through other gates; expected feeds without a cycle`);
  state[gate] = BUSY;
  for (const feed of net.gates[gate]?.feeds ?? []) if (feed.gate in net.gates) visit(net, feed.gate, state, earlierFirst);
  state[gate] = DONE;
  earlierFirst.push(gate);
}
