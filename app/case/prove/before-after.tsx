'use client';
import type { StoredMeasured } from '@/lib/cases';
import { DirectionAxis, DirectionMarks } from '../../_charts';
import { asDirections, figuresOf, isBeyond, type BeforeAfterRow, type FixedLimit } from './before-after-rows';
import './before-after.css';

export interface BeforeAfterProps extends FixedLimit {
  readonly rows: readonly BeforeAfterRow[];
  readonly unit: string;
  /** Width of the column of marks, px. */
  readonly width?: number;
  /** Height of a row of marks in eight directions, px. */
  readonly rowHeight?: number;
}

/** Before and after by place: a drawn row and its figures; the table carries the reading for everyone. */
export function BeforeAfter({ rows, limit, good, unit, width = 200, rowHeight = 33 }: BeforeAfterProps) {
  const figure = figuresOf(rows);
  const most = farthest(rows, limit);
  const eight = asDirections(rows, { limit, good });
  return (
    <table className="plain before-after">
      <caption className="label">Open ring before, filled after, in {unit}, with 95 % intervals{limit && <>; dashed: the limit {`${figure(limit.value)}\u00A0${unit}`}</>}.</caption>
      <thead><tr><th scope="col">{eight ? 'Direction' : 'Place'}</th><th scope="col">{eight ? <DirectionAxis limit={eight.limit} to={most} unit={unit} width={width} /> : <span className="for-readers-only">drawn</span>}</th><th scope="col" className="number">before → after</th></tr></thead>
      <tbody>
        {rows.map((row) => {
          const beyond = row.after !== undefined && isBeyond(row.after, { limit, good });
          return (
            <tr key={row.place} className={beyond ? 'here' : ''}>
              <th scope="row">{row.place}</th>
              <td>{eight ? <DirectionMarks direction={row.place} before={withRange(row.before)} after={row.after && withRange(row.after)} limit={eight.limit} to={most} unit={unit} width={width} height={rowHeight} /> : <PlaceMarks row={row} limit={limit} beyond={beyond} most={most} width={width} />}</td>
              <td className="number">{figure(row.before.value)} → {row.after ? <b>{figure(row.after.value)}</b> : '–'}{beyond && <span className="for-readers-only"> beyond the limit</span>}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function farthest(rows: readonly BeforeAfterRow[], limit: StoredMeasured | undefined): number {
  const ends = rows.flatMap((row) => [row.before.value + row.before.plusMinus, row.after ? row.after.value + row.after.plusMinus : 0]);
  return Math.max(0, ...ends, (limit?.value ?? 0) * 1.3) || 1;
}

const withRange = ({ value, plusMinus }: StoredMeasured): { value: number; low: number; high: number } => ({ value, low: value - plusMinus, high: value + plusMinus });

/** One row of a proof that is not read in eight directions. The figures beside it say the same. */
function PlaceMarks({ row, limit, beyond, most, width }: { readonly row: BeforeAfterRow; readonly limit: StoredMeasured | undefined; readonly beyond: boolean; readonly most: number; readonly width: number }) {
  const x = (value: number): number => 7 + (Math.min(most, Math.max(0, value)) / most) * (width - 14);
  return (
    <svg width={width} height="30" viewBox={`0 0 ${width} 30`} aria-hidden="true">
      <path className="d-line d-grid" d={`M6 15H${width - 6}`} />
      {limit && <path className="d-line d-limit" d={`M${x(limit.value)} 0V30`} />}
      <Mark x={x} reading={row.before} kind="before" />
      {row.after && <Mark x={x} reading={row.after} kind={beyond ? 'beyond' : 'after'} />}
    </svg>
  );
}

function Mark({ x, reading, kind }: { readonly x: (value: number) => number; readonly reading: StoredMeasured; readonly kind: 'before' | 'after' | 'beyond' }) {
  const middle = x(reading.value);
  const line = kind === 'before' ? 'd-line d-mid' : kind === 'beyond' ? 'd-line d-accent' : 'd-line d-outline';
  return (
    <>
      <path className={line} d={`M${x(reading.value - reading.plusMinus)} 15H${x(reading.value + reading.plusMinus)}`} />
      {kind === 'before' && <circle className="d-line d-thin d-fill-paper" cx={middle} cy="15" r="5" />}
      {kind === 'after' && <circle className="d-fill-ink" cx={middle} cy="15" r="5" />}
      {kind === 'beyond' && <path className="d-fill-accent" d={`M${middle - 7} 15L${middle} 8L${middle + 7} 15L${middle} 22Z`} />}
    </>
  );
}
