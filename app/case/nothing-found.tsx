import type { ReactNode } from 'react';
import Link from 'next/link';
import type { WhatWasTold } from '@/lib/diagnosis';

/** Why nothing can be ranked, by what was told. */
export const NOTHING_TO_RANK: Readonly<Record<Exclude<WhatWasTold, 'something'>, string>> = {
  nothing: 'Nothing was told that is known here, so every cause stands at what is usual. One thing seen makes a ranking.',
  'cannot-tell': 'Every answer is “can’t tell”. That is a fair answer and costs nothing, but it points nowhere. Tell one thing that you do see.',
  'only-absent': 'Only what is not there was told. That clears some causes but accuses none. Say what went wrong: one thing seen makes a ranking.',
};

/** In place of a ranking that would rest on nothing; what is usual stands behind it for those who want it. */
export function NothingFound({ told, children }: { readonly told: Exclude<WhatWasTold, 'something'>; readonly children: ReactNode }) {
  return (
    <>
      <h2 id="causes-title">Nothing to rank yet</h2>
      <p className="nothing-found">{NOTHING_TO_RANK[told]}</p>
      <p><Link className="link" href="/?add">Say what you see</Link></p>
      <details className="usual"><summary>Show how common each cause is anyway</summary>{children}</details>
    </>
  );
}

/** The proof shows that it is gone: a ranking of what is left would rank nothing. */
export function CauseFound({ children }: { readonly children: ReactNode }) {
  return (
    <>
      <h2 id="causes-title">Nothing left to find</h2>
      <p className="nothing-found">The proof shows that it is gone. The log keeps the ranking that led there. Should it come back, press “It came back” under “Do this next”.</p>
      <details className="usual"><summary>Show how common each cause is now</summary>{children}</details>
    </>
  );
}
