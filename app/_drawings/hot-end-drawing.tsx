import type { Drawing } from '@/lib/knowledge';
import { BedLine } from './bead';
import { Dimension } from './dimension';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Hatched, Hatches } from './hatches';
import { Disc, marked, Stroke } from './lines';
import { isLength, MarkedPlaces, roomFor } from './places';
import type { Places } from './places';
import { RetractionDrawing, retractionWords } from './retraction-drawing';
import { Words } from './words';
import { wordWidth } from './word-width';

type HotEndSpec = Extract<Drawing, { show: 'hot-end' }>;
type Mark = NonNullable<HotEndSpec['mark']>;

const places: Places<Mark> = {
  'heat-sink': { x: 42, y: 12, words: 'heat sink', from: 0 },
  liner: { x: 29, y: 20, words: 'liner', from: 20, quiet: true },
  'heat-break': { x: 31, y: 34, words: 'heat break', from: 0 },
  leak: { x: 34, y: 40, words: 'leak', from: -20, quiet: true },
  heater: { x: 20, y: 48, words: 'heater', from: 180 },
  sensor: { x: 40, y: 49, words: 'sensor', from: 0 },
  sleeve: { x: 45, y: 45, words: 'sleeve', from: 0, quiet: true },
  nozzle: { x: 31, y: 60, words: 'nozzle', from: 15 },
};

/** The hot end cut along its axis: heat sink, heat break, heater block, nozzle. */
export function HotEndDrawing({ spec, plate }: { readonly spec: HotEndSpec; readonly plate: Plate }) {
  if (spec.drawnBack !== undefined) return <RetractionDrawing drawnBack={spec.drawnBack} oozes={spec.oozes === true} plate={plate} />;
  return <WholeHotEnd spec={spec} plate={plate} />;
}

function WholeHotEnd({ spec, plate }: { readonly spec: HotEndSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const height = spec.above !== undefined && isLength(spec.above) ? spec.above : undefined;
  const note = height === undefined && mark !== 'none' ? spec.above : undefined;
  const told = plate.size === 'step' ? Math.max(0, ...[spec.temperature, height].map((w) => (w === undefined ? 0 : wordWidth(w) + 18))) : 0;
  const beside = plate.size === 'figure' && spec.temperature !== undefined ? { left: Math.max(6, wordWidth(spec.temperature) - 8) } : {};
  const room = roomFor(plate, places, mark, told > 0 ? { right: told, left: 4 } : beside, note);
  const on = fit(plate, { w: 56, h: height === undefined ? 68 : 98 }, room);
  return (
    <>
      <Hatches id={plate.id} kinds={['cut']} />
      <Cold on={on} is={is} />
      {is('sleeve') && <Stroke on={on} d="M9 38.5H47V57.5H36V61H20V57.5H9Z" line="accent" fill="accw" />}
      <Hot on={on} is={is} />
      {is('leak') && <Stroke on={on} d="M16 40C14 36 19 34 21 36C23 32 33 32 34 36C38 34 42 37 39 40Z" line="accent" fill="accw" />}
      {height !== undefined && <Above on={on} words={height} />}
      {spec.temperature !== undefined && plate.size !== 'row' && <Words x={plate.size === 'step' ? on.left + 50 * on.k : atX(on, 4)} y={atY(on, 62) + 5} anchor={plate.size === 'step' ? 'start' : 'end'} strong halo>{spec.temperature}</Words>}
      {spec.temperature !== undefined && plate.size !== 'row' && <Stroke on={on} d={plate.size === 'step' ? 'M33 60L48 60.5' : 'M23 60L6 60.5'} line="hair" />}
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} note={note} />
    </>
  );
}

function Cold({ on, is }: { readonly on: Frame; readonly is: (m: Mark) => boolean }) {
  const fins = [2, 8, 14, 20].map((y) => `M12 ${y}H44V${y + 3.4}H12Z`).join('');
  const rim = 'M24 28H26.6V40H24ZM32 28H29.4V40H32Z';
  return (
    <g>
      <Stroke on={on} d={fins} {...marked(is('heat-sink'), { line: 'edge', fill: 'wash' })} />
      <Stroke on={on} d="M22 0H34V28H22Z" {...marked(is('heat-sink'), { line: 'outline', fill: 'paper' })} />
      <Stroke on={on} d={rim} {...marked(is('heat-break'), { line: 'edge', fill: 'paper' })} />
      <Hatched on={on} d={rim} kind="cut" />
      <Stroke on={on} d="M25.4 0V36M30.6 0V36" {...marked(is('liner'), { line: 'thin' })} />
      <Stroke on={on} d="M26.8 -1H29.2V64H26.8Z" line="no-line" fill="hair" />
      <Stroke on={on} d="M26.8 0V62M29.2 0V62" line="hair" />
    </g>
  );
}

function Hot({ on, is }: { readonly on: Frame; readonly is: (m: Mark) => boolean }) {
  const block = 'M11 40H26.6V56H11ZM29.4 40H45V56H29.4Z';
  const nozzle = 'M22 56H26.6V64.5L27.2 67H26.4L22 60ZM34 56H29.4V64.5L28.8 67H29.6L34 60Z';
  return (
    <g>
      <Stroke on={on} d={block} line="outline" fill="paper" />
      <Hatched on={on} d={block} kind="cut" />
      <Disc on={on} x={19} y={48} r={3.6} {...marked(is('heater'), { line: 'edge', fill: 'paper' })} />
      <Disc on={on} x={19} y={48} r={1.4} line="no-line" fill={is('heater') ? 'accent' : 'ink'} />
      <Disc on={on} x={39} y={49} r={2} {...marked(is('sensor'), { line: 'edge', fill: 'paper' })} />
      <Stroke on={on} d="M40 47.5C46 44 48 40 54 39" {...marked(is('sensor'), { line: 'thin' })} />
      <Stroke on={on} d={nozzle} {...marked(is('nozzle'), { line: 'edge', fill: 'wash' })} />
    </g>
  );
}

function Above({ on, words }: { readonly on: Frame; readonly words: string }) {
  const bed = atY(on, 94);
  return (
    <g>
      <BedLine from={atX(on, 2)} to={atX(on, 54)} y={bed} />
      {on.size === 'row' ? <Stroke on={on} d="M28 69V93" line="hair" /> : <Dimension upright from={atY(on, 67)} to={bed} at={atX(on, 28)} />}
      {on.size !== 'row' && <Words x={atX(on, 28) + 8} y={atY(on, 82) + 5} halo>{words}</Words>}
    </g>
  );
}

export function hotEndWords(spec: HotEndSpec): string {
  if (spec.drawnBack !== undefined) return retractionWords(spec.drawnBack, spec.oozes === true);
  const mark = spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`;
  const above = spec.above === undefined ? '' : isLength(spec.above) ? `; nozzle ${spec.above} above the bed` : `${mark === '' ? ';' : ','} ${spec.above}`;
  const heat = spec.temperature === undefined ? '' : `; nozzle ${spec.temperature}`;
  return `The hot end cut along its axis${mark}${isLength(spec.above ?? '') ? heat + above : above + heat}.`;
}
