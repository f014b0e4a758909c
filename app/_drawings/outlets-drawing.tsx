import type { Drawing } from '@/lib/knowledge';
import { Bead, BedLine } from './bead';
import { FlowLine } from './flow-line';
import { atX, atY, fit, px } from './frame';
import type { Frame, Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Stroke } from './lines';
import { Nozzle } from './nozzle';
import { Words } from './words';

type OutletsSpec = Extract<Drawing, { show: 'outlets' }>;

/** Air speed drawn for an outlet that takes the whole air, m/s: only the proportion of the two sides is meant. Small drawings take lighter lines. */
const speedOfAll = { row: 3.6, step: 7, figure: 11 } as const;

/** The two outlets of a part-cooling duct at the nozzle, from the front or from above, with the air each side gets. */
export function OutletsDrawing({ spec, plate }: { readonly spec: OutletsSpec; readonly plate: Plate }) {
  const left = spec.left ?? 0.5;
  const right = spec.right ?? 0.5;
  return spec.above === true ? <FromAbove spec={spec} plate={plate} left={left} right={right} /> : <FromFront spec={spec} plate={plate} left={left} right={right} />;
}

const weaker = (one: number, other: number): boolean => one < other - 0.1 || one < 0.15;

function FromFront({ spec, plate, left, right }: { readonly spec: OutletsSpec; readonly plate: Plate; readonly left: number; readonly right: number }) {
  const on = fit(plate, { w: 96, h: 58 }, { top: 3, bottom: plate.size === 'figure' ? 26 : 9 });
  const walls = 'M4 2H8V26L24 38L21.5 41.5L4 29ZM18 2H22V20L32 27.5L29.5 31L18 23Z';
  const mirrored = 'M92 2H88V26L72 38L74.5 41.5L92 29ZM78 2H74V20L64 27.5L66.5 31L78 23Z';
  return (
    <>
      <Hatches id={plate.id} kinds={['cut', 'lee']} />
      {weaker(left, right) && <Hatched on={on} d="M30 34H46V56H20Z" kind="lee" />}
      {weaker(right, left) && <Hatched on={on} d="M66 34H50V56H76Z" kind="lee" />}
      <Hatched on={on} d={walls + mirrored} kind="cut" />
      <Stroke on={on} d={walls + mirrored} line="edge" />
      <Nozzle on={on} x={48} top={2} tip={40} />
      <BedLine from={atX(on, 6)} to={atX(on, 90)} y={atY(on, 56)} />
      <SideAir on={on} share={left} spec={spec} way={1} />
      <SideAir on={on} share={right} spec={spec} way={-1} />
      {plate.size === 'figure' && <ShareWords on={on} left={left} right={right} />}
    </>
  );
}

function SideAir({ on, share, spec, way }: { readonly on: Frame; readonly share: number; readonly spec: OutletsSpec; readonly way: 1 | -1 }) {
  const at = (x: number, y: number) => ({ x: atX(on, way === 1 ? x : 96 - x), y: atY(on, y) });
  const none = share < 0.03;
  return (
    <g>
      {!none && [0, 1].map((i) => <FlowLine key={i} points={[at(11 + i * 4, 4), at(11 + i * 4, 25 - i * 2), at(36 + i * 2 + share * 4, 44.5 - i * 4)]} speed={share * speedOfAll[on.size]} radius={10} />)}
      {spec.strips === true && <Strip from={at(27, 33)} share={share} way={way} k={on.k} />}
      {spec.meter === true && <Vane at={at(31, 42)} k={on.k} />}
    </g>
  );
}

/** A paper strip held at an outlet: the more air, the further it stands off; with little air it hangs. */
function Strip({ from, share, way, k }: { readonly from: { x: number; y: number }; readonly share: number; readonly way: 1 | -1; readonly k: number }) {
  const angle = (Math.PI / 2) * (1 - Math.min(1, Math.max(0, (share - 0.15) / 0.4)));
  const length = 17 * k;
  const tip = { x: from.x + way * length * Math.cos(angle), y: from.y + length * Math.sin(angle) };
  const d = `M${px(from.x)} ${px(from.y)}Q${px(from.x + way * length * 0.45)} ${px(from.y + length * 0.08)} ${px(tip.x)} ${px(tip.y)}`;
  return (
    <g>
      <Bead d={d} height={Math.max(4, 2.4 * k)} fault />
    </g>
  );
}

function Vane({ at, k }: { readonly at: { x: number; y: number }; readonly k: number }) {
  const r = Math.max(5, 7 * k);
  return (
    <g>
      <circle className="d-line d-accent d-fill-paper" cx={px(at.x)} cy={px(at.y)} r={px(r)} />
      <path className="d-line d-accent-thin" d={[0, 60, 120].map((deg) => { const a = (deg * Math.PI) / 180; return `M${px(at.x - r * 0.8 * Math.cos(a))} ${px(at.y - r * 0.8 * Math.sin(a))}L${px(at.x + r * 0.8 * Math.cos(a))} ${px(at.y + r * 0.8 * Math.sin(a))}`; }).join('')} />
    </g>
  );
}

function ShareWords({ on, left, right }: { readonly on: Frame; readonly left: number; readonly right: number }) {
  const say = (share: number): string => `${Math.round((share / Math.max(0.001, left + right)) * 100)} %`;
  return (
    <>
      <Words x={atX(on, 16)} y={on.height - 4} anchor="middle" strong tone={weaker(left, right) ? 'accent' : 'ink'}>{say(left)}</Words>
      <Words x={atX(on, 80)} y={on.height - 4} anchor="middle" strong tone={weaker(right, left) ? 'accent' : 'ink'}>{say(right)}</Words>
    </>
  );
}

function FromAbove({ spec, plate, left, right }: { readonly spec: OutletsSpec; readonly plate: Plate; readonly left: number; readonly right: number }) {
  const on = fit(plate, { w: 96, h: 56 }, { top: 4, bottom: plate.size === 'figure' ? 26 : 4 });
  const walls = 'M4 4H34V8H8V48H34V52H4ZM62 4H92V52H62V48H88V8H62Z';
  const at = (x: number, y: number) => ({ x: atX(on, x), y: atY(on, y) });
  return (
    <>
      <Hatches id={plate.id} kinds={['cut', 'lee']} />
      {weaker(left, right) && <Hatched on={on} d="M30 12H46V44H30Z" kind="lee" />}
      {weaker(right, left) && <Hatched on={on} d="M66 12H50V44H66Z" kind="lee" />}
      <Hatched on={on} d={walls} kind="cut" />
      <Stroke on={on} d={walls} line="edge" />
      <Stroke on={on} d="M44 28H52M48 24V32" line="hair" />
      <circle className="d-line d-outline d-fill-paper" cx={atX(on, 48)} cy={atY(on, 28)} r={px(5 * on.k)} />
      <circle className="d-no-line d-fill-ink" cx={atX(on, 48)} cy={atY(on, 28)} r={px(1.6 * on.k)} />
      {[20, 28, 36].map((y) => (
        <g key={y}>
          {left >= 0.03 && <FlowLine points={[at(14, y), at(30 + left * 10, y)]} speed={left * speedOfAll[on.size]} />}
          {right >= 0.03 && <FlowLine points={[at(82, y), at(66 - right * 10, y)]} speed={right * speedOfAll[on.size]} />}
        </g>
      ))}
      {spec.meter === true && <Vane at={at(24, 28)} k={on.k} />}
      {spec.strips === true && [at(30, 28), at(66, 28)].map((p, i) => <Strip key={p.x} from={p} share={i === 0 ? left : right} way={i === 0 ? 1 : -1} k={on.k * 0.8} />)}
      {plate.size === 'figure' && <ShareWords on={on} left={left} right={right} />}
    </>
  );
}

export function outletsWords(spec: OutletsSpec): string {
  const left = spec.left ?? 0.5;
  const right = spec.right ?? 0.5;
  const share = weaker(left, right) ? 'the left one gives less air' : weaker(right, left) ? 'the right one gives less air' : 'both give the same air';
  const tools = `${spec.strips === true ? ', a paper strip at each' : ''}${spec.meter === true ? ', an air-speed meter held to each' : ''}`;
  return `The two cooling outlets at the nozzle, from ${spec.above === true ? 'above' : 'the front'}: ${share}${tools}.`;
}
