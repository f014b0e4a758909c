import type { Drawing } from '@/lib/knowledge';
import { fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, marked, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';

type BeltSpec = Extract<Drawing, { show: 'belt' }>;
type Mark = NonNullable<BeltSpec['mark']>;

const places: Places<Mark> = {
  'pulley-screw': { x: 15, y: 18, words: 'pulley screw', from: -100 },
  worn: { x: 46, y: 31, words: 'worn stretch', from: 90, quiet: true },
  slack: { x: 50, y: 37, words: 'slack belt', from: 90, quiet: true },
  pluck: { x: 40, y: 35, words: 'pluck here', from: 90, quiet: true },
  idler: { x: 88, y: 22, words: 'idler', from: -60 },
};

/** A toothed belt over the motor's pulley and the idler, with the carriage clamped to its upper run. */
export function BeltDrawing({ spec, plate }: { readonly spec: BeltSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const on = fit(plate, { w: 104, h: 48 }, roomFor(plate, places, mark));
  return (
    <>
      <Block on={on} x={2} y={10} w={26} h={26} line="thin" fill="wash" />
      <Disc on={on} x={15} y={23} r={8} {...marked(is('pulley-screw'), { line: 'outline', fill: 'paper' })} />
      <Stroke on={on} d="M15 23V16.5" {...(is('pulley-screw') ? { line: 'accent-edge' } : { line: 'edge' })} />
      <Disc on={on} x={15} y={23} r={2.4} line="thin" fill="wash" />
      <Disc on={on} x={88} y={23} r={8} {...marked(is('idler'), { line: 'outline', fill: 'paper' })} />
      <Disc on={on} x={88} y={23} r={2.4} line="thin" fill="wash" />
      <Stroke on={on} d="M15 14.2A8.8 8.8 0 0 0 15 31.8M88 14.2A8.8 8.8 0 0 1 88 31.8M15 14.2H88" line="edge" />
      <Teeth on={on} worn={false} y={15.6} />
      <LowerRun on={on} mark={mark} />
      <Stroke on={on} d="M50 4H70V18H50Z" line="outline" fill="paper" />
      <Stroke on={on} d="M53 14.2H67" line="hidden" />
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />
    </>
  );
}

function LowerRun({ on, mark }: { readonly on: Frame; readonly mark: Mark }) {
  if (mark === 'slack') return <><Stroke on={on} d="M15 31.8H88" line="ghost" /><Stroke on={on} d="M15 31.8Q51 44 88 31.8" line="accent" /></>;
  if (mark === 'pluck') {
    return (
      <g>
        <Stroke on={on} d="M15 31.8H88" line="edge" />
        <Stroke on={on} d="M15 31.8Q51 38.6 88 31.8M15 31.8Q51 25 88 31.8" line="accent-thin" />
        <Stroke on={on} d="M64 42Q67 38 64 34M68 44Q73 38 68 32" line="accent" />
      </g>
    );
  }
  return (
    <g>
      <Stroke on={on} d="M15 31.8H88" line="edge" />
      <Teeth on={on} worn={mark === 'worn'} y={30.4} />
      {mark === 'worn' && <Stroke on={on} d="M34 31.8H58" line="accent-edge" />}
    </g>
  );
}

/** The belt's teeth as short strokes; they are missing where it is worn. */
function Teeth({ on, worn, y }: { readonly on: Frame; readonly worn: boolean; readonly y: number }) {
  const pitch = on.size === 'row' ? 4 : 2.6;
  const count = Math.floor(72 / pitch);
  const xs = Array.from({ length: count }, (_, i) => 16 + i * pitch).filter((x) => !worn || x < 34 || x > 58);
  return <Stroke on={on} d={xs.map((x) => `M${x} ${y - 0.9}V${y + 0.9}`).join('')} line="hair" />;
}

const beltMarks: Readonly<Record<Exclude<Mark, 'none'>, string>> = { slack: 'it hangs slack', 'pulley-screw': 'the screw of the pulley is marked', idler: 'the idler is marked', worn: 'a stretch with worn teeth is marked', pluck: 'it is plucked like a string' };
export const beltWords = (spec: BeltSpec): string => `A toothed belt over pulley and idler${spec.mark === undefined || spec.mark === 'none' ? '' : `; ${beltMarks[spec.mark]}`}.`;
