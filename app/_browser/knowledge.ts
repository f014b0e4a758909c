'use client';
import { useEffect, useState } from 'react';
import type { Knowledge, WholeKnowledge } from '@/lib/knowledge';
import type { PackedFirst, PackedMore } from '../knowledge.json/packed';
import { unpackFirst, unpackWhole } from '../knowledge.json/unpack';

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

/** The first part as a promise; a failed fetch is tried again at the next call. */
export function knowledgeArrives(): Promise<Knowledge> {
  return first.arrives();
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

class Source<K> {
  arrived: K | undefined;
  #fetched: Promise<K> | undefined;

  constructor(private readonly fetchIt: () => Promise<K>) {}

  arrives(): Promise<K> {
    this.#fetched ??= this.fetchIt().then((knowledge) => (this.arrived = knowledge));
    this.#fetched.catch(() => { this.#fetched = undefined; });
    return this.#fetched;
  }
}

const first = new Source(async () => unpackFirst((await jsonAt('/knowledge.json')) as PackedFirst));
const whole = new Source(async () => {
  const [known, more] = await Promise.all([first.arrives(), jsonAt('/knowledge-more.json')]);
  return unpackWhole(known, more as PackedMore);
});

async function jsonAt(path: string): Promise<unknown> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: got status ${response.status}, expected 200`);
  return response.json();
}
