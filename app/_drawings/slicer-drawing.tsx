import type { Drawing } from '@/lib/knowledge';
import { atX, atY, fit } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, Stroke } from './lines';
import { Words } from './words';

type SlicerSpec = Extract<Drawing, { show: 'slicer' }>;
type Mark = NonNullable<SlicerSpec['mark']>;

const rows: readonly { readonly mark: Mark; readonly words: string }[] = [
  { mark: 'profile', words: 'profile' },
  { mark: 'layer-time', words: 'least time per layer' },
  { mark: 'speed', words: 'speed' },
  { mark: 'fan', words: 'part fan' },
  { mark: 'line-width', words: 'line width' },
  { mark: 'flow', words: 'flow' },
];

/** The program that cuts the model into layers: a sliced part beside the settings; the marked setting stands out. */
export function SlicerDrawing({ spec, plate }: { readonly spec: SlicerSpec; readonly plate: Plate }) {
  const figure = plate.size === 'figure';
  const on = fit(plate, figure ? { w: 150, h: 96 } : { w: 100, h: 66 }, { top: 5, bottom: 5, left: 4, right: 4 });
  return figure ? <WithNames on={on} mark={spec.mark} /> : <Small on={on} mark={spec.mark} />;
}

function WithNames({ on, mark }: { readonly on: Frame; readonly mark: Mark | undefined }) {
  return (
    <>
      <Block on={on} x={1} y={1} w={148} h={94} line="outline" fill="paper" />
      <Stroke on={on} d="M1 10H149M64 10V95" line="thin" />
      <Sliced on={on} x={8} y={24} k={1} accent={mark === 'preview'} />
      {rows.map((row, i) => {
        const y = 17.5 + i * 13.6;
        const is = row.mark === mark;
        return (
          <g key={row.mark}>
            {is && <Block on={on} x={66} y={y - 5.6} w={81} h={11.4} line="accent" fill="accw" />}
            <Words x={atX(on, 69)} y={atY(on, y) + 5} strong={is} tone={is ? 'accent' : 'ink2'}>{row.words}</Words>
          </g>
        );
      })}
    </>
  );
}

function Small({ on, mark }: { readonly on: Frame; readonly mark: Mark | undefined }) {
  return (
    <>
      <Block on={on} x={1} y={1} w={98} h={64} line="outline" fill="paper" />
      <Stroke on={on} d="M1 9H99M56 9V65" line="thin" />
      <Sliced on={on} x={6} y={16} k={0.85} accent={mark === 'preview'} />
      {rows.map((row, i) => {
        const y = 15.5 + i * 8.8;
        return row.mark === mark ? (
          <g key={row.mark}>
            <Block on={on} x={59} y={y - 4} w={37} h={8} line="accent" fill="accw" />
            <Stroke on={on} d={`M62 ${y}H80M86 ${y}H92`} line="accent" />
          </g>
        ) : (
          <Stroke key={row.mark} on={on} d={`M62 ${y}H80M86 ${y}H92`} line="mid" />
        );
      })}
    </>
  );
}

function Sliced({ on, x, y, k, accent }: { readonly on: Frame; readonly x: number; readonly y: number; readonly k: number; readonly accent: boolean }) {
  const at = (dx: number, dy: number): string => `${x + dx * k} ${y + dy * k}`;
  const half = [8, 10, 12, 14.5, 17.5, 21, 22, 22, 22];
  return (
    <g>
      {half.map((w, i) => <Stroke key={i} on={on} d={`M${at(24 - w, 46 - i * 5)}L${at(24 + w, 46 - i * 5)}`} line={accent && (i === 4 || i === 5) ? 'accent-edge' : 'edge'} />)}
      <Stroke on={on} d={`M${at(0, 50)}L${at(48, 50)}`} line="thin" />
      {accent && <Disc on={on} x={x + 42 * k} y={y + 24 * k} r={7 * k} line="accent" />}
    </g>
  );
}

export function slicerWords(spec: SlicerSpec): string {
  const row = rows.find((r) => r.mark === spec.mark);
  const marked = spec.mark === 'preview' ? 'the layer preview' : row?.words;
  return `The slicing program${marked === undefined ? '' : `; marked: ${marked}`}.`;
}
