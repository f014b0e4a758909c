import type { Drawing } from '@/lib/knowledge';
import { atX, atY, fit, px } from './frame';
import type { Plate } from './frame';
import { Block, Disc, Stroke } from './lines';
import { Readout } from './readout';
import { wrapWords } from './wrap-words';
import { Words } from './words';

type WatchSpec = Extract<Drawing, { show: 'watch' }>;
type MeterSpec = Extract<Drawing, { show: 'meter' }>;
type DisplaySpec = Extract<Drawing, { show: 'display' }>;
type PowerSpec = Extract<Drawing, { show: 'power' }>;

/** A stop watch, with its reading in a window when there is one. */
export function WatchDrawing({ spec, plate }: { readonly spec: WatchSpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 60, h: 70 }, { top: 4, bottom: 4 });
  const cx = atX(on, 30);
  const cy = atY(on, 41);
  const ray = (deg: number, r: number): string => `${px(cx + r * on.k * Math.sin((deg * Math.PI) / 180))} ${px(cy - r * on.k * Math.cos((deg * Math.PI) / 180))}`;
  return (
    <>
      <Stroke on={on} d="M26 1H34V7H26ZM28 7H32V13H28ZM47 14L51 10L54 13L50 17Z" line="edge" fill="paper" />
      <Disc on={on} x={30} y={41} r={28} line="outline" fill="paper" />
      <path className="d-line d-thin" d={Array.from({ length: 12 }, (_, i) => `M${ray(i * 30, 25)}L${ray(i * 30, i % 3 === 0 ? 20 : 22.5)}`).join('')} />
      <path className="d-line d-accent" d={`M${ray(228, 5)}L${ray(48, 22)}`} />
      <Disc on={on} x={30} y={41} r={1.8} line="no-line" fill="accent" />
      {spec.reading !== undefined && plate.size !== 'row' && <Readout cx={cx} cy={atY(on, 54)} reading={spec.reading} least={30} most={plate.width - 8} />}
    </>
  );
}

export const watchWords = (spec: WatchSpec): string => `A stop watch${spec.reading === undefined ? '' : `, reading ${spec.reading}`}.`;

const unitOf: Readonly<Record<MeterSpec['measures'], string>> = { volt: 'V', ohm: 'Ω', ampere: 'A', celsius: '°C' };
const meterNames: Readonly<Record<MeterSpec['measures'], string>> = { volt: 'voltage', ohm: 'resistance', ampere: 'current', celsius: 'temperature' };

/** A hand meter with two leads, set to one quantity; a thermometer when it measures degrees. */
export function MeterDrawing({ spec, plate }: { readonly spec: MeterSpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 92, h: 74 }, { top: 4, bottom: 4, left: 4, right: 4 });
  const x = atX(on, 30);
  const small = plate.size === 'row';
  const warm = spec.measures === 'celsius';
  return (
    <>
      <Stroke on={on} d="M6 2H54V72H6Z" line="outline" fill="paper" />
      <Readout cx={x} cy={atY(on, 15)} reading={small ? undefined : spec.reading} least={38 * on.k} small={small} most={44 * on.k > 40 ? Math.max(44 * on.k, 90) : 90} />
      <Disc on={on} x={30} y={42} r={11} line="edge" fill="wash" />
      <Stroke on={on} d="M30 42L37.5 34.5" line="outline" />
      {!small && <Words x={x} y={atY(on, 67)} anchor="middle" strong>{unitOf[spec.measures]}</Words>}
      <Stroke on={on} d={warm ? 'M54 62C70 66 66 40 76 30' : 'M54 62C66 70 62 40 70 30M54 66C82 74 80 44 86 34'} line="edge" />
      <Stroke on={on} d={warm ? 'M74 31L77.6 29L86 8L84 7Z' : 'M68 31L72 30L76 12L74.6 11.6ZM84 35L88 34L90 15L88.6 15Z'} line="accent" fill="accw" />
    </>
  );
}

export const meterWords = (spec: MeterSpec): string => `A meter set to ${meterNames[spec.measures]}${spec.reading === undefined ? '' : `, reading ${spec.reading}`}.`;

/** The machine's display with what it says. */
export function DisplayDrawing({ spec, plate }: { readonly spec: DisplaySpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 100, h: 60 }, { top: 5, bottom: 5, left: 3, right: 3 });
  const lines = wrapWords(spec.text, 74 * on.k);
  const fits = plate.size !== 'row' && lines.length <= Math.floor((44 * on.k) / 18);
  return (
    <>
      <Block on={on} x={1} y={2} w={98} h={56} line="outline" fill="paper" />
      <Block on={on} x={7} y={8} w={76} h={44} line="thin" fill="wash" />
      <Disc on={on} x={91} y={30} r={4.6} line="edge" fill="paper" />
      {fits ? (
        lines.map((line, i) => <Words key={line} x={atX(on, 45)} y={atY(on, 30) + 5 + (i - (lines.length - 1) / 2) * 18} anchor="middle" strong>{line}</Words>)
      ) : (
        <Stroke on={on} d="M14 20H62M14 30H72M14 40H50" line="edge" />
      )}
    </>
  );
}

export const displayWords = (spec: DisplaySpec): string => `The machine’s display says: ${spec.text}.`;

/** The mains plug: in the socket, or drawn. */
export function PowerDrawing({ spec, plate }: { readonly spec: PowerSpec; readonly plate: Plate }) {
  const on = fit(plate, { w: 96, h: 56 }, { top: 4, bottom: 4 });
  const off = spec.state === 'off';
  const x = off ? 42 : 25;
  return (
    <>
      <Block on={on} x={2} y={6} w={22} h={44} line="outline" fill="paper" />
      <Block on={on} x={9} y={17} w={9} h={4} line="edge" fill={off ? 'ink' : 'paper'} />
      <Block on={on} x={9} y={35} w={9} h={4} line="edge" fill={off ? 'ink' : 'paper'} />
      {off && <Stroke on={on} d={`M${x - 12} 17.6H${x}V20.4H${x - 12}ZM${x - 12} 35.6H${x}V38.4H${x - 12}Z`} line="edge" fill="paper" />}
      <Stroke on={on} d={`M${x} 12H${x + 10}C${x + 22} 14 ${x + 24} 22 ${x + 24} 28C${x + 24} 34 ${x + 22} 42 ${x + 10} 44H${x}Z`} line="outline" fill="wash" />
      <Stroke on={on} d={`M${x + 24} 25.6C${x + 34} 25.6 ${x + 30} 40 94 40M${x + 24} 30.4C${x + 30} 31 ${x + 28} 45 94 45`} line="edge" />
      {off ? <Stroke on={on} d={`M${x - 4} 4V9M${x - 4} 47V52M${x - 10} 6H${x - 14}`} line="accent" /> : <Stroke on={on} d="M86 18H78L83 4L72 22H80L76 34Z" line="edge" fill="paper" />}
    </>
  );
}

export const powerWords = (spec: PowerSpec): string => (spec.state === 'off' ? 'The mains plug drawn out of its socket: power off.' : 'The mains plug in its socket: power on.');
