'use client';
import { Suspense, lazy } from 'react';
import { useCurrentCase } from '../_case/current-case';

const RankedChecks = lazy(() => import('./ranked-checks'));

/**
 * The best open checks of the case on the table, above the shelves. The page is written out without a case: the room for
 * this stands in it from the start and is kept free by `data-case`, so that nothing moves when the checks arrive.
 */
export function CaseChecks() {
  const current = useCurrentCase();
  if (current.state === 'none') return null;
  return (
    <section className="case-checks not-printed" aria-labelledby="case-checks">
      <h2 id="case-checks">For the case on the table</h2>
      <Suspense fallback={<Reckoning />}>{current.state === 'open' ? <RankedChecks file={current.file} /> : <Reckoning />}</Suspense>
    </section>
  );
}

export function Reckoning() {
  return <p className="label" role="status">Reckoning which checks tell most</p>;
}
