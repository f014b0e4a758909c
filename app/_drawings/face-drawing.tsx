import type { Drawing } from '@/lib/knowledge';
import { Bead, straightBead } from './bead';
import { atX, atY, fit, px } from './frame';
import type { Frame, Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Block, Disc, Stroke } from './lines';
import { PencilRing } from './pencil';

type FaceSpec = Extract<Drawing, { show: 'face' }>;
type Fault = NonNullable<FaceSpec['fault']>;

const box = { w: 84, h: 52 };

/** One face of a print with its lines, seen straight on: first layer or top from above, wall from the side, a hole, a break. */
export function FaceDrawing({ spec, plate }: { readonly spec: FaceSpec; readonly plate: Plate }) {
  const on = fit(plate, box, { top: 5, bottom: 5, left: 4, right: 4 });
  const fault = spec.fault ?? 'none';
  switch (spec.which) {
    case 'first-layer':
    case 'top':
      return <Lines on={on} fault={fault} />;
    case 'wall':
      return <Wall on={on} fault={fault} />;
    case 'hole':
      return <Hole on={on} oval={fault === 'oval'} fault={fault} />;
    case 'inside':
      return <Inside on={on} fault={fault} />;
    default:
      return never(spec.which);
  }
}

function never(which: never): never {
  throw new Error(`FaceDrawing: got "${String(which)}", expected a face of the drawing schema`);
}

/** Neighbouring lines of one layer, from above. */
function Lines({ on, fault }: { readonly on: Frame; readonly fault: Fault }) {
  const count = on.size === 'row' ? 7 : 9;
  const pitch = (box.h * on.k) / count;
  const thin = fault === 'too-thin' ? 0.5 : fault === 'gaps' ? 0.68 : fault === 'too-squashed' ? 1.12 : 0.94;
  const x1 = on.left;
  const x2 = on.left + box.w * on.k;
  return (
    <>
      {Array.from({ length: count }, (_, i) => {
        const y = on.top + (i + 0.5) * pitch;
        return <OneLine key={i} i={i} count={count} x1={x1} x2={x2} y={y} h={pitch * thin} fault={fault} />;
      })}
      {fault === 'pillows' && [[20, 15], [43, 34], [66, 14], [64, 40], [18, 41]].map(([x = 0, y = 0]) => <Pillow key={`${x}-${y}`} on={on} x={x} y={y} />)}
      {fault === 'scars' && <Stroke on={on} d="M8 46L38 22L50 30L78 6" line="accent-edge" />}
      {fault === 'zits' && [[16, 12], [35, 30], [58, 18], [70, 40], [27, 43]].map(([x = 0, y = 0]) => <Disc key={x} on={on} x={x} y={y} r={2.6} line="accent" fill="accw" />)}
      {fault === 'one-corner' && <PencilRing on={on} x={70} y={40} r={13} flat={0.8} />}
    </>
  );
}

function OneLine({ i, count, x1, x2, y, h, fault }: { readonly i: number; readonly count: number; readonly x1: number; readonly x2: number; readonly y: number; readonly h: number; readonly fault: Fault }) {
  const w = x2 - x1;
  const worst = i > count * 0.3 && i < count * 0.75;
  if (fault === 'missing-lines' && (i === 2 || i === 5)) return <path className="d-line d-ghost" d={`M${px(x1)} ${px(y)}H${px(x2)}`} />;
  if (fault === 'gaps' && i % 3 === 1) return <><Bead d={straightBead(x1, x1 + w * (0.3 + (i % 4) * 0.08), y, h)} height={h} fault /><Bead d={straightBead(x1 + w * (0.46 + (i % 4) * 0.08), x2, y, h)} height={h} fault /></>;
  if (fault === 'not-stuck' && worst) return <Bead d={`M${px(x1 + h)} ${px(y)}C${px(x1 + w * 0.3)} ${px(y - h * 2.2)} ${px(x1 + w * 0.45)} ${px(y + h * 2)} ${px(x1 + w * 0.62)} ${px(y - h * 0.4)}S${px(x1 + w * 0.85)} ${px(y + h)} ${px(x2 - h)} ${px(y)}`} height={h} fault />;
  if (fault === 'ridges') return <Bead d={straightBead(x1, x2, y, i % 2 === 1 ? h * 1.25 : h * 0.72)} height={i % 2 === 1 ? h * 1.25 : h * 0.72} fault={i % 2 === 1} />;
  if (fault === 'ripple' || fault === 'scale-texture') return <Bead d={wavy(x1, x2, y, h, fault === 'ripple' ? 1 : 0.6)} height={h} fault={worst} />;
  if (fault === 'one-corner' && i > count * 0.55) {
    const cut = 0.72 - (i - count * 0.55) * 0.05;
    return <><Bead d={straightBead(x1, x1 + w * cut, y, h)} height={h} /><Bead d={straightBead(x1 + w * (cut + 0.03), x2, y, h * 0.45)} height={h * 0.45} fault /></>;
  }
  const fills: readonly Fault[] = ['too-thin', 'too-squashed', 'loose-infill', 'delaminated'];
  return <Bead d={straightBead(x1, x2, y, h)} height={h} fault={fills.includes(fault)} />;
}

function wavy(x1: number, x2: number, y: number, h: number, size: number): string {
  const step = h * 1.6;
  const start = x1 + h / 2;
  const count = Math.max(2, Math.floor((x2 - h / 2 - start) / step));
  const waves = Array.from({ length: count }, (_, i) => `Q${px(start + (i + 0.5) * step)} ${px(y + (i % 2 === 0 ? -1 : 1) * h * 0.5 * size)} ${px(start + (i + 1) * step)} ${px(y)}`);
  return `M${px(start)} ${px(y)}${waves.join('')}`;
}

const Pillow = ({ on, x, y }: { readonly on: Frame; readonly x: number; readonly y: number }) => (
  <g>
    <ellipse className="d-line d-accent d-fill-accw" cx={atX(on, x)} cy={atY(on, y)} rx={px(8 * on.k)} ry={px(5.4 * on.k)} />
    <Stroke on={on} d={`M${x - 4} ${y - 1}Q${x - 1} ${y - 3.4} ${x + 3} ${y - 2.4}`} line="accent-thin" />
  </g>
);

/** The side of a print: layer lines, and what went wrong across them. */
function Wall({ on, fault }: { readonly on: Frame; readonly fault: Fault }) {
  const count = on.size === 'row' ? 8 : 12;
  const ys = Array.from({ length: count - 1 }, (_, i) => (box.h * (i + 1)) / count);
  const skip = fault === 'delaminated' ? 0.5 : -1;
  return (
    <>
      <Block on={on} x={2} y={0} w={80} h={box.h} line="outline" fill="paper" />
      <Stroke on={on} d={ys.filter((_, i) => Math.abs(i / count - skip) > 0.06).map((y) => `M2 ${y}H82`).join('')} line="grid" />
      {fault === 'delaminated' && <Stroke on={on} d="M2 24C20 20 34 27 46 25C60 22 70 26 76 26C66 30 40 33 26 30C14 28 8 28 2 29Z" line="accent" fill="accw" />}
      {fault === 'ripple' && [0, 1, 2, 3, 4].map((i) => <Stroke key={i} on={on} d={`M${76 - i * 7} 4Q${73 - i * 7} 26 ${76 - i * 7} 48`} line={i < 2 ? 'accent' : 'accent-thin'} />)}
      {fault === 'scale-texture' && <Scales on={on} />}
      {fault === 'zits' && [[14, 10], [30, 30], [47, 15], [66, 36], [72, 12], [22, 44], [52, 42]].map(([x = 0, y = 0]) => <Disc key={x} on={on} x={x} y={y} r={2.2} line="accent" fill="accw" />)}
      {(fault === 'gaps' || fault === 'missing-lines') && [[10, 2, 26], [40, 4, 30], [22, 7, 40]].map(([x = 0, row = 0, w = 0]) => <Block key={x} on={on} x={x} y={(box.h * row) / 10 + 2} w={w} h={3.4} line="accent" fill="accw" />)}
      {fault === 'ridges' && [0.28, 0.58, 0.86].map((up) => <Block key={up} on={on} x={0} y={box.h * up - 2.4} w={84} h={4.4} line="accent" fill="accw" />)}
      {fault === 'scars' && <Stroke on={on} d="M12 40L40 14L50 20L72 8" line="accent-edge" />}
      {fault === 'too-thin' && ys.map((y) => <Stroke key={y} on={on} d={`M4 ${y}H80`} line="accent" />)}
      {(fault === 'one-corner' || fault === 'not-stuck') && <Stroke on={on} d="M52 52Q68 50 82 42V52Z" line="accent" fill="accw" />}
      {fault === 'too-squashed' && <Stroke on={on} d="M2 44C-3 46 -3 52 2 52H82C87 52 87 46 82 44Z" line="accent" fill="accw" />}
      {fault === 'pillows' && [16, 40, 64].map((x) => <Stroke key={x} on={on} d={`M${x - 9} 0Q${x} -5 ${x + 9} 0`} line="accent" fill="accw" />)}
      {fault === 'oval' && <Stroke on={on} d="M26 26C26 16 58 12 58 26C58 40 26 36 26 26Z" line="accent" fill="accw" />}
      {fault === 'loose-infill' && [22, 44, 66].map((x) => <Stroke key={x} on={on} d={`M${x} 4V48`} line="accent-thin" />)}
    </>
  );
}

function Scales({ on }: { readonly on: Frame }) {
  const arcs = [0, 1, 2, 3, 4, 5].flatMap((row) => [0, 1, 2, 3, 4, 5, 6, 7, 8].map((col) => ({ x: 8 + col * 8 + (row % 2) * 4, y: 7 + row * 8 })).filter(({ x }) => x < 78));
  return <Stroke on={on} d={arcs.map(({ x, y }) => `M${x - 4} ${y}Q${x} ${y + 5} ${x + 4} ${y}`).join('')} line="accent-thin" />;
}

/** A hole from the front with what it should be as a ghost. */
function Hole({ on, oval, fault }: { readonly on: Frame; readonly oval: boolean; readonly fault: Fault }) {
  const wrong = fault !== 'none';
  const rx = oval ? 19 : wrong ? 13 : 16;
  const ry = oval ? 13.5 : wrong ? 13 : 16;
  return (
    <>
      <Block on={on} x={2} y={0} w={80} h={52} line="outline" fill="paper" />
      <Stroke on={on} d={[1, 2, 3, 4, 5, 6, 7].map((i) => `M2 ${i * 6.5}H82`).join('')} line="grid" />
      <ellipse className="d-no-line d-fill-paper" cx={atX(on, 42)} cy={atY(on, 26)} rx={px(20 * on.k)} ry={px(19 * on.k)} />
      {wrong && <Disc on={on} x={42} y={26} r={16} line="ghost" />}
      <ellipse className={`d-line ${wrong ? 'd-accent' : 'd-outline'}`} cx={atX(on, 42)} cy={atY(on, 26)} rx={px(rx * on.k)} ry={px(ry * on.k)} />
      {fault === 'gaps' && <Stroke on={on} d="M31 19L34 14M53 19L50 14M31 33L34 38M53 33L50 38" line="accent" />}
      <Stroke on={on} d="M18 26H66M42 3V49" line="centre" />
    </>
  );
}

/** A break that shows walls and infill. */
function Inside({ on, fault }: { readonly on: Frame; readonly fault: Fault }) {
  const wallFault = fault === 'gaps' || fault === 'missing-lines' || fault === 'delaminated';
  return (
    <>
      <Hatches id={on.id} kinds={['infill']} />
      <Block on={on} x={2} y={2} w={80} h={48} line="outline" fill="paper" />
      <Block on={on} x={6} y={6} w={72} h={40} line="thin" />
      {fault === 'loose-infill' ? (
        <Stroke on={on} d="M16 12L30 26L24 40M34 12C40 20 44 22 48 30S56 38 60 40M52 12L64 24L58 34M70 12L66 22M18 24L12 34M40 40L32 34" line="accent" />
      ) : (
        <Hatched on={on} d={wallFault ? 'M11 11H73V41H11Z' : 'M6 6H78V46H6Z'} kind="infill" />
      )}
      {wallFault && <Stroke on={on} d="M8.5 8.5H75.5V43.5H8.5Z" line="accent" />}
      {fault === 'zits' && [[20, 14], [42, 26], [62, 16], [30, 38], [66, 36]].map(([x = 0, y = 0]) => <Disc key={x} on={on} x={x} y={y} r={3} line="accent" fill="accw" />)}
      {fault === 'ridges' && [[26, 20], [48, 32], [62, 18]].map(([x = 0, y = 0]) => <Disc key={x} on={on} x={x} y={y} r={3.4} line="accent" fill="accw" />)}
      {fault === 'too-thin' && <Stroke on={on} d="M6 6H78V46H6Z" line="accent" />}
    </>
  );
}

const faceNames: Readonly<Record<FaceSpec['which'], string>> = { 'first-layer': 'The first layer from above', top: 'The top face from above', wall: 'A wall from the side', hole: 'A hole from the front', inside: 'The inside of a print, seen in a break' };
const faultNames: Readonly<Record<Fault, string>> = {
  none: 'sound', gaps: 'with gaps', 'not-stuck': 'with lines that did not stick', ridges: 'with ridges', scars: 'with a scar drawn across it', pillows: 'with pillows that stand up', 'missing-lines': 'with lines missing', 'too-thin': 'with lines too thin to touch', 'too-squashed': 'with lines pressed too flat', 'scale-texture': 'with a texture like scales', ripple: 'with ripples', oval: 'not round', 'loose-infill': 'with loose infill', zits: 'with small bumps', delaminated: 'with layers parted', 'one-corner': 'bad in one corner only',
};
export const faceWords = (spec: FaceSpec): string => `${faceNames[spec.which]}, ${faultNames[spec.fault ?? 'none']}.`;
