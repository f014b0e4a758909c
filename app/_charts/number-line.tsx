import { Leader } from '../_drawings/leader';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';
import { Interval } from './interval';
import { linear, logarithmic, logTicks, ticks, tickWords, within } from './scales';
import type { Scale } from './scales';
import { wrapWords } from '../_drawings/wrap-words';

/** What a result in one stretch of the line would mean; written before the first reading. */
export interface MeaningZone {
  readonly from: number;
  readonly to: number;
  /** For example "0.20 to 0.42, 41 % expected". */
  readonly range: string;
  readonly means: string;
  readonly next?: string | undefined;
  /** The zone the reading falls in. */
  readonly hit?: boolean | undefined;
}

export interface NumberLineProps {
  readonly from: number;
  readonly to: number;
  readonly unit: string;
  readonly log?: boolean;
  /** How likely each value was before measuring: density in any unit; drawn to the height of the chart. */
  readonly expected?: readonly { readonly value: number; readonly density: number }[];
  readonly zones: readonly MeaningZone[];
  readonly reading?: { readonly value: number; readonly low: number; readonly high: number; readonly words: string } | undefined;
  /** 'under' sets each zone's words below it (wide screens); 'none' leaves them to a list beside the chart (phone). */
  readonly words?: 'under' | 'none';
  readonly width?: number;
  readonly name: string;
}

const top = 10;
const axis = 106;

/** What each result means: the expectation as a curve, thresholds as chain lines, the zone that is hit in wash, the reading. */
export function NumberLine({ from, to, unit, log = false, expected = [], zones, reading, words = 'under', width = 1376, name }: NumberLineProps) {
  const make = log ? logarithmic : linear;
  const x = make([from, to], [1, width - 1]);
  const columns = words === 'under' ? zoneColumns(zones, x, width) : [];
  const lines = Math.max(0, ...columns.map((c) => c.lines.length));
  const height = axis + 28 + (lines > 0 ? lines * 20 + 4 : 0);
  return (
    <Sheet width={width} height={height} label={numberLineWords(name, unit, zones, reading)}>
      {zones.filter((z) => z.hit).map((z) => <rect key={z.from} className="d-fill-wash" x={x(within(x, z.from))} y={top} width={Math.max(0, x(within(x, z.to)) - x(within(x, z.from)))} height={axis - top} />)}
      <Expectation expected={expected} x={x} />
      {thresholds(zones, from, to).map((t) => <path key={t} className="d-line d-centre" d={`M${x(t)} ${top}V${axis + 4}`} />)}
      <Axis x={x} unit={unit} log={log} width={width} bold={words === 'none' ? thresholds(zones, from, to) : []} />
      {expected.length > 2 && width > 500 && <ExpectationName expected={expected} x={x} avoid={reading?.value} />}
      {reading !== undefined && <Reading reading={reading} x={x} width={width} named={width > 500} />}
      {columns.map((column) => column.lines.map((line, i) => (
        <Words key={`${column.x}-${line.text}-${i}`} x={column.x} y={axis + 46 + i * 20} tone={line.part === 'range' ? 'ink2' : column.hit && line.part === 'means' ? 'accent' : 'ink'} strong={line.part === 'means'}>{line.text}</Words>
      )))}
    </Sheet>
  );
}

const thresholds = (zones: readonly MeaningZone[], from: number, to: number): number[] => zones.map((z) => z.from).filter((t) => t > from && t < to);

function curvePath(expected: NonNullable<NumberLineProps['expected']>, x: Scale): { path: string; yAt: (density: number) => number } {
  const most = Math.max(...expected.map((p) => p.density), 1e-12);
  const yAt = (density: number): number => Math.round((axis - (density / most) * (axis - top - 8)) * 100) / 100;
  return { path: expected.map((p, i) => `${i === 0 ? 'M' : 'L'}${x(within(x, p.value))} ${yAt(p.density)}`).join(''), yAt };
}

function Expectation({ expected, x }: { readonly expected: NonNullable<NumberLineProps['expected']>; readonly x: Scale }) {
  return expected.length < 2 ? null : <path className="d-line d-thin" d={curvePath(expected, x).path} />;
}

/** Names the curve where there is free paper to its left or right, away from the reading. */
function ExpectationName({ expected, x, avoid }: { readonly expected: NonNullable<NumberLineProps['expected']>; readonly x: Scale; readonly avoid: number | undefined }) {
  const { yAt } = curvePath(expected, x);
  const peak = expected.reduce((a, b) => (b.density > a.density ? b : a));
  const name = 'expected before measuring';
  const room = wordWidth(name) + 40;
  const rightward = x(peak.value) < (x.range[0] + x.range[1]) / 2;
  const side = rightward ? expected.filter((p) => p.value > peak.value) : expected.filter((p) => p.value < peak.value);
  const half = side.find((p) => (rightward ? p.density < peak.density * 0.62 : p.density > peak.density * 0.62)) ?? peak;
  const to = { x: x(half.value), y: yAt(half.density) };
  const at = { x: rightward ? Math.min(to.x + 44, x.range[1] - room + 34) : Math.max(to.x - 44, x.range[0] + room - 34), y: top + 12 };
  return avoid === undefined && expected.length === 0 ? null : <Leader to={to} at={at} side={rightward ? 'right' : 'left'} words={name} landing={10} />;
}

function Axis({ x, unit, log, width, bold }: { readonly x: Scale; readonly unit: string; readonly log: boolean; readonly width: number; readonly bold: readonly number[] }) {
  const [from, to] = x.domain;
  const marks = log ? logTicks(from, to) : ticks(from, to, width > 700 ? 10 : 5);
  const named = bold.length > 0 ? [] : log || width <= 700 ? marks : marks.filter((_, i) => i % 2 === 0);
  const last = `${log ? String(to) : tickWords(to, marks)} ${unit}`;
  const lastStart = width - wordWidth(last) - 10;
  const borders = spaced(bold, x, lastStart);
  const [nearest] = borders;
  const first = tickWords(from, marks);
  const isFirstFree = nearest === undefined || x(nearest) - wordWidth(tickWords(nearest, bold)) / 2 > wordWidth(first) + 8;
  return (
    <g>
      <path className="d-line d-outline" d={`M0 ${axis}H${width}`} />
      <path className="d-line d-thin" d={marks.map((m) => `M${x(m)} ${axis}v${named.includes(m) ? 6 : 4}`).join('')} />
      {named.map((m) => (x(m) > lastStart - 6 ? null : <Words key={m} x={x(m)} y={axis + 22} anchor={x(m) < 12 ? 'start' : 'middle'} tone="ink2">{log ? String(m) : tickWords(m, marks)}</Words>))}
      {borders.map((m) => <Words key={m} x={x(m)} y={axis + 22} anchor="middle" strong>{tickWords(m, bold)}</Words>)}
      {bold.length > 0 && isFirstFree && <Words x={0} y={axis + 22} tone="ink2">{first}</Words>}
      <Words x={width} y={axis + 22} anchor="end" tone="ink2">{last}</Words>
    </g>
  );
}

/** Threshold figures that would run into each other are left to the list. */
function spaced(values: readonly number[], x: Scale, lastStart: number): number[] {
  const kept: number[] = [];
  for (const value of values) if (x(value) - (kept.length > 0 ? x(kept.at(-1) ?? 0) : 0) > 42 && x(value) < lastStart - 20) kept.push(value);
  return kept;
}

function Reading({ reading, x, width, named }: { readonly reading: NonNullable<NumberLineProps['reading']>; readonly x: Scale; readonly width: number; readonly named: boolean }) {
  const at = (v: number): number => x(within(x, v));
  const y = axis - 15;
  const right = at(reading.high) + 10 + wordWidth(reading.words) < width;
  return (
    <g className="d-moves">
      <Interval low={at(reading.low)} value={at(reading.value)} high={at(reading.high)} y={y} cap={14} diamond={15} accent bold />
      {named && <Words x={right ? at(reading.high) + 10 : at(reading.low) - 10} y={y + 5} anchor={right ? 'start' : 'end'} tone="accent" strong halo>{reading.words}</Words>}
    </g>
  );
}

interface ZoneColumn {
  readonly x: number;
  readonly hit: boolean;
  readonly lines: readonly { readonly part: 'range' | 'means' | 'next'; readonly text: string }[];
}

const narrowest = 150;

/** Where each zone's words stand: at its own start, pushed apart when a zone is narrower than its words may be. */
function zoneColumns(zones: readonly MeaningZone[], x: Scale, width: number): ZoneColumn[] {
  const least = Math.min(narrowest, width / Math.max(1, zones.length));
  const starts: number[] = [];
  for (const zone of zones) starts.push(Math.max(x(within(x, zone.from)) + 5, (starts.at(-1) ?? -least) + least));
  for (let i = starts.length - 1, limit = width - least; i >= 0; i -= 1, limit -= least) starts[i] = Math.min(starts[i] ?? limit, limit);
  return zones.map((zone, i) => {
    const start = Math.max(0, starts[i] ?? 0);
    const room = (starts[i + 1] ?? width) - start - 14;
    const part = (name: 'range' | 'means' | 'next', text: string) => wrapWords(text, room).map((line) => ({ part: name, text: line }));
    return { x: start, hit: zone.hit ?? false, lines: [...part('range', zone.range), ...part('means', zone.means), ...(zone.next === undefined ? [] : part('next', zone.next))] };
  });
}

function numberLineWords(name: string, unit: string, zones: readonly MeaningZone[], reading: NumberLineProps['reading']): string {
  const said = zones.map((z) => `${z.range}: ${z.means}${z.hit ? ' (your reading)' : ''}`).join('; ');
  return `${name}, in ${unit}. ${said}.${reading === undefined ? '' : ` Reading ${reading.words}.`}`;
}
