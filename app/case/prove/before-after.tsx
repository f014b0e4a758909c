'use client';
import type { StoredMeasured } from '@/lib/cases';
import { measuredWords } from '../../_case/fact-words';

export interface BeforeAfterRow {
  readonly place: string;
  readonly before: StoredMeasured;
  readonly after: StoredMeasured | undefined;
}

/** Before and after by place: a drawn row and its figures; the table carries the reading for everyone. */
export function BeforeAfter({ rows, limit, unit }: { readonly rows: readonly BeforeAfterRow[]; readonly limit: StoredMeasured | undefined; readonly unit: string }) {
  const most = Math.max(0, ...rows.flatMap((row) => [row.before.value + row.before.plusMinus, row.after ? row.after.value + row.after.plusMinus : 0]), (limit?.value ?? 0) * 1.3);
  const x = (value: number): number => 6 + (Math.max(0, value) / (most || 1)) * 288;
  return (
    <table className="plain before-after">
      <caption className="label">Each place before (open ring) and after (filled), in {unit}, with 95 % intervals{limit && <>; dashed: the limit {measuredWords({ ...limit, plusMinus: 0 })}</>}.</caption>
      <thead><tr><th scope="col">Place</th><th scope="col"><span className="for-readers-only">drawn</span></th><th scope="col" className="number">before → after</th></tr></thead>
      <tbody>
        {rows.map((row) => {
          const beyond = row.after !== undefined && limit !== undefined && row.after.value > limit.value;
          return (
            <tr key={row.place} className={beyond ? 'here' : ''}>
              <th scope="row">{row.place}</th>
              <td>
                <svg width="300" height="26" viewBox="0 0 300 26" aria-hidden="true">
                  <path className="d-line d-grid" d="M6 13H294" />
                  {limit && <path className="d-line d-limit" d={`M${x(limit.value)} 0V26`} />}
                  <Mark x={x} reading={row.before} kind="before" />
                  {row.after && <Mark x={x} reading={row.after} kind={beyond ? 'beyond' : 'after'} />}
                </svg>
              </td>
              <td className="number">{row.before.value} → {row.after ? <b>{row.after.value}</b> : '–'}{beyond && <span className="for-readers-only"> beyond the limit</span>}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Mark({ x, reading, kind }: { readonly x: (value: number) => number; readonly reading: StoredMeasured; readonly kind: 'before' | 'after' | 'beyond' }) {
  const middle = x(reading.value);
  const line = kind === 'before' ? 'd-line d-mid' : kind === 'beyond' ? 'd-line d-accent' : 'd-line d-outline';
  return (
    <>
      <path className={line} d={`M${x(reading.value - reading.plusMinus)} 13H${x(reading.value + reading.plusMinus)}`} />
      {kind === 'before' && <circle className="d-line d-thin d-fill-paper" cx={middle} cy="13" r="5" />}
      {kind === 'after' && <circle className="d-fill-ink" cx={middle} cy="13" r="5" />}
      {kind === 'beyond' && <path className="d-fill-accent" d={`M${middle - 7} 13L${middle} 6L${middle + 7} 13L${middle} 20Z`} />}
    </>
  );
}
