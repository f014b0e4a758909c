'use client';
import { PolarBeforeAfter, type PolarProps } from '../../_charts';
import { asDirections, type BeforeAfterRow, type FixedLimit } from './before-after-rows';
import './before-after.css';

/** Air that is reckoned at the outlets, before and after the change. */
export interface PlotAir {
  readonly before: NonNullable<PolarProps['air']>;
  readonly after: NonNullable<PolarProps['air']>;
}

export interface DirectionPlotsProps extends FixedLimit {
  readonly rows: readonly BeforeAfterRow[];
  readonly unit: string;
  /** Room for all of it, px: two plots side by side from 640 on, otherwise the newer one alone. */
  readonly width: number;
  readonly dates?: { readonly before: string; readonly after: string };
  readonly air?: PlotAir | undefined;
  /** The newer one alone at any width, as on the printed report. */
  readonly alone?: boolean;
}

/** A detail is drawn when everything after lies within this share of the rim. */
const SMALL = 0.45;

/** The eight directions seen from above, before and after on one scale; the state before stays as a ghost. Nothing for other proofs. */
export function DirectionPlots({ rows, limit, good, unit, width, dates, air, alone = false }: DirectionPlotsProps) {
  const eight = asDirections(rows, { limit, good });
  if (!eight) return null;
  const pair = !alone && width >= 640;
  const each = Math.min(430, pair ? Math.floor((width - 32) / 2) : width);
  const rim = rimFor([...eight.before, ...(eight.after ?? [])].map((row) => row.high), eight.limit);
  const named = (word: string, date: string | undefined): string => (date === undefined || date === '' ? word : `${word}, ${date}`);
  const common = { limit: eight.limit, unit, rim, width: each };
  return (
    <div className={pair ? 'plots plots-pair' : 'plots'}>
      {(pair || !eight.after) && (
        <figure>
          <figcaption><b>{named('Before', dates?.before)}</b><span className="label">{unit} in each direction, seen from above</span></figcaption>
          <PolarBeforeAfter {...common} readings={eight.before} name="Before" air={air?.before ?? []} />
        </figure>
      )}
      {eight.after ? (
        <figure>
          <figcaption><b>{named('After', dates?.after)}</b><span className="label">{pair ? '' : `${unit} in each direction, seen from above; `}dashed outline: before{air && '. Arrows: air as reckoned'}</span></figcaption>
          <PolarBeforeAfter {...common} readings={eight.after} ghost={eight.before} name="After" air={air?.after ?? []} />
        </figure>
      ) : pair && <p className="plots-waiting quiet">The plot after the change appears when all eight directions are read.</p>}
    </div>
  );
}

/** What is too small to read beside the state before, drawn again larger with its scale. */
export function DirectionDetail({ rows, limit, good, unit, width }: Omit<DirectionPlotsProps, 'dates' | 'air' | 'alone'>) {
  const eight = asDirections(rows, { limit, good });
  if (!eight?.after) return null;
  const rim = rimFor([...eight.before, ...eight.after].map((row) => row.high), eight.limit);
  const near = rimFor(eight.after.map((row) => row.high), eight.limit);
  if (near > rim * SMALL) return null;
  return (
    <figure className="plot-detail">
      <figcaption className="label">After, drawn larger: {Number((rim / near).toFixed(1))} : 1</figcaption>
      <PolarBeforeAfter readings={eight.after} limit={eight.limit} unit={unit} rim={near} name="After, drawn larger" width={width} />
    </figure>
  );
}

/** The next half step of one figure above everything shown: 1.50 gives 1.5, 0.50 gives 0.5, 0.52 gives 0.6. */
function rimFor(highs: readonly number[], limit: number): number {
  const most = Math.max(limit * 1.25, ...highs);
  const step = 10 ** Math.floor(Math.log10(most)) / (most < 2 * 10 ** Math.floor(Math.log10(most)) ? 2 : 1);
  return Number((Math.ceil(most / step - 1e-9) * step).toPrecision(6));
}
