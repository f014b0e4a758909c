import type { Drawing } from '@/lib/knowledge';
import { FlowLine } from './flow-line';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';

type RoomSpec = Extract<Drawing, { show: 'room' }>;
type Mark = NonNullable<RoomSpec['mark']>;

const places: Places<Mark> = {
  draught: { x: 33, y: 14, words: 'draught', from: 180, quiet: true },
  cold: { x: 36, y: 15, words: 'cold room', from: 180, quiet: true },
  enclosure: { x: 96, y: 26, words: 'enclosure', from: 0, quiet: true },
};

/** Where the machine stands: a window, a table, and what the room does to the print. */
export function RoomDrawing({ spec, plate }: { readonly spec: RoomSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const on = fit(plate, { w: 106, h: 76 }, roomFor(plate, places, mark));
  return (
    <>
      <Stroke on={on} d="M2 74H104" line="thin" />
      <Window on={on} open={mark === 'draught'} />
      <Stroke on={on} d="M40 60H102V63H40ZM44 63V74M98 63V74" line="edge" fill="paper" />
      {mark === 'enclosure' && <Block on={on} x={44} y={14} w={54} h={46} line="accent" fill="accw" />}
      <Stroke on={on} d="M52 60V22H90V60H86V26H56V60Z" line="outline" fill="paper" />
      <Stroke on={on} d="M56 34H86V37H56ZM66 31H76V42H72.5L71.6 46H70.4L69.5 42H66Z" line="edge" fill="paper" />
      <Stroke on={on} d="M58 56H84V59H58ZM64 50H78V56H64Z" line="edge" fill="wash" />
      {mark === 'draught' && [30, 38, 46].map((y, i) => <FlowLine key={y} points={[{ x: atX(on, 18), y: atY(on, y) }, { x: atX(on, 30), y: atY(on, y + 3) }, { x: atX(on, 48 + i * 2), y: atY(on, y + 6) }]} speed={3} lee radius={14} />)}
      {mark === 'cold' && <Flakes on={on} />}
      {plate.size === 'figure' && <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />}
    </>
  );
}

function Window({ on, open }: { readonly on: Frame; readonly open: boolean }) {
  return (
    <g>
      <Block on={on} x={4} y={8} w={22} h={40} line="outline" fill="paper" />
      {open ? <Stroke on={on} d="M26 8L36 3V43L26 48Z" line="edge" fill="wash" /> : <Stroke on={on} d="M15 8V48M4 28H26" line="thin" />}
    </g>
  );
}

/** A thermometer that stands low, and three frost stars. */
const Flakes = ({ on }: { readonly on: Frame }) => (
  <g>
    <Stroke on={on} d="M34 12H38V40A4 4 0 1 1 34 40Z" line="accent" fill="paper" />
    <Stroke on={on} d="M36 34V44" line="accent-edge" />
    {[[11, 18], [20, 36], [9, 40]].map(([x = 0, y = 0]) => <Stroke key={y} on={on} d={`M${x - 4} ${y}H${x + 4}M${x - 2} ${y - 3.5}L${x + 2} ${y + 3.5}M${x + 2} ${y - 3.5}L${x - 2} ${y + 3.5}`} line="accent-thin" />)}
  </g>
);

export const roomWords = (spec: RoomSpec): string =>
  `The room with the machine on its table${spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`}.`;
