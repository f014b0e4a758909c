import { useId } from 'react';
import type { Point } from '../_drawings/arrows';
import { FlowLine } from '../_drawings/flow-line';
import { px } from '../_drawings/frame';
import { HatchedPx, Hatches } from '../_drawings/hatches';
import { Leader } from '../_drawings/leader';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { Diamond } from './interval';
import { linear, niceEnd, ticks, tickWords } from './scales';

/** The eight directions as seen from above, back at the top, in the order of the table. */
export const directions = ['back', 'back-right', 'right', 'front-right', 'front', 'front-left', 'left', 'back-left'] as const;
export type Direction = (typeof directions)[number];

export interface DirectionReading {
  readonly direction: Direction;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface PolarProps {
  readonly readings: readonly DirectionReading[];
  /** The readings before the change, drawn as a ghost. */
  readonly ghost?: readonly DirectionReading[] | undefined;
  readonly limit: number;
  readonly unit: string;
  /** Value at the rim; the same for both plots of a pair. Left out: the next nice value above everything shown. */
  readonly rim?: number;
  /** Air that comes from a direction, m/s, drawn outside the rim. */
  readonly air?: readonly { readonly from: 'left' | 'right' | 'front' | 'back'; readonly speed: number; readonly words: string }[];
  readonly name: string;
  readonly width?: number;
  readonly id?: string;
}

/** What each direction reads, seen from above: limit ring dashed, what lies beyond it hatched, the state before as a ghost. */
export function PolarBeforeAfter({ readings, ghost = [], limit, unit, rim, air = [], name, width = 390, id }: PolarProps) {
  const own = useId().replace(/[^A-Za-z0-9]/g, '');
  const hatch = id ?? `r${own}`;
  const radius = width / 2 - 74;
  const c: Point = { x: width / 2, y: radius + 46 };
  const far = rim ?? niceEnd(0, Math.max(limit * 1.5, ...readings.map((r) => r.high), ...ghost.map((r) => r.value)), 3);
  const r = linear([0, far], [0, radius]);
  const rings = ticks(0, far, 3).filter((t) => t > 0);
  const at = (direction: Direction, value: number): Point => polar(c, directions.indexOf(direction) * 45, Math.max(0, r(value)));
  const height = Math.round(c.y + radius + 62);
  return (
    <Sheet width={width} height={height} label={polarWords(name, readings, limit, unit)}>
      <Hatches id={hatch} kinds={['lee']} />
      {rings.map((t) => <circle key={t} className="d-line d-grid" cx={c.x} cy={c.y} r={r(t)} />)}
      <path className="d-line d-grid" d={directions.map((d) => { const p = at(d, far); return `M${c.x} ${c.y}L${px(p.x)} ${px(p.y)}`; }).join('')} />
      {rings.map((t) => <Words key={t} x={c.x + 5} y={c.y - r(t) - 3} tone="ink2" halo>{tickWords(t, rings)}</Words>)}
      {directions.map((d) => <Named key={d} c={c} direction={d} radius={radius} short={width < 380} />)}
      {ghost.length > 2 && <path className="d-line d-ghost" d={outlineOf(ghost.map((g) => at(g.direction, g.value)))} />}
      <HatchedPx id={hatch} d={beyondLimit(readings, limit, at)} kind="lee" />
      <circle className="d-line d-limit" cx={c.x} cy={c.y} r={r(limit)} />
      {readings.length > 2 && <path className="d-line d-edge" d={outlineOf(readings.map((g) => at(g.direction, g.value)))} />}
      {readings.map((g) => <Radial key={g.direction} low={at(g.direction, g.low)} high={at(g.direction, Math.min(g.high, far))} value={at(g.direction, Math.min(g.value, far))} over={g.value > limit} />)}
      {air.map((a) => <AirFrom key={a.from} c={c} radius={radius} air={a} />)}
      <Leader to={polar(c, 148, r(limit))} at={{ x: c.x + radius * 0.62, y: c.y + radius + 52 }} side="right" words={`limit ${limit} ${unit}`} end="edge" landing={0} />
    </Sheet>
  );
}

/** Degrees against the clock would suit a mathematician; on a machine one looks from above: 0 is back, 90 is right. */
const polar = (c: Point, degrees: number, radius: number): Point => ({ x: c.x + radius * Math.sin((degrees * Math.PI) / 180), y: c.y - radius * Math.cos((degrees * Math.PI) / 180) });

const outlineOf = (points: readonly Point[]): string => `${points.map((p, i) => `${i === 0 ? 'M' : 'L'}${px(p.x)} ${px(p.y)}`).join('')}Z`;

/** The area between the limit ring and the outline, for each stretch that lies beyond it. */
function beyondLimit(readings: readonly DirectionReading[], limit: number, at: (d: Direction, v: number) => Point): string {
  const steps = 12;
  return readings.flatMap((a, i) => {
    const b = readings[(i + 1) % readings.length];
    if (b === undefined || (a.value <= limit && b.value <= limit)) return [];
    const inner = at(a.direction, 0);
    const outer = Array.from({ length: steps + 1 }, (_, s): Point => mix(at(a.direction, a.value), at(b.direction, b.value), s / steps));
    const ringRadius = distance(inner, at(a.direction, limit));
    const kept = outer.filter((p) => distance(inner, p) >= ringRadius - 0.01);
    if (kept.length < 2) return [];
    const back = [...kept].reverse().map((p) => { const d = distance(inner, p) || 1; return { x: inner.x + ((p.x - inner.x) * ringRadius) / d, y: inner.y + ((p.y - inner.y) * ringRadius) / d }; });
    return [outlineOf([...kept, ...back])];
  }).join('');
}

const mix = (a: Point, b: Point, t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function Radial({ low, high, value, over }: { readonly low: Point; readonly high: Point; readonly value: Point; readonly over: boolean }) {
  return (
    <g>
      <path className={`d-line ${over ? 'd-accent' : 'd-outline'}`} d={`M${px(low.x)} ${px(low.y)}L${px(high.x)} ${px(high.y)}`} />
      {over ? <Diamond x={value.x} y={value.y} size={13} accent /> : <circle className="d-no-line d-fill-ink" cx={px(value.x)} cy={px(value.y)} r={4} />}
    </g>
  );
}

function Named({ c, direction, radius, short }: { readonly c: Point; readonly direction: Direction; readonly radius: number; readonly short: boolean }) {
  const turn = directions.indexOf(direction) * 45;
  if (direction === 'left' || direction === 'right') {
    const x = direction === 'left' ? c.x - radius - 8 : c.x + radius + 8;
    return <Words x={x} y={c.y + 20} anchor={direction === 'left' ? 'end' : 'start'} tone="ink2" halo>{direction}</Words>;
  }
  const p = polar(c, turn, radius + (direction === 'back' ? 26 : direction === 'front' ? 22 : 10));
  const anchor = direction.endsWith('left') ? 'end' : direction.endsWith('right') ? 'start' : 'middle';
  const shift = short && anchor !== 'middle' ? (anchor === 'end' ? 12 : -12) : 0;
  return <Words x={p.x + shift} y={p.y + 5} anchor={anchor} tone="ink2" halo>{direction}</Words>;
}

function AirFrom({ c, radius, air }: { readonly c: Point; readonly radius: number; readonly air: NonNullable<PolarProps['air']>[number] }) {
  const turn = { back: 0, right: 90, front: 180, left: 270 }[air.from];
  const from = polar(c, turn, radius + 52);
  const to = polar(c, turn, radius + 12);
  const side = air.from === 'left' || air.from === 'right';
  return (
    <g>
      <FlowLine points={[from, to]} speed={air.speed} />
      <Words x={side ? from.x : from.x + 14} y={side ? from.y - 10 : (from.y + to.y) / 2 + 5} anchor={air.from === 'right' ? 'end' : 'start'} halo>{air.words}</Words>
    </g>
  );
}

function polarWords(name: string, readings: readonly DirectionReading[], limit: number, unit: string): string {
  return `${name}, by direction seen from above, limit ${limit} ${unit}. ${readings.map((r) => `${r.direction} ${r.value}${r.value > limit ? ', beyond the limit' : ''}`).join('; ')}.`;
}
