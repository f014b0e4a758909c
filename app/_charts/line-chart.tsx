import type { Point } from '../_drawings/arrows';
import { px } from '../_drawings/frame';
import { Sheet } from '../_drawings/sheet';
import { Words } from '../_drawings/words';
import { boxOfWords, placeLabel, type Box, type Obstacles } from './label-placement';
import { clipped, namePlaces, pathOf, sampled } from './paths';
import { linear, logTicks, logarithmic, tickWords, ticks, within, type Scale } from './scales';

/** One axis: its words with the unit, where it begins and ends, and whether it is divided in decades. */
export interface ChartAxis {
  readonly words: string;
  readonly from: number;
  readonly to: number;
  readonly decades?: boolean;
}

/** `strong`: what it is about; `plain`: beside it; `ghost`: for comparing; `limit`: a border. */
export interface ChartLine {
  readonly name: string;
  readonly as: 'strong' | 'plain' | 'ghost' | 'limit';
  /** In the units of the axes, along rising x. */
  readonly points: readonly Point[];
}

/** A shaded stretch of the x axis between two values. */
export interface ChartStretch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

export interface LineChartProps {
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly lines: readonly ChartLine[];
  readonly stretch?: ChartStretch | undefined;
  /** Where we are now. A place beyond the chart is drawn at its edge; the words give the true value. */
  readonly mark: Point & { readonly words: string };
  readonly width?: number;
  readonly height?: number;
}

/** Room for the figures of the y axis, for those of the x axis and its words, and above and beside the plot. */
const ROOM = { left: 52, bottom: 50, top: 26, right: 16 } as const;

const LINE = { strong: 'd-outline', plain: 'd-edge', ghost: 'd-ghost', limit: 'd-limit' } as const;

/** Named lines over two axes, with one marked place. Drawn at the size it is given, never scaled. */
export function LineChart({ x: xAxis, y: yAxis, lines, stretch, mark, width = 600, height = 340 }: LineChartProps) {
  const x = scaleOf(xAxis, [ROOM.left, width - ROOM.right]);
  const y = scaleOf(yAxis, [height - ROOM.bottom, ROOM.top]);
  const plot: Box = { x: ROOM.left, y: ROOM.top, w: width - ROOM.left - ROOM.right, h: height - ROOM.top - ROOM.bottom };
  const xTicks = ticksOf(xAxis, width < 480 ? 5 : 8);
  const yTicks = ticksOf(yAxis, 5);
  const at = { x: x(within(x, mark.x)), y: y(within(y, mark.y)) };
  const paths = lines.map((line) => clipped(line.points.map((point) => ({ x: x(point.x), y: y(point.y) })), plot));
  const { markWords, names } = placeWords({ lines, paths, at, words: mark.words, plot, stretch: stretch && { name: stretch.name, x: x(stretch.from) } });
  return (
    <Sheet width={width} height={height} label={chartWords(xAxis, yAxis, lines, mark)}>
      {stretch && <rect className="d-no-line d-fill-wash" x={x(within(x, stretch.from))} y={plot.y} width={px(x(within(x, stretch.to)) - x(within(x, stretch.from)))} height={plot.h} />}
      <path className="d-line d-grid" d={[...xTicks.map((t) => `M${x(t)} ${plot.y}V${plot.y + plot.h}`), ...yTicks.map((t) => `M${plot.x} ${y(t)}H${plot.x + plot.w}`)].join('')} />
      <path className="d-line d-outline" d={`M${plot.x} ${plot.y}V${plot.y + plot.h}H${plot.x + plot.w}`} />
      {xTicks.map((t) => <Words key={t} x={x(t)} y={plot.y + plot.h + 20} anchor="middle" tone="ink2">{tickWords(t, xTicks)}</Words>)}
      {yTicks.map((t) => <Words key={t} x={plot.x - 9} y={y(t) + 5} anchor="end" tone="ink2">{yAxis.decades ? String(t) : tickWords(t, yTicks)}</Words>)}
      <Words x={plot.x + plot.w} y={height - 8} anchor="end">{xAxis.words}</Words>
      <Words x={2} y={14}>{yAxis.words}</Words>
      {lines.map((line, i) => <path key={line.name} className={`d-line ${LINE[line.as]}`} d={pathOf(paths[i] ?? [])} />)}
      {stretch && <Words x={x(within(x, stretch.from)) + 5} y={plot.y + 16} tone="ink2" halo="wash">{stretch.name}</Words>}
      <path className="d-line d-accent-hair" d={`M${px(at.x)} ${plot.y + plot.h}V${px(at.y)}H${plot.x}`} />
      <circle className="d-no-line d-fill-accent" cx={px(at.x)} cy={px(at.y)} r={5} />
      {names.map((name) => <Words key={name.words} x={name.box.x} y={name.box.y + 12} halo strong={name.strong} tone={name.strong ? 'ink' : 'ink2'}>{name.words}</Words>)}
      <Words x={markWords.x} y={markWords.y + 12} tone="accent" strong halo>{mark.words}</Words>
    </Sheet>
  );
}

function scaleOf({ from, to, decades }: ChartAxis, range: readonly [number, number]): Scale {
  return decades ? logarithmic([from, to], range) : linear([from, to], range);
}

const ticksOf = ({ from, to, decades }: ChartAxis, count: number): number[] => (decades ? logTicks(from, to) : ticks(from, to, count));

interface Placing {
  readonly lines: readonly ChartLine[];
  readonly paths: readonly (readonly Point[])[];
  readonly at: Point;
  readonly words: string;
  readonly plot: Box;
  readonly stretch: { readonly name: string; readonly x: number } | undefined;
}

/** The marked place chooses first: the eye goes there. */
function placeWords({ lines, paths, at, words, plot, stretch }: Placing): { readonly markWords: Box; readonly names: readonly { readonly words: string; readonly box: Box; readonly strong: boolean }[] } {
  const obstacles: Obstacles = {
    points: paths.flatMap((path) => sampled(path)),
    boxes: [{ x: at.x - 6, y: at.y - 6, w: 12, h: 12 }, ...(stretch ? [boxOfWords(stretch.name, stretch.x + 5, plot.y + 16, 'start')] : [])],
    segments: [[{ x: at.x, y: plot.y + plot.h }, at]],
    bounds: { x: plot.x + 4, y: plot.y - 4, w: plot.w, h: plot.h },
  };
  const around = [-12, 24, -34, 46, -56, 68].flatMap((rise) => [boxOfWords(words, at.x + 10, at.y + rise, 'start'), boxOfWords(words, at.x - 10, at.y + rise, 'end')]);
  const { box: markWords } = placeLabel(around.map((box) => ({ box })), obstacles);
  const names = lines.map((line, i) => {
    const boxes = namePlaces(paths[i] ?? []).flatMap((p) => [boxOfWords(line.name, p.x, p.y - 8, 'start'), boxOfWords(line.name, p.x + 8, p.y + 20, 'start'), boxOfWords(line.name, p.x - 8, p.y - 4, 'end'), boxOfWords(line.name, p.x - 8, p.y + 18, 'end')]);
    return { words: line.name, box: placeLabel(boxes.map((box) => ({ box })), obstacles).box, strong: line.as === 'strong' };
  });
  return { markWords, names };
}

function chartWords(x: ChartAxis, y: ChartAxis, lines: readonly ChartLine[], mark: LineChartProps['mark']): string {
  return `Chart of ${y.words} against ${x.words}. Lines: ${lines.map((line) => line.name).join(', ')}. Marked: ${mark.words}.`;
}
