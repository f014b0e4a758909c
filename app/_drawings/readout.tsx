import { px } from './frame';
import { Words } from './words';
import { wordWidth } from './word-width';

/**
 * The window of an instrument, px, with its reading. The window grows with the reading, so that the figure never
 * leaves it; without room for figures (row size) it shows two strokes.
 */
export function Readout({ cx, cy, reading, least = 30, small = false, most = 300 }: { readonly cx: number; readonly cy: number; readonly reading: string | undefined; readonly least?: number; readonly small?: boolean; readonly most?: number }) {
  const w = small ? least : readoutWidth(reading, least, most);
  const h = small ? Math.min(12, least * 0.5) : 22;
  return (
    <g>
      <rect className="d-line d-thin d-fill-paper" x={px(cx - w / 2)} y={px(cy - h / 2)} width={px(w)} height={px(h)} />
      {small || reading === undefined ? (
        <path className="d-line d-thin" d={`M${px(cx - w * 0.26)} ${px(cy)}h${px(w * 0.16)}M${px(cx - w * 0.02)} ${px(cy)}h${px(w * 0.28)}`} />
      ) : (
        <Words x={cx} y={cy + 5} anchor="middle" strong>{reading}</Words>
      )}
    </g>
  );
}

export const readoutWidth = (reading: string | undefined, least: number, most = 300): number => Math.min(most, Math.max(least, reading === undefined ? 0 : wordWidth(reading) + 12));
