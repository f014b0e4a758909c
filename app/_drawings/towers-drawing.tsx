import type { Drawing } from '@/lib/knowledge';
import { BedLine, Bead, straightBead } from './bead';
import { fit, px } from './frame';
import type { Plate } from './frame';

type TowersSpec = Extract<Drawing, { show: 'towers' }>;
type BridgeSpec = Extract<Drawing, { show: 'bridge' }>;

/** Heights (share of the tower) and sags (px) of the threads: uneven, as they are. */
const threads = [[0.82, 8], [0.55, 13], [0.3, 7], [0.68, 15], [0.42, 9], [0.92, 6], [0.2, 11], [0.62, 6], [0.36, 14]] as const;

/** Two towers with threads in the gap between them. */
export function TowersDrawing({ spec, plate }: { readonly spec: TowersSpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 18, h: 11 }, { top: 4, bottom: 10, left: 6, right: 6 });
  const h = on.k;
  const bed = px(on.top + 11 * h);
  const from = on.left + 1.5 * h;
  const inner = { left: from + 4 * h, right: from + 11 * h };
  return (
    <>
      <BedLine from={px(from - 8)} to={px(inner.right + 4 * h + 8)} y={bed} />
      {Array.from({ length: 11 }, (_, i) => bed - (i + 0.5) * h).map((y) => (
        <g key={y}>
          <Bead d={straightBead(from, inner.left, y, h)} height={h} />
          <Bead d={straightBead(inner.right, inner.right + 4 * h, y, h)} height={h} />
        </g>
      ))}
      {threads.slice(0, spec.strings).map(([up, sag]) => {
        const y = bed - up * 10.6 * h;
        const low = (sag * h) / 7;
        const d = `M${px(inner.left)} ${px(y)}Q${px((inner.left + inner.right) / 2 - h)} ${px(y + low * 2)} ${px(inner.right)} ${px(y - 1)}`;
        return <path key={up} className={`d-line ${spec.thick === true ? 'd-accent' : 'd-accent-thin'}`} strokeWidth={spec.thick === true ? 2.6 : undefined} d={d} />;
      })}
    </>
  );
}

export const towersWords = (spec: TowersSpec): string =>
  `Two towers side by side${spec.strings === 0 ? ', nothing between them' : `, with ${spec.strings} ${spec.thick === true ? 'thick' : 'fine'} threads across the gap`}.`;

/** A span across a gap between two supports: straight, sagging, or with loose lines. */
export function BridgeDrawing({ spec, plate }: { readonly spec: BridgeSpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 20, h: 11.4 }, { top: 5, bottom: 10, left: 5, right: 5 });
  const h = on.k;
  const bed = px(on.top + 11.4 * h);
  const left = on.left;
  const right = left + 20 * h;
  const span = 4;
  const legs = Array.from({ length: 7 }, (_, i) => bed - (i + 0.5) * h);
  const sag = (spec.sag ?? 0) * 4.6 * h;
  const loose = spec.loose ?? 0;
  return (
    <>
      <BedLine from={px(left - 4)} to={px(right + 4)} y={bed} />
      {legs.map((y) => (
        <g key={y}>
          <Bead d={straightBead(left, left + span * h, y, h)} height={h} />
          <Bead d={straightBead(right - span * h, right, y, h)} height={h} />
        </g>
      ))}
      {Array.from({ length: loose }, (_, i) => (
        <path key={i} className="d-line d-accent-thin" d={`M${px(left + span * h)} ${px(bed - 7 * h)}Q${px((left + right) / 2 + (i - 1) * 2 * h)} ${px(bed - (6 - 2.6 * (i + 1)) * h)} ${px(right - span * h)} ${px(bed - 7 * h)}`} />
      ))}
      {[0, 1, 2].map((i) => {
        const y = bed - (7.5 + i) * h;
        const drop = sag * Math.max(0, 1 - i * 0.3);
        const d = drop === 0 ? straightBead(left, right, y, h) : `M${px(left + h / 2)} ${px(y)}H${px(left + span * h)}Q${px((left + right) / 2)} ${px(y + drop)} ${px(right - span * h)} ${px(y)}H${px(right - h / 2)}`;
        return <Bead key={i} d={d} height={h} fault={drop > 0 && i === 0} />;
      })}
    </>
  );
}

export function bridgeWords(spec: BridgeSpec): string {
  const sag = spec.sag ?? 0;
  const said = sag === 0 ? 'straight' : sag < 0.4 ? 'sagging a little' : 'sagging deeply';
  return `A span across a gap between two supports, ${said}${(spec.loose ?? 0) > 0 ? `, with ${spec.loose ?? 0} lines hanging loose under it` : ''}.`;
}
