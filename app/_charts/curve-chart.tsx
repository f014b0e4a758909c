import type { Point } from '../_drawings/arrows';
import { Balloon } from '../_drawings/balloon';
import { px } from '../_drawings/frame';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { wordWidth } from '../_drawings/word-width';
import { boxOfWords, placeLabel } from './label-placement';
import type { Box, Obstacles } from './label-placement';
import { clipped, namePlaces, pathOf, sampled } from './paths';
import { linear, niceEnd, ticks, tickWords, within } from './scales';
import type { Scale } from './scales';

export interface Curve {
  readonly name: string;
  /** Fan curves are drawn heavier than duct curves. */
  readonly of: 'fan' | 'duct';
  /** Solid when fitted, dashed when not. */
  readonly fitted: boolean;
  /** Thin: a part of another curve, such as one of two fans. */
  readonly part?: boolean;
  /** In the units of the axes, along rising flow. */
  readonly points: readonly Point[];
}

export interface OperatingPoint {
  readonly letter: string;
  readonly flow: number;
  readonly pressure: number;
  readonly words: string;
  readonly chosen?: boolean;
  /** 95 % range of a measured flow, and of a measured pressure. */
  readonly flowRange?: readonly [number, number] | undefined;
  readonly pressureRange?: readonly [number, number] | undefined;
}

export interface CurveChartProps {
  readonly curves: readonly Curve[];
  readonly points: readonly OperatingPoint[];
  /** Words at the ends of the axes, each with its unit. */
  readonly flowAxis?: string;
  readonly pressureAxis?: string;
  readonly width?: number;
  readonly height?: number;
}

/** Below this width, px, points carry only their letters and their words stand in a list under the chart. */
const narrow = 560;
const listStep = 30;

/** Pressure against flow: where a fan's curve meets a duct's curve is what flows. Curves and points carry their names. */
export function CurveChart({ curves, points, flowAxis = 'flow, L/s', pressureAxis = 'pressure, Pa', width = 632, height = 430 }: CurveChartProps) {
  const slim = width < narrow;
  const listed = slim ? points.length * listStep + 8 : 0;
  const { x, y, flowTicks, pressureTicks } = scalesFor(curves, points, width, height);
  const plot: Box = { x: x.range[0], y: y.range[1], w: x.range[1] - x.range[0], h: y.range[0] - y.range[1] };
  const paths = curves.map((curve) => clipped(curve.points.map((p) => ({ x: x(p.x), y: y(p.y) })), plot));
  const obstacles: Obstacles = {
    points: paths.flatMap((path) => sampled(path)),
    boxes: [boxOfWords(pressureAxis, plot.x + 8, plot.y + 4, 'start'), ...points.map((p) => ({ x: x(p.flow) - 6, y: y(p.pressure) - 6, w: 12, h: 12 }))],
    segments: [],
    bounds: { x: plot.x + 6, y: plot.y - 8, w: width - plot.x - 8, h: plot.h + 2 },
  };
  // In a small chart names come first: a circle finds room where words do not. Otherwise the recommended point, where the eye goes.
  const namesFirst = slim ? placeNames(curves, paths, obstacles) : undefined;
  const inOrder = [...points].sort((a, b) => Number(b.chosen ?? false) - Number(a.chosen ?? false));
  const callouts = new Map(inOrder.map((point) => [point.letter, placePoint(slim ? '' : point.words, { x: x(point.flow), y: y(point.pressure) }, obstacles)]));
  const names = namesFirst ?? placeNames(curves, paths, obstacles);
  return (
    <Sheet width={width} height={height + listed} label={chartWords(curves, points, flowAxis, pressureAxis)}>
      <path className="d-line d-grid" d={[...flowTicks.map((t) => `M${x(t)} ${plot.y}V${y.range[0]}`), ...pressureTicks.map((t) => `M${plot.x} ${y(t)}H${x.range[1]}`)].join('')} />
      <path className="d-line d-outline" d={`M${plot.x} ${plot.y}V${y.range[0]}H${x.range[1]}`} />
      <path className="d-line d-thin" d={[...flowTicks.map((t) => `M${x(t)} ${y.range[0]}v6`), ...pressureTicks.map((t) => `M${plot.x} ${y(t)}h-6`)].join('')} />
      {flowTicks.map((t) => <Words key={t} x={x(t)} y={y.range[0] + 22} anchor="middle" tone="ink2">{tickWords(t, flowTicks)}</Words>)}
      {pressureTicks.map((t) => <Words key={t} x={plot.x - 10} y={y(t) + 5} anchor="end" tone="ink2">{tickWords(t, pressureTicks)}</Words>)}
      <Words x={x.range[1]} y={y.range[0] + 40} anchor="end">{flowAxis}</Words>
      <Words x={plot.x + 8} y={plot.y + 4} halo>{pressureAxis}</Words>
      {curves.map((curve, i) => <path key={curve.name} className={`d-line d-${lineOf(curve)}`} d={pathOf(paths[i] ?? [])} />)}
      {names.map((name) => <Words key={name.words} x={name.box.x} y={name.box.y + 12} halo strong={name.strong}>{name.words}</Words>)}
      {points.map((point) => <Callout key={point.letter} point={point} at={{ x: x(point.flow), y: y(point.pressure) }} place={callouts.get(point.letter)} x={x} y={y} named={!slim} />)}
      {slim && points.map((point, i) => <Listed key={point.letter} point={point} y={height + 14 + i * listStep} />)}
    </Sheet>
  );
}

const lineOf = (curve: Curve): string => (curve.part === true ? 'thin' : curve.of === 'fan' ? (curve.fitted ? 'outline' : 'proposed-bold') : curve.fitted ? 'edge' : 'proposed');

function scalesFor(curves: readonly Curve[], points: readonly OperatingPoint[], width: number, height: number) {
  const fans = curves.filter((c) => c.of === 'fan').flatMap((c) => c.points);
  const mostFlow = Math.max(0.001, ...fans.map((p) => p.x), ...points.map((p) => p.flow * 1.1));
  const mostPressure = Math.max(0.001, ...fans.map((p) => p.y), ...points.map((p) => p.pressure * 1.1));
  const flowEnd = niceEnd(0, mostFlow, 5);
  const pressureEnd = niceEnd(0, mostPressure, 4);
  const x = linear([0, flowEnd], [44, width - (width > 480 ? 70 : 14)]);
  const y = linear([0, pressureEnd], [height - 48, 12]);
  return { x, y, flowTicks: ticks(0, flowEnd, width > 480 ? 6 : 4), pressureTicks: ticks(0, pressureEnd, 4) };
}

interface Callouted {
  readonly balloon: Point;
  readonly words: Point;
  readonly anchor: 'start' | 'end';
}

/** Balloon positions tried around a point: right-hand side first, then left, near before far. */
const spots = [38, 54, 76, 104, 136, 172].flatMap((far) => [-30, 20, -60, 45, -150, 160, -120, 130, 0, 180, 70, -85].map((angle) => ({ far, angle })));

function placePoint(pointWords: string, at: Point, obstacles: Obstacles): Callouted {
  const options = spots.map(({ far, angle }) => {
    const a = (angle * Math.PI) / 180;
    const balloon = { x: at.x + far * Math.cos(a), y: at.y + far * Math.sin(a) };
    const right = Math.abs(angle) <= 90;
    const w = pointWords === '' ? 26 : wordWidth(pointWords) + 34;
    return { balloon, right, box: { x: right ? balloon.x - 13 : balloon.x - w + 13, y: balloon.y - 13, w, h: 26 }, leader: [at, balloon] as const };
  });
  // The point's own box is among the obstacles, so its leader would count as striking it: start a little outside.
  const candidates = options.map((o) => ({ box: o.box, leader: [outward(at, o.balloon, 9), outward(o.balloon, at, 14)] as const }));
  const chosen = options[placeLabel(candidates, obstacles).choice];
  if (chosen === undefined) throw new Error('placePoint: the chosen place is not among the options');
  return { balloon: chosen.balloon, words: { x: chosen.balloon.x + (chosen.right ? 17 : -17), y: chosen.balloon.y + 5 }, anchor: chosen.right ? 'start' : 'end' };
}

function outward(from: Point, to: Point, by: number): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: from.x + ((to.x - from.x) * by) / length, y: from.y + ((to.y - from.y) * by) / length };
}

function placeNames(curves: readonly Curve[], paths: readonly (readonly Point[])[], obstacles: Obstacles): PlacedName[] {
  return curves.map((curve, i) => placeName(curve, paths[i] ?? [], obstacles));
}

interface PlacedName {
  readonly words: string;
  readonly box: Box;
  readonly strong: boolean;
}

function placeName(curve: Curve, path: readonly Point[], obstacles: Obstacles): PlacedName {
  const places = namePlaces(path);
  const near = places.flatMap((p) => [boxOfWords(curve.name, p.x + 8, p.y + 22, 'start'), boxOfWords(curve.name, p.x, p.y - 9, 'start'), boxOfWords(curve.name, p.x - 9, p.y + 2, 'end'), boxOfWords(curve.name, p.x + 9, p.y + 8, 'start')]);
  // A short curve in a small chart may have no room beside it: a step further out is better than under a balloon.
  const far = places.flatMap((p) => [boxOfWords(curve.name, p.x + 16, p.y - 14, 'start'), boxOfWords(curve.name, p.x + 16, p.y + 34, 'start'), boxOfWords(curve.name, p.x - 16, p.y - 14, 'end'), boxOfWords(curve.name, p.x + 34, p.y + 4, 'start')]);
  const candidates = [...near, ...far].map((box) => ({ box }));
  return { words: curve.name, box: placeLabel(candidates, obstacles).box, strong: curve.of === 'fan' && curve.part !== true };
}

function Callout({ point, at, place, x, y, named }: { readonly named: boolean; readonly point: OperatingPoint; readonly at: Point; readonly place: Callouted | undefined; readonly x: Scale; readonly y: Scale }) {
  if (place === undefined) return null;
  const chosen = point.chosen ?? false;
  const tone = chosen ? 'accent' : 'ink';
  const edge = outward(place.balloon, at, 12);
  // A range that runs on beyond the axes is drawn up to their end, without a cap there; its figures stand in the tables.
  const [flow, pressure] = [rangeOn(point.flowRange, x), rangeOn(point.pressureRange, y)];
  return (
    <g>
      {flow && <path className="d-line d-edge" d={`M${flow.from} ${px(at.y)}H${flow.to}${flow.ends.map((end) => `M${end} ${px(at.y - 5)}v10`).join('')}`} />}
      {pressure && <path className="d-line d-edge" d={`M${px(at.x)} ${pressure.from}V${pressure.to}${pressure.ends.map((end) => `M${px(at.x - 5)} ${end}h10`).join('')}`} />}
      <path className={`d-line ${chosen ? 'd-accent-hair' : 'd-hair'}`} d={`M${px(at.x)} ${px(at.y)}L${px(edge.x)} ${px(edge.y)}`} />
      <circle className={`d-no-line d-fill-${tone}`} cx={px(at.x)} cy={px(at.y)} r={4.5} />
      {named && <Words x={place.words.x} y={place.words.y} anchor={place.anchor} tone={tone} strong={chosen} halo>{point.words}</Words>}
      <Balloon x={place.balloon.x} y={place.balloon.y} kind={chosen ? 'chosen-option' : 'option'} label={point.letter} />
    </g>
  );
}

/** A range on an axis, px, and those of its ends that lie on it. */
function rangeOn(range: readonly [number, number] | undefined, scale: Scale): { readonly from: number; readonly to: number; readonly ends: readonly number[] } | undefined {
  if (range === undefined) return undefined;
  const [from, to] = [scale(within(scale, range[0])), scale(within(scale, range[1]))];
  return { from, to, ends: range.filter((end) => within(scale, end) === end).map(scale) };
}

const Listed = ({ point, y }: { readonly point: OperatingPoint; readonly y: number }) => (
  <g>
    <Balloon x={13} y={y} kind={point.chosen ? 'chosen-option' : 'option'} label={point.letter} />
    <Words x={36} y={y + 5} strong={point.chosen ?? false} tone={point.chosen ? 'accent' : 'ink'}>{point.words}</Words>
  </g>
);

function chartWords(curves: readonly Curve[], points: readonly OperatingPoint[], flowAxis: string, pressureAxis: string): string {
  const said = points.map((p) => `${p.letter}, ${p.words}, at ${p.pressure.toPrecision(3)} on the pressure axis${p.chosen ? ', recommended' : ''}`).join('; ');
  return `Chart of ${pressureAxis} against ${flowAxis}. Curves: ${curves.map((c) => `${c.name}${c.fitted ? '' : ' (not fitted)'}`).join(', ')}. ${said}.`;
}
