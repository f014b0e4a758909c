import type { Point } from '../_drawings/arrows';
import { px } from '../_drawings/frame';
import type { Box } from './label-placement';

/** A line through points in px. */
export const pathOf = (points: readonly Point[]): string => points.map((p, i) => `${i === 0 ? 'M' : 'L'}${px(p.x)} ${px(p.y)}`).join('');

/** Ends a curve where it leaves the plot instead of drawing over the axis names. */
export function clipped(points: readonly Point[], plot: Box): Point[] {
  const out: Point[] = [];
  for (const point of points) {
    const previous = out.at(-1);
    if (point.y >= plot.y && point.x <= plot.x + plot.w) out.push(point);
    else if (previous !== undefined) {
      const t = Math.min(point.y < plot.y ? (plot.y - previous.y) / (point.y - previous.y) : 1, point.x > plot.x + plot.w ? (plot.x + plot.w - previous.x) / (point.x - previous.x) : 1);
      out.push({ x: previous.x + (point.x - previous.x) * t, y: previous.y + (point.y - previous.y) * t });
      break;
    }
  }
  return out;
}

/** Points every 6 px along a path: what labels must keep clear of. */
export function sampled(path: readonly Point[]): Point[] {
  return path.flatMap((b, i) => {
    const a = path[i - 1];
    if (a === undefined) return [b];
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / 6));
    return Array.from({ length: steps }, (_, s) => ({ x: a.x + ((b.x - a.x) * (s + 1)) / steps, y: a.y + ((b.y - a.y) * (s + 1)) / steps }));
  });
}

/** Places tried for a curve's name, along the curve: beginning and end before the middle. */
export function namePlaces(path: readonly Point[]): Point[] {
  const along = sampled(path);
  return [0.1, 0.16, 0.22, 0.3, 0.96, 0.9, 0.84, 0.78, 0.4, 0.5, 0.6, 0.7].map((share) => along[Math.min(along.length - 1, Math.floor(share * along.length))] ?? { x: 0, y: 0 });
}
