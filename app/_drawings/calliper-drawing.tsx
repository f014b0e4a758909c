import type { Drawing } from '@/lib/knowledge';
import { Bead, liftedBead, straightBead } from './bead';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, Stroke } from './lines';
import { Readout, readoutWidth } from './readout';

type CalliperSpec = Extract<Drawing, { show: 'calliper' }>;
type On = CalliperSpec['on'];

/** A calliper on the thing it measures: jaws for thickness, depth rod for a step or a curl. */
export function CalliperDrawing({ spec, plate }: { readonly spec: CalliperSpec; readonly plate: Plate }) {
  const rod = spec.on === 'step' || spec.on === 'curl';
  return rod ? <DepthRod spec={spec} plate={plate} /> : <Jaws spec={spec} plate={plate} />;
}

/** Distance between the jaws, drawn units: only the kind of thing is meant, the reading says how large it is. */
const opening: Readonly<Record<On, number>> = { step: 20, curl: 20, wall: 8, filament: 9, outlet: 22, part: 30 };

function Jaws({ spec, plate }: { readonly spec: CalliperSpec; readonly plate: Plate }) {
  const small = plate.size === 'row';
  const on = fit(plate, { w: 108, h: 62 }, { top: 5, bottom: 5, left: 5, right: 5 });
  const gap = opening[spec.on];
  const inner = spec.on === 'outlet';
  const ticks = Array.from({ length: small ? 10 : 21 }, (_, i) => 8 + i * (small ? 9.6 : 4.6));
  const s = 20 + gap;
  const windowWidth = readoutWidth(spec.reading, 26 * on.k, plate.width - 10) / on.k;
  const slider = Math.max(36, small ? 0 : windowWidth + 8);
  return (
    <>
      <Measured on={on} what={spec.on} from={20} to={s} />
      <Stroke on={on} d="M6 8H106V18H6Z" line="outline" fill="paper" />
      <Stroke on={on} d={ticks.map((x, i) => `M${x} 18V${i % 5 === 0 ? 12.5 : 15}`).join('')} line="thin" />
      <Stroke on={on} d={inner ? 'M6 8H14V18H20V52L17 58L10 40V18H6Z' : 'M6 8H14V18H20V58L12 42V18H6Z'} line="outline" fill="paper" />
      <Stroke on={on} d={`M${s} 2H${s + slider}V24H${s + 8}V42L${s} 58Z`} line="outline" fill="paper" />
      <Readout cx={atX(on, s + slider / 2 + 1)} cy={atY(on, 13)} reading={small ? undefined : spec.reading} least={26 * on.k} small={small} most={plate.width - 10} />
    </>
  );
}

function Measured({ on, what, from, to }: { readonly on: Frame; readonly what: On; readonly from: number; readonly to: number }) {
  const middle = (from + to) / 2;
  switch (what) {
    case 'filament':
      return <Disc on={on} x={middle} y={48} r={(to - from) / 2} line="accent" fill="accw" />;
    case 'wall':
      return <><Block on={on} x={from} y={34} w={to - from} h={27} line="accent" fill="accw" /><Stroke on={on} d={[38, 42, 46, 50, 54, 58].map((y) => `M${from} ${y}H${to}`).join('')} line="accent-hair" /></>;
    case 'outlet':
      return <Stroke on={on} d={`M${from - 12} 46H${from - 1}V61H${from - 12}M${to + 12} 46H${to + 1}V61H${to + 12}`} line="accent" fill="accw" />;
    case 'part':
    case 'step':
    case 'curl':
      return <><Block on={on} x={from} y={32} w={to - from} h={29} line="outline" fill="paper" /><Stroke on={on} d={[37, 42, 47, 52, 57].map((y) => `M${from} ${y}H${to}`).join('')} line="grid" /></>;
    default:
      return never(what);
  }
}

function never(what: never): never {
  throw new Error(`CalliperDrawing: got "${String(what)}", expected a thing of the drawing schema`);
}

function DepthRod({ spec, plate }: { readonly spec: CalliperSpec; readonly plate: Plate }) {
  const small = plate.size === 'row';
  const on = fit(plate, { w: 100, h: 72 }, { top: 4, bottom: 4 });
  const h = 5 * on.k;
  const curl = spec.on === 'curl';
  const rows = curl ? [0, 1, 2, 3, 4] : [0, 1, 2, 3, 4, 5, 6];
  return (
    <>
      {rows.map((i) => {
        const y = atY(on, 68 - i * 5);
        if (!curl) return <Bead key={i} d={straightBead(atX(on, i > 2 ? 70 : 54), atX(on, i > 2 ? 98 : 82), y, h)} height={h} fault={i > 2} />;
        const bead = liftedBead(atX(on, 18 - i * 3), atX(on, 92), y, h, i * 2.6 * on.k, 34 * on.k, 'left');
        return <g key={i}><Bead d={bead.rest} height={h} />{<Bead d={bead.tip} height={h} fault={i > 1} />}</g>;
      })}
      {curl ? <VerticalRod on={on} /> : <LevelRod on={on} />}
      {!small && <Readout cx={atX(on, curl ? 66 : 25)} cy={atY(on, curl ? 14 : 46)} reading={spec.reading} least={40} most={plate.width - 8} />}
      {small && <Readout cx={atX(on, curl ? 66 : 24)} cy={atY(on, curl ? 14 : 46)} reading={undefined} least={24} small />}
    </>
  );
}

/** A straight edge lies on the tip; the rod reaches down to the flat top. */
const VerticalRod = ({ on }: { readonly on: Frame }) => (
  <g>
    <Stroke on={on} d="M50 4H82V24H50Z" line="outline" fill="paper" />
    <Stroke on={on} d="M2 24.5H96V31H2Z" line="outline" fill="paper" />
    <Stroke on={on} d="M64.5 31H67.5V45H64.5Z" line="accent" fill="accw" />
  </g>
);

/** The end face lies against the lower wall; the rod runs over the ledge to the moved wall. */
const LevelRod = ({ on }: { readonly on: Frame }) => (
  <g>
    <Stroke on={on} d="M2 36H48V56H2Z" line="outline" fill="paper" />
    <Stroke on={on} d="M48 32H54V70H48Z" line="outline" fill="paper" />
    <Stroke on={on} d="M54 45H70V48H54Z" line="accent" fill="accw" />
  </g>
);

const things: Readonly<Record<On, string>> = { step: 'the step between lower and upper layers', wall: 'a single wall', filament: 'the filament', curl: 'how far the tip stands above the flat', outlet: 'the opening of an outlet', part: 'a side of the part' };
export const calliperWords = (spec: CalliperSpec): string => `A calliper that measures ${things[spec.on]}${spec.reading === undefined ? '' : `, reading ${spec.reading}`}.`;
