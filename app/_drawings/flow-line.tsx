import { angleTo, arrowHeadPath } from './arrows';
import type { Point } from './arrows';
import { px } from './frame';

/** Weight of a flow line, px, for an air speed in m/s (capped at 12): 0.55 + 0.36 v. 3 m/s gives 1.63 px. */
export const flowWeight = (speed: number): number => 0.55 + 0.36 * capped(speed);
/** Length and width of its arrow, px: 8 + 0.7 v and 3 + 0.75 v. 3 m/s gives 10.1 × 5.25 px. */
export const flowArrow = (speed: number): { length: number; width: number } => ({ length: 8 + 0.7 * capped(speed), width: 3 + 0.75 * capped(speed) });
const capped = (speed: number): number => Math.min(12, Math.max(0, speed));

/**
 * A line of air through the given points (px), corners rounded by `radius`; an arrow only where the air leaves.
 * Its weight says how fast the air is.
 */
export function FlowLine({ points, speed, radius = 6, leaves = true, lee = false }: { readonly points: readonly Point[]; readonly speed: number; readonly radius?: number; readonly leaves?: boolean; readonly lee?: boolean }) {
  const last = points.at(-1);
  const before = points.at(-2);
  if (last === undefined || before === undefined) return null;
  const head = flowArrow(speed);
  const angle = angleTo(before, last);
  const a = (angle * Math.PI) / 180;
  const neck = { x: last.x - head.length * 0.8 * Math.cos(a), y: last.y - head.length * 0.8 * Math.sin(a) };
  const line = leaves ? [...points.slice(0, -1), neck] : points;
  return (
    <g>
      <path className={`d-line ${lee ? 'd-air-lee' : 'd-air'}`} strokeWidth={px(flowWeight(speed))} d={roundedPath(line, radius)} />
      {leaves && <path className={`d-no-line ${lee ? 'd-fill-accent' : 'd-fill-ink'}`} d={arrowHeadPath(last, angle, head.length, head.width)} />}
    </g>
  );
}

/** A polyline whose corners are rounded with quadratics; never by more than half of a leg. */
export function roundedPath(points: readonly Point[], radius: number): string {
  return points
    .map((point, i) => {
      const before = points[i - 1];
      const after = points[i + 1];
      if (before === undefined) return `M${px(point.x)} ${px(point.y)}`;
      if (after === undefined) return `L${px(point.x)} ${px(point.y)}`;
      const into = towards(point, before, radius);
      const out = towards(point, after, radius);
      return `L${px(into.x)} ${px(into.y)}Q${px(point.x)} ${px(point.y)} ${px(out.x)} ${px(out.y)}`;
    })
    .join('');
}

function towards(from: Point, to: Point, radius: number): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const t = length === 0 ? 0 : Math.min(radius, length / 2) / length;
  return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
}
