import { angleTo, arrowHeadPath } from './arrows';
import type { Point } from './arrows';
import { px } from './frame';
import { Words } from './words';

export interface SlantDimensionProps {
  /** The two ends of the length, px. */
  readonly from: Point;
  readonly to: Point;
  /** Middle of its figure, px. */
  readonly wordsAt: Point;
  readonly words: string;
  /** A hairline leads from the length to a figure that stands apart. */
  readonly leader?: boolean;
}

/** A length along any slant, with closed arrows: from within, or from outside where there is little room. Its figure stays level. */
export function SlantDimension({ from, to, wordsAt, words, leader = false }: SlantDimensionProps) {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const angle = angleTo(from, to);
  const outside = length < shortest;
  const step = { x: Math.cos((angle * Math.PI) / 180), y: Math.sin((angle * Math.PI) / 180) };
  const at = (p: Point, by: number): string => `${px(p.x + step.x * by)} ${px(p.y + step.y * by)}`;
  const line = outside ? `M${at(from, -tail)}L${at(from, 0)}M${at(to, 0)}L${at(to, tail)}` : `M${at(from, 0)}L${at(to, 0)}`;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return (
    <g>
      <path className="d-line d-hair" d={leader ? `${line}M${at(middle, 0)}L${px(wordsAt.x)} ${px(wordsAt.y)}` : line} />
      <path className="d-no-line d-fill-ink2" d={arrowHeadPath(from, outside ? angle : angle + 180, 10, 3.4) + arrowHeadPath(to, outside ? angle + 180 : angle, 10, 3.4)} />
      <Words x={wordsAt.x} y={wordsAt.y + 5} anchor="middle" halo>{words}</Words>
    </g>
  );
}

/** Under this length, px, the arrows come from outside, on tails as long as this. */
const shortest = 24;
export const tail = 18;
