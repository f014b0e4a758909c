import { Labels, labelRoom } from './labels';
import { PencilArrow } from './pencil';
import { atX, atY } from './frame';
import type { Frame, Plate, Room } from './frame';
import { Words } from './words';

/** A place of a thing that can be named or marked; x, y in drawn units. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly words: string;
  /** Where the red pencil's arrow comes from, degrees (0 = right, 90 = below). */
  readonly from?: number;
  /** Named only when it is the marked one. */
  readonly quiet?: boolean;
}

export type Places<Mark extends string> = Readonly<Record<Exclude<Mark, 'none'>, Place>>;

/** Which names a figure carries: the ones that are always told, and the marked one. */
function namedPlaces(places: Readonly<Record<string, Place>>, mark: string | undefined): [string, Place][] {
  return Object.entries(places).filter(([id, place]) => id === mark || place.quiet !== true);
}

/** Room for the column of names; only a figure has names. A note about the marked place stands below a step. */
export function roomFor(plate: Plate, places: Readonly<Record<string, Place>>, mark: string | undefined, room: Room = {}, note?: string): Room {
  if (plate.size !== 'figure') return { left: 4, right: 4, top: 4, ...room, bottom: plate.size === 'step' && note !== undefined ? 24 : (room.bottom ?? 4) };
  const names = namedPlaces(places, mark).map(([, p]) => p.words);
  return { left: 6, top: 8, bottom: 8, ...room, right: labelRoom(note === undefined ? names : [...names, note]) + 14 };
}

/** Names at the side in a figure; in smaller drawings only the red pencil's arrow at the marked place. */
export function MarkedPlaces({ on, places, mark, note }: { readonly on: Frame; readonly places: Readonly<Record<string, Place>>; readonly mark: string | undefined; readonly note?: string | undefined }) {
  if (on.size === 'figure') {
    return <Labels plate={on} labels={namedPlaces(places, mark).map(([id, p]) => ({ x: atX(on, p.x), y: atY(on, p.y), words: p.words, note: id === mark ? note : undefined, accent: id === mark }))} />;
  }
  const place = mark === undefined ? undefined : places[mark];
  if (place === undefined) return null;
  return (
    <g>
      <PencilArrow on={on} x={place.x} y={place.y} from={place.from ?? 0} length={on.size === 'row' ? 14 : 20} />
      {note !== undefined && on.size === 'step' && <Words x={on.width / 2} y={on.height - 7} anchor="middle" tone="accent" strong>{note}</Words>}
    </g>
  );
}

/** What is told of a drawing is a length to be dimensioned ("120 mm"), or a note about the marked place ("clicks here"). */
export const isLength = (words: string): boolean => /^\d[\d.,]* mm(?![/\w])/.test(words);
