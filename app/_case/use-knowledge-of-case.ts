'use client';
import { useEffect, useMemo, useState } from 'react';
import type { CaseFile } from '@/lib/cases';
import type { knowledgeOfCase } from '@/lib/decision';
import type { Knowledge } from '@/lib/knowledge';

type Tailor = typeof knowledgeOfCase;

/* Kept over moving between pages, so that a changed case does not wait again. */
let arrived: Tailor | undefined;

/**
 * The knowledge base as it holds for this case. Only a described air path changes it, so only then the rooms that reckon
 * with air are fetched; until they are there the answer is undefined.
 */
export function useKnowledgeOfCase(file: CaseFile | undefined, pages: Knowledge | undefined): Knowledge | undefined {
  const [tailor, setTailor] = useState<Tailor | undefined>(() => arrived);
  const isDescribed = file?.airPath !== undefined;
  useEffect(() => {
    if (!isDescribed) return;
    import('@/lib/decision').then(
      (room) => { arrived = room.knowledgeOfCase; setTailor(() => room.knowledgeOfCase); },
      // Thrown on the page itself, so that its error screen says what to do: a ranking without the described path would mislead.
      (reason: unknown) => { setTailor(() => { throw new Error('The part that reckons with the air path did not arrive.', { cause: reason }); }); },
    );
  }, [isDescribed]);
  return useMemo(() => (!file || !pages || !isDescribed ? pages : tailor?.(pages, file)), [file, pages, isDescribed, tailor]);
}
