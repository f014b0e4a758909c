import type { Frame } from './frame';
import { Stroke } from './lines';

/**
 * A nozzle with the lower part of its heater block, from the front; x = axis, from `top` to its `tip` in drawn units.
 * `wide` is half the width of the block.
 */
export function Nozzle({ on, x, top, tip, wide = 11, accent = false }: { readonly on: Frame; readonly x: number; readonly top: number; readonly tip: number; readonly wide?: number; readonly accent?: boolean }) {
  const block = top + (tip - top) * 0.62;
  const hex = top + (tip - top) * 0.8;
  return (
    <g>
      <Stroke on={on} d={`M${x - wide} ${top}H${x + wide}V${block}H${x - wide}Z`} line="outline" fill="paper" />
      <Stroke on={on} d={`M${x - wide * 0.42} ${block}H${x + wide * 0.42}V${hex}L${x + wide * 0.12} ${tip}H${x - wide * 0.12}L${x - wide * 0.42} ${hex}Z`} line={accent ? 'accent' : 'edge'} fill={accent ? 'accw' : 'paper'} />
    </g>
  );
}
