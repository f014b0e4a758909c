import { AxialFan, RadialFan } from './fan-wheel';
import { Sheet } from './sheet';
import { Words } from './words';

export type OptionKind =
  | 'leave' | 'new-fan' | 'seal-leak' | 'open-outlets' | 'smooth-bends' | 're-aim' | 'second-outlet' | 'new-duct' | 'new-fan-and-duct' | 'slower-layers' | 'cooler-melt';

const names: Readonly<Record<OptionKind, string>> = {
  leave: 'fan and duct as they are', 'new-fan': 'a larger fan on the same duct', 'seal-leak': 'the joint between fan and duct sealed', 'open-outlets': 'wider mouths', 'smooth-bends': 'rounded bends',
  're-aim': 'outlets aimed at the nozzle', 'second-outlet': 'a second outlet', 'new-duct': 'an even fork', 'new-fan-and-duct': 'a larger fan and an even fork', 'slower-layers': 'more time for each layer', 'cooler-melt': 'a cooler nozzle',
};

/** 56 × 40: one change to the air path as a small drawing. Heavy is what is new; small figures stay at 14 px. */
export function OptionGlyph({ kind, decorative = true }: { readonly kind: OptionKind; readonly decorative?: boolean }) {
  return (
    <Sheet width={56} height={40} size="row" label={names[kind]} decorative={decorative}>
      <Glyph kind={kind} />
    </Sheet>
  );
}

const oneSided = 'M10 36V24H40V18M10 36H20M46 18V36H36';
const evenFork = 'M10 36V26H25V20M31 20V26H46V36M10 36H20M46 36H36';

function Glyph({ kind }: { readonly kind: OptionKind }) {
  switch (kind) {
    case 'leave': return <><Duct /><SmallFan x={43} y={10} side={14} /></>;
    case 'new-fan': return <><Duct /><SmallFan x={43} y={10} side={19} bold /></>;
    case 'new-duct': return <><Duct even bold /><SmallFan x={28} y={11} side={14} /></>;
    case 'new-fan-and-duct': return <><Duct even bold /><SmallFan x={28} y={10} side={19} bold /></>;
    case 'seal-leak': return <><Duct /><SmallFan x={43} y={9} side={14} /><path className="d-line d-accent-edge" d="M36 19H50" /></>;
    case 'open-outlets': return <><Duct /><SmallFan x={43} y={10} side={14} /><path className="d-line d-outline" d="M20 31V36M36 31V36M17 33.5H23M33 33.5H39" /></>;
    case 'smooth-bends': return <><path className="d-line d-edge" d="M10 36V31Q10 23 18 23H34Q40 23 40 18M10 36H20M46 18V30Q46 36 40 36H36" /><path className="d-line d-accent" d="M10 31Q10 23 18 23" /><Nozzle /><SmallFan x={43} y={10} side={14} /></>;
    case 're-aim': return <><Duct /><SmallFan x={43} y={10} side={14} /><path className="d-line d-accent" d="M14 30L24 34M20.6 34.6L24 34L21.8 31.4" /></>;
    case 'second-outlet': return <><Duct /><SmallFan x={43} y={10} side={14} /><path className="d-line d-accent" d="M25 24V29M31 24V29" /></>;
    case 'slower-layers': return <><Duct /><SmallFan x={45} y={11} side={12} /><Clock /></>;
    case 'cooler-melt': return <><Duct /><SmallFan x={45} y={11} side={12} /><Words x={1} y={15} strong>{'−°C'}</Words></>;
    default: return never(kind);
  }
}

function never(kind: never): never {
  throw new Error(`OptionGlyph: got "${String(kind)}", expected a kind of option`);
}

const Nozzle = () => <circle className="d-no-line d-fill-ink" cx={28} cy={35.5} r={2.6} />;

const Duct = ({ even = false, bold = false }: { readonly even?: boolean; readonly bold?: boolean }) => (
  <g>
    <path className={`d-line ${bold ? 'd-glyph-new' : 'd-edge'}`} d={even ? evenFork : oneSided} />
    <Nozzle />
  </g>
);

function SmallFan({ x, y, side, bold = false }: { readonly x: number; readonly y: number; readonly side: number; readonly bold?: boolean }) {
  return (
    <g>
      <rect className={`d-line ${bold ? 'd-glyph-new' : 'd-edge'} d-fill-paper`} x={x - side / 2} y={y - side / 2} width={side} height={side} />
      <circle className="d-line d-thin" cx={x} cy={y} r={side * 0.3} />
    </g>
  );
}

const Clock = () => (
  <g>
    <circle className="d-line d-edge d-fill-paper" cx={17} cy={11} r={9} />
    <path className="d-line d-edge" d="M17 5.5V11L21 13.5" />
  </g>
);

/** The two kinds of fan as glyphs of their own, for lists of candidates. */
export function FanGlyph({ kind }: { readonly kind: 'radial' | 'axial' }) {
  return (
    <Sheet width={56} height={40} size="row" decorative label="">
      {kind === 'radial' ? <RadialFan cx={28} cy={20} side={34} centreLines={false} /> : <AxialFan cx={28} cy={20} side={34} centreLines={false} />}
    </Sheet>
  );
}
