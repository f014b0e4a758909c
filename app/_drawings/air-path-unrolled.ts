import { wallThickness } from './air-path-layout';
import type { AirPathLayout, OutletLayout, PlanOutlet } from './air-path-layout';
import { channelAcross, columnAt, ductAcross, heightSegments, placeAcross, reachAcross, ringOf } from './air-path-heights';
import type { AcrossColumn, CutAcross } from './air-path-heights';
import { arrow, figureHeight, figureWords, fingerHeight, rowAt, shortName, sizeKey } from './air-path-figures';
import type { PlacedSize, PlacedWords, PlanOfPath, Segment } from './air-path-figures';
import { joined, pathOf } from './air-path-section';
import type { Point } from './arrows';
import type { CutOpen } from './cut-walls';
import { px } from './frame';
import { wordWidth } from './word-width';
import { wrapWords } from './wrap-words';

/** A straight run: x along the air in mm, y half its clear width there. */
export type RunProfile = readonly Point[];

const landLength = 2.5;
const taperLength = 6;

/** The branch laid straight, from the fork to its mouth: as long and as wide as it was measured. How long its end narrows is not entered. */
export function branchProfile({ branch, channel, width, changes = [], ending = 'land' }: PlanOutlet): RunProfile {
  const points: Point[] = [{ x: 0, y: channel / 2 }];
  let [x, half] = [branch, channel / 2];
  for (const change of changes) {
    points.push({ x, y: half }, { x: x + change.slope, y: change.width / 2 });
    x += Math.max(change.slope, change.length);
    half = change.width / 2;
  }
  const mouth = width / 2;
  const last = x - (points.at(-1)?.x ?? 0);
  const land = Math.min(ending === 'thin' ? wallThickness : landLength, last / 4);
  // A step narrows at once; a mouth wider than its channel opens on a slope.
  const slope = Math.min(last / 2, ending === 'tapered' ? Math.max(taperLength, 2 * Math.abs(mouth - half)) : mouth > half ? 1.5 * (mouth - half) : 0);
  switch (ending) {
    case 'open': return [...points, { x, y: half }, { x, y: mouth }];
    case 'tapered': return [...points, { x: x - slope, y: half }, { x, y: mouth }];
    case 'land': case 'thin': return [...points, { x: x - land - slope, y: half }, { x: x - land, y: mouth }, { x, y: mouth }];
    default: return ending satisfies never;
  }
}

/** Where its bends stand along a branch, mm: evenly spread, from start to end; a sharp one has no length. */
export function bendsAlong({ branch, bends, arcs = [] }: PlanOutlet): (readonly [number, number])[] {
  const room = branch / (bends + 1);
  return Array.from({ length: bends }, (_, i): [number, number] => {
    const [middle, half] = [room * (i + 1), Math.min(arcs[i] ?? 0, 0.9 * room) / 2];
    return [middle - half, middle + half];
  });
}

/** One run of the view, px. */
export interface PlacedRun {
  readonly key: string;
  readonly laid: OutletLayout | undefined;
  /** Start and end of its middle line. */
  readonly from: Point;
  readonly to: Point;
}

export interface PlacedUnrolled {
  /** px per mm; at most that of the plan. */
  readonly k: number;
  readonly left: number;
  readonly runs: readonly PlacedRun[];
  readonly walls: CutOpen;
  /** Channels cut across beside their runs, and where; undefined where their heights stand among the words. */
  readonly across: CutOpen;
  readonly column: AcrossColumn | undefined;
  /** Walls of a branch that is not known: dashed. */
  readonly ghosts: string;
  /** Lines across at sharp bends, and the pieces that rounded bends take. */
  readonly folds: string;
  readonly rounds: string;
  readonly words: readonly PlacedWords[];
  readonly sizes: readonly PlacedSize[];
  readonly end: number;
}

export interface UnrolledPlace {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** px per mm in the plan. */
  readonly k: number;
  /** The view as it stood when a hand took hold of a length. */
  readonly held: PlacedUnrolled | undefined;
  /** What stands at the head of an outlet's run, and how high that is: its number and name where these stand nowhere else. */
  readonly headOf: ((index: number, y: number) => number) | undefined;
}

/** Room beside a run for the figure of its channel, and for the air and the figure of the mouth. */
const before = 50;
const after = 68;
/** From the end of a run to the arrow of its air, and to the line of its mouth's width. */
const airOut = 20;
const mouthLine = 30;
const scaleStep = 0.05;

/** Every branch laid straight and cut open, one below the other, all at one scale; the duct too where the plan breaks it. */
export function placeUnrolled(plan: PlanOfPath, layout: AirPathLayout, place: UnrolledPlace): PlacedUnrolled {
  const isBroken = layout.breaks.length > 0;
  const profiles = layout.outlets.map(({ outlet }) => branchProfile(outlet));
  const longest = Math.max(1, isBroken ? plan.duct.length : 0, ...profiles.map(lengthOf));
  // Under a hand a run may grow until its last figure stands over the edge.
  const fitting = (place.width - before - (place.held === undefined ? after : mouthLine + 4)) / longest;
  const k = Math.min(place.held?.k ?? place.k, fitting < scaleStep ? fitting : Math.max(scaleStep, Math.floor(fitting / scaleStep + 1e-9) * scaleStep), place.k);
  const share = Math.round((100 * k) / place.k) / 100;
  const cuts = [...(isBroken ? [ductAcross(plan)] : []), ...layout.outlets.map((_, index) => channelAcross(plan, index))].filter((cut) => cut !== undefined);
  const free = columnAt(cuts, place.left + before + longest * k + after, place.left + place.width, k);
  const column = place.held !== undefined && place.held.column === undefined ? undefined : free;
  const caption = wrapWords(`${layout.outlets.length === 1 ? 'Its branch' : 'Branches'} unrolled${column === undefined ? '' : ' and cut across'}, ${share > 0.995 ? 'to the same scale' : `to scale, ${share} of the plan’s`}.${bendKey(layout)}`, place.width);
  const parts: RunParts[] = [];
  let y = place.top + (caption.length - 1) * 18 + 8;
  if (isBroken) {
    parts.push(placeDuct(plan, place, column, k, y));
    y = parts.at(-1)?.end ?? y;
  }
  layout.outlets.forEach((laid, index) => {
    const part = placeBranch(plan, laid, index, profiles[index] ?? [], place, column, k, y);
    parts.push(part);
    y = part.end;
  });
  return {
    k, left: place.left, runs: parts.map((part) => part.run), walls: joined(parts.map((part) => part.walls)), across: joined(parts.map((part) => part.across)), column, ghosts: parts.map((part) => part.ghost).join(''), folds: parts.map((part) => part.folds).join(''), rounds: parts.map((part) => part.rounds).join(''),
    words: [...caption.map((words, i): PlacedWords => ({ x: place.left, y: place.top + i * 18, words, tone: 'ink2' })), ...parts.flatMap((part) => part.words)],
    sizes: parts.flatMap((part) => part.sizes), end: y,
  };
}

/** What marks a bend; where along a branch its bends are is not entered. */
function bendKey({ outlets }: AirPathLayout): string {
  const arcs = outlets.flatMap(({ outlet }) => Array.from({ length: outlet.bends }, (_, i) => outlet.arcs?.[i] ?? 0));
  const marks = [...(arcs.includes(0) ? ['a line across is a sharp bend'] : []), ...(arcs.some((arc) => arc > 0) ? ['a shaded piece is a rounded one'] : [])];
  const [first = '', second] = marks;
  if (first === '') return '';
  return ` ${first.slice(0, 1).toUpperCase()}${first.slice(1)}${second === undefined ? '' : `, ${second}`}; spaced evenly`;
}

interface RunParts {
  readonly run: PlacedRun;
  readonly walls: CutOpen;
  readonly across: CutOpen;
  readonly ghost: string;
  readonly folds: string;
  readonly rounds: string;
  readonly words: readonly PlacedWords[];
  readonly sizes: readonly PlacedSize[];
  readonly end: number;
}

const nothingCut: CutOpen = { walls: '', clear: '', ends: '' };

function placeDuct(plan: PlanOfPath, place: UnrolledPlace, column: AcrossColumn | undefined, k: number, top: number): RunParts {
  const { width, length } = plan.duct;
  const head = top + 18;
  const cut = ductAcross(plan);
  const ground = groundOf(place, k, head + 8, width / 2, reachOf(cut, column, k), heldAt(place, 'duct'));
  const across = acrossAt(plan, cut, column, ground.y, k);
  const title = 'duct, from the fan to the fork';
  const text = rowAt(column === undefined ? heightSegments(plan, cut) : [], place.left + wordWidth(title) * 1.04 + 12, head, 'right', place.headOf === undefined ? figureHeight : fingerHeight);
  return {
    run: { key: 'duct', laid: undefined, from: ground.at({ x: 0, y: 0 }), to: ground.at({ x: length, y: 0 }) },
    walls: cutOpen([{ x: 0, y: width / 2 }, { x: length, y: width / 2 }], ground.at, k), across: ringOf(across.walls), ghost: '', folds: '', rounds: '',
    words: [{ x: place.left, y: head, words: title, strong: true }, ...text.words],
    sizes: [...across.sizes, ...text.sizes, lengthSize('duct-length', undefined, figureWords(plan, 'duct-length', undefined, length), length, ground, k)],
    end: ground.end,
  };
}

function placeBranch(plan: PlanOfPath, laid: OutletLayout, index: number, profile: RunProfile, place: UnrolledPlace, column: AcrossColumn | undefined, k: number, top: number): RunParts {
  const { outlet } = laid;
  const isUnknown = plan.unknown?.has(sizeKey('branch', index)) === true;
  const head = place.headOf === undefined ? top + 18 : place.headOf(index, top + 18);
  const cut = channelAcross(plan, index);
  const height = column === undefined ? heightSegments(plan, cut) : [];
  const segments = [...bendWords(plan, outlet, index, height.length > 0), ...height];
  const named = place.headOf === undefined ? shortName(outlet.name, place.width - (column === undefined ? 252 : 190)) : '';
  const text = rowAt(segments, place.left + (place.headOf === undefined ? wordWidth(named) * 1.04 + 12 : 34), head, 'right', place.headOf === undefined ? figureHeight : fingerHeight);
  const short = Math.min(outlet.channel, outlet.width) * k < 24;
  const ground = groundOf(place, k, head + 8, Math.max(...profile.map((p) => p.y)), Math.max(short ? 26 : 0, reachOf(cut, column, k)), heldAt(place, outlet.name));
  const { at } = ground;
  const ends = [ground.left, ground.left + lengthOf(profile) * k] as const;
  const upright = (size: 'channel' | 'mouth-width', value: number, line: number, edge: number, beside: 'left' | 'right'): PlacedSize => {
    const [high, low] = [px(ground.y - (value * k) / 2), px(ground.y + (value * k) / 2)];
    return arrow(size, index, figureWords(plan, size, index, value), { from: high, to: low, at: px(line), upright: true, beside, edges: [edge, edge] }, { x: px(line), y: high, along: 'y', perMillimetre: -k / 2 });
  };
  const walls = cutOpen(profile, at, k);
  const across = acrossAt(plan, cut, column, ground.y, k);
  const [places, half] = [bendsAlong(outlet), outlet.channel / 2];
  return {
    run: { key: outlet.name, laid, from: at({ x: 0, y: 0 }), to: at({ x: lengthOf(profile), y: 0 }) },
    walls: isUnknown ? nothingCut : walls, across: ringOf(isUnknown ? '' : across.walls), ghost: isUnknown ? walls.walls + across.walls : '',
    folds: places.filter(([from, to]) => from === to).map(([x]) => pathOf([at({ x, y: half }), at({ x, y: -half })])).join(''),
    rounds: places.filter(([from, to]) => from < to).map(([from, to]) => `${pathOf([at({ x: from, y: half }), at({ x: to, y: half }), at({ x: to, y: -half }), at({ x: from, y: -half })])}Z`).join(''),
    words: [...(named === '' ? [] : [{ x: place.left, y: head, words: named, strong: true, tone: laid.lee ? 'accent' as const : 'ink' as const }]), ...text.words],
    sizes: [
      upright('channel', outlet.channel, ends[0] - 12, ends[0], 'left'),
      ...across.sizes, ...text.sizes.filter(isHeight),
      lengthSize('branch', index, figureWords(plan, 'branch', index, outlet.branch), outlet.branch, ground, k),
      ...text.sizes.filter((size) => !isHeight(size)),
      upright('mouth-width', outlet.width, ends[1] + mouthLine, ends[1], 'right'),
    ],
    end: ground.end,
  };
}

/** How many bends there are, and of which kind; `goesOn` where more is said after them. */
function bendWords(plan: PlanOfPath, { bends, arcs }: PlanOutlet, index: number, goesOn: boolean): Segment[] {
  const words = figureWords(plan, 'bends', index, bends);
  const rounded = arcs?.filter((arc) => arc > 0).length ?? 0;
  const kind = words === '?' || arcs === undefined || bends === 0 ? '' : rounded === 0 ? 'sharp ' : rounded === bends ? 'rounded ' : 'sharp and rounded ';
  return [{ words, size: 'bends', outlet: index }, { words: `${kind}${bends === 1 && words !== '?' ? 'bend' : 'bends'}${goesOn ? ',' : ''}` }];
}

const isHeight = ({ size }: PlacedSize): boolean => size === 'channel-height';

const reachOf = (cut: CutAcross | undefined, column: AcrossColumn | undefined, k: number): number => (cut === undefined || column === undefined ? 0 : reachAcross(cut, k));

const acrossAt = (plan: PlanOfPath, cut: CutAcross | undefined, column: AcrossColumn | undefined, y: number, k: number): ReturnType<typeof placeAcross> => (cut === undefined || column === undefined ? { walls: '', sizes: [] } : placeAcross(plan, cut, column, y, k));

const givesWayBy = 24;

const heldAt = ({ held }: UnrolledPlace, key: string): number | undefined => held?.runs.find((run) => run.key === key)?.from.y;

interface RunGround {
  readonly left: number;
  /** Middle line, and the line of its length. */
  readonly y: number;
  readonly level: number;
  readonly under: number;
  readonly end: number;
  readonly at: (p: Point) => Point;
}

function groundOf({ left: edge }: UnrolledPlace, k: number, top: number, half: number, least: number, held: number | undefined): RunGround {
  const left = edge + before;
  const reach = Math.max((half + wallThickness) * k, least);
  const free = Math.round(top + reach);
  // Under a hand the middle line stays, and gives way seldom.
  const y = held === undefined ? free : held + Math.max(0, Math.ceil((free - held) / givesWayBy - 1)) * givesWayBy;
  const level = px(y + reach + 21);
  return { left, y, level, under: px(y + (half + wallThickness) * k), end: level + 10, at: (p) => ({ x: px(left + p.x * k), y: px(y - p.y * k) }) };
}

function lengthSize(size: 'branch' | 'duct-length', index: number | undefined, words: string, length: number, { left, level, under }: RunGround, k: number): PlacedSize {
  const to = px(left + length * k);
  return arrow(size, index, words, { from: left, to, at: level, edges: [under, under] }, { x: to, y: level, along: 'x', perMillimetre: k });
}

function cutOpen(profile: RunProfile, at: (p: Point) => Point, k: number): CutOpen {
  const upper = profile.map(at);
  const lower = profile.map((p) => at({ x: p.x, y: -p.y }));
  const t = wallThickness * k;
  const end = (p: Point | undefined, way: 1 | -1): string => (p === undefined ? '' : pathOf([p, { x: p.x, y: p.y + way * t }]));
  return {
    walls: pathOf(upper) + pathOf(lower), clear: `${pathOf([...upper, ...[...lower].reverse()])}Z`,
    ends: end(upper[0], -1) + end(upper.at(-1), -1) + end(lower[0], 1) + end(lower.at(-1), 1),
  };
}

const lengthOf = (profile: RunProfile): number => profile.at(-1)?.x ?? 0;

/** Way of the air through a run, px. */
export const airOf = ({ from, to }: PlacedRun): Point[] => [{ x: from.x - 8, y: from.y }, { x: to.x + airOut, y: to.y }];
