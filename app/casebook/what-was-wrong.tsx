import Link from 'next/link';
import type { CaseFile } from '@/lib/cases';
import { titleOf, type Knowledge } from '@/lib/knowledge';
import { curedCounts, type CuredOf } from './cured-counts';

/** What was wrong how often, and on which machine, as far as a proof showed it. */
export function WhatWasWrong({ cases, knowledge, curedOf, machine }: { readonly cases: readonly CaseFile[]; readonly knowledge: Knowledge; readonly curedOf: CuredOf; readonly machine: string | undefined }) {
  const counts = curedCounts(cases, knowledge, curedOf);
  const most = counts[0]?.cases ?? 1;
  return (
    <section className="region book-counts" aria-labelledby="wrong">
      <h2 id="wrong">What was wrong, how often</h2>
      {counts.length === 0 ? <p className="quiet">No case {machine === undefined ? '' : 'on this machine '}is closed as cured yet. A cause is counted once a proof shows that its change cured it.</p> : (
        <table className="plain">
          <thead><tr><th scope="col">Cause</th><th scope="col"><span className="for-readers-only">drawn</span></th><th scope="col" className="number">cured cases</th>{machine === undefined && <th scope="col">machine</th>}</tr></thead>
          <tbody>
            {counts.map((row) => (
              <tr key={row.cause}>
                <td><Link prefetch={false} href={`/handbook/${row.cause}`}>{titleOf(knowledge, row.cause)}</Link></td>
                <td><svg className="book-bar" width="104" height="12" viewBox="0 0 104 12" aria-hidden="true"><path className="d-line d-grid" d="M2 0V12" /><rect className="d-fill-ink" x="2" y="2" width={Math.round((100 * row.cases) / most)} height="8" /></svg></td>
                <td className="number"><b>{row.cases}</b></td>
                {machine === undefined && <td>{row.machines.map((each) => (row.machines.length === 1 ? each.name : `${each.name}: ${each.cases}`)).join(', ')}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="label">A case counts for every cause that was at least as likely cured as not, or for the likeliest one. Cured cases make their causes a little likelier in the next one, by how sure each was; the new case says so, and can leave it out.</p>
    </section>
  );
}
