import type { Drawing } from '@/lib/knowledge';
import { fit } from './frame';
import type { Frame, Plate } from './frame';
import { Disc, marked, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';

type BedSpec = Extract<Drawing, { show: 'bed' }>;
type Mark = NonNullable<BedSpec['mark']>;

const places: Places<Mark> = {
  probe: { x: 66, y: 18, words: 'height probe', from: 0, quiet: true },
  warm: { x: 76, y: 30, words: 'warm plate', from: -30, quiet: true },
  'gap-paper': { x: 44, y: 39, words: 'paper in the gap', from: 160, quiet: true },
  plate: { x: 84, y: 36, words: 'plate', from: -20 },
  dirt: { x: 76, y: 38, words: 'fingerprints', from: -30, quiet: true },
  glue: { x: 68, y: 42, words: 'glue', from: 20, quiet: true },
  clips: { x: 72, y: 55, words: 'clip', from: 60, quiet: true },
  'low-corner': { x: 75, y: 58, words: 'low corner', from: 30, quiet: true },
  screws: { x: 77, y: 64, words: 'levelling screw', from: 0 },
};

/** The bed in oblique projection with the nozzle over it. */
export function BedDrawing({ spec, plate }: { readonly spec: BedSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const on = fit(plate, { w: 104, h: 74 }, roomFor(plate, places, mark));
  const low = is('low-corner') ? 5 : 0;
  return (
    <>
      {[[12, 56], [78, 56], [94, 36]].map(([x = 0, y = 0]) => <Spring key={x} on={on} x={x} y={y} accent={is('screws')} />)}
      <Stroke on={on} d={`M4 54V58L80 ${58 + low}V${54 + low}L100 30V26L80 ${54 + low}L4 54Z`} line="edge" fill="wash" />
      <Stroke on={on} d={`M4 54L80 ${54 + low}L100 26H24Z`} {...marked(is('plate') || is('warm'), { line: 'outline', fill: 'paper' })} />
      {low > 0 && <><Stroke on={on} d="M4 54H80L100 26" line="ghost" /><Stroke on={on} d={`M42 54L80 ${54 + low}L90 40`} line="accent" /></>}
      <OnPlate on={on} mark={mark} />
      {is('gap-paper') && <Stroke on={on} d="M34 36L66 36L60 43H28Z" line="accent" fill="accw" />}
      <Stroke on={on} d="M40 6H60V20H40Z" line="outline" fill="paper" />
      <Stroke on={on} d="M45 20H55V26L51.4 38H48.6L45 26Z" line="edge" fill="paper" />
      {(is('probe') || on.size === 'figure') && <Stroke on={on} d="M60 10H68V26H66V32H64V26H62V14H60Z" {...marked(is('probe'), { line: 'edge', fill: 'paper' })} />}
      {is('warm') && [74, 81, 88].map((x) => <Stroke key={x} on={on} d={`M${x} 34Q${x - 4} 28 ${x} 23T${x} 12`} line="accent" />)}
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />
    </>
  );
}

function Spring({ on, x, y, accent }: { readonly on: Frame; readonly x: number; readonly y: number; readonly accent: boolean }) {
  return (
    <g>
      <Stroke on={on} d={`M${x - 2.5} ${y + 2}L${x + 2.5} ${y + 3.6}L${x - 2.5} ${y + 5.2}L${x + 2.5} ${y + 6.8}L${x - 2.5} ${y + 8.4}`} {...marked(accent, { line: 'thin' })} />
      <Stroke on={on} d={`M${x - 4.5} ${y + 9}H${x + 4.5}V${y + 13}H${x - 4.5}Z`} {...marked(accent, { line: 'edge', fill: 'paper' })} />
    </g>
  );
}

function OnPlate({ on, mark }: { readonly on: Frame; readonly mark: Mark }) {
  if (mark === 'dirt') return <>{[0, 1].map((i) => <Stroke key={i} on={on} d={`M${66 + i * 11} 40Q${70 + i * 11} 35 ${75 + i * 11} 37M${67 + i * 11} 42.5Q${71 + i * 11} 37.5 ${76 + i * 11} 39.5M${68 + i * 11} 45Q${72 + i * 11} 41 ${76 + i * 11} 42`} line="accent-thin" />)}<Disc on={on} x={26} y={46} r={1.2} line="no-line" fill="accent" /><Disc on={on} x={36} y={49} r={0.9} line="no-line" fill="accent" /></>;
  if (mark === 'glue') return <Stroke on={on} d="M24 50L34 33L42 50L52 42L60 50L72 33L78 50" line="accent-edge" />;
  if (mark === 'clips') return <>{[20, 66].map((x) => <Stroke key={x} on={on} d={`M${x} 50H${x + 9}L${x + 7} 60H${x - 2}Z`} line="accent" fill="accw" />)}</>;
  return <Stroke on={on} d="M30 44L36 36M70 49L78 38" line="grid" />;
}

export const bedWords = (spec: BedSpec): string =>
  `The bed with the nozzle over it${spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`}.`;
