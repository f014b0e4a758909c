import type { RankedBranch, RankedCause, ToldStep } from '@/lib/diagnosis';
import type { BranchId, Knowledge } from '@/lib/knowledge';
import { heardCauses } from '../_case/heard-causes';

/** A cause counts as raised when what was told makes it at least this much likelier than before. */
const RAISED = 1.25;
/** A branch whose raised causes all stay below this chance is closed at first. */
export const CLOSED = 0.08;
/** Branches shown at first, whatever stands out. */
const FIRST = 3;

type ById = ReadonlyMap<string, Pick<RankedCause, 'probability' | 'before'>>;

export function isRaised(cause: Pick<RankedCause, 'probability' | 'before'>): boolean {
  return cause.probability > RAISED * cause.before;
}

/** Chance of the likeliest cause of a branch that what was told has raised: what the branch is shown and opened by. */
export function suspicionOf(branch: Pick<RankedBranch, 'causes'>, byId: ById): number {
  for (const id of branch.causes) {
    const cause = byId.get(id);
    if (cause && isRaised(cause)) return cause.probability;
  }
  return 0;
}

/** Chance of the likeliest cause of a branch. */
export function mostOf(branch: Pick<RankedBranch, 'causes'>, byId: ById): number {
  return byId.get(branch.causes[0] ?? '')?.probability ?? 0;
}

/** Chance of at least one of a branch. Causes that hardly had a hand in it are left out of that sum, but one of them may be likelier than it. */
export function shareOf(branch: RankedBranch, byId: ById): number {
  return Math.max(branch.probability, mostOf(branch, byId));
}

/** Branches by suspicion, most first. */
export function bySuspicion(branches: readonly RankedBranch[], byId: ById): { readonly branch: RankedBranch; readonly suspicion: number }[] {
  return branches.map((branch) => ({ branch, suspicion: suspicionOf(branch, byId) })).sort((a, b) => b.suspicion - a.suspicion);
}

/** Whether a branch stands out by what was told. */
export function standsOut(suspicion: number, place: number): boolean {
  return place < FIRST || suspicion > CLOSED;
}

/** Parts of the machine where nothing stands out and that are as likely as one that is shown: hidden, they would mislead. */
export function likelierParts(branches: readonly RankedBranch[], byId: ById): ReadonlySet<BranchId> {
  const ranked = bySuspicion(branches, byId);
  const least = Math.min(...ranked.flatMap(({ branch, suspicion }, place) => (standsOut(suspicion, place) ? [shareOf(branch, byId)] : [])));
  // The sum of its causes is the most that a branch can have; where that is too little the sweep for its share is spared.
  const most = ({ causes }: RankedBranch): number => causes.reduce((sum, id) => sum + (byId.get(id)?.probability ?? 0), 0);
  return new Set(ranked.flatMap(({ branch, suspicion }, place) => (!standsOut(suspicion, place) && most(branch) > least && shareOf(branch, byId) > least ? [branch.part] : [])));
}

/** The causes that the next step is about: those that its check is taken for, or those that its change cures. */
export function causesOfStep(step: ToldStep | undefined, causes: readonly RankedCause[], knowledge: Knowledge): ReadonlySet<string> {
  const check = step?.kind === 'check' ? knowledge.checks[step.id] : undefined;
  if (check) return new Set(heardCauses(check, causes).map(({ id }) => id));
  const cures = step?.kind === 'change' ? knowledge.remedies[step.id]?.cures ?? {} : {};
  return new Set(causes.filter(({ id }) => id in cures).slice(0, 1).map(({ id }) => id));
}
