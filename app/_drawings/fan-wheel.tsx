import { px } from './frame';

export interface FanBody {
  /** Centre of the frame and its side, px. */
  readonly cx: number;
  readonly cy: number;
  readonly side: number;
  /** Dashed: a fan that is proposed, not fitted. */
  readonly proposed?: boolean;
  readonly accentWheel?: boolean;
  readonly centreLines?: boolean;
}

/**
 * A radial fan, from its inlet side: frame, scroll that opens from the tongue (0.66 r) against the clock to 0.90 r and
 * then runs straight into the exit at the foot (from −0.90 r to −0.02 r), wheel 0.60 r with 15 curved blades.
 */
export function RadialFan({ cx, cy, side, proposed = false, accentWheel = false, centreLines = true }: FanBody) {
  const r = side / 2;
  const line = proposed ? 'd-proposed' : 'd-edge';
  const wheel = accentWheel ? 'd-accent-thin' : 'd-thin';
  return (
    <g>
      <rect className={`d-line ${proposed ? 'd-proposed' : 'd-outline'} d-fill-paper`} x={px(cx - r)} y={px(cy - r)} width={px(side)} height={px(side)} />
      <FrameHoles cx={cx} cy={cy} r={r} corners={[[1, -1], [-1, -1], [1, 1]]} />
      <path className={`d-line ${line}`} d={scrollPath(cx, cy, r)} />
      <path className={`d-line ${line}`} d={`M${px(cx)} ${px(cy + 0.66 * r)}Q${px(cx - 0.03 * r)} ${px(cy + 0.7 * r)} ${px(cx - 0.02 * r)} ${px(cy + r)}`} />
      <circle className={`d-line ${accentWheel ? 'd-accent' : 'd-thin'}`} cx={px(cx)} cy={px(cy)} r={px(0.6 * r)} />
      <circle className={`d-line ${wheel} d-fill-wash`} cx={px(cx)} cy={px(cy)} r={px(0.252 * r)} />
      <path className={`d-line ${wheel}`} d={curvedBlades(cx, cy, r, r > 34 ? 15 : r > 16 ? 11 : 9)} />
      {centreLines && <CentreCross cx={cx} cy={cy} r={1.12 * r} />}
    </g>
  );
}

/** An axial fan from its inlet side: the same frame, full-width blades, four struts behind them. */
export function AxialFan({ cx, cy, side, proposed = false, accentWheel = false, centreLines = true }: FanBody) {
  const r = side / 2;
  const wheel = accentWheel ? 'd-accent' : 'd-edge';
  const blades = Array.from({ length: 7 }, (_, i) => (i * 2 * Math.PI) / 7);
  const at = (radius: number, angle: number): string => `${px(cx + radius * r * Math.cos(angle))} ${px(cy + radius * r * Math.sin(angle))}`;
  return (
    <g>
      <rect className={`d-line ${proposed ? 'd-proposed' : 'd-outline'} d-fill-paper`} x={px(cx - r)} y={px(cy - r)} width={px(side)} height={px(side)} />
      <FrameHoles cx={cx} cy={cy} r={r} corners={[[1, -1], [-1, -1], [1, 1], [-1, 1]]} />
      <circle className={`d-line ${proposed ? 'd-proposed' : 'd-edge'}`} cx={px(cx)} cy={px(cy)} r={px(0.9 * r)} />
      <path className="d-line d-hair" d={[45, 135, 225, 315].map((deg) => `M${at(0.33, (deg * Math.PI) / 180)}L${at(0.9, (deg * Math.PI) / 180)}`).join('')} />
      <path className={`d-line ${wheel} d-fill-wash`} d={blades.map((a) => `M${at(0.32, a)}Q${at(0.62, a + 0.02)} ${at(0.83, a + 0.42)}A${px(0.83 * r)} ${px(0.83 * r)} 0 0 0 ${at(0.83, a - 0.2)}Q${at(0.6, a - 0.42)} ${at(0.32, a - 0.55)}Z`).join('')} />
      <circle className={`d-line ${wheel} d-fill-paper`} cx={px(cx)} cy={px(cy)} r={px(0.34 * r)} />
      {centreLines && <CentreCross cx={cx} cy={cy} r={1.12 * r} />}
    </g>
  );
}

function FrameHoles({ cx, cy, r, corners }: { readonly cx: number; readonly cy: number; readonly r: number; readonly corners: readonly (readonly [number, number])[] }) {
  if (r < 14) return null;
  return <>{corners.map(([sx, sy]) => <circle key={`${sx}${sy}`} className="d-line d-thin d-fill-paper" cx={px(cx + sx * 0.85 * r)} cy={px(cy + sy * 0.85 * r)} r={px(Math.max(1.6, 0.07 * r))} />)}</>;
}

const CentreCross = ({ cx, cy, r }: { readonly cx: number; readonly cy: number; readonly r: number }) => (
  <path className="d-line d-centre" d={`M${px(cx - r)} ${px(cy)}H${px(cx + r)}M${px(cx)} ${px(cy - r)}V${px(cy + r)}`} />
);

function scrollPath(cx: number, cy: number, r: number): string {
  const steps = 36;
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const angle = Math.PI / 2 - t * 1.5 * Math.PI;
    const radius = (0.66 + 0.24 * t) * r;
    return `${px(cx + radius * Math.cos(angle))} ${px(cy + radius * Math.sin(angle))}`;
  });
  return `M${points.join('L')}V${px(cy + r)}`;
}

function curvedBlades(cx: number, cy: number, r: number, count: number): string {
  return Array.from({ length: count }, (_, i) => {
    const a = (i * 2 * Math.PI) / count;
    const at = (radius: number, angle: number): string => `${px(cx + radius * r * Math.cos(angle))} ${px(cy + radius * r * Math.sin(angle))}`;
    return `M${at(0.34, a)}Q${at(0.5, a - 0.02)} ${at(0.57, a + 0.3)}`;
  }).join('');
}
