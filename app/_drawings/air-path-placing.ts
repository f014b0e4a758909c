import { layOutAirPath, wallThickness } from './air-path-layout';
import type { AirPathLayout, PlanFan } from './air-path-layout';
import { besideDuct, ductAcross, heightSegments } from './air-path-heights';
import { arrow, figureHeight, figureWords, fingerHeight, rowAt, sizeKey } from './air-path-figures';
import type { PathSize, PlacedSize, PlacedWords, PlanOfPath, Segment } from './air-path-figures';
import { bedBeside, inSteps, placeSections } from './air-path-section';
import type { PlacedSection } from './air-path-section';
import { placeUnrolled } from './air-path-unrolled';
import type { PlacedUnrolled } from './air-path-unrolled';
import type { Point } from './arrows';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';
import { spread } from './labels';
import { wordWidth } from './word-width';
import { wrapWords } from './wrap-words';

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
  readonly words: readonly PlacedWords[];
}

export interface PlacedPlan {
  readonly width: number;
  readonly height: number;
  /** Narrow: numbers in the plan, their names in a list under it. */
  readonly slim: boolean;
  readonly on: Frame;
  readonly layout: AirPathLayout;
  /** What the plan is, in one line. */
  readonly caption: string;
  /** Where the views under the plan begin, and where the key of the lines stands. */
  readonly viewsTop: number;
  readonly foot: number;
  readonly sections: readonly PlacedSection[];
  readonly unrolled: PlacedUnrolled;
  readonly names: readonly PlacedName[];
  /** Words beside the figures of the plan. */
  readonly words: readonly PlacedWords[];
  readonly sizes: readonly PlacedSize[];
}

/** At this scale 40 mm on screen are about 40 mm on paper at 1 : 1 (96 px per inch gives 3.78 px/mm; the sheet is printed a little smaller). */
const largestScale = 3.43;
const narrow = 560;
const column = 148;
/** Scale and origin move in steps, so that a size that changes a little moves only what hangs on it. */
const scaleStep = 0.1;
const originStep = 8;
/** From the top of the sheet to the fan: a heading and the fan's dimension, px. */
const aboveFan = 46;
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
  const { k, left, top } = held === undefined ? groundFor(layout, width, slim ? 38 : 176) : heldGround(layout, held);
  const on: Frame = { id: '', width, height: 0, size: 'figure', k, left, top };
  const planEnd = top + layout.box.bottom * k + 14;
  const { arrows, words, isHeightLeft } = arrowsOf(plan, layout, on, width - (slim ? 0 : column + 8), held);
  const named = namesOf(plan, layout, on, isHeightLeft);
  const under = slim ? placeSlim(plan, layout, on, named, planEnd, held) : placeWide(plan, layout, on, named, planEnd, held);
  return {
    width, slim, on, layout, caption: captionFor(width), viewsTop: under.viewsTop, foot: under.foot, sections: under.sections, unrolled: under.unrolled,
    height: Math.max(held?.height ?? 0, Math.round(under.end)),
    names: under.names, words, sizes: inOrder([...arrows, ...under.nameSizes, ...under.sections.flatMap((section) => section.sizes), ...under.unrolled.sizes]),
  };
}

/** The duct comes first whichever view it stands in: what is taken hold of must not change its place among the others. */
const inOrder = (sizes: readonly PlacedSize[]): PlacedSize[] => [...sizes].sort((a, b) => rankOf(a) - rankOf(b));
const rankOf = ({ size }: PlacedSize): number => (FIRST.includes(size) ? FIRST.indexOf(size) : FIRST.length);
const FIRST: readonly PathSize[] = ['frame', 'second-frame', 'duct-length', 'duct-width', 'duct-height'];

const captionFor = (width: number): string => CAPTIONS.find((words) => wordWidth(words) <= width - 4) ?? '';
/** The way of the branches round the nozzle is not entered: the plan says so, and where their lengths stand. */
const CAPTIONS = ['From above, cut through the duct. How the branches run is schematic; their lengths stand below', 'From above, cut through the duct. Branches schematic, lengths below', 'From above. Branches schematic, lengths below'];

interface UnderPlan {
  readonly viewsTop: number;
  readonly foot: number;
  readonly end: number;
  readonly sections: readonly PlacedSection[];
  readonly unrolled: PlacedUnrolled;
  readonly names: readonly PlacedName[];
  readonly nameSizes: readonly PlacedSize[];
}

/** Room for the key of the lines, px. */
const keyHeight = 44;
/** Least width of the section's column, and the gap beside it. */
const sectionRoom = 236;
const viewGap = 24;

/** Where the views under the plan begin; under a hand they stay as long as the plan does not reach them. */
function topOfViews(planEnd: number, held: PlacedPlan | undefined): number {
  return held !== undefined && planEnd < held.viewsTop ? held.viewsTop : 3 * inSteps((planEnd + 14) / 3);
}

/** Names beside the plan; under it the section at the left and the branches at the right of it. */
function placeWide(plan: PlanOfPath, layout: AirPathLayout, on: Frame, named: readonly Named[], planEnd: number, held: PlacedPlan | undefined): UnderPlan {
  const { width, k, left } = on;
  const beside = besides(named, width, left + ((layout.box.left + layout.box.right) / 2) * k, planEnd);
  const viewsTop = topOfViews(beside.end, held);
  const needed = Math.max(sectionRoom, 3 * inSteps((2 * Math.max(layout.rim + 2, layout.reach + bedBeside) * k + 4) / 3));
  const heldRoom = held === undefined ? 0 : held.unrolled.left - viewGap;
  // Under a hand the nozzle stays where it is, as long as the cut does not run far over the edge.
  const room = heldRoom > 0 && needed < heldRoom + 2 * viewGap ? heldRoom : needed;
  const sections = placeSections(plan, layout, k, Math.round(room / 2), viewsTop, room, held?.sections);
  const unrolled = placeUnrolled(plan, layout, { left: room + viewGap, top: viewsTop, width: width - room - viewGap, k, held: held?.unrolled, headOf: undefined });
  const foot = Math.max(held?.foot ?? 0, (sections.at(-1)?.end ?? viewsTop) + 24);
  return { viewsTop, foot, end: Math.max(foot + keyHeight + 18, unrolled.end + 4), sections, unrolled, names: beside.names, nameSizes: beside.sizes };
}

/** One under the other: the fans' names, the section, and the branches, each with its number and name at its head. */
function placeSlim(plan: PlanOfPath, layout: AirPathLayout, on: Frame, named: readonly Named[], planEnd: number, held: PlacedPlan | undefined): UnderPlan {
  const { width, k } = on;
  const fans = listed(named.filter((name) => name.outlet === undefined), width, planEnd + 16);
  const viewsTop = topOfViews(fans.end - 8, held);
  const sections = placeSections(plan, layout, k, Math.round(width / 2), viewsTop, width, held?.sections);
  const heads: PlacedName[] = [];
  const headOf = (index: number, y: number): number => {
    const name = named.find((each) => each.outlet === index);
    if (name === undefined) return y;
    const placed = set(name, { x: 34, y }, 'right', width - 40, fingerHeight);
    heads.push(placed.name);
    return y + placed.name.lines.length * 18 + 6;
  };
  const unrolled = placeUnrolled(plan, layout, { left: 0, top: inSteps((sections.at(-1)?.end ?? viewsTop) + 22), width, k, held: held?.unrolled, headOf });
  const foot = Math.max(held?.foot ?? 0, unrolled.end + 22);
  return { viewsTop, foot, end: foot + keyHeight + 18, sections, unrolled, names: [...fans.names, ...heads], nameSizes: fans.sizes };
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
  /** Which outlet it names; undefined for a fan. */
  readonly outlet: number | undefined;
  readonly at: Point;
  readonly words: string;
  readonly second: string;
  readonly accent: boolean;
  readonly rows: readonly (readonly Segment[])[];
}

/** `isHeightLeft`: the height of the duct has no room in the plan and stands with the fan. */
function namesOf(plan: PlanOfPath, layout: AirPathLayout, on: Frame, isHeightLeft: boolean): Named[] {
  const place = (p: Point): Point => ({ x: atX(on, p.x), y: atY(on, p.y) });
  const { fan, second } = plan;
  const frame = (size: 'frame' | 'second-frame', of: PlanFan): Segment[] => [{ words: 'frame' }, { words: figureWords(plan, size, undefined, of.size), size }];
  const fanNamed = (key: string, of: PlanFan, at: Point, rows: Named['rows']): Named => ({ key, outlet: undefined, at: place({ x: at.x + of.size * 0.22, y: at.y }), words: of.name, second: of.reading, accent: false, rows });
  return [
    // Over two fans an arrow could belong to either: their sizes stand with their names.
    fanNamed('fan', fan, layout.fan, [...(second === undefined ? [] : [frame('frame', fan)]), ...(isHeightLeft ? [[{ words: 'duct' }, ...heightSegments(plan, ductAcross(plan))]] : [])]),
    ...(second === undefined || layout.second === undefined ? [] : [fanNamed('second fan', second, layout.second, plan.unknown?.has(sizeKey('second-frame')) === true ? [] : [frame('second-frame', second)])]),
    ...layout.outlets.map(({ outlet, way, mouth, lee }, index): Named => {
      const turn = way.at(-2) ?? mouth;
      return { key: outlet.name, outlet: index, at: place({ x: turn.x * 0.7 + mouth.x * 0.3, y: turn.y * 0.7 + mouth.y * 0.3 }), words: `${outlet.name} ${outlet.reading}${lee ? ', lee' : ''}`.trim(), second: '', accent: lee, rows: [] };
    }),
  ];
}

/** Names in a column at either side, whichever their place is nearer to; wrapped to the column. Many names make the plan longer. */
function besides(names: readonly Named[], width: number, centre: number, bottom: number): { names: PlacedName[]; sizes: PlacedSize[]; end: number } {
  const columns = (['left', 'right'] as const).map((side) => {
    const here = names.filter((n) => (n.at.x < centre ? 'left' : 'right') === side).sort((a, b) => a.at.y - b.at.y);
    const heights = here.map((n) => heightOf(n, column, figureHeight));
    return { side, here, last: heights.at(-1) ?? 0, step: Math.max(36, ...heights) + 8 };
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
    const each = set(n, { x: 34, y }, 'right', width - 40, fingerHeight);
    y += heightOf(n, width - 40, fingerHeight) + 10;
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

/** The dimensions of the plan: frame over the fan, duct beside and across itself unless it is broken. */
function arrowsOf(plan: PlanOfPath, layout: AirPathLayout, on: Frame, right: number, held: PlacedPlan | undefined): { arrows: PlacedSize[]; words: readonly PlacedWords[]; isHeightLeft: boolean } {
  const { fan, duct } = plan;
  const r = fan.size / 2;
  const over = atY(on, layout.box.top);
  const foot = layout.channels[0]?.points[0];
  const frame = plan.second !== undefined ? [] : [arrow('frame', undefined, figureWords(plan, 'frame', undefined, fan.size), { from: atX(on, layout.fan.x - r), to: atX(on, layout.fan.x + r), at: over - 12, edges: [over, over] })];
  if (duct.length <= 0 || foot === undefined) return { arrows: frame, words: [], isHeightLeft: false };
  const end = layout.fork.y - Math.max(4, ...plan.outlets.map((o) => o.channel)) / 2;
  const trunk = trunkSizes(plan, layout, on, foot, end);
  if (layout.breaks.length > 0) return { arrows: [...frame, ...trunk], words: [], isHeightLeft: false };
  // Under a hand a height that stands with the fan stays there.
  const beside = held?.words.length === 0 ? undefined : besideDuct(plan, layout, on, trunk.at(-1), { top: atY(on, foot.y), bottom: atY(on, end - wallThickness), right });
  return { arrows: [...frame, ...trunk, ...(beside?.sizes ?? [])], words: beside?.words ?? [], isHeightLeft: beside === undefined && heightSegments(plan, ductAcross(plan)).length > 0 };
}

function trunkSizes(plan: PlanOfPath, layout: AirPathLayout, on: Frame, foot: Point, end: number): PlacedSize[] {
  const { duct } = plan;
  const half = duct.width / 2;
  const lengthWords = figureWords(plan, 'duct-length', undefined, duct.length);
  // A second fan beside the first joins from the left. The figure stands to the left of its line either way.
  const atRight = plan.second?.arrangement === 'parallel';
  const edge = atX(on, foot.x + (atRight ? half : -half));
  const beside = atRight ? px(edge + Math.max(figureHeight, wordWidth(lengthWords) + 8) + 8) : edge - 15;
  const upper = atY(on, foot.y);
  const across = px(upper + Math.min(18, ((end - foot.y) * on.k) / 2));
  const [from, to] = [atX(on, foot.x - half), atX(on, foot.x + half)];
  return [
    ...(layout.breaks.length > 0 ? [] : [arrow('duct-length', undefined, lengthWords, { from: upper, to: atY(on, end), at: beside, upright: true, edges: [edge, edge] }, { x: beside, y: upper, along: 'y', perMillimetre: -on.k })]),
    arrow('duct-width', undefined, figureWords(plan, 'duct-width', undefined, duct.width), { from, to, at: across }, { x: to, y: across, along: 'x', perMillimetre: on.k / 2 }),
  ];
}
