import type { Cause, Gate, JointFactor, LevelTable, Net } from './net';

/** Throws when a cause has no states or a weight that is negative or not finite. */
export function checkCause(cause: Cause, index: number): void {
  if (cause.weights.length < 2) fail(`cause ${index}`, `${cause.weights.length} weights`, 'one for absent and one per way of being present');
  checkNumbers(cause.weights, `cause ${index} weights`, Infinity);
}

/** Throws when a table of a gate has the wrong length, leaves 0 … 1, or points at something that is not there. */
export function checkGate(net: Net, index: number, gate: Gate): void {
  const levels = gate.weights.length;
  const name = `gate ${index}`;
  if (levels < 2) fail(name, `${levels} weights`, 'one per level, two at least');
  checkNumbers(gate.weights, `${name} weights`, Infinity);
  checkTable(gate.leak, levels, `${name} leak`);
  for (const link of gate.links) {
    const where = `${name} link from cause ${link.cause}`;
    const states = causeAt(net, link.cause, where).weights.length - 1;
    if (link.contributes.length !== states) fail(where, `${link.contributes.length} tables`, `${states}, one per present state`);
    for (const table of link.contributes) checkTable(table, levels, where);
  }
  for (const feed of gate.feeds ?? []) {
    const where = `${name} feed from gate ${feed.gate}`;
    const earlier = net.gates[feed.gate];
    if (earlier === undefined) fail(where, `no gate ${feed.gate}`, `0 … ${net.gates.length - 1}`);
    if (feed.contributes.length !== earlier.weights.length - 1)
      fail(where, `${feed.contributes.length} tables`, `${earlier.weights.length - 1}, one per level above 0`);
    for (const table of feed.contributes) checkTable(table, levels, where);
  }
  for (const inhibitor of gate.inhibitedBy ?? []) {
    causeAt(net, inhibitor.cause, `${name} inhibitor`);
    checkNumbers([inhibitor.strength], `${name} inhibitor strength`, 1);
  }
}

/** Throws when a joint factor does not have one finite, non-negative number per combination of its causes' states. */
export function checkJoint(net: Net, joint: JointFactor): void {
  const where = `joint factor over causes ${joint.causes.join(', ')}`;
  if (new Set(joint.causes).size !== joint.causes.length) fail(where, 'a cause twice', 'each cause once');
  const size = joint.causes.reduce((product, cause) => product * causeAt(net, cause, where).weights.length, 1);
  if (joint.table.length !== size) fail(where, `${joint.table.length} numbers`, `${size}`);
  checkNumbers(joint.table, where, Infinity);
}

function causeAt(net: Net, index: number, where: string): Cause {
  const cause = net.causes[index];
  if (cause === undefined) fail(where, `no cause ${index}`, `0 … ${net.causes.length - 1}`);
  return cause;
}

function checkTable(table: LevelTable, levels: number, where: string): void {
  if (table.length !== levels) fail(where, `${table.length} levels`, `${levels}`);
  checkNumbers(table, where, 1 + 1e-9);
  const sum = table.reduce((total, share) => total + share, 0);
  if (Math.abs(sum - 1) > 1e-9) fail(where, `a sum of ${sum}`, '1');
}

function checkNumbers(numbers: readonly number[], where: string, largest: number): void {
  for (const number of numbers) {
    if (!(number >= 0 && number <= largest && number < Infinity))
      fail(where, String(number), `a finite number of at least 0${largest < Infinity ? ' and at most 1' : ''}`);
  }
}

function fail(where: string, got: string, expected: string): never {
  throw new Error(`inference: ${where}: got ${got}, expected ${expected}`);
}
