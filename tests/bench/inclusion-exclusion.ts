import type { Net } from '@/lib/inference';
import { at } from '../independent/inference/at';

/**
 * Posteriors by the alternating sum over subsets of the seen findings, in plain doubles.
 *
 * The textbook way to answer a two-level noisy-OR net, here as the yardstick: with m findings it takes 2^m terms of
 * both signs, and what cancels takes the digits with it.
 */
export function alternatingSum(net: Net): number[] {
  const seen = net.gates.filter(({ weights }) => weights[0] === 0);
  const absent = net.causes.map(({ weights }) => at(weights, 0));
  const present = net.causes.map(({ weights }) => at(weights, 1));
  for (const { weights, links } of net.gates) if (weights[1] === 0) for (const link of links) present[link.cause] = at(present, link.cause) * at(at(link.contributes, 0), 0);
  const silent = seen.map(({ links }) => new Map(links.map((link) => [link.cause, at(at(link.contributes, 0), 0)])));
  const joint = net.causes.map(() => 0);
  let evidence = 0;
  const now = Float64Array.from(present);
  const visit = (gate: number, term: number) => {
    if (gate === seen.length) {
      let product = term;
      for (let i = 0; i < now.length; i++) product *= at(absent, i) + at(now, i);
      evidence += product;
      for (let i = 0; i < now.length; i++) joint[i] = at(joint, i) + (product * at(now, i)) / (at(absent, i) + at(now, i));
      return;
    }
    visit(gate + 1, term);
    const before = now.slice();
    for (const [cause, off] of at(silent, gate)) now[cause] = at(now, cause) * off;
    visit(gate + 1, -term * at(at(seen, gate).leak, 0));
    now.set(before);
  };
  visit(0, 1);
  return joint.map((mass) => mass / evidence);
}
