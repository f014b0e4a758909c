import type { Drawing } from '@/lib/knowledge';
import { RadialFan } from './fan-wheel';
import { FlowLine } from './flow-line';
import { atX, atY, fit, px } from './frame';
import type { Frame, Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Stroke } from './lines';
import { Readout } from './readout';

type AirMeterSpec = Extract<Drawing, { show: 'air-meter' }>;

/** An air-speed meter with its vane; with `nozzle`, held at the mouth of a taper that a fan blows into. */
export function AirMeterDrawing({ spec, plate }: { readonly spec: AirMeterSpec; readonly plate: Plate }) {
  const reading = plate.size === 'row' ? undefined : spec.reading;
  const on = fit(plate, { w: spec.nozzle === true ? 112 : 60, h: 78 }, { top: 5, bottom: 5 });
  const x = spec.nozzle === true ? 88 : 30;
  return (
    <>
      <Hatches id={plate.id} kinds={['cut']} />
      {spec.nozzle === true && <TaperWithFan on={on} />}
      <Vane on={on} x={x} y={25} r={20} />
      <Stroke on={on} d={`M${x - 4} 45.5V52H${x + 4}V45.5`} line="edge" fill="paper" />
      <Stroke on={on} d={`M${x - 13} 52H${x + 13}V77H${x - 13}Z`} line="outline" fill="paper" />
      <Readout cx={atX(on, x)} cy={atY(on, 63)} reading={reading} least={px(20 * on.k)} small={plate.size === 'row'} most={plate.width - 8} />
    </>
  );
}

function Vane({ on, x, y, r }: { readonly on: Frame; readonly x: number; readonly y: number; readonly r: number }) {
  const cx = atX(on, x);
  const cy = atY(on, y);
  const blades = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
    const a = (i * Math.PI) / 4;
    const at = (share: number, angle: number): string => `${px(cx + share * r * on.k * Math.cos(angle))} ${px(cy + share * r * on.k * Math.sin(angle))}`;
    return `M${at(0.2, a)}Q${at(0.6, a - 0.05)} ${at(0.86, a + 0.32)}`;
  });
  return (
    <g>
      <circle className="d-line d-outline d-fill-paper" cx={cx} cy={cy} r={px(r * on.k)} />
      <circle className="d-line d-thin" cx={cx} cy={cy} r={px(r * on.k * 0.88)} />
      <path className="d-line d-thin" d={blades.join('')} />
      <circle className="d-line d-thin d-fill-wash" cx={cx} cy={cy} r={px(r * on.k * 0.2)} />
    </g>
  );
}

function TaperWithFan({ on }: { readonly on: Frame }) {
  const walls = 'M38 9H42L66 17V20L41 12.5H38ZM38 41H42L66 33V30L41 37.5H38Z';
  const at = (px1: number, py: number) => ({ x: atX(on, px1), y: atY(on, py) });
  return (
    <g>
      <g transform={`rotate(-90 ${atX(on, 20)} ${atY(on, 25)})`}>
        <RadialFan cx={atX(on, 20)} cy={atY(on, 25)} side={36 * on.k} centreLines={false} />
      </g>
      <Hatched on={on} d={walls} kind="cut" />
      <Stroke on={on} d={walls} line="edge" />
      {[21, 25, 29].map((y) => <FlowLine key={y} points={[at(42, 25 + (y - 25) * 2.2), at(56, y), at(67.5, y)]} speed={4} />)}
    </g>
  );
}

export const airMeterWords = (spec: AirMeterSpec): string =>
  `An air-speed meter${spec.nozzle === true ? ' held at the mouth of a taper that a fan blows into' : ''}${spec.reading === undefined ? '' : `, reading ${spec.reading}`}.`;
