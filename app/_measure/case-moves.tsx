'use client';
import type { Diagnosis } from '@/lib/diagnosis';
import { bareShare } from '../_charts';

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
            <li key={row.title}>
              <span>{row.title}</span>
              <MoveLine from={row.from} to={row.to} />
              <b className="nowrap">{bareShare(row.from)} → {bareShare(row.to)} %</b>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Open diamond was, filled is. */
function MoveLine({ from, to }: { readonly from: number; readonly to: number }) {
  const x = (share: number): number => 8 + share * 134;
  const diamond = (at: number): string => `M${at - 6} 10L${at} 4L${at + 6} 10L${at} 16Z`;
  return (
    <svg width="150" height="20" viewBox="0 0 150 20" aria-hidden="true">
      <path className="d-line d-grid" d="M2 10H148" />
      <path className="d-line d-outline" d={`M${x(from)} 10H${x(to)}`} />
      <path className="d-line d-thin d-fill-paper" d={diamond(x(from))} />
      <path className="d-fill-ink" d={diamond(x(to))} />
    </svg>
  );
}
