'use client';
import { useEffect, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { Knowledge } from '@/lib/knowledge';
import { inSteps } from '../_case/in-steps';
import type { CuredOf } from './cured-counts';

/**
 * What was cured in each of these cases, by its chances. Reckoned one case at a time, so that the page stays free, by rooms that are
 * fetched for it; undefined until every case is done. Without those rooms no chance is known.
 */
export function useCured(cases: readonly CaseFile[] | undefined, knowledge: Knowledge | undefined): CuredOf | undefined {
  const [cured, setCured] = useState<ReadonlyMap<CaseFile, ReadonlyMap<string, number> | undefined>>();
  useEffect(() => {
    if (!cases || !knowledge) return;
    let isWanted = true;
    let callOff = (): void => undefined;
    import('@/lib/diagnosis').then(
      ({ curedCauses, isProvenCure }) => {
        if (!isWanted) return;
        const found = new Map<CaseFile, ReadonlyMap<string, number> | undefined>(cases.map((file) => [file, undefined]));
        callOff = inSteps([...cases.filter(isProvenCure).map((file) => () => found.set(file, curedCauses(file, knowledge))), () => setCured(found)], 0);
      },
      () => { if (isWanted) setCured(new Map(cases.map((file) => [file, undefined]))); },
    );
    return () => { isWanted = false; callOff(); };
  }, [cases, knowledge]);
  return cured && cases?.every((file) => cured.has(file)) === true ? (file) => cured.get(file) : undefined;
}
