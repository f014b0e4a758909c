import type { AirPathLayout, OutletLayout } from './air-path-layout';
import { frontHeight } from './air-path-placing';
import { BedLine, Bead, straightBead } from './bead';
import { FlowLine } from './flow-line';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';
import { Hatched } from './hatches';
import { Stroke } from './lines';
import { Words } from './words';

/** Nozzle tip, mm below the top of the view. */
const tip = 15;

/** The same path from the front, on the same centre line: outlets at the sides, nozzle cut through its bore, the part. */
export function AirPathFront({ on, layout }: { readonly on: Frame; readonly layout: AirPathLayout }) {
  const sides = layout.outlets.filter(isSide);
  return (
    <g>
      <Words x={0} y={on.top - 8} tone="ink2">From the front; heights not to scale</Words>
      <NozzleCut on={on} />
      <PartUnder on={on} layout={layout} />
      {sides.map((o) => <SideOutlet key={o.outlet.name} on={on} laid={o} rim={layout.reach + o.outlet.channel / 2} />)}
      <Stroke on={on} d={`M0 -2V${frontHeight + 1}`} line="centre" />
    </g>
  );
}

/** Outlets in front and behind do not show their cut from the front. */
const isSide = (o: OutletLayout): boolean => Math.abs(Math.cos((o.outlet.direction * Math.PI) / 180)) > 0.7;

function NozzleCut({ on }: { readonly on: Frame }) {
  const halves = `M-8 0H-0.9V${tip}H-1.6L-3.2 11V9H-8ZM8 0H0.9V${tip}H1.6L3.2 11V9H8Z`;
  return (
    <g>
      <Stroke on={on} d={halves} line="edge" fill="paper" />
      <Hatched on={on} d={halves} kind="cut" />
      <Stroke on={on} d={halves} line="edge" />
    </g>
  );
}

/** Layers that lean out on both sides; on the lee side their tips lift. */
function PartUnder({ on, layout }: { readonly on: Frame; readonly layout: AirPathLayout }) {
  const h = 1.9 * on.k;
  const lee = (way: 1 | -1): boolean => layout.outlets.some((o) => o.lee && isSide(o) && Math.sign(Math.cos((o.outlet.direction * Math.PI) / 180)) === way);
  const bed = atY(on, frontHeight - 2);
  return (
    <g>
      <BedLine from={atX(on, -layout.reach - 6)} to={atX(on, layout.reach + 6)} y={bed} />
      {Array.from({ length: 6 }, (_, i) => {
        const half = (5 + i * 1.5) * on.k;
        const y = bed - (i + 0.5) * h;
        const x = atX(on, 0);
        const curl = (way: 1 | -1): number => (lee(way) && i > 1 ? (i - 1) * 0.55 * on.k : 0);
        return (
          <g key={i}>
            <Bead d={straightBead(x - half, x + half, y, h)} height={h} />
            {([-1, 1] as const).filter((way) => curl(way) > 0).map((way) => (
              <Bead key={way} d={`M${px(x + way * (half - h / 2))} ${px(y - curl(way))}Q${px(x + way * half * 0.75)} ${px(y)} ${px(x + way * half * 0.5)} ${px(y)}`} height={h} fault />
            ))}
          </g>
        );
      })}
    </g>
  );
}

function SideOutlet({ on, laid, rim }: { readonly on: Frame; readonly laid: OutletLayout; readonly rim: number }) {
  const { outlet } = laid;
  const way = Math.cos((outlet.direction * Math.PI) / 180) > 0 ? 1 : -1;
  const x = (v: number): number => way * v;
  const d = outlet.distance;
  const h = Math.max(1, outlet.height);
  const t = 1.6;
  const lower = 11.5;
  const outer = `M${x(rim)} 0H${x(rim + t)}V${lower + 1.2}L${x(d + 0.6)} ${lower + 3.4}L${x(d)} ${lower + 1.9}L${x(rim)} ${lower}Z`;
  const inner = `M${x(rim - outlet.channel)} 0H${x(rim - outlet.channel - t)}V${lower - h - 2.4}L${x(d)} ${lower + 1.9 - h - t}L${x(d + 0.3)} ${lower + 1.9 - h}L${x(rim - outlet.channel)} ${lower - h - 0.6}Z`;
  const at = (px1: number, py: number) => ({ x: atX(on, x(px1)), y: atY(on, py) });
  return (
    <g>
      <Hatched on={on} d={outer + inner} kind="cut" />
      <Stroke on={on} d={outer + inner} line="edge" />
      {outlet.speed >= 0.05 && <FlowLine points={[at(rim - outlet.channel / 2, 1), at(rim - outlet.channel / 2, lower - h / 2), at(d, lower + 1.9 - h / 2), at(Math.max(4, d - 8), tip + 0.6)]} speed={outlet.speed} radius={10} />}
    </g>
  );
}
