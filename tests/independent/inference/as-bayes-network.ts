import type { INetwork } from 'bayesjs/dist/types';
import type { Net } from '@/lib/inference';
import { at } from './at';

/**
 * A net of two-state causes and two-level gates as a network with full tables, for a general-purpose junction tree.
 * A gate with n causes and feeds becomes a table of 2^n rows. Names: `c0`, `c1`, … and `g0`, `g1`, …; states `T`, `F`.
 */
export function asBayesNetwork(net: Net): INetwork {
  const network: INetwork = {};
  net.causes.forEach(({ weights }, i) => {
    const p = at(weights, 1) / (at(weights, 0) + at(weights, 1));
    network[`c${i}`] = { id: `c${i}`, states: ['T', 'F'], parents: [], cpt: { T: p, F: 1 - p } };
  });
  net.gates.forEach((gate, g) => {
    const parents = [
      ...gate.links.map((link) => ({ id: `c${link.cause}`, silent: at(at(link.contributes, 0), 0) })),
      ...(gate.feeds ?? []).map((feed) => ({ id: `g${feed.gate}`, silent: at(at(feed.contributes, 0), 0) })),
    ];
    const rows = Array.from({ length: 2 ** parents.length }, (_, row) => {
      const isOn = (n: number) => ((row >> n) & 1) === 1;
      const off = parents.reduce((p, { silent }, n) => (isOn(n) ? p * silent : p), at(gate.leak, 0));
      return { when: Object.fromEntries(parents.map(({ id }, n) => [id, isOn(n) ? 'T' : 'F'])), then: { T: 1 - off, F: off } };
    });
    network[`g${g}`] = { id: `g${g}`, states: ['T', 'F'], parents: parents.map(({ id }) => id), cpt: parents.length === 0 ? { T: 1 - at(gate.leak, 0), F: at(gate.leak, 0) } : rows };
  });
  return network;
}

/** What is known of the gates, as that package takes it. */
export function asGiven(net: Net): Record<string, string> {
  return Object.fromEntries(net.gates.flatMap(({ weights }, g) => (weights[0] === weights[1] ? [] : [[`g${g}`, weights[1] === 0 ? 'F' : 'T']])));
}
