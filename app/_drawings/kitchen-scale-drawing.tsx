import type { Drawing } from '@/lib/knowledge';
import { FlowLine } from './flow-line';
import { atX, atY, fit, px } from './frame';
import type { Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Stroke } from './lines';
import { Readout } from './readout';

type ScaleSpec = Extract<Drawing, { show: 'kitchen-scale' }>;

/** A kitchen scale; with `plate`, a flat plate on it that takes the push of an air jet from above. */
export function KitchenScaleDrawing({ spec, plate }: { readonly spec: ScaleSpec; readonly plate: Plate }) {
  const jet = spec.plate === true;
  const on = fit(plate, { w: 96, h: jet ? 78 : 44 }, { top: 5, bottom: 5 });
  const y = jet ? 40 : 6;
  const duct = 'M36 0H39.5V14H36ZM60 0H56.5V14H60Z';
  return (
    <>
      <Hatches id={plate.id} kinds={['cut']} />
      {jet && (
        <g>
          <Hatched on={on} d={duct} kind="cut" />
          <Stroke on={on} d={duct} line="edge" />
          {[43.5, 48, 52.5].map((x) => {
            const out = x < 48 ? -1 : x > 48 ? 1 : 0;
            const points = out === 0 ? [{ x: atX(on, x), y: atY(on, 4) }, { x: atX(on, x), y: atY(on, 30) }] : [{ x: atX(on, x), y: atY(on, 4) }, { x: atX(on, x), y: atY(on, 29) }, { x: atX(on, x + out * 22), y: atY(on, 30.5) }];
            return <FlowLine key={x} points={points} speed={plate.size === 'row' ? 1 : 3} radius={12} />;
          })}
          <Stroke on={on} d="M14 33H82V36H14ZM44 36H52V40H44Z" line="edge" fill="paper" />
        </g>
      )}
      <Stroke on={on} d={`M10 ${y}H86V${y + 5}H10Z`} line="outline" fill="wash" />
      <Stroke on={on} d={`M16 ${y + 5}H80L86 ${y + 34}H10Z`} line="outline" fill="paper" />
      <Stroke on={on} d={`M18 ${y + 34}H26V${y + 37}H18ZM70 ${y + 34}H78V${y + 37}H70Z`} line="edge" fill="paper" />
      <Readout cx={atX(on, 48)} cy={atY(on, y + 19)} reading={plate.size === 'row' ? undefined : spec.reading} least={px(34 * on.k)} small={plate.size === 'row'} most={plate.width - 20} />
    </>
  );
}

export const kitchenScaleWords = (spec: ScaleSpec): string =>
  `A kitchen scale${spec.plate === true ? ' with a flat plate on it that an air jet pushes down' : ''}${spec.reading === undefined ? '' : `, reading ${spec.reading}`}.`;
