import { wordWidth } from '../_drawings/word-width';
import type { Point } from '../_drawings/arrows';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface PlacedLabel {
  readonly box: Box;
  /** Which candidate won, in the order given. */
  readonly choice: number;
}

/** What labels must keep clear of: sampled points of curves, boxes already taken, segments of leaders, and the edge. */
export interface Obstacles {
  readonly points: readonly Point[];
  readonly boxes: Box[];
  readonly segments: [Point, Point][];
  readonly bounds: Box;
}

/** Picks for one label the candidate that hides least; earlier candidates win ties. Records what it took. */
export function placeLabel(candidates: readonly { readonly box: Box; readonly leader?: readonly [Point, Point] }[], obstacles: Obstacles): PlacedLabel {
  let best: PlacedLabel | undefined;
  let least = Infinity;
  for (const [choice, candidate] of candidates.entries()) {
    const cost = costOf(candidate, choice * 0.4, obstacles, least);
    if (cost < least) {
      least = cost;
      best = { box: candidate.box, choice };
    }
  }
  if (best === undefined) throw new Error('placeLabel: got no candidates, expected at least one');
  obstacles.boxes.push(best.box);
  const leader = candidates[best.choice]?.leader;
  if (leader !== undefined) obstacles.segments.push([leader[0], leader[1]]);
  return best;
}

export const boxOfWords = (words: string, x: number, baseLine: number, anchor: 'start' | 'middle' | 'end'): Box => {
  const w = wordWidth(words);
  return { x: anchor === 'start' ? x : anchor === 'end' ? x - w : x - w / 2, y: baseLine - 12, w, h: 16 };
};

/** What a candidate hides, from `start` on. Costs only grow, the cheapest to reckon come first, and it stops at `enough`. */
function costOf({ box, leader }: { readonly box: Box; readonly leader?: readonly [Point, Point] }, start: number, { points, boxes, segments, bounds }: Obstacles, enough: number): number {
  const outside = box.x < bounds.x || box.y < bounds.y || box.x + box.w > bounds.x + bounds.w || box.y + box.h > bounds.y + bounds.h;
  let cost = start + (outside ? 4000 : 0) + 2000 * boxes.filter((other) => overlap(box, other, 4)).length;
  if (leader !== undefined && cost < enough) cost += 300 * segments.filter(([c, d]) => crosses(leader[0], leader[1], c, d)).length;
  if (cost < enough) cost += 12 * points.filter((p) => inside(p, box, 3)).length;
  if (cost < enough) cost += 200 * segments.filter(([a, b]) => alongSegment(a, b).some((p) => inside(p, box, 3))).length;
  if (leader === undefined || cost >= enough) return cost;
  const own = alongSegment(leader[0], leader[1]);
  cost += 300 * boxes.filter((other) => own.some((p) => inside(p, other, 2))).length;
  return cost >= enough ? cost : cost + 3 * own.slice(2).filter((p) => points.some((q) => Math.abs(p.x - q.x) < 5 && Math.hypot(p.x - q.x, p.y - q.y) < 5)).length;
}

const inside = (p: Point, box: Box, margin: number): boolean => p.x > box.x - margin && p.x < box.x + box.w + margin && p.y > box.y - margin && p.y < box.y + box.h + margin;
const overlap = (a: Box, b: Box, margin: number): boolean => a.x < b.x + b.w + margin && b.x < a.x + a.w + margin && a.y < b.y + b.h + margin && b.y < a.y + a.h + margin;

function alongSegment(a: Point, b: Point): Point[] {
  const steps = Math.max(2, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 5));
  return Array.from({ length: steps + 1 }, (_, i) => ({ x: a.x + ((b.x - a.x) * i) / steps, y: a.y + ((b.y - a.y) * i) / steps }));
}

function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const turn = (p: Point, q: Point, r: Point): number => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return turn(a, b, c) !== turn(a, b, d) && turn(c, d, a) !== turn(c, d, b);
}
