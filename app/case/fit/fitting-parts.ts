import type { Round } from '@/lib/cases';
import { remediesOfRound } from '@/lib/diagnosis';
import type { WholeKnowledge, WholeRemedy } from '@/lib/knowledge';

/**
 * The remedies whose steps make up the fitting list of a round: the chosen one, and those made together with it, but none whose
 * causes the ones before it take care of already.
 */
export function fittingParts(round: Pick<Round, 'remedy' | 'also'>, knowledge: Pick<WholeKnowledge, 'remedies'>): readonly WholeRemedy[] {
  const parts: WholeRemedy[] = [];
  for (const id of remediesOfRound(round)) {
    const part = knowledge.remedies[id];
    const isNew = part !== undefined && Object.keys(part.cures).some((cause) => !parts.some((before) => cause in before.cures));
    if (isNew) parts.push(part);
  }
  return parts;
}
