import type { Drawing } from '@/lib/knowledge';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, marked, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';
import { Readout } from './readout';

type BoardSpec = Extract<Drawing, { show: 'board' }>;
type Mark = NonNullable<BoardSpec['mark']>;

const places: Places<Mark> = {
  driver: { x: 40, y: 14, words: 'motor driver', from: -90 },
  fan: { x: 70, y: 24, words: 'board fan', from: -40, quiet: true },
  connector: { x: 88, y: 40, words: 'connector', from: 0, quiet: true },
  'fan-output': { x: 66, y: 53, words: 'fan output', from: 60 },
  'sensor-plug': { x: 46, y: 53, words: 'sensor plug', from: 110, quiet: true },
  supply: { x: 18, y: 57, words: 'supply', from: 120, quiet: true },
};

/** The control board from above. */
export function BoardDrawing({ spec, plate }: { readonly spec: BoardSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const told = spec.reading !== undefined && plate.size !== 'row';
  const on = fit(plate, { w: 100, h: 62 }, roomFor(plate, places, mark, told ? { bottom: 30 } : {}));
  return (
    <>
      <Block on={on} x={4} y={4} w={90} h={54} line="outline" fill="paper" />
      {[[8, 8], [90, 8], [8, 54], [90, 54]].map(([x = 0, y = 0]) => <Disc key={`${x}-${y}`} on={on} x={x} y={y} r={1.6} line="thin" />)}
      <Drivers on={on} accent={is('driver')} />
      <Block on={on} x={22} y={28} w={20} h={14} line="edge" fill="wash" />
      <Stroke on={on} d="M24 28V26M28 28V26M32 28V26M36 28V26M40 28V26M24 42V44M28 42V44M32 42V44M36 42V44M40 42V44" line="thin" />
      {(is('fan') || on.size === 'figure') && <SmallFan on={on} accent={is('fan')} />}
      <Sockets on={on} is={is} />
      {told && <Readout cx={Math.min(atX(on, 60), plate.width - 60)} cy={plate.height - 15} reading={spec.reading} least={40} most={plate.width - 8} />}
      {told && mark !== 'none' && <path className="d-line d-accent-hair" d={`M${atX(on, places[mark].x)} ${atY(on, places[mark].y)}L${Math.min(atX(on, 60), plate.width - 60)} ${plate.height - 26}`} />}
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />
    </>
  );
}

function Drivers({ on, accent }: { readonly on: Frame; readonly accent: boolean }) {
  return (
    <>
      {[16, 34, 52, 70].map((x, i) => (
        <g key={x}>
          <Block on={on} x={x} y={9} w={13} h={13} {...marked(accent && i === 1, { line: 'edge', fill: 'paper' })} />
          <Stroke on={on} d={[3, 6.5, 10].map((d) => `M${x + d} 11V20`).join('')} line={accent && i === 1 ? 'accent' : 'thin'} />
        </g>
      ))}
    </>
  );
}

const SmallFan = ({ on, accent }: { readonly on: Frame; readonly accent: boolean }) => (
  <g>
    <Block on={on} x={56} y={25} w={18} h={18} {...marked(accent, { line: 'edge', fill: 'paper' })} />
    <Disc on={on} x={65} y={34} r={7.6} line={accent ? 'accent-thin' : 'thin'} />
    <Stroke on={on} d="M65 34Q69 30 68 27.4M65 34Q70 36 72 33.4M65 34Q65 39 68 40.6M65 34Q61 38 62 40.8M65 34Q60 33 58 35.4M65 34Q63 29 61 27.8" line={accent ? 'accent-thin' : 'thin'} />
  </g>
);

function Sockets({ on, is }: { readonly on: Frame; readonly is: (m: Mark) => boolean }) {
  return (
    <g>
      <Block on={on} x={10} y={46} w={16} h={12} {...marked(is('supply'), { line: 'edge', fill: 'wash' })} />
      <Disc on={on} x={14} y={52} r={2.4} line={is('supply') ? 'accent' : 'thin'} fill="paper" />
      <Disc on={on} x={22} y={52} r={2.4} line={is('supply') ? 'accent' : 'thin'} fill="paper" />
      <Block on={on} x={40} y={50} w={12} h={8} {...marked(is('sensor-plug'), { line: 'edge', fill: 'paper' })} />
      <Stroke on={on} d="M44 53V55M48 53V55" line={is('sensor-plug') ? 'accent' : 'thin'} />
      <Block on={on} x={60} y={50} w={12} h={8} {...marked(is('fan-output'), { line: 'edge', fill: 'paper' })} />
      <Stroke on={on} d="M64 53V55M68 53V55" line={is('fan-output') ? 'accent' : 'thin'} />
      <Block on={on} x={84} y={30} w={10} h={20} {...marked(is('connector'), { line: 'edge', fill: 'paper' })} />
      <Stroke on={on} d="M87 34H91M87 38H91M87 42H91M87 46H91" line={is('connector') ? 'accent' : 'thin'} />
    </g>
  );
}

export const boardWords = (spec: BoardSpec): string =>
  `The control board from above${spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`}${spec.reading === undefined ? '' : `; reading ${spec.reading}`}.`;
