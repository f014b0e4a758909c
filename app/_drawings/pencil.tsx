import { angleTo, ArrowHead } from './arrows';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';

/**
 * The red pencil: an open ring around the place, as a hand draws it; a little more than one turn, not quite round.
 * x, y, r in drawn units. It marks the place by shape as well as by colour.
 */
export function PencilRing({ on, x, y, r, flat = 1 }: { readonly on: Frame; readonly x: number; readonly y: number; readonly r: number; readonly flat?: number }) {
  const cx = atX(on, x);
  const cy = atY(on, y);
  const rx = Math.max(5, on.k * r);
  const ry = rx * flat;
  return (
    <path
      className="d-line d-accent"
      d={`M${px(cx + rx * 0.72)} ${px(cy - ry * 0.86)}C${px(cx - rx * 0.2)} ${px(cy - ry * 1.32)} ${px(cx - rx * 1.12)} ${px(cy - ry * 0.75)} ${px(cx - rx)} ${px(cy + ry * 0.1)}C${px(cx - rx * 0.9)} ${px(cy + ry * 1.2)} ${px(cx + rx * 0.85)} ${px(cy + ry * 1.25)} ${px(cx + rx)} ${px(cy + ry * 0.08)}C${px(cx + rx * 1.1)} ${px(cy - ry * 0.75)} ${px(cx + rx * 0.3)} ${px(cy - ry * 1.18)} ${px(cx - rx * 0.12)} ${px(cy - ry * 1.02)}`}
    />
  );
}

/** An accent arrow whose tip is at (x, y) in drawn units and whose tail is `length` px away in the direction of `from`, degrees. */
export function PencilArrow({ on, x, y, from, length = 18 }: { readonly on: Frame; readonly x: number; readonly y: number; readonly from: number; readonly length?: number }) {
  const tip = { x: atX(on, x), y: atY(on, y) };
  const a = (from * Math.PI) / 180;
  const tail = { x: tip.x + length * Math.cos(a), y: tip.y + length * Math.sin(a) };
  return (
    <g>
      <path className="d-line d-accent" d={`M${px(tail.x)} ${px(tail.y)}L${px(tip.x - 5 * Math.cos(angleTo(tail, tip) * Math.PI / 180))} ${px(tip.y - 5 * Math.sin(angleTo(tail, tip) * Math.PI / 180))}`} />
      <ArrowHead tip={tip} angle={angleTo(tail, tip)} length={8} width={6} tone="accent" />
    </g>
  );
}
