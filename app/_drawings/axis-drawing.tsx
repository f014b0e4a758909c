import type { Drawing } from '@/lib/knowledge';
import { BedLine } from './bead';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, marked, Stroke } from './lines';
import { MarkedPlaces, roomFor } from './places';
import type { Places } from './places';

type AxisSpec = Extract<Drawing, { show: 'axis' }>;
type Mark = NonNullable<AxisSpec['mark']>;

const places: Places<Mark> = {
  bearing: { x: 94, y: 27, words: 'bearing', from: -40 },
  rail: { x: 74, y: 27, words: 'rail', from: -60 },
  tilt: { x: 80, y: 33, words: 'one side lower', from: 70, quiet: true },
  wheel: { x: 57, y: 22, words: 'wheel', from: -50, quiet: true },
  mount: { x: 51, y: 43, words: 'tool mount', from: 20 },
  nut: { x: 11, y: 27, words: 'nut', from: 180, quiet: true },
  screw: { x: 11, y: 38, words: 'height screw', from: 30, quiet: true },
  coupler: { x: 12, y: 56, words: 'coupler', from: 0, quiet: true },
  motor: { x: 16, y: 66, words: 'motor', from: 0, quiet: true },
};

/** Beam, carriage and height drive from the front. */
export function AxisDrawing({ spec, plate }: { readonly spec: AxisSpec; readonly plate: Plate }) {
  const mark = spec.mark ?? 'none';
  const is = (m: Mark): boolean => m === mark;
  const on = fit(plate, { w: 104, h: 74 }, roomFor(plate, places, mark));
  return (
    <>
      <BedLine from={atX(on, 24)} to={atX(on, 86)} y={atY(on, 66)} />
      <Stroke on={on} d="M92.5 2V72M95.5 2V72" line="edge" />
      <HeightDrive on={on} is={is} />
      {is('tilt') ? <TiltedBeam on={on} /> : <Block on={on} x={6} y={24} w={88} h={6} {...marked(is('rail'), { line: 'outline', fill: 'paper' })} />}
      <Block on={on} x={89} y={21} w={10} h={12} {...marked(is('bearing'), { line: 'outline', fill: 'paper' })} />
      <Stroke on={on} d="M40 18H62V36H40Z" line="outline" fill="paper" />
      {[[45, 22.5], [57, 22.5], [51, 32.5]].map(([x = 0, y = 0]) => <Disc key={x} on={on} x={x} y={y} r={2.6} {...marked(is('wheel'), { line: 'edge', fill: 'wash' })} />)}
      <Stroke on={on} d="M45 36H57V48H54L51.6 54H50.4L48 48H45Z" {...marked(is('mount'), { line: 'edge', fill: 'paper' })} />
      <MarkedPlaces on={on} places={places} mark={mark === 'none' ? undefined : mark} />
    </>
  );
}

function HeightDrive({ on, is }: { readonly on: Frame; readonly is: (m: Mark) => boolean }) {
  const turns = Array.from({ length: on.size === 'row' ? 11 : 18 }, (_, i) => 4 + i * (48 / (on.size === 'row' ? 11 : 18)));
  return (
    <g>
      <Stroke on={on} d="M8.6 2H13.4V54H8.6Z" {...marked(is('screw'), { line: 'edge', fill: 'paper' })} />
      <Stroke on={on} d={turns.map((y) => `M8.6 ${y + 1.4}L13.4 ${y}`).join('')} line={is('screw') ? 'accent-thin' : 'hair'} />
      <Block on={on} x={7} y={52} w={8} h={7} {...marked(is('coupler'), { line: 'edge', fill: 'wash' })} />
      <Block on={on} x={3} y={60} w={16} h={13} {...marked(is('motor'), { line: 'outline', fill: 'paper' })} />
      <Block on={on} x={5} y={20.5} w={12} h={13} {...marked(is('nut'), { line: 'edge', fill: 'wash' })} />
    </g>
  );
}

const TiltedBeam = ({ on }: { readonly on: Frame }) => (
  <g>
    <Stroke on={on} d="M6 27H94" line="centre" />
    <Stroke on={on} d="M6 21L94 29.5V35.5L6 27Z" line="accent" fill="accw" />
  </g>
);

export const axisWords = (spec: AxisSpec): string =>
  `Beam, carriage and height drive from the front${spec.mark === undefined || spec.mark === 'none' ? '' : `; marked: ${places[spec.mark].words}`}.`;
