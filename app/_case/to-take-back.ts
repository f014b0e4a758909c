import type { CaseFile, Round } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';

/**
 * The round whose change is to be taken back before the next one is made: the last that was proven, where it made no change for the
 * better, can be undone and is not mere upkeep. Undefined where there is none, once it was said what became of it, and from the
 * next fitting on.
 */
export function toTakeBack({ rounds, state }: Pick<CaseFile, 'rounds' | 'state'>, knowledge: Pick<Knowledge, 'remedies'>): Round | undefined {
  const proven = rounds.filter((round) => round.verdict !== undefined).at(-1);
  const remedy = knowledge.remedies[proven?.remedy ?? ''];
  const last = rounds.at(-1);
  const isNextFitted = last?.fittedOn !== undefined && last.verdict === undefined;
  if (state === 'closed' || remedy === undefined || isNextFitted || proven?.takenBack !== undefined) return undefined;
  const isInVain = proven?.verdict === 'no-change' || proven?.verdict === 'worse';
  return isInVain && remedy.reversible !== 'no' && remedy.upkeep !== true ? proven : undefined;
}
