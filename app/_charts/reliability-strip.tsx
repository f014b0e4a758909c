import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { linear } from './scales';

/** Of all chances told within one stretch, how often it turned out true. Shares 0 to 1; `count` is how many were told. */
export interface ReliabilityBin {
  readonly told: number;
  readonly came: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** Told against true: points on the dashed line mean that a chance of 70 % came true in 70 of 100 cases. */
export function ReliabilityStrip({ bins, width = 300, name }: { readonly bins: readonly ReliabilityBin[]; readonly width?: number; readonly name: string }) {
  const x = linear([0, 1], [40, width - 14]);
  const y = linear([0, 1], [width - 54, 14]);
  const marks = [0, 0.25, 0.5, 0.75, 1];
  const most = Math.max(1, ...bins.map((b) => b.count));
  return (
    <Sheet width={width} height={width - 8} label={`${name}. ${bins.map((b) => `told ${Math.round(b.told * 100)} %, came true ${Math.round(b.came * 100)} %, ${b.count} times`).join('; ')}.`}>
      <path className="d-line d-grid" d={marks.map((m) => `M${x(m)} ${y(1)}V${y(0)}M${x(0)} ${y(m)}H${x(1)}`).join('')} />
      <path className="d-line d-limit" d={`M${x(0)} ${y(0)}L${x(1)} ${y(1)}`} />
      <path className="d-line d-outline" d={`M${x(0)} ${y(1)}V${y(0)}H${x(1)}`} />
      {bins.map((b) => (
        <g key={b.told}>
          <path className="d-line d-thin" d={`M${x(b.told)} ${y(b.low)}V${y(b.high)}M${x(b.told) - 4} ${y(b.low)}h8M${x(b.told) - 4} ${y(b.high)}h8`} />
          <circle className="d-no-line d-fill-ink" cx={x(b.told)} cy={y(b.came)} r={3 + 4 * Math.sqrt(b.count / most)} />
        </g>
      ))}
      {[0, 0.5, 1].map((m) => <Words key={`x${m}`} x={x(m)} y={y(0) + 20} anchor={m === 1 ? 'end' : 'middle'} tone="ink2">{m === 1 ? '100 %' : String(m * 100)}</Words>)}
      {[0, 0.5, 1].map((m) => <Words key={`y${m}`} x={x(0) - 8} y={y(m) + 5} anchor="end" tone="ink2">{String(m * 100)}</Words>)}
      <Words x={x(1)} y={y(0) + 38} anchor="end">told</Words>
      <Words x={x(0) + 8} y={y(1) + 2} halo>came true, %</Words>
    </Sheet>
  );
}
