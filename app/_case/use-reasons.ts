'use client';
import { useEffect, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import { CONFLICTING, answerOfLead, factsToTell, flipOfLead, lookAgain, weightsOfEvidence, type AnswerOfLead, type Diagnosis, type FactToTell, type FlipOfLead, type LookAgain, type Weight } from '@/lib/diagnosis';
import { inSteps } from './in-steps';
import type { CaseDiagnosis } from './use-diagnosis';

/** What explains a ranking and what would change it. Each part is undefined until it has been reckoned. */
export interface Reasons {
  readonly weights?: ReadonlyMap<string, readonly Weight[]>;
  readonly facts?: readonly FactToTell[];
  readonly conflict?: { readonly size: number; readonly again: LookAgain | undefined };
  readonly answer?: AnswerOfLead;
  readonly flip?: FlipOfLead;
}

const NONE_YET: Reasons = {};

/** Cost of one answer above which the reasons that need hundreds of them are left out. Estimate: about 1 s in all. */
const DEAREST = 1e6;

/** True where answers hang together so much that weighing each would take too long. The ranking is exact all the same. */
export function isTooDearToWeigh({ prepared }: Pick<Diagnosis, 'prepared'>): boolean {
  return prepared.cost.units > DEAREST;
}

/** Reckons the reasons after the ranking and the next step stand on the page, one after the other. */
export function useReasons(file: CaseFile, { result, next, isSettled }: CaseDiagnosis): Reasons {
  const [known, setKnown] = useState<{ readonly of: Diagnosis; readonly reasons: Reasons }>();
  const diagnosis = isSettled && result.kind === 'diagnosis' ? result : undefined;
  useEffect(() => {
    if (!diagnosis || !next) return;
    // What the page is drawn from may know less than the ranking: a described air path moves priors and readings.
    const { knowledge } = diagnosis.net.builtFrom;
    const add = (part: Reasons): void => setKnown((before) => ({ of: diagnosis, reasons: { ...(before?.of === diagnosis ? before.reasons : {}), ...part } }));
    // How well the answers go together is known with the ranking; which of them to doubt is not.
    if (isTooDearToWeigh(diagnosis)) return inSteps([() => add({ conflict: { size: diagnosis.conflict, again: undefined } })]);
    return inSteps([
      () => add({ weights: weightsOfEvidence(diagnosis) }),
      () => add({ facts: factsToTell(diagnosis, file, knowledge) }),
      () => add({ conflict: { size: diagnosis.conflict, again: diagnosis.conflict > CONFLICTING ? lookAgain(diagnosis, file, knowledge) : undefined } }),
      () => { const answer = answerOfLead(diagnosis, next, file, knowledge); if (answer) add({ answer }); },
      () => { const flip = flipOfLead(diagnosis, file, knowledge); if (flip) add({ flip }); },
    ]);
  }, [file, diagnosis, next]);
  return diagnosis && known?.of === diagnosis ? known.reasons : NONE_YET;
}
