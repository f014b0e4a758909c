'use client';
import { useEffect, useState } from 'react';
import type { Knowledge } from '@/lib/knowledge';

let fetched: Promise<Knowledge> | undefined;
let arrived: Knowledge | undefined;

/** The knowledge base, fetched once per visit; undefined until it has arrived. `failed` when it cannot be had. */
export function useKnowledge(): { readonly knowledge: Knowledge | undefined; readonly failed: boolean } {
  const [state, setState] = useState<{ knowledge: Knowledge | undefined; failed: boolean }>({ knowledge: arrived, failed: false });
  useEffect(() => {
    let wanted = true;
    knowledgeArrives().then(
      (knowledge) => { if (wanted) setState({ knowledge, failed: false }); },
      () => { if (wanted) setState({ knowledge: undefined, failed: true }); },
    );
    return () => { wanted = false; };
  }, []);
  return state;
}

/** The knowledge base as a promise; a failed fetch is tried again at the next call. */
export function knowledgeArrives(): Promise<Knowledge> {
  fetched ??= fetch('/knowledge.json').then(async (response) => {
    if (!response.ok) throw new Error(`knowledge.json: got status ${response.status}, expected 200`);
    arrived = (await response.json()) as Knowledge;
    return arrived;
  });
  fetched.catch(() => { fetched = undefined; });
  return fetched;
}
