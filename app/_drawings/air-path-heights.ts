import { wallThickness } from './air-path-layout';
import type { AirPathLayout } from './air-path-layout';
import { arrow, figureHeight, figureWords, rowAt } from './air-path-figures';
import type { PlacedSize, PlacedWords, PlanOfPath, Segment } from './air-path-figures';
import type { CutOpen } from './cut-walls';
import { atX, px } from './frame';
import type { Frame } from './frame';
import { tail } from './slant-dimension';
import { wordWidth } from './word-width';

/** A channel cut across: as wide and high as it is, mm; the height of a round one is its width and no size of its own. */
export interface CutAcross {
  readonly size: 'duct-height' | 'channel-height';
  readonly outlet: number | undefined;
  readonly width: number;
  readonly height: number;
  readonly isRound: boolean;
}

/** The duct cut across; undefined where its height is not told. */
export const ductAcross = ({ duct: { width, height, isRound = false } }: PlanOfPath): CutAcross | undefined => (height === undefined ? undefined : { size: 'duct-height', outlet: undefined, width, height, isRound });

/** The channel of a branch cut across; undefined where its height is not told. */
export function channelAcross(plan: PlanOfPath, index: number): CutAcross | undefined {
  const { channel: width = 0, channelHeight: height, isRoundChannel: isRound = false } = plan.outlets[index] ?? {};
  return height === undefined ? undefined : { size: 'channel-height', outlet: index, width, height, isRound };
}

/** Where channels stand cut across beside their runs, px: their middle, and the line of their heights. */
export interface AcrossColumn {
  readonly middle: number;
  readonly line: number;
}

/** From the widest channel to the line of the heights, and from there to the end of the longest figure. */
const lineBeside = 14;
const figureRoom = 46;

/** A column that begins at `from` and ends before `end`; undefined where there is no room. */
export function columnAt(cuts: readonly CutAcross[], from: number, end: number, k: number): AcrossColumn | undefined {
  const half = (Math.max(0, ...cuts.map(({ width }) => width)) / 2 + wallThickness) * k;
  const line = from + 2 * half + lineBeside;
  return cuts.length === 0 || line + figureRoom > end ? undefined : { middle: px(from + half), line: px(line) };
}

/** How far a channel cut across and its dimension reach up and down from their middle, px. */
export function reachAcross({ height }: CutAcross, k: number): number {
  return Math.max((height / 2 + wallThickness) * k, height * k < 24 ? (height * k) / 2 + tail : 0);
}

/** Walls and height of a channel cut across, its height upright; `y` is its middle. */
export function placeAcross(plan: PlanOfPath, cut: CutAcross, { middle, line }: AcrossColumn, y: number, k: number): { readonly walls: string; readonly sizes: PlacedSize[] } {
  const [w, h] = [(cut.width * k) / 2, (cut.height * k) / 2];
  const [left, right, high, low] = [px(middle - w), px(middle + w), px(y - h), px(y + h)];
  if (cut.isRound) return { walls: `M${left} ${px(y)}A${px(w)} ${px(w)} 0 1 1 ${right} ${px(y)}A${px(w)} ${px(w)} 0 1 1 ${left} ${px(y)}Z`, sizes: [] };
  const edge = px(right + wallThickness * k);
  const props = { from: high, to: low, at: line, upright: true, beside: 'right', edges: [edge, edge] } as const;
  return {
    walls: `M${left} ${high}L${right} ${high}L${right} ${low}L${left} ${low}Z`,
    sizes: [arrow(cut.size, cut.outlet, figureWords(plan, cut.size, cut.outlet, cut.height), props, { x: line, y: high, along: 'y', perMillimetre: -k / 2 })],
  };
}

/** A whole ring of walls: it has no open end. */
export const ringOf = (walls: string): CutOpen => ({ walls, clear: walls, ends: '' });

/** The height among words, where there is no room for a cut: "5 high". */
export function heightSegments(plan: PlanOfPath, cut: CutAcross | undefined): Segment[] {
  if (cut === undefined || cut.isRound) return [];
  const { size, outlet, height } = cut;
  return [{ words: figureWords(plan, size, outlet, height), size, ...(outlet === undefined ? {} : { outlet }) }, { words: 'high' }];
}

/** The height of the duct at the right of its width, in the free paper under the fan and over the branches; undefined where that is too small. */
export function besideDuct(plan: PlanOfPath, layout: AirPathLayout, on: Frame, width: PlacedSize | undefined, room: { readonly top: number; readonly bottom: number; readonly right: number }): { words: PlacedWords[]; sizes: PlacedSize[] } | undefined {
  const segments = heightSegments(plan, ductAcross(plan));
  const [trunk] = layout.channels[0]?.points ?? [];
  const isAlone = plan.second === undefined || plan.second.arrangement === 'series';
  if (segments.length === 0 || trunk === undefined || width?.arrows === undefined || !isAlone) return undefined;
  const { at, to } = width.arrows;
  const outside = atX(on, trunk.x + plan.duct.width / 2 + wallThickness);
  // Clear of the grip at the end of the width, of arrows from outside, and of a width whose figure stands there.
  const from = Math.max(outside + 4, to + 16, plan.duct.width * on.k < 24 ? to + 24 : 0, width.box.x + width.box.w + 4);
  const placed = rowAt(segments, from, at + 5, 'right', figureHeight);
  const end = from + Math.max(figureHeight, wordWidth(segments[0]?.words ?? '') + 8) + 5 + wordWidth('high');
  return at - figureHeight / 2 < room.top || at + figureHeight / 2 > room.bottom || end > room.right ? undefined : placed;
}
