import type { Drawing } from '@/lib/knowledge';
import { Dimension } from './dimension';
import { atX, atY, fit, px } from './frame';
import type { Plate } from './frame';
import { Disc, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';

type SpoolSpec = Extract<Drawing, { show: 'spool' }>;
type Mark = NonNullable<SpoolSpec['mark']>;

const places: Places<Mark> = {
  tangle: { x: 52, y: 14, words: 'strand caught under another', from: -20, quiet: true },
  damp: { x: 76, y: 26, words: 'damp', from: -30, quiet: true },
  brittle: { x: 70, y: 44, words: 'snaps when bent', from: 20, quiet: true },
  drag: { x: 34, y: 70, words: 'spool turns hard', from: 140, quiet: true },
  diameter: { x: 74, y: 54, words: 'diameter', from: 20, quiet: true },
};

/** A spool on its stand, its filament leading off to the right. */
export function SpoolDrawing({ spec, plate }: { readonly spec: SpoolSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const on = fit(plate, { w: 96, h: 78 }, roomFor(plate, places, mark));
  const cx = atX(on, 36);
  const cy = atY(on, 36);
  const windings = plate.size === 'row' ? [20, 25] : [17, 20, 23, 26];
  return (
    <>
      <Stroke on={on} d="M36 36L18 76M36 36L54 76M12 76H60" line="edge" />
      <Disc on={on} x={36} y={36} r={33} line="outline" fill="paper" />
      <Disc on={on} x={36} y={36} r={29} line="thin" fill="wash" />
      {windings.map((r) => <Disc key={r} on={on} x={36} y={36} r={r} line="mid" />)}
      <Disc on={on} x={36} y={36} r={13} line="edge" fill="paper" />
      <Disc on={on} x={36} y={36} r={mark === 'drag' ? 5 : 4} line={mark === 'drag' ? 'accent' : 'outline'} fill={mark === 'drag' ? 'accw' : 'paper'} />
      {mark === 'drag' && <path className="d-line d-accent" d={`M${px(cx - 8 * on.k)} ${px(cy - 8 * on.k)}l${px(16 * on.k)} ${px(16 * on.k)}M${px(cx + 8 * on.k)} ${px(cy - 8 * on.k)}l${px(-16 * on.k)} ${px(16 * on.k)}`} />}
      {mark === 'tangle' ? <Stroke on={on} d="M36 7C52 4 66 18 58 24C52 29 44 18 50 13C58 6 72 20 94 14" line="accent" /> : <Stroke on={on} d="M36 7C58 6 70 26 94 20" line={mark === 'diameter' ? 'accent' : 'edge'} />}
      {mark === 'brittle' && <Stroke on={on} d="M66 46L78 42M81 41L88 50L93 58M80 44L83 40M79 38L81 35" line="accent" />}
      {mark === 'damp' && [[74, 34], [84, 42], [73, 50]].map(([x = 0, y = 0]) => <Stroke key={y} on={on} d={`M${x} ${y - 6}Q${x + 5} ${y} ${x} ${y + 3}Q${x - 5} ${y} ${x} ${y - 6}Z`} line="accent" fill="accw" />)}
      {mark === 'diameter' && <><Disc on={on} x={82} y={54} r={7} line="accent" fill="accw" /><Dimension from={atX(on, 75)} to={atX(on, 89)} at={atY(on, 70)} edges={[atY(on, 55), atY(on, 55)]} /></>}
      {plate.size === 'figure' && <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />}
    </>
  );
}

export const spoolWords = (spec: SpoolSpec): string =>
  `A spool of filament on its stand${spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`}.`;
