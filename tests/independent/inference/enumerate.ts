import type { Gate, Net } from '@/lib/inference';
import { at } from './at';

/** Posterior by visiting every combination of cause states and gate levels; shares no code with lib/inference. */
export interface Enumerated {
  readonly evidence: number;
  readonly states: readonly (readonly number[])[];
  readonly levels: readonly (readonly number[])[];
  /** Per gate: only the leak rises above the levels that the weights treat like level 0. */
  readonly leakAlone: readonly number[];
}

/**
 * The joint distribution written out: P(states) · joint factors · P(levels | states) · level weights.
 * A gate's level is the largest contribution, so P(level ≤ l) is the product of cumulative tables; P(level = l) is
 * the difference of two of these. The engine never subtracts, so an agreement is not an agreement with itself.
 */
export function enumerated(net: Net): Enumerated {
  const order = earlierFirst(net.gates);
  const total = { evidence: 0 };
  const states = net.causes.map(({ weights }) => weights.map(() => 0));
  const levels = net.gates.map(({ weights }) => weights.map(() => 0));
  const leakAlone = net.gates.map(() => 0);
  for (const combination of combinations(net.causes.map(({ weights }) => weights.length))) {
    let prior = 1;
    combination.forEach((k, i) => (prior *= at(at(net.causes, i).weights, k)));
    for (const { causes, table } of net.joints ?? []) {
      let entry = 0;
      for (const cause of causes) entry = entry * at(net.causes, cause).weights.length + at(combination, cause);
      prior *= at(table, entry);
    }
    if (prior === 0) continue;
    const settled = new Array<number>(net.gates.length).fill(0);
    const alone = new Array<number>(net.gates.length).fill(0);
    // What no other gate feeds depends on the combination alone.
    const unfed = net.gates.map((gate) => ((gate.feeds ?? []).length === 0 ? levelChances(net, gate, combination, settled) : undefined));
    visit(0, prior);

    function visit(position: number, weight: number): void {
      if (weight === 0) return;
      const index = order[position];
      if (index === undefined) {
        total.evidence += weight;
        combination.forEach((k, i) => add(at(states, i), k, weight));
        settled.forEach((level, g) => add(at(levels, g), level, weight));
        alone.forEach((share, g) => add(leakAlone, g, weight * share));
        return;
      }
      const gate = at(net.gates, index);
      const { chances, byLeakAlone } = unfed[index] ?? levelChances(net, gate, combination, settled);
      chances.forEach((chance, level) => {
        settled[index] = level;
        alone[index] = chance > 0 ? at(byLeakAlone, level) / chance : 0;
        visit(position + 1, weight * chance * at(gate.weights, level));
      });
    }
  }
  const share = (x: number) => x / total.evidence;
  return { evidence: total.evidence, states: states.map((row) => row.map(share)), levels: levels.map((row) => row.map(share)), leakAlone: leakAlone.map(share) };
}

function levelChances(net: Net, gate: Gate, combination: readonly number[], settled: readonly number[]) {
  const tables: (readonly number[])[] = [];
  for (const link of gate.links) if (at(combination, link.cause) > 0) tables.push(at(link.contributes, at(combination, link.cause) - 1));
  for (const feed of gate.feeds ?? []) if (at(settled, feed.gate) > 0) tables.push(at(feed.contributes, at(settled, feed.gate) - 1));
  const cumulative = (table: readonly number[], level: number) => (level < 0 ? 0 : table.slice(0, level + 1).reduce((a, b) => a + b, 0));
  const product = (level: number) => [gate.leak, ...tables].reduce((p, table) => p * cumulative(table, level), 1);
  let survives = 1;
  for (const { cause, strength } of gate.inhibitedBy ?? []) if (at(combination, cause) > 0) survives *= 1 - strength;
  const raw = gate.weights.map((_, level) => product(level) - (level > 0 ? product(level - 1) : 0));
  const lowest = levelsLikeZero(gate);
  const othersLow = tables.reduce((p, table) => p * cumulative(table, lowest), 1);
  const rawAlone = gate.leak.map((p, level) => (level > lowest ? p * othersLow : 0));
  // A level above 0 that was suppressed is seen as level 0 and still came from the leak.
  const fall = (xs: readonly number[]) => xs.map((x, level) => (level > 0 ? x * survives : x + (1 - survives) * xs.slice(1).reduce((a, b) => a + b, 0)));
  return { chances: fall(raw), byLeakAlone: fall(rawAlone) };
}

/** Highest level of the run that starts at level 0 and has the same weight throughout. */
function levelsLikeZero(gate: Gate): number {
  let level = 0;
  while (level + 1 < gate.weights.length && gate.weights[level + 1] === gate.weights[0]) level++;
  return level;
}

function earlierFirst(gates: readonly Gate[]): number[] {
  const order: number[] = [];
  while (order.length < gates.length) {
    const before = order.length;
    gates.forEach((gate, g) => {
      if (!order.includes(g) && (gate.feeds ?? []).every((feed) => order.includes(feed.gate))) order.push(g);
    });
    if (order.length === before) throw new Error('feeds form a cycle');
  }
  return order;
}

function* combinations(radices: readonly number[]): Generator<number[]> {
  const digits = radices.map(() => 0);
  for (;;) {
    yield [...digits];
    let i = 0;
    for (; i < digits.length; i++) {
      digits[i] = (at(digits, i) + 1) % at(radices, i);
      if (digits[i] !== 0) break;
    }
    if (i === digits.length) return;
  }
}

function add(row: number[], index: number, amount: number): void {
  row[index] = at(row, index) + amount;
}
