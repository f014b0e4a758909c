import { px } from './frame';
import { hatchId } from './hatches';

/** A duct cut open, px: the inner line of its walls, the clear inside, and the ends where the walls are open. */
export interface CutOpen {
  readonly walls: string;
  readonly clear: string;
  readonly ends: string;
}

/** Hatched walls of one thickness outside their inner line; each layer is drawn once for all ducts of a view. */
export function CutWalls({ id, cut, thick }: { readonly id: string; readonly cut: CutOpen; readonly thick: number }) {
  const stroke = { fill: 'none', strokeLinejoin: 'miter', strokeMiterlimit: 2, strokeLinecap: 'butt' } as const;
  return (
    <g>
      <path {...stroke} className="d-stroke-ink" strokeWidth={px(2 * thick + 2)} d={cut.walls} />
      <path {...stroke} className="d-stroke-paper" strokeWidth={px(2 * thick)} d={cut.walls} />
      <path {...stroke} stroke={`url(#${hatchId(id, 'cut')})`} strokeWidth={px(2 * thick)} d={cut.walls} />
      <path className="d-no-line d-fill-paper" d={cut.clear} />
      <path className="d-line d-edge" d={cut.walls + cut.ends} />
    </g>
  );
}
