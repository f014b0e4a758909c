'use client';
import { useEffect, useState } from 'react';
import type { Knowledge, WholeKnowledge } from '@/lib/knowledge';
import { first, whole, type Source } from './knowledge-source';

/** What has arrived so far; `failed` when it cannot be had. */
export interface Arriving<K> {
  readonly knowledge: K | undefined;
  readonly failed: boolean;
}

/** The knowledge that rankings and first screens read, fetched once per visit; undefined until it has arrived. */
export function useKnowledge(): Arriving<Knowledge> {
  return useArriving(first);
}

/** The whole knowledge, with steps and with what every figure rests on. The second file is fetched only for those who ask. */
export function useWholeKnowledge(): Arriving<WholeKnowledge> {
  return useArriving(whole);
}

function useArriving<K>(source: Source<K>): Arriving<K> {
  const [state, setState] = useState<Arriving<K>>({ knowledge: source.arrived, failed: false });
  useEffect(() => {
    let wanted = true;
    source.arrives().then(
      (knowledge) => { if (wanted) setState({ knowledge, failed: false }); },
      () => { if (wanted) setState({ knowledge: undefined, failed: true }); },
    );
    return () => { wanted = false; };
  }, [source]);
  return state;
}
