import type { Drawing } from '@/lib/knowledge';
import { Dimension } from './dimension';
import { angleTo, ArrowHead } from './arrows';
import { atX, atY, fit, px } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, look, marked, Stroke } from './lines';
import { isLength, MarkedPlaces, roomFor } from './places';
import type { Places } from './places';
import { wordWidth } from './word-width';
import { Words } from './words';

type FeederSpec = Extract<Drawing, { show: 'feeder' }>;
type Mark = NonNullable<FeederSpec['mark']>;

const places: Places<Mark> = {
  filament: { x: 35, y: 14, words: 'filament', from: 0 },
  gear: { x: 18, y: 38, words: 'drive gear', from: 180 },
  idler: { x: 47, y: 34, words: 'pressure wheel', from: 0 },
  screw: { x: 60, y: 22, words: 'pressure screw', from: -30, quiet: true },
  dust: { x: 40, y: 54, words: 'plastic dust', from: 30, quiet: true },
  gap: { x: 36, y: 60, words: 'free gap below the gear', from: 10, quiet: true },
};

/** The feeder from the front: drive gear, pressure wheel on its lever, the filament between them. */
export function FeederDrawing({ spec, plate }: { readonly spec: FeederSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const penned = spec.marked !== undefined && (mark === 'none' || mark === 'filament' || isLength(spec.marked));
  const length = spec.marked !== undefined && penned && isLength(spec.marked) ? spec.marked : undefined;
  const note = length === undefined && mark !== 'none' ? spec.marked : undefined;
  const told = length !== undefined && plate.size !== 'row' ? { left: wordWidth(length) + 14 } : {};
  const on = fit(plate, { w: 68, h: 74 }, roomFor(plate, places, mark, told, note));
  return (
    <>
      <Block on={on} x={2} y={16} w={42} h={44} line="thin" fill="wash" />
      <Stroke on={on} d="M50 20L62 16V50L54 58L44 54Z" line="edge" fill="paper" />
      <Spring on={on} accent={is('screw')} />
      <Stroke on={on} d="M33.2 0V74M36.8 0V74" {...marked(is('filament'), { line: 'edge' })} />
      {is('filament') && <Stroke on={on} d="M33.2 28L36.8 30M33.2 32L36.8 34M33.2 36L36.8 38" line="accent" />}
      <Gear on={on} x={22} y={38} r={11} accent={is('gear')} />
      <Disc on={on} x={47} y={38} r={10} {...marked(is('idler'), { line: 'outline', fill: 'paper' })} />
      <Disc on={on} x={47} y={38} r={3.4} line="thin" fill="wash" />
      <Guide on={on} accent={is('gap')} />
      {is('dust') && [[29, 50], [31, 53], [38, 51], [40, 54], [28, 56], [42, 57]].map(([x = 0, y = 0]) => <Disc key={`${x}`} on={on} x={x} y={y} r={1.1} line="no-line" fill="accent" />)}
      {penned && <PenMark on={on} words={length} />}
      {spec.stroke !== undefined && <Strokes on={on} stroke={spec.stroke} />}
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} note={note} />
    </>
  );
}

function Gear({ on, x, y, r, accent }: { readonly on: Frame; readonly x: number; readonly y: number; readonly r: number; readonly accent: boolean }) {
  const teeth = on.size === 'row' ? 16 : 24;
  const at = (radius: number, turn: number): string => `${px(atX(on, x) + radius * on.k * Math.cos(turn))} ${px(atY(on, y) + radius * on.k * Math.sin(turn))}`;
  const step = (2 * Math.PI) / teeth;
  const rim = Array.from({ length: teeth }, (_, i) => `${i === 0 ? 'M' : 'L'}${at(r - 1.6, i * step)}L${at(r, (i + 0.3) * step)}L${at(r, (i + 0.6) * step)}`).join('');
  return (
    <g>
      <path className={look(marked(accent, { line: 'edge', fill: 'paper' }))} d={`${rim}Z`} />
      <Disc on={on} x={x} y={y} r={3} line="edge" fill="wash" />
      <Stroke on={on} d={`M${x} ${y - 3}V${y - 6.5}`} line="thin" />
    </g>
  );
}

function Spring({ on, accent }: { readonly on: Frame; readonly accent: boolean }) {
  return (
    <g>
      <Stroke on={on} d="M44 22H62" line="hair" />
      <Stroke on={on} d="M46 19L48 25L50 19L52 25L54 19L56 25L58 19" {...marked(accent, { line: 'edge' })} />
      <Stroke on={on} d="M59 17H64V27H59Z" {...marked(accent, { line: 'edge', fill: 'paper' })} />
    </g>
  );
}

function Guide({ on, accent }: { readonly on: Frame; readonly accent: boolean }) {
  const top = accent ? 63 : 52;
  return (
    <g>
      <Stroke on={on} d={`M28 ${top}H32.4V74H28ZM42 ${top}H37.6V74H42Z`} line="edge" fill="wash" />
      {accent && <Stroke on={on} d="M35 50C40 53 40 57 35 60" line="accent" />}
    </g>
  );
}

/** Which way the filament goes in a retraction: arrows along it, and the words where there is room. */
function Strokes({ on, stroke }: { readonly on: Frame; readonly stroke: NonNullable<FeederSpec['stroke']> }) {
  const arrow = (x: number, from: number, to: number) => (
    <g>
      <Stroke on={on} d={`M${x} ${from}V${to}`} line="accent" />
      <ArrowHead tip={{ x: atX(on, x), y: atY(on, to + (to < from ? -3 : 3)) }} angle={angleTo({ x: 0, y: from }, { x: 0, y: to })} length={on.size === 'row' ? 6 : 10} width={on.size === 'row' ? 5 : 7} tone="accent" />
    </g>
  );
  return (
    <g>
      {stroke !== 'forth' && arrow(29, 21, 4)}
      {stroke !== 'back' && arrow(41, 1, 18)}
      {on.size === 'figure' && stroke !== 'forth' && <Words x={atX(on, 29) - 8} y={atY(on, 5) + 5} anchor="end" tone="accent">{strokeWords.back}</Words>}
      {on.size === 'figure' && stroke !== 'back' && <Words x={atX(on, 41) + 8} y={atY(on, 3) + 5} tone="accent">{strokeWords.forth}</Words>}
    </g>
  );
}

const strokeWords = { back: 'pull', forth: 'push back' } as const;

/** A pen mark on the filament, with its distance above the feeder where that is told. */
function PenMark({ on, words }: { readonly on: Frame; readonly words: string | undefined }) {
  return (
    <g>
      <Stroke on={on} d="M31.5 2.5H38.5" line="accent-edge" />
      {on.size !== 'row' && words !== undefined && <Dimension upright from={atY(on, 2.5)} to={atY(on, 27)} at={atX(on, -1)} edges={[atX(on, 30), atX(on, 20)]} words={words} />}
    </g>
  );
}

export function feederWords(spec: FeederSpec): string {
  const place = spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`;
  const note = spec.marked === undefined ? '' : isLength(spec.marked) ? `; a pen mark on the filament, ${spec.marked} above the gear` : place === '' ? `; a pen mark on the filament, ${spec.marked}` : `, ${spec.marked}`;
  const ways = { back: 'the filament is pulled back', forth: 'the filament is pushed forward again', both: 'the filament is pulled back and pushed forward again' };
  return `The feeder: drive gear and pressure wheel with the filament between them${place}${note}${spec.stroke === undefined ? '' : `; ${ways[spec.stroke]}`}.`;
}
