import type { Change } from './changes';
import { nextStep, type Step } from './next-step';
import type { CheckAnswer } from './open-checks';
import { endingsOfChanges, prospectOf, type Ending, type Prospect } from './prospect';
import type { ScoredCheck, Standing } from './standing';

/** One step of the plan: a check with a branch for every answer, a change with "cured" and "not cured", or the end. */
export type PlanNode = Prospect & { /** Chance of coming here at all. */ readonly chance: number } & (
  | { readonly kind: 'check'; readonly check: string; readonly method: string; readonly own: number; readonly branches: readonly PlanBranch[] }
  | { readonly kind: 'change'; readonly change: string; readonly own: number; readonly branches: readonly PlanBranch[] }
  /** Several changes after one another, none of them drawn as a branch of its own: the plan is not spelled out further. */
  | { readonly kind: 'then'; readonly changes: readonly string[] }
  | { readonly kind: 'cured' }
  | { readonly kind: 'give-up' });

export interface PlanBranch {
  /** `better`: the proof fails, but these symptoms, by id, are gone. */
  readonly if: CheckAnswer | { readonly kind: 'cured' | 'not-cured' } | { readonly kind: 'better'; readonly gone: readonly string[] };
  /** Chance of this branch, given that the step above it is taken; those of one step sum to 1. */
  readonly chance: number;
  readonly next: PlanNode;
}

export interface PlanOptions {
  /** Steps that are spelled out one below the other. Default 6. */
  readonly depth?: number;
  /** Branches that are come to less often than this are not spelled out. Default 0.02. */
  readonly rarest?: number;
  /** Step to begin with, where the case is told another than the rule would take (first-step.ts). */
  readonly first?: Step;
}

/** How far the plan is: share of all that may happen that has been followed to its end, 0 … 1. */
export interface PlanProgress {
  readonly followed: number;
}

/**
 * The if-then plan from where a case stands: the shipped rule (next-step.ts) is followed through every answer and every
 * failed proof. Beyond `depth` and below `rarest` only changes are tried, in order, until one cures or giving up is cheaper.
 *
 * Step by step: every `next()` works one point out and tells how far it is; whoever calls may stop at any time.
 * Expected minutes obey minutes = own + Σ chance · minutes of the branch at every point, to rounding.
 */
export function* growPlan(standing: Standing, options: PlanOptions = {}): Generator<PlanProgress, PlanNode> {
  const growing: Growing = { whole: standing.total, depth: options.depth ?? 6, rarest: options.rarest ?? 0.02, followed: 0 };
  const { node } = yield* grow(standing, growing, 0, options.first);
  return node;
}

interface Growing {
  readonly whole: number;
  readonly depth: number;
  readonly rarest: number;
  followed: number;
}

interface Grown {
  readonly node: PlanNode;
  readonly endings: readonly Ending[];
}

function* grow(standing: Standing, growing: Growing, depth: number, first?: Step): Generator<PlanProgress, Grown> {
  const chance = standing.total / growing.whole;
  if (depth >= growing.depth || chance < growing.rarest) return yield* ended(onlyChanges(standing, chance), growing);
  const step = first ?? nextStep(standing);
  switch (step.kind) {
    case 'give-up': return yield* ended(grown({ kind: 'give-up', chance }, [{ chance, minutes: 0, money: 0, left: standing.left }]), growing);
    case 'check': return yield* growCheck(standing, growing, depth, step.check, chance);
    case 'change': return yield* growChange(standing, growing, depth, step.change, chance);
    default: return never(step);
  }
}

function* ended(end: Grown, growing: Growing): Generator<PlanProgress, Grown> {
  growing.followed = Math.min(1, growing.followed + end.node.chance);
  yield { followed: growing.followed };
  return end;
}

function* growCheck(standing: Standing, growing: Growing, depth: number, check: ScoredCheck, chance: number): Generator<PlanProgress, Grown> {
  const branches: PlanBranch[] = [];
  const endings: Ending[] = [];
  for (const [number, answer] of check.answers.entries()) {
    const after = standing.afterAnswer(check, number);
    if (after.total === 0) continue;
    const next = yield* grow(after, growing, depth + 1);
    branches.push({ if: answer, chance: after.total / standing.total, next: next.node });
    endings.push(...next.endings.map((ending) => later(ending, check.minutes)));
  }
  return grown({ kind: 'check', check: check.id, method: check.method, own: check.minutes, branches, chance }, endings);
}

function* growChange(standing: Standing, growing: Growing, depth: number, change: Change, chance: number): Generator<PlanProgress, Grown> {
  const parts = standing.afterChange(change);
  const left = parts.reduce((sum, part) => sum + part.standing.total, 0);
  const curedChance = Math.max(0, standing.total - left) / growing.whole;
  const cured = yield* ended(grown({ kind: 'cured', chance: curedChance }, [{ chance: curedChance, minutes: 0, money: 0, left: 0 }]), growing);
  const branches: PlanBranch[] = [{ if: { kind: 'cured' }, chance: (curedChance * growing.whole) / standing.total, next: cured.node }];
  const endings = cured.endings.map((ending) => later(ending, change.minutes, change.money));
  for (const part of parts) {
    if (part.standing.total === 0) continue;
    const next = yield* grow(part.standing, growing, depth + 1);
    branches.push({ if: part.gone.length === 0 ? { kind: 'not-cured' } : { kind: 'better', gone: part.gone }, chance: part.standing.total / standing.total, next: next.node });
    endings.push(...next.endings.map((ending) => later(ending, change.minutes, change.money)));
  }
  return grown({ kind: 'change', change: change.id, own: change.minutes, branches, chance }, endings);
}

function onlyChanges(standing: Standing, chance: number): Grown {
  const { changes } = standing.orderOfChanges();
  const scaled = endingsOfChanges(standing).map((ending) => ({ ...ending, chance: (ending.chance / standing.total) * chance }));
  return changes.length === 0 ? grown({ kind: 'give-up', chance }, scaled) : grown({ kind: 'then', changes: changes.map((change) => change.id), chance }, scaled);
}

function later(ending: Ending, minutes: number, money = 0): Ending {
  return { ...ending, minutes: ending.minutes + minutes, money: ending.money + money };
}

type WithoutProspect<T> = T extends unknown ? Omit<T, keyof Prospect> : never;

function grown(node: WithoutProspect<PlanNode>, endings: readonly Ending[]): Grown {
  return { node: { ...node, ...prospectOf(endings) }, endings };
}

function never(step: never): never {
  throw new Error(`growPlan: got ${JSON.stringify(step)}, expected a check, a change or giving up`);
}
