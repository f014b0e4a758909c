import { Balloon } from '../_drawings/balloon';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';
import { Interval } from './interval';
import { linear, ticks, tickWords, within } from './scales';
import type { Scale } from './scales';

export interface Need {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface OptionInterval {
  readonly letter: string;
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Only where this option changes what is needed. */
  readonly need?: Need | undefined;
  readonly chosen?: boolean;
  /** For example "93 %". */
  readonly reaches: string;
}

export interface IntervalAxisProps {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  readonly need: Need;
  readonly needWords?: string;
  readonly width?: number;
}

const scaleFor = (from: number, to: number, width: number): Scale => linear([from, to], [8, width - 8]);

/** One option's row: what it would reach against the band of what is needed. All rows of a table share from, to and width. */
export function IntervalBar({ row, from, to, need, unit, width = 400, height = 40 }: { readonly row: OptionInterval; readonly from: number; readonly to: number; readonly need: Need; readonly unit: string; readonly width?: number; readonly height?: number }) {
  const x = scaleFor(from, to, width);
  return (
    <Sheet width={width} height={height} label={rowWords(row, need, unit)}>
      <RowMarks row={row} need={need} x={x} top={0} height={height} />
    </Sheet>
  );
}

/** The axis over the column, with what is needed written at its place. */
export function IntervalAxis({ from, to, unit, need, needWords, width = 400 }: IntervalAxisProps) {
  return (
    <Sheet width={width} height={24} label={`Scale ${from} to ${to} ${unit}; needed ${need.value}, ${need.low} to ${need.high}`}>
      <AxisWords from={from} to={to} unit={unit} need={need} needWords={needWords} x={scaleFor(from, to, width)} y={16} />
    </Sheet>
  );
}

/** All options in one chart, for print and for the handbook. */
export function IntervalRows({ rows, from, to, unit, need, needWords, width = 640 }: { readonly rows: readonly OptionInterval[]; readonly from: number; readonly to: number; readonly unit: string; readonly need: Need; readonly needWords?: string; readonly width?: number }) {
  const names = 40 + Math.max(60, ...rows.map((r) => wordWidth(r.name))) + 16;
  const right = 52;
  const inner = scaleFor(from, to, width - names - right);
  const x = linear([from, to], [names + inner.range[0], names + inner.range[1]]);
  const step = 40;
  const head = 30;
  return (
    <Sheet width={width} height={head + rows.length * step + 2} label={rows.map((row) => rowWords(row, need, unit)).join('. ')}>
      <AxisWords from={from} to={to} unit={unit} need={need} needWords={needWords} x={x} y={18} />
      {rows.map((row, i) => <RowMarks key={row.letter} row={row} need={need} x={x} top={head + i * step} height={step} />)}
      <path className="d-line d-grid" d={rows.map((_, i) => `M0 ${head + i * step}H${width}`).join('')} />
      {rows.map((row, i) => (
        <g key={row.letter}>
          {row.chosen && <path className="d-line d-accent" d={`M0 ${head + i * step}H${width}M0 ${head + (i + 1) * step}H${width}`} />}
          <Balloon x={13} y={head + (i + 0.5) * step} kind={row.chosen ? 'chosen-option' : 'option'} label={row.letter} />
          <Words x={40} y={head + (i + 0.5) * step + 5} strong={row.chosen ?? false}>{row.name}</Words>
          <Words x={width} y={head + (i + 0.5) * step + 5} anchor="end" strong={row.chosen ?? false}>{row.reaches}</Words>
        </g>
      ))}
    </Sheet>
  );
}

function AxisWords({ from, to, unit, need, needWords, x, y }: { readonly from: number; readonly to: number; readonly unit: string; readonly need: Need; readonly needWords: string | undefined; readonly x: Scale; readonly y: number }) {
  const marks = ticks(from, to, x.range[1] - x.range[0] > 300 ? 7 : 4);
  const words = needWords ?? `needs ${need.value}`;
  const last = `${tickWords(marks.at(-1) ?? to, marks)} ${unit}`;
  const half = wordWidth(words) / 2;
  const lastStart = x.range[1] + 8 - wordWidth(last);
  // The needed value never runs into the end of the axis, nor over its start.
  const middle = Math.min(Math.max(x(within(x, need.value)), x.range[0] - 8 + half), lastStart - half - 10);
  const free = (m: number): boolean => Math.abs(x(m) - middle) > half + 12 && x(m) < lastStart - 14;
  return (
    <g>
      {marks.filter(free).map((m) => <Words key={m} x={x(m)} y={y} anchor="middle" tone="ink2">{tickWords(m, marks)}</Words>)}
      <Words x={middle} y={y} anchor="middle" strong>{words}</Words>
      <Words x={x.range[1] + 8} y={y} anchor="end" tone="ink2">{last}</Words>
    </g>
  );
}

function RowMarks({ row, need, x, top, height }: { readonly row: OptionInterval; readonly need: Need; readonly x: Scale; readonly top: number; readonly height: number }) {
  const at = (v: number): number => x(within(x, v));
  const own = row.need ?? need;
  return (
    <g>
      <rect className="d-fill-wash" x={at(own.low)} y={top} width={Math.max(1, at(own.high) - at(own.low))} height={height} />
      <path className="d-line d-thin" d={`M${at(own.value)} ${top}v${height}`} />
      <Interval low={at(row.low)} value={at(row.value)} high={at(row.high)} y={top + height / 2} cap={14} diamond={14} accent={row.chosen ?? false} bold />
    </g>
  );
}

function rowWords(row: OptionInterval, need: Need, unit: string): string {
  const own = row.need ?? need;
  const changed = row.need === undefined ? '' : ' (this option changes the need)';
  return `${row.letter}, ${row.name}: ${row.value} ${unit}, range ${row.low} to ${row.high}; needed ${own.value}${changed}; reaches it ${row.reaches}${row.chosen ? '; recommended' : ''}`;
}
