import { px } from '../_drawings/frame';

/** A value with its range: level line, end caps, diamond. All px. The picture of every uncertain number. */
export function Interval({ low, value, high, y, cap = 8, diamond = 8, accent = false, bold = false, open = false }: { readonly low: number; readonly value: number; readonly high: number; readonly y: number; readonly cap?: number; readonly diamond?: number; readonly accent?: boolean; readonly bold?: boolean; readonly open?: boolean }) {
  const line = accent ? (bold ? 'd-accent' : 'd-accent-thin') : bold ? 'd-outline' : 'd-thin';
  return (
    <g>
      <path className={`d-line range-line ${line}`} d={`M${px(low)} ${px(y - cap / 2)}V${px(y + cap / 2)}M${px(low)} ${px(y)}H${px(high)}M${px(high)} ${px(y - cap / 2)}V${px(y + cap / 2)}`} />
      <Diamond x={value} y={y} size={diamond} accent={accent} open={open} />
    </g>
  );
}

/** Filled: is. Open: was. */
export function Diamond({ x, y, size = 8, accent = false, open = false }: { readonly x: number; readonly y: number; readonly size?: number; readonly accent?: boolean; readonly open?: boolean }) {
  const r = size / 2;
  const look = open ? `d-line ${accent ? 'd-accent-thin' : 'd-thin'} d-fill-paper` : `d-no-line ${accent ? 'd-fill-accent' : 'd-fill-ink'}`;
  return <path className={look} d={`M${px(x - r)} ${px(y)}L${px(x)} ${px(y - r)}L${px(x + r)} ${px(y)}L${px(x)} ${px(y + r)}Z`} />;
}
