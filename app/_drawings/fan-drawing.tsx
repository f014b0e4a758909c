import type { Drawing } from '@/lib/knowledge';
import { ArrowHead } from './arrows';
import { AxialFan, RadialFan } from './fan-wheel';
import { fit, px } from './frame';
import type { Plate } from './frame';
import { FlowLine } from './flow-line';
import { Words } from './words';
import { wordWidth } from './word-width';

type FanSpec = Extract<Drawing, { show: 'fan' }>;

/** The largest fan that the schema allows, mm: drawn sizes are to one scale only within one air path plan, not here. */
const blowsAt = 5;

/** A fan from its inlet side: turning with its air, or standing still. */
export function FanDrawing({ spec, plate }: { readonly spec: FanSpec; readonly plate: Plate }) {
  const words = plate.size === 'row' ? undefined : (spec.label ?? (spec.size === undefined || plate.size === 'step' ? undefined : `${spec.size} mm`));
  const on = fit(plate, { w: 40, h: 40 }, { top: 5, bottom: words === undefined ? 5 : 24, left: 14, right: 14 });
  const side = 36 * on.k;
  const cx = px(plate.width / 2);
  const cy = px(on.top + 20 * on.k - (spec.kind === 'axial' ? 0 : 3));
  const stopped = spec.stopped ?? false;
  const body = { cx, cy, side, accentWheel: stopped, centreLines: plate.size === 'figure' };
  return (
    <>
      {spec.kind === 'axial' ? <AxialFan {...body} /> : <RadialFan {...body} />}
      {!stopped && spec.kind !== 'axial' && <ExitAir x={cx - side * 0.23} y={cy + side / 2} weak={spec.blocked ?? false} length={Math.min(16, plate.height - cy - side / 2 - (words === undefined ? 1 : 20))} />}
      {!stopped && <TurnArrow cx={cx} cy={cy} r={side * 0.62} room={plate.width / 2} />}
      {spec.blocked === true && <CableAcross cx={cx} cy={cy} side={side} />}
      {stopped && <Struck cx={cx} cy={cy} r={side * 0.36} />}
      {words !== undefined && <Words x={Math.max(cx, wordWidth(words) / 2)} y={plate.height - 5} anchor="middle" strong={spec.label !== undefined}>{words}</Words>}
    </>
  );
}

function ExitAir({ x, y, weak, length }: { readonly x: number; readonly y: number; readonly weak: boolean; readonly length: number }) {
  if (length < 6) return null;
  const speed = weak ? 0.5 : blowsAt;
  return <>{[-0.5, 0.5].map((i) => <FlowLine key={i} points={[{ x: x + i * 9, y: y - 5 }, { x: x + i * 9, y: y + length }]} speed={speed} />)}</>;
}

function TurnArrow({ cx, cy, r, room }: { readonly cx: number; readonly cy: number; readonly r: number; readonly room: number }) {
  if (r + 5 > room) return null;
  const tip = { x: cx + r * Math.cos(-0.6), y: cy + r * Math.sin(-0.6) };
  return (
    <g>
      <path className="d-line d-thin" d={`M${px(cx + r * Math.cos(0.35))} ${px(cy + r * Math.sin(0.35))}A${px(r)} ${px(r)} 0 0 0 ${px(tip.x)} ${px(tip.y)}`} />
      <ArrowHead tip={{ x: tip.x - 1, y: tip.y - 2 }} angle={-130} length={9} width={5} tone="ink" />
    </g>
  );
}

/** Struck through, as a fact that is not there: the wheel does not turn. */
function Struck({ cx, cy, r }: { readonly cx: number; readonly cy: number; readonly r: number }) {
  return <path className="d-line d-accent-edge" d={`M${px(cx - r)} ${px(cy + r)}L${px(cx + r)} ${px(cy - r)}`} />;
}

/** A cable and a flap lie over the inlet. */
function CableAcross({ cx, cy, side }: { readonly cx: number; readonly cy: number; readonly side: number }) {
  const d = `M${px(cx - side * 0.62)} ${px(cy - side * 0.3)}C${px(cx - side * 0.2)} ${px(cy - side * 0.42)} ${px(cx - side * 0.15)} ${px(cy + side * 0.3)} ${px(cx + side * 0.1)} ${px(cy + side * 0.08)}S${px(cx + side * 0.3)} ${px(cy - side * 0.3)} ${px(cx + side * 0.62)} ${px(cy - side * 0.02)}`;
  return (
    <g>
      <path className="d-bead d-bead-fault" strokeWidth={px(Math.max(5, side * 0.1))} d={d} />
      <path className="d-bead-body d-bead-body-fault" strokeWidth={px(Math.max(2.4, side * 0.1 - 3))} d={d} />
    </g>
  );
}

export function fanWords(spec: FanSpec): string {
  const name = `${spec.kind === 'axial' ? 'An axial' : 'A radial'} fan${spec.size === undefined ? '' : `, frame ${spec.size} mm`}`;
  const state = spec.stopped === true ? ', standing still' : ', turning';
  return `${name}${state}${spec.blocked === true ? ', with a cable over its inlet' : ''}${spec.label === undefined ? '' : `, marked ${spec.label}`}.`;
}
