import { rad, wallThickness } from './air-path-layout';
import type { AirPathLayout, OutletLayout, PlanOutlet } from './air-path-layout';
import { figureHeight, figureWords, rowAt, shortName, slanted } from './air-path-figures';
import type { PlacedSize, PlacedWords, PlanOfPath } from './air-path-figures';
import type { Point } from './arrows';
import type { CutOpen } from './cut-walls';
import { px } from './frame';
import { tail } from './slant-dimension';
import { wrapWords } from './wrap-words';

/**
 * An outlet cut along its jet, mm: x outward from the nozzle's axis, y upward from the spot under the nozzle. The mouth stands
 * as far from the spot as it was measured, its jet tilted as entered; mouth and channel are as high as they are.
 */
export interface OutletCut {
  readonly mouth: Point;
  /** Lower and upper lip. */
  readonly lips: readonly [Point, Point];
  /** The inner line of the walls, from the upper lip round the channel to the lower lip. */
  readonly walls: readonly Point[];
  /** Middle of the channel, which runs across the cut. */
  readonly channel: Point;
  /** Along the jet against the air, and across it upward; both of length 1. */
  readonly back: Point;
  readonly across: Point;
}

/** How long a straight end is drawn, mm: its length is not entered. */
const landLength = 2.5;
/** Steeper than this the way from the channel to the mouth is not drawn, degrees. */
const steepest = 45;

export function cutOutlet(outlet: PlanOutlet, reach: number): OutletCut {
  const { distance, height, channel, channelHeight = outlet.height, tilt = 0, ending = 'land' } = outlet;
  const a = rad(tilt);
  const back = { x: Math.cos(a), y: Math.sin(a) };
  const across = { x: -back.y, y: back.x };
  const from = (p: Point, along: number, up: number): Point => ({ x: p.x + back.x * along + across.x * up, y: p.y + back.y * along + across.y * up });
  const mouth = from({ x: 0, y: 0 }, distance, 0);
  const middle = { x: reach, y: mouth.y + (reach - mouth.x) * Math.tan(Math.min(a, rad(steepest))) };
  const lip = (side: 1 | -1): Point => from(mouth, 0, (side * height) / 2);
  const land = (side: 1 | -1): Point[] => {
    switch (ending) {
      case 'land': return [from(mouth, landLength, (side * height) / 2)];
      case 'thin': return [from(mouth, wallThickness, (side * height) / 2), from(mouth, wallThickness, (side * Math.max(height, channelHeight)) / 2)];
      case 'tapered': case 'open': return [];
      default: return ending satisfies never;
    }
  };
  const corner = (way: 1 | -1, side: 1 | -1): Point => ({ x: middle.x + (way * channel) / 2, y: middle.y + (side * channelHeight) / 2 });
  const walls = [lip(1), ...land(1), corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1), ...land(-1).reverse(), lip(-1)];
  return { mouth, lips: [lip(-1), lip(1)], walls, channel: middle, back, across };
}

/** One outlet in a section: which side of the nozzle it is drawn on. */
export interface PlacedCut {
  readonly laid: OutletLayout;
  readonly cut: OutletCut;
  readonly side: 1 | -1;
  /** Way of the air, px; it ends a little before the mouth. */
  readonly air: readonly Point[];
}

/** A section through the nozzle with an outlet at either side, px. */
export interface PlacedSection {
  /** The spot under the nozzle. */
  readonly spot: Point;
  readonly k: number;
  readonly bed: number;
  readonly cuts: readonly PlacedCut[];
  readonly walls: CutOpen;
  readonly words: readonly PlacedWords[];
  readonly sizes: readonly PlacedSize[];
  readonly end: number;
}

/** Height of the nozzle over its tip, and the bed under it, mm: usual sizes. */
export const nozzleHeight = 15;
export const bedUnder = 12;
/** How far the bed is drawn beside the channels' middle line, mm. */
export const bedBeside = 6;

/** Places move in steps, px, so that a size that changes a little moves only what hangs on it. */
export const inSteps = (place: number): number => Math.ceil(place / 8) * 8;

/** Sections for all outlets: at most one at either side of the nozzle in each; one below the other from `top` on, not above where they are `held`. */
export function placeSections(plan: PlanOfPath, layout: AirPathLayout, k: number, axis: number, top: number, room: number, held: readonly PlacedSection[] = []): PlacedSection[] {
  const sections: PlacedSection[] = [];
  let y = top;
  for (const view of viewsOf(layout)) {
    const section = placeSection(plan, layout, view, k, axis, y, room, held[sections.length]);
    sections.push(section);
    y = section.end + 16;
  }
  return sections;
}

interface View {
  readonly caption: string;
  readonly sides: Readonly<Record<1 | -1, number | undefined>>;
}

/** Outlets at the sides are cut from the front, those before and behind the nozzle from the right; a place that is taken goes to the next. */
function viewsOf({ outlets }: AirPathLayout): View[] {
  const slots: (number | undefined)[] = [];
  let turned = false;
  outlets.forEach(({ outlet }, index) => {
    const [c, s] = [Math.cos(rad(outlet.direction)), Math.sin(rad(outlet.direction))];
    const wished = Math.abs(c) > 0.7 ? (c < 0 ? 0 : 1) : s < 0 ? 2 : 3;
    const slot = [wished, 0, 1, 2, 3].find((each) => slots[each] === undefined) ?? wished;
    slots[slot] = index;
    turned ||= slot !== wished || (Math.abs(c) < 0.99 && Math.abs(s) < 0.99);
  });
  const captions = ['From the front, cut through the nozzle', 'From the right, cut through the nozzle'];
  return captions.flatMap((caption, i) => {
    const [left, right] = [slots[2 * i], slots[2 * i + 1]];
    if (left === undefined && right === undefined) return [];
    return [{ caption: turned ? 'Cut through the nozzle, outlets turned into the cut' : caption, sides: { [-1]: left, 1: right } }];
  });
}

function placeSection(plan: PlanOfPath, layout: AirPathLayout, view: View, k: number, axis: number, top: number, room: number, held: PlacedSection | undefined): PlacedSection {
  const pairs = ([-1, 1] as const).flatMap((side) => {
    const index = view.sides[side];
    const laid = index === undefined ? undefined : layout.outlets[index];
    return index === undefined || laid === undefined ? [] : [{ side, index, laid, cut: cutOutlet(laid.outlet, layout.reach) }];
  });
  const caption = wrapWords(`${view.caption}. Nozzle and part: usual sizes`, room);
  const highest = Math.max(nozzleHeight, ...pairs.flatMap(({ cut }) => cut.walls.map((p) => p.y + wallThickness)));
  const lowest = Math.min(-bedUnder, ...pairs.flatMap(({ cut }) => cut.walls.map((p) => p.y - wallThickness)));
  const figuresTop = Math.max(...pairs.map(({ cut }) => cut.mouth.y * k + heightFigure(cut, k).up + figureHeight / 2));
  const spot = { x: axis, y: Math.max(held?.spot.y ?? 0, inSteps(top + (caption.length - 1) * 18 + 8 + Math.max(highest * k, figuresTop))) };
  const underSpot = pairs.every(({ laid, cut }) => isRoomy(laid.outlet, cut, k)) ? 0 : figureUnder + figureHeight / 2;
  const labels = spot.y + inSteps(Math.max(-lowest * k, underSpot)) + 18;
  const placed = pairs.map((pair) => placeCut(plan, pair, spot, k, labels));
  return {
    spot, k, bed: px(spot.y + bedUnder * k), cuts: placed.map((each) => each.cut), walls: joined(placed.map((each) => each.walls)),
    words: [...caption.map((words, i): PlacedWords => ({ x: Math.max(0, axis - room / 2), y: top + i * 18, words, tone: 'ink2' })), ...placed.flatMap((each) => each.words)],
    sizes: placed.flatMap((each) => each.sizes), end: labels + 33,
  };
}

interface Pair {
  readonly side: 1 | -1;
  readonly index: number;
  readonly laid: OutletLayout;
  readonly cut: OutletCut;
}

function placeCut(plan: PlanOfPath, { side, index, laid, cut }: Pair, spot: Point, k: number, labels: number): { cut: PlacedCut; walls: CutOpen; words: PlacedWords[]; sizes: PlacedSize[] } {
  const { outlet } = laid;
  const at = ({ x, y }: Point): Point => ({ x: px(spot.x + side * x * k), y: px(spot.y - y * k) });
  const along = (by: number): Point => at({ x: cut.mouth.x + cut.back.x * by, y: cut.mouth.y + cut.back.y * by });
  // The arrow leaves the mouth and stops before the figure of the distance.
  const out = Math.min(16, 0.3 * outlet.distance * k) / k;
  const [lower, upper] = cut.lips;
  const lipEnd = (lip: Point, way: 1 | -1): string => pathOf([lip, { x: lip.x + way * cut.across.x * wallThickness, y: lip.y + way * cut.across.y * wallThickness }].map(at));
  const text = rowAt([{ words: 'tilt' }, { words: figureWords(plan, 'tilt', index, outlet.tilt ?? 0), size: 'tilt', outlet: index }], spot.x + side * 16, labels + 21, side === 1 ? 'right' : 'left', figureHeight);
  const name = rowAt([{ words: shortName(outlet.name, 90) }], spot.x + side * 16, labels, side === 1 ? 'right' : 'left', figureHeight);
  return {
    cut: { laid, cut, side, air: [at(cut.channel), along(landLength), along(-out)] },
    walls: { walls: pathOf(cut.walls.map(at)), clear: `${pathOf(cut.walls.map(at))}Z`, ends: lipEnd(lower, -1) + lipEnd(upper, 1) },
    words: [...name.words.map((each): PlacedWords => ({ ...each, strong: true, tone: laid.lee ? 'accent' : 'ink' })), ...text.words],
    sizes: [...(outlet.isRound === true ? [] : [heightSize(plan, index, outlet, cut, at, k, side)]), distanceSize(plan, index, outlet, cut, at, k, side, spot), ...text.sizes],
  };
}

/** How far outward and upward of the mouth the figure of its height stands, px: over the upper wall, clear of the nozzle. */
function heightFigure({ across, lips: [lower, upper], mouth, back }: OutletCut, k: number): { out: number; up: number } {
  const half = Math.hypot(upper.x - lower.x, upper.y - lower.y) / 2;
  const reach = half * k + Math.max(tail, wallThickness * k + 8) + 4;
  const out = across.x * reach + back.x * k + 12;
  return { out: Math.max(out, 20 - mouth.x * k), up: across.y * reach + back.y * k + 10 };
}

function heightSize(plan: PlanOfPath, index: number, outlet: PlanOutlet, cut: OutletCut, at: (p: Point) => Point, k: number, side: 1 | -1): PlacedSize {
  const by = Math.min(1, landLength / 2);
  const end = (p: Point): Point => at({ x: p.x + cut.back.x * by, y: p.y + cut.back.y * by });
  const mouth = at(cut.mouth);
  const figure = heightFigure(cut, k);
  return slanted('mouth-height', index, figureWords(plan, 'mouth-height', index, outlet.height), { from: end(cut.lips[1]), to: end(cut.lips[0]), wordsAt: { x: mouth.x + side * figure.out, y: mouth.y - figure.up } });
}

/** Where a figure that has no room on the axis stands under the spot, px. */
const figureUnder = 20;

/** Whether the figure of the distance has room between nozzle and arrow. */
const isRoomy = ({ distance }: PlanOutlet, { back }: OutletCut, k: number): boolean => distance * back.x * k >= 38;

/** The distance stands on the jet's own axis where there is room for its figure, else under it. */
function distanceSize(plan: PlanOfPath, index: number, outlet: PlanOutlet, cut: OutletCut, at: (p: Point) => Point, k: number, side: 1 | -1, spot: Point): PlacedSize {
  const mouth = at(cut.mouth);
  const roomy = isRoomy(outlet, cut, k);
  const wordsAt = roomy ? { x: (spot.x + mouth.x) / 2, y: (spot.y + mouth.y) / 2 } : { x: spot.x + side * Math.max(17, (cut.mouth.x * k) / 2), y: spot.y + figureUnder };
  const level = cut.back.x >= 0.7;
  const [lip] = cut.lips;
  const knob = at({ x: lip.x - (cut.across.x * wallThickness) / 2, y: lip.y - (cut.across.y * wallThickness) / 2 });
  return slanted('distance', index, figureWords(plan, 'distance', index, outlet.distance), { from: spot, to: mouth, wordsAt, leader: !roomy }, { ...knob, along: level ? 'x' : 'y', perMillimetre: level ? side * k * cut.back.x : -k * cut.back.y });
}

export const pathOf = (points: readonly Point[]): string => points.map((p, i) => `${i === 0 ? 'M' : 'L'}${px(p.x)} ${px(p.y)}`).join('');

export const joined = (cuts: readonly CutOpen[]): CutOpen => ({ walls: cuts.map((each) => each.walls).join(''), clear: cuts.map((each) => each.clear).join(''), ends: cuts.map((each) => each.ends).join('') });
