import Link from 'next/link';
import type { AirPathResult } from '@/lib/airflow';
import { shownShare } from '../_charts';

/** Below this chance, before and after, a fault is not worth a line. */
const WORTH_A_LINE = 0.005;

/** Faults that nobody entered on the sheet: how likely the case makes them, and how likely they are after the readings. */
export function FearedFaults({ faults, titleOf }: { readonly faults: AirPathResult['faults']; readonly titleOf: (cause: string) => string }) {
  const told = faults.filter(({ before, after }) => Math.max(before, after) >= WORTH_A_LINE);
  if (told.length === 0) return null;
  return (
    <section className="region" aria-labelledby="feared-faults">
      <h2 id="feared-faults">Faults that are not on the sheet</h2>
      <p className="label">The chance of each.</p>
      <table className="plain">
        <thead><tr><th scope="col">fault</th><th scope="col" className="number">from the rest of the case</th><th scope="col" className="number">after the readings</th></tr></thead>
        <tbody>
          {told.map(({ cause, before, after }) => (
            <tr key={cause}><td><Link prefetch={false} href={`/handbook/${cause}`}>{titleOf(cause)}</Link></td><td className="number">{shownShare(before)}</td><td className="number"><b>{shownShare(after)}</b></td></tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
