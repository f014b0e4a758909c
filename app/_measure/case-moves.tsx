'use client';
import type { Diagnosis } from '@/lib/diagnosis';
import { ChangeBar, changeWords } from '../_charts';

/** What the result would move in the case: the three causes that change most, before it is used. */
export function CaseMoves({ before, after }: { readonly before: Diagnosis; readonly after: Diagnosis }) {
  const was = new Map(before.causes.map((cause) => [cause.id, cause.probability]));
  const moved = after.causes
    .map((cause) => ({ title: cause.title, from: was.get(cause.id) ?? 0, to: cause.probability }))
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from))
    .slice(0, 3)
    .filter((row) => Math.abs(row.to - row.from) >= 0.005);
  return (
    <div className="region moves" aria-live="polite">
      <h2>In the case, this moves</h2>
      {moved.length === 0 ? <p className="quiet">Hardly anything: it agrees with what was believed.</p> : (
        <ul>
          {moved.map((row) => (
            <li key={row.title}><span>{row.title}</span><ChangeBar was={row.from} is={row.to} width={150} decorative /><b className="nowrap">{changeWords(row.from, row.to)}</b></li>
          ))}
        </ul>
      )}
    </div>
  );
}
