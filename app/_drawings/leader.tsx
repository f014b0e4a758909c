import { angleTo, ArrowHead } from './arrows';
import type { Point } from './arrows';
import { px } from './frame';
import { Words } from './words';

export interface LeaderProps {
  /** Where it ends on the drawing, px. */
  readonly to: Point;
  /** Where the words stand: base line, at the side where the leader lands. */
  readonly at: Point;
  readonly side: 'left' | 'right';
  readonly words: string;
  readonly second?: string | undefined;
  readonly end?: 'face' | 'edge';
  readonly accent?: boolean | undefined;
  readonly strong?: boolean;
  readonly landing?: number;
}

/**
 * A name with its leader: words, a level landing, one straight run, a dot on a face or an arrow on an edge.
 * `side` is where the words stand seen from the thing: 'right' sets them to the right of `at`.
 */
export function Leader({ to, at, side, words, second, end = 'face', accent = false, strong = false, landing = 10 }: LeaderProps) {
  const away = side === 'right' ? -1 : 1;
  const start = { x: at.x + away * 5, y: at.y - 4.5 };
  const knee = { x: start.x + away * landing, y: start.y };
  const tone = accent ? 'accent' : 'ink';
  const anchor = side === 'right' ? 'start' : 'end';
  return (
    <g>
      <path className={`d-line ${accent ? 'd-accent-hair' : 'd-hair'}`} d={`M${px(start.x)} ${px(start.y)}H${px(knee.x)}L${px(to.x)} ${px(to.y)}`} />
      {end === 'face' ? (
        <circle className={`d-no-line d-fill-${tone}`} cx={px(to.x)} cy={px(to.y)} r={2.4} />
      ) : (
        <ArrowHead tip={to} angle={angleTo(knee, to)} length={9} width={3.2} tone={tone} />
      )}
      <Words x={at.x} y={at.y} anchor={anchor} tone={tone} strong={strong || accent}>{words}</Words>
      {second !== undefined && <Words x={at.x} y={at.y + 18} anchor={anchor} tone="ink2">{second}</Words>}
    </g>
  );
}
