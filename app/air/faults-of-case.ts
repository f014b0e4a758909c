'use client';
import { useEffect, useState } from 'react';
import type { PathFaults } from '@/lib/airflow';
import type { CaseFile } from '@/lib/cases';
import { faultsFromDiagnosis } from '@/lib/decision';
import { titleOf } from '@/lib/knowledge';
import { first } from '../_browser/knowledge-source';
import { tellsTheSame } from '../_case/tells-the-same';
import { withoutPathReadings } from './case-readings';

/** What the diagnosis of a case fears of its air path beyond what was entered of it. */
export interface FearedOfCase {
  readonly faults: PathFaults;
  /** Title of each cause by its id. */
  readonly titleOf: (cause: string) => string;
}

/**
 * Chances of a covered inlet, a leak and a jet that misses, from the diagnosis of everything in the case that the path does
 * not itself take as a reading. Undefined without a case, until they are reckoned, and where they cannot be.
 */
export function useFearedOfCase(file: CaseFile | undefined): FearedOfCase | undefined {
  const [feared, setFeared] = useState<{ readonly of: CaseFile; readonly feared: FearedOfCase }>();
  const isTold = file !== undefined && file.observations.length + file.findings.length > 0;
  useEffect(() => {
    // A size changed on the sheet changes the case, but nothing that the diagnosis of the rest is made from.
    if (!isTold || (feared !== undefined && tellsTheSame(feared.of, file))) return;
    let wanted = true;
    // The path is reckoned without them when the knowledge or the code does not arrive: a little less is known then.
    Promise.all([first.arrives(), import('@/lib/diagnosis')]).then(([knowledge, { diagnose }]) => {
      const result = diagnose(withoutPathReadings(file), knowledge, { copies: 0 });
      if (wanted && result.kind === 'diagnosis') setFeared({ of: file, feared: { faults: faultsFromDiagnosis(result.causes), titleOf: (cause) => titleOf(knowledge, cause) } });
    }, () => undefined);
    return () => { wanted = false; };
  }, [file, isTold, feared]);
  // Those of a moment ago stand until the new ones are there: a size that is being dragged must not make the answer jump.
  return feared !== undefined && feared.of.id === file?.id ? feared.feared : undefined;
}
