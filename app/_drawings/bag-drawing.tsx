import type { Drawing } from '@/lib/knowledge';
import { FlowLine } from './flow-line';
import { atX, atY, fit, px } from './frame';
import type { Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Labels, labelRoom } from './labels';
import { Block, Stroke } from './lines';
import { Nozzle } from './nozzle';
import { Words } from './words';

type BagSpec = Extract<Drawing, { show: 'bag' }>;

/** A bag taped round both outlets and the nozzle, as full as the parameter says. */
export function BagDrawing({ spec, plate }: { readonly spec: BagSpec; readonly plate: Plate }) {
  const figure = plate.size === 'figure';
  const on = fit(plate, { w: 84, h: 88 }, { top: 3, bottom: 3, left: 4, right: figure ? labelRoom(['nozzle cold']) + 20 : 4 });
  const full = spec.filled;
  const wide = 6 + full * 33;
  const bag = `M24 18C${42 - wide * 0.95} 22 ${42 - wide} 34 ${42 - wide} 50C${42 - wide} 68 ${42 - wide * 0.5} 86 42 86C${42 + wide * 0.5} 86 ${42 + wide} 68 ${42 + wide} 50C${42 + wide} 34 ${42 + wide * 0.95} 22 60 18`;
  const walls = 'M26 4H29.5V20L36.5 28L34 30.5L26 22ZM58 4H54.5V20L47.5 28L50 30.5L58 22Z';
  return (
    <>
      <Hatches id={plate.id} kinds={['cut']} />
      <Stroke on={on} d={bag} line="edge" fill="paper" />
      {full > 0.05 && <Stroke on={on} d="M30 24Q36 54 41 85M54 24Q48 54 43 85" line="ghost" />}
      {full > 0.3 && <Stroke on={on} d={`M${42 - wide * 0.74} 34Q${42 - wide * 0.92} 54 ${42 - wide * 0.58} 71M${42 + wide * 0.74} 34Q${42 + wide * 0.92} 54 ${42 + wide * 0.58} 71`} line="hair" />}
      <Stroke on={on} d={walls} line="no-line" fill="paper" />
      <Hatched on={on} d={walls} kind="cut" />
      <Stroke on={on} d={walls} line="edge" />
      <Nozzle on={on} x={42} top={2} tip={27} wide={9} />
      <Block on={on} x={22.5} y={15} w={3.5} h={6} line="no-line" fill="ink" />
      <Block on={on} x={58} y={15} w={3.5} h={6} line="no-line" fill="ink" />
      {full > 0.02 && [-1, 1].map((way) => <FlowLine key={way} points={[{ x: atX(on, 42 + way * 5), y: atY(on, 32) }, { x: atX(on, 42 + way * 4), y: atY(on, 37) }, { x: atX(on, 42 + way * (5 + full * 3)), y: atY(on, 46) }]} speed={3} radius={8} />)}
      {spec.volume !== undefined && plate.size !== 'row' && <Words x={atX(on, 42)} y={atY(on, 62) + 5} anchor="middle" strong halo>{spec.volume}</Words>}
      {figure && <Labels plate={plate} labels={[{ x: atX(on, 61.5), y: atY(on, 18), words: 'tape', end: 'edge' }, { x: atX(on, 44), y: px(atY(on, 23)), words: 'nozzle cold' }]} />}
    </>
  );
}

export const bagWords = (spec: BagSpec): string => {
  const state = spec.filled < 0.05 ? 'pressed flat' : spec.filled > 0.95 ? 'taut' : `filled to ${Math.round(spec.filled * 100)} %`;
  return `A bag taped round both outlets and the nozzle, ${state}${spec.volume === undefined ? '' : `; it holds ${spec.volume}`}.`;
};
