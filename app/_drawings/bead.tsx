import { px } from './frame';

/** One printed line seen on end or from the side: a centre path stroked twice, so that any bend keeps its outline. */
export function Bead({ d, height, fault = false, ghost = false }: { readonly d: string; readonly height: number; readonly fault?: boolean; readonly ghost?: boolean }) {
  return (
    <>
      <path className={`d-bead${fault ? ' d-bead-fault' : ''}${ghost ? ' d-bead-ghost' : ''}`} strokeWidth={px(Math.max(1, height - 0.6))} d={d} />
      <path className={`d-bead-body${fault ? ' d-bead-body-fault' : ''}`} strokeWidth={px(Math.max(0.4, height - 2.6))} d={d} />
    </>
  );
}

/** A straight bead from x1 to x2 (outer ends, px) with its middle at y. */
export const straightBead = (x1: number, x2: number, y: number, height: number): string =>
  `M${px(x1 + height / 2)} ${px(y)}H${px(Math.max(x1 + height / 2 + 0.1, x2 - height / 2))}`;

/**
 * A bead whose left (or right) end is lifted by `lift` over the length `reach`: one quadratic from the tip, then
 * straight. The control point lies at 0.55 of the reach and 0.05 of the lift.
 */
export function liftedBead(x1: number, x2: number, y: number, height: number, lift: number, reach: number, end: 'left' | 'right'): { tip: string; rest: string } {
  const tipX = end === 'left' ? x1 + height / 2 : x2 - height / 2;
  const far = end === 'left' ? x2 - height / 2 : x1 + height / 2;
  const way = end === 'left' ? 1 : -1;
  const knee = tipX + way * Math.min(reach, Math.abs(far - tipX));
  return {
    tip: `M${px(tipX)} ${px(y - lift)}Q${px(tipX + way * 0.55 * Math.abs(knee - tipX))} ${px(y - 0.05 * lift)} ${px(knee)} ${px(y)}`,
    rest: `M${px(knee)} ${px(y)}H${px(far)}`,
  };
}

/** The bed: one thin line with ticks below it, every 8 px. */
export function BedLine({ from, to, y }: { readonly from: number; readonly to: number; readonly y: number }) {
  const ticks = Array.from({ length: Math.max(0, Math.floor((to - from - 6) / 8)) }, (_, i) => from + 8 + i * 8);
  return (
    <g>
      <path className="d-line d-hair" d={ticks.map((x) => `M${px(x)} ${px(y)}l-5 5`).join('')} />
      <path className="d-line d-thin" d={`M${px(from)} ${px(y)}H${px(to)}`} />
    </g>
  );
}
