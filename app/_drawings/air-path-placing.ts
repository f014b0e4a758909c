import { layOutAirPath } from './air-path-layout';
import type { AirPathLayout, OutletLayout, PlanFan, PlanOutlet, PlanSecondFan } from './air-path-layout';
import type { Point } from './arrows';
import type { DimensionProps } from './dimension';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';
import { spread } from './labels';
import { wordWidth } from './word-width';
import { wrapWords } from './wrap-words';

/** A size of the path that stands in the plan as a figure. */
export type PathSize = 'frame' | 'second-frame' | 'duct-width' | 'duct-length' | 'mouth-width' | 'mouth-height' | 'distance' | 'channel' | 'branch' | 'bends';

export interface PlanOfPath {
  readonly fan: PlanFan;
  /** The second of two fans; undefined for one. */
  readonly second?: PlanSecondFan | undefined;
  /** Clear width and length of the duct from the fan to the fork, mm. */
  readonly duct: { readonly width: number; readonly length: number };
  /** One to four outlets. */
  readonly outlets: readonly PlanOutlet[];
  /** Sizes that nobody measured: a usual value stands in, and its figure carries a question mark. Written as `sizeKey`. */
  readonly guessed?: ReadonlySet<string>;
  /** Sizes that are not known and not reckoned with either: their figure is a question mark alone. */
  readonly unknown?: ReadonlySet<string>;
}

/** A figure of the plan with its place: what a hand can take hold of. All px. */
export interface PlacedSize {
  readonly key: string;
  readonly size: PathSize;
  readonly outlet: number | undefined;
  readonly words: string;
  /** Where the figure stands, at least 24 wide and high. */
  readonly box: { readonly x: number; readonly y: number; readonly w: number; readonly h: number };
  /** The dimension with its arrows; undefined for a figure in a name. */
  readonly arrows?: DimensionProps;
  /** The end of the dimension that can be dragged, and how many px along x or y make a millimetre more. */
  readonly grip?: { readonly x: number; readonly y: number; readonly along: 'x' | 'y'; readonly perMillimetre: number };
}

/** A name beside the plan: its leader, its lines, and the figures among them. */
export interface PlacedName {
  readonly key: string;
  /** What it names, px. */
  readonly to: Point;
  /** Where its first line starts or ends, px. */
  readonly at: Point;
  readonly side: 'left' | 'right';
  readonly accent: boolean;
  readonly lines: readonly string[];
  readonly second: readonly string[];
  readonly words: readonly { readonly x: number; readonly y: number; readonly words: string }[];
}

export interface PlacedPlan {
  readonly width: number;
  readonly height: number;
  /** Narrow: numbers in the plan, their names in a list under it. */
  readonly slim: boolean;
  readonly on: Frame;
  readonly layout: AirPathLayout;
  readonly frontTop: number;
  readonly names: readonly PlacedName[];
  readonly sizes: readonly PlacedSize[];
}

/** Height of the front view, mm. */
export const frontHeight = 30;

/** At this scale 40 mm on screen are about 40 mm on paper at 1 : 1 (96 px per inch gives 3.78 px/mm; the sheet is printed a little smaller). */
const largestScale = 3.43;
const narrow = 560;
const column = 148;
/** Scale and origin move in steps, so that a size that changes a little moves only what hangs on it. */
const scaleStep = 0.1;
const originStep = 8;
/** From the top of the sheet to the fan: a heading and the fan's dimension, px. */
const aboveFan = 46;
/** A figure can be touched in 24 px; on a narrow sheet, where fingers are, in 30. */
const figureHeight = 24;

/** A size as it is written, mm to a tenth. */
export const sizeWords = (mm: number): string => String(Math.round(mm * 10) / 10);

/** Names a size within the plan: "branch 1" is the branch of the second outlet. */
export const sizeKey = (size: PathSize, outlet?: number): string => (outlet === undefined ? size : `${size} ${outlet}`);

/** Room that is free over the fan, and how far the ground gives way when a dragged length needs more, px. */
const freeAbove = 12;
const givesWayBy = 40;

/**
 * Where everything in the plan stands: scale, names, and every figure that can be changed. `held` is the plan as it stood when
 * a hand took hold of a length: the ground stays where it is under the hand, and gives way only to what would not fit.
 */
export function placePlan(plan: PlanOfPath, width: number, held?: PlacedPlan): PlacedPlan {
  const layout = layOutAirPath(plan.fan, plan.duct, plan.outlets, plan.second);
  const slim = width < narrow;
  const { box } = layout;
  const side = slim ? 38 : 176;
  const { k, left, top } = held === undefined ? groundFor(layout, width, side) : heldGround(layout, held);
  const planEnd = top + box.bottom * k + 34;
  const on: Frame = { id: '', width, height: 0, size: 'figure', k, left, top };
  const named = namesOf(plan, layout, on);
  const wide = slim ? undefined : besides(named, width, left + ((box.left + box.right) / 2) * k, planEnd);
  const frontTop = Math.max(held?.frontTop ?? 0, (wide?.end ?? planEnd) + 24);
  const placed = wide ?? listed(named, width, frontTop + frontHeight * k + 54);
  return {
    width, slim, on, layout, frontTop,
    height: Math.max(held?.height ?? 0, Math.round(slim ? placed.end : frontTop + frontHeight * k + 54)),
    names: placed.names,
    sizes: [...arrowsOf(plan, layout, on), ...placed.sizes],
  };
}

type Ground = Pick<Frame, 'k' | 'left' | 'top'>;

/** As large as it will go between two columns of `side` px, the middle of the path in the middle of the sheet. */
function groundFor({ box }: AirPathLayout, width: number, side: number): Ground {
  const fitting = (width - 2 * side) / (box.right - box.left);
  const k = Math.min(largestScale, fitting < scaleStep ? fitting : Math.floor(fitting / scaleStep) * scaleStep);
  return {
    k,
    left: Math.round((width / 2 - ((box.left + box.right) / 2) * k) / originStep) * originStep,
    top: Math.ceil((aboveFan - box.top * k) / originStep) * originStep,
  };
}

function heldGround({ box }: AirPathLayout, { on: { k, left, top } }: PlacedPlan): Ground {
  const lacking = aboveFan - box.top * k - top - freeAbove;
  return { k, left, top: top + Math.max(0, Math.ceil(lacking / givesWayBy)) * givesWayBy };
}

interface Named {
  readonly key: string;
  readonly at: Point;
  readonly words: string;
  readonly second: string;
  readonly accent: boolean;
  readonly rows: readonly (readonly Segment[])[];
}

/** Plain words, or a figure that can be changed. */
interface Segment {
  readonly words: string;
  readonly size?: PathSize;
  readonly outlet?: number;
}

/** Outlets at the sides are dimensioned with arrows; the figures of others stand in their names. */
const atSide = (o: OutletLayout): boolean => Math.abs(Math.cos((o.outlet.direction * Math.PI) / 180)) > 0.9;

function namesOf(plan: PlanOfPath, layout: AirPathLayout, on: Frame): Named[] {
  const place = (p: Point): Point => ({ x: atX(on, p.x), y: atY(on, p.y) });
  const { fan, second } = plan;
  const frame = (size: 'frame' | 'second-frame', of: PlanFan): Segment[] => [{ words: 'frame' }, { words: figureWords(plan, size, undefined, of.size), size }];
  const fanNamed = (key: string, of: PlanFan, at: Point, rows: Named['rows']): Named => ({ key, at: place({ x: at.x + of.size * 0.22, y: at.y }), words: of.name, second: of.reading, accent: false, rows });
  return [
    // Over two fans an arrow could belong to either: their sizes stand with their names.
    fanNamed('fan', fan, layout.fan, second === undefined ? [] : [frame('frame', fan)]),
    ...(second === undefined || layout.second === undefined ? [] : [fanNamed('second fan', second, layout.second, plan.unknown?.has(sizeKey('second-frame')) === true ? [] : [frame('second-frame', second)])]),
    ...layout.outlets.map((laid, index): Named => {
      const { outlet, way, mouth, lee } = laid;
      const turn = way.at(-2) ?? mouth;
      const figure = (size: PathSize, value: number): Segment => ({ words: figureWords(plan, size, index, value), size, outlet: index });
      return {
        key: outlet.name, at: place({ x: turn.x * 0.7 + mouth.x * 0.3, y: turn.y * 0.7 + mouth.y * 0.3 }),
        words: `${outlet.name} ${outlet.reading}${lee ? ', lee' : ''}`.trim(), second: '', accent: lee,
        rows: [
          [{ words: 'mouth' }, figure('mouth-width', outlet.width), { words: '×' }, figure('mouth-height', outlet.height)],
          [{ words: 'branch' }, figure('branch', outlet.branch), { words: 'bends' }, figure('bends', outlet.bends)],
          ...(atSide(laid) ? [] : [[{ words: 'to nozzle' }, figure('distance', outlet.distance)]]),
        ],
      };
    }),
  ];
}

function figureWords(plan: PlanOfPath, size: PathSize, outlet: number | undefined, value: number): string {
  if (plan.unknown?.has(sizeKey(size, outlet))) return '?';
  return `${sizeWords(value)}${plan.guessed?.has(sizeKey(size, outlet)) ? '?' : ''}`;
}

/** Names in a column at either side, whichever their place is nearer to; wrapped to the column. Many names make the plan longer. */
function besides(names: readonly Named[], width: number, centre: number, bottom: number): { names: PlacedName[]; sizes: PlacedSize[]; end: number } {
  const columns = (['left', 'right'] as const).map((side) => {
    const here = names.filter((n) => (n.at.x < centre ? 'left' : 'right') === side).sort((a, b) => a.at.y - b.at.y);
    const heights = here.map((n) => heightOf(n, column, figureHeight));
    return { side, here, last: heights.at(-1) ?? 0, step: Math.max(60, ...heights) + 8 };
  });
  const end = Math.max(bottom, ...columns.map(({ here, last, step }) => 46 + (here.length - 1) * step + last));
  const placed = columns.flatMap(({ side, here, last, step }) => {
    const ys = spread(here.map((n) => n.at.y - 6), 46, Math.max(46, end - last), step);
    return here.map((n, i) => set(n, { x: side === 'left' ? column : width - column, y: ys[i] ?? n.at.y }, side, column, figureHeight));
  });
  return { names: placed.map((p) => p.name), sizes: placed.flatMap((p) => p.sizes), end };
}

/** Names in a list under the plan, for narrow sheets. */
function listed(names: readonly Named[], width: number, top: number): { names: PlacedName[]; sizes: PlacedSize[]; end: number } {
  let y = top + 17;
  const placed = names.map((n) => {
    const each = set(n, { x: 34, y }, 'right', width - 40, 30);
    y += heightOf(n, width - 40, 30) + 10;
    return each;
  });
  return { names: placed.map((p) => p.name), sizes: placed.flatMap((p) => p.sizes), end: y };
}

const heightOf = (n: Named, room: number, step: number): number => (wrapWords(n.words, room).length + (n.second === '' ? 0 : wrapWords(n.second, room).length)) * 18 + n.rows.length * step;

function set(named: Named, at: Point, side: 'left' | 'right', room: number, step: number): { name: PlacedName; sizes: PlacedSize[] } {
  const lines = wrapWords(named.words, room);
  const second = named.second === '' ? [] : wrapWords(named.second, room);
  const first = at.y + (lines.length + second.length - 1) * 18;
  const rows = named.rows.map((row, i) => rowAt(row, at.x, first + step * (i + 0.5) + 7, side, step));
  return {
    name: { key: named.key, to: named.at, at, side, accent: named.accent, lines, second, words: rows.flatMap((row) => row.words) },
    sizes: rows.flatMap((row) => row.sizes),
  };
}

const segmentGap = 5;

/** A row of words and figures from `x` on to the right, or ending at `x`. */
function rowAt(row: readonly Segment[], x: number, y: number, side: 'left' | 'right', height: number): { words: { x: number; y: number; words: string }[]; sizes: PlacedSize[] } {
  const widths = row.map((segment) => (segment.size === undefined ? wordWidth(segment.words) : Math.max(figureHeight, wordWidth(segment.words) + 8)));
  const total = widths.reduce((sum, w) => sum + w, 0) + segmentGap * (row.length - 1);
  let from = side === 'right' ? x : x - total;
  const words: { x: number; y: number; words: string }[] = [];
  const sizes: PlacedSize[] = [];
  row.forEach((segment, i) => {
    const w = widths[i] ?? 0;
    if (segment.size === undefined) words.push({ x: px(from), y: px(y), words: segment.words });
    else sizes.push({ key: sizeKey(segment.size, segment.outlet), size: segment.size, outlet: segment.outlet, words: segment.words, box: { x: px(from), y: px(y - 5 - height / 2), w: px(w), h: height } });
    from += w + segmentGap;
  });
  return { words, sizes };
}

/** Every dimension with arrows: frame over the fan, duct beside and across itself, distances and channels in one chain below. */
function arrowsOf(plan: PlanOfPath, layout: AirPathLayout, on: Frame): PlacedSize[] {
  const { fan, duct } = plan;
  const r = fan.size / 2;
  const over = atY(on, layout.box.top);
  const [foot, lower] = layout.channels[0]?.points ?? [];
  const level = atY(on, layout.box.bottom) + 14;
  const trunk: PlacedSize[] = foot === undefined || lower === undefined ? [] : trunkSizes(plan, layout, on, foot);
  return [
    ...(plan.second !== undefined ? [] : [arrow('frame', undefined, figureWords(plan, 'frame', undefined, fan.size), { from: atX(on, layout.fan.x - r), to: atX(on, layout.fan.x + r), at: over - 12, edges: [over, over] })]),
    ...(duct.length > 0 ? trunk : []),
    ...layout.outlets.flatMap((laid, index) => (atSide(laid) ? sideSizes(plan, laid, index, level, on) : [])),
  ];
}

function trunkSizes(plan: PlanOfPath, layout: AirPathLayout, on: Frame, foot: Point): PlacedSize[] {
  const { duct } = plan;
  const half = duct.width / 2;
  const end = layout.fork.y - Math.max(4, ...plan.outlets.map((o) => o.channel)) / 2;
  const lengthWords = figureWords(plan, 'duct-length', undefined, duct.length);
  // A second fan beside the first joins from the left. The figure stands to the left of its line either way.
  const atRight = plan.second?.arrangement === 'parallel';
  const edge = atX(on, foot.x + (atRight ? half : -half));
  const beside = atRight ? px(edge + Math.max(figureHeight, wordWidth(lengthWords) + 8) + 8) : edge - 15;
  const upper = atY(on, foot.y);
  const across = px(upper + Math.min(18, ((end - foot.y) * on.k) / 2));
  const [from, to] = [atX(on, foot.x - half), atX(on, foot.x + half)];
  return [
    arrow('duct-length', undefined, lengthWords, { from: upper, to: atY(on, end), at: beside, upright: true, edges: [edge, edge] }, { x: beside, y: upper, along: 'y', perMillimetre: -on.k }),
    arrow('duct-width', undefined, figureWords(plan, 'duct-width', undefined, duct.width), { from, to, at: across }, { x: to, y: across, along: 'x', perMillimetre: on.k / 2 }),
  ];
}

function sideSizes(plan: PlanOfPath, laid: OutletLayout, index: number, level: number, on: Frame): PlacedSize[] {
  const { outlet, mouth, way } = laid;
  const sign = Math.sign(mouth.x);
  const turn = way.at(-2) ?? mouth;
  const end = atX(on, mouth.x);
  const [inner, outer] = [atX(on, turn.x - (sign * outlet.channel) / 2), atX(on, turn.x + (sign * outlet.channel) / 2)];
  const low = atY(on, outlet.width / 2);
  return [
    arrow('distance', index, figureWords(plan, 'distance', index, outlet.distance), { from: atX(on, 0), to: end, at: level, edges: [atY(on, 5), low], spill: sign > 0 ? 'after' : 'before' }, { x: end, y: level, along: 'x', perMillimetre: sign * on.k }),
    arrow('channel', index, figureWords(plan, 'channel', index, outlet.channel), { from: inner, to: outer, at: level, edges: [low + 6, low + 6], spill: sign > 0 ? 'after' : 'before' }, { x: outer, y: level, along: 'x', perMillimetre: (sign * on.k) / 2 }),
  ];
}

function arrow(size: PathSize, outlet: number | undefined, words: string, props: DimensionProps, grip?: PlacedSize['grip']): PlacedSize {
  return { key: sizeKey(size, outlet), size, outlet, words, box: figureBox(words, props), arrows: { ...props, words }, ...(grip === undefined ? {} : { grip }) };
}

/** Where a dimension sets its figure; the same rules as the dimension itself follows. */
function figureBox(words: string, { from, to, at, upright = false, spill = 'after' }: DimensionProps): PlacedSize['box'] {
  const w = Math.max(figureHeight, wordWidth(words) + 8);
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const middle = (low + high) / 2;
  const place = upright ? { x: at - 7 - wordWidth(words) / 2, y: middle }
    : high - low > wordWidth(words) + 4 ? { x: middle, y: at - 10 }
      : { x: spill === 'after' ? high + 22 + wordWidth(words) / 2 : low - 22 - wordWidth(words) / 2, y: at };
  return { x: px(place.x - w / 2), y: px(place.y - figureHeight / 2), w: px(w), h: figureHeight };
}
