import { arrowHeadPath } from './arrows';
import { px } from './frame';
import { Words } from './words';
import { wordWidth } from './word-width';

export interface DimensionProps {
  /** The two ends of the length, px, along the measured direction. */
  readonly from: number;
  readonly to: number;
  /** Where the dimension line stands, px, across the measured direction. */
  readonly at: number;
  /** Where the object's edge is at each end: extension lines start 3 px off it. Left out: no extension lines. */
  readonly edges?: readonly [number, number];
  readonly words?: string;
  readonly upright?: boolean;
  readonly accent?: boolean;
  /** Beside which end words go when they do not fit between; default 'after'. */
  readonly spill?: 'before' | 'after';
  /** Beside which side of an upright line its words stand; default 'left'. */
  readonly beside?: 'left' | 'right';
}

/** A length with closed arrows; arrows and words go outside when there is less room than they need. */
export function Dimension({ from, to, at, edges, words, upright = false, accent = false, spill = 'after', beside = 'left' }: DimensionProps) {
  const low = Math.min(from, to);
  const high = Math.max(from, to);
  const outside = high - low < 24;
  const line = accent ? 'd-accent-hair' : 'd-hair';
  const tone = accent ? 'accent' : 'ink2';
  const put = (along: number, across: number): string => (upright ? `${px(across)} ${px(along)}` : `${px(along)} ${px(across)}`);
  const head = (along: number, forward: boolean): string => arrowHeadPath(upright ? { x: at, y: along } : { x: along, y: at }, (upright ? 90 : 0) + (forward ? 0 : 180), 10, 3.4);
  const extension = (edge: number, along: number): string => {
    const way = Math.sign(at - edge) || 1;
    return `M${put(along, edge + 3 * way)}L${put(along, at + 4 * way)}`;
  };
  const extensions = edges === undefined ? '' : extension(edges[0], from) + extension(edges[1], to);
  return (
    <g>
      <path className={`d-line ${line}`} d={extensions + (outside ? `M${put(low - 18, at)}L${put(low, at)}M${put(high, at)}L${put(high + 18, at)}` : `M${put(low, at)}L${put(high, at)}`)} />
      <path className={`d-no-line d-fill-${tone}`} d={head(low, outside) + head(high, !outside)} />
      {words !== undefined && <DimensionWords low={low} high={high} at={at} words={words} upright={upright} accent={accent} spill={spill} beside={beside} />}
    </g>
  );
}

function DimensionWords({ low, high, at, words, upright, accent, spill, beside }: { readonly low: number; readonly high: number; readonly at: number; readonly words: string; readonly upright: boolean; readonly accent: boolean; readonly spill: 'before' | 'after'; readonly beside: 'left' | 'right' }) {
  const tone = accent ? 'accent' : 'ink';
  const middle = (low + high) / 2;
  if (upright) {
    // Upright figures stay level when they stand beside a short length: a tired reader does not turn the head.
    return <Words x={at + (beside === 'left' ? -7 : 7)} y={middle + 5} anchor={beside === 'left' ? 'end' : 'start'} tone={tone} halo>{words}</Words>;
  }
  if (high - low > wordWidth(words) + 4) return <Words x={middle} y={at - 5} anchor="middle" tone={tone} halo>{words}</Words>;
  return spill === 'after'
    ? <Words x={high + 22} y={at + 5} tone={tone} halo>{words}</Words>
    : <Words x={low - 22} y={at + 5} anchor="end" tone={tone} halo>{words}</Words>;
}
