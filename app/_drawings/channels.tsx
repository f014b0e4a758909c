import { beyond, wallThickness } from './air-path-layout';
import type { Channel } from './air-path-layout';
import type { Point } from './arrows';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';
import { hatchId } from './hatches';

/**
 * A duct cut through its channels: walls in cut hatch with outlines on both sides. Each layer is stroked for all
 * channels before the next, so that channels run together where they meet and stay open at fan and mouths.
 */
export function Channels({ on, channels }: { readonly on: Frame; readonly channels: readonly Channel[] }) {
  const wall = wallThickness * on.k;
  // Where a mouth is open only the paper runs on, by a hair, so that no seam is left across it.
  const stroke = (channel: Channel, key: string, over: number, longer: number, look: { className?: string; stroke?: string }) => (
    <path key={key} fill="none" strokeLinejoin="miter" strokeLinecap="butt" strokeWidth={px(channel.width * on.k + over)} d={wayOf(on, channel, longer)} {...look} />
  );
  return (
    <g>
      {channels.map((c, i) => stroke(c, `o${i}`, 2 * wall + 2, c.closed ? wall + 1 : 0, { className: 'd-stroke-ink' }))}
      {channels.map((c, i) => stroke(c, `b${i}`, 2 * wall, c.closed ? wall : 0, { className: 'd-stroke-paper' }))}
      {channels.map((c, i) => stroke(c, `h${i}`, 2 * wall, c.closed ? wall : 0, { stroke: `url(#${hatchId(on.id, 'cut')})` }))}
      {channels.map((c, i) => stroke(c, `i${i}`, 2, c.closed ? 1 : 0, { className: 'd-stroke-ink' }))}
      {channels.map((c, i) => stroke(c, `p${i}`, 0, c.closed ? 0 : 0.8, { className: 'd-stroke-paper' }))}
      {channels.filter((c) => !c.closed).map((c, i) => <path key={`e${i}`} className="d-line d-edge" d={mouthEnds(on, c)} />)}
    </g>
  );
}

function wayOf(on: Frame, channel: Channel, longer: number): string {
  const last = channel.points.at(-1);
  const before = channel.points.at(-2);
  const points = last !== undefined && before !== undefined ? [...channel.points.slice(0, -1), beyond(before, last, longer / on.k)] : channel.points;
  return points.map((p, i) => `${i === 0 ? 'M' : 'L'}${atX(on, p.x)} ${atY(on, p.y)}`).join('');
}

/** Closes the cut of the two walls at an open mouth. */
function mouthEnds(on: Frame, channel: Channel): string {
  const last = channel.points.at(-1);
  const before = channel.points.at(-2);
  if (last === undefined || before === undefined) return '';
  const length = Math.hypot(last.x - before.x, last.y - before.y) || 1;
  const n: Point = { x: (last.y - before.y) / length, y: -(last.x - before.x) / length };
  const at = (by: number): string => `${atX(on, last.x + n.x * by)} ${atY(on, last.y + n.y * by)}`;
  const half = channel.width / 2;
  return [1, -1].map((way) => `M${at(way * half)}L${at(way * (half + wallThickness))}`).join('');
}
