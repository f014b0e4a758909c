/**
 * The one shape of "something is wrong with what came in".
 *
 * A mistake of ours throws; a fault in the input becomes a Problem, and the reader that found it
 * returns what it could read together with every problem it met.
 */
export interface Problem {
  /** Stable kebab-case name of the fault, for tests and links: `out-of-range`, `unknown-id`. */
  readonly code: string;
  /** `stop`: nothing usable without a change. `note`: used, but something was left out or repaired. */
  readonly level: 'stop' | 'note';
  /** Where it is, as the person who typed it would say it: `bag volume`, `causes/slack-belt.mdx line 7`. */
  readonly where: string;
  /** What was found, in one sentence. */
  readonly what: string;
  /** What is allowed there, when that can be said shortly. */
  readonly allowed?: string;
  /** What to do next, in one sentence. */
  readonly next: string;
}

/** What a reader gives back: the value when there is one, and all problems together. */
export interface Reading<T> {
  readonly value: T | undefined;
  readonly problems: readonly Problem[];
}

/** True when at least one problem forbids using the value. */
export function stops(problems: readonly Problem[]): boolean {
  return problems.some((problem) => problem.level === 'stop');
}

/** One problem as lines of text for a terminal: where, what, allowed, next step. */
export function problemAsText(problem: Problem): string {
  const lines = [`${problem.level === 'stop' ? 'Problem' : 'Note'} at ${problem.where}: ${problem.what}`];
  if (problem.allowed !== undefined) lines.push(`  allowed: ${problem.allowed}`);
  lines.push(`  next:    ${problem.next}`);
  return lines.join('\n');
}
