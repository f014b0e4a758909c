import { useId } from 'react';
import { beyond, levelDistance, parallelTo } from './air-path-layout';
import type { AirPathLayout, OutletLayout, PlanFan } from './air-path-layout';
import { sizeKey, sizeWords } from './air-path-figures';
import type { PlacedSize, PlacedWords, PlanOfPath } from './air-path-figures';
import { AirPathSection } from './air-path-front';
import { placePlan } from './air-path-placing';
import type { PlacedName, PlacedPlan } from './air-path-placing';
import { AirPathRuns } from './air-path-runs';
import { Channels } from './channels';
import type { Point } from './arrows';
import { Balloon } from './balloon';
import { Dimension } from './dimension';
import { AxialFan, RadialFan } from './fan-wheel';
import { FlowLine } from './flow-line';
import { atX, atY, px } from './frame';
import type { Frame } from './frame';
import { Hatched, Hatches } from './hatches';
import { Leader } from './leader';
import { Disc, Stroke } from './lines';
import { Sheet } from './sheet';
import { SlantDimension } from './slant-dimension';
import { Words } from './words';
import { wordWidth } from './word-width';

export interface AirPathPlanProps extends PlanOfPath {
  readonly width: number;
  /** Where everything stands, when the caller has placed it already. */
  readonly placed?: PlacedPlan;
  readonly id?: string;
}

/** The air path of this machine from above, cut through the nozzle, and with its branches unrolled; to scale from its dimensions. */
export function AirPathPlan({ width, placed: given, id, ...plan }: AirPathPlanProps) {
  const own = useId().replace(/[^A-Za-z0-9]/g, '');
  const placed = given ?? placePlan(plan, width);
  const { layout, slim, names, height, foot, sections, unrolled } = placed;
  const on: Frame = { ...placed.on, id: id ?? `p${own}` };
  const guessed = (plan.guessed?.size ?? 0) > 0;
  return (
    <Sheet width={width} height={height} label={planWords(plan, layout)}>
      <Hatches id={on.id} kinds={['cut', 'lee']} />
      <Words x={0} y={14} tone="ink2">{placed.caption}</Words>
      <Channels on={on} channels={layout.channels} />
      {layout.breaks.map((x) => <TrunkBreak key={x} on={on} x={x} fork={layout.fork.y} width={plan.duct.width} />)}
      <Lee on={on} layout={layout} />
      <NozzleFromAbove on={on} layout={layout} />
      {layout.outlets.map((o) => <BranchAir key={o.outlet.name} on={on} laid={o} />)}
      <FanAt on={on} fan={plan.fan} at={layout.fan} />
      {plan.second && layout.second && <FanAt on={on} fan={plan.second} at={layout.second} />}
      {sections.map((section, i) => <AirPathSection key={i} id={on.id} section={section} layout={layout} />)}
      <AirPathRuns id={on.id} unrolled={unrolled} />
      {placed.sizes.map((size) => <SizeFigure key={size.key} size={size} />)}
      {names.map((name, i) => (slim ? <ListedName key={name.key} name={name} number={i + 1} /> : <NameBeside key={name.key} name={name} />))}
      {sections.map((section, i) => <PlainWords key={i} words={section.words} />)}
      <PlainWords words={unrolled.words} />
      <PlainWords words={placed.words} />
      {guessed && <Words x={0} y={foot} tone="ink2">15? is not measured: a usual value</Words>}
      <SpeedKey x={0} y={foot + (guessed ? 34 : 16)} />
    </Sheet>
  );
}

/** A figure with its dimension, or alone among words. */
function SizeFigure({ size: { arrows, slant, box, words } }: { readonly size: PlacedSize }) {
  if (arrows !== undefined) return <Dimension {...arrows} />;
  if (slant !== undefined) return <SlantDimension {...slant} />;
  return <Words x={box.x + box.w / 2} y={box.y + box.h / 2 + 5} anchor="middle">{words}</Words>;
}

function PlainWords({ words }: { readonly words: readonly PlacedWords[] }) {
  return <>{words.map((each, i) => <Words key={i} x={each.x} y={each.y} tone={each.tone ?? 'ink2'} strong={each.strong ?? false}>{each.words}</Words>)}</>;
}

/** Two zigzag lines across the duct: a piece of it is left out here. */
function TrunkBreak({ on, x, fork, width }: { readonly on: Frame; readonly x: number; readonly fork: number; readonly width: number }) {
  const half = width / 2 + 4;
  const y = fork - 17;
  const zigzag = (at: number): string => `M${x - half} ${at}H${x - 2}L${x - 1} ${at - 2}L${x + 1} ${at + 2}L${x + 2} ${at}H${x + half}`;
  return (
    <g>
      <Stroke on={on} d={`M${x - half} ${y - 1.5}H${x + half}V${y + 1.5}H${x - half}Z`} line="no-line" fill="paper" />
      <Stroke on={on} d={zigzag(y - 1.5) + zigzag(y + 1.5)} line="thin" />
    </g>
  );
}

function FanAt({ on, fan, at }: { readonly on: Frame; readonly fan: PlanFan; readonly at: Point }) {
  const body = { cx: atX(on, at.x), cy: atY(on, at.y), side: px(fan.size * on.k) };
  return fan.kind === 'radial' ? <RadialFan {...body} /> : <AxialFan {...body} />;
}

/** Nozzle with its bore, heater block as hidden lines, centre lines through both. */
function NozzleFromAbove({ on, layout }: { readonly on: Frame; readonly layout: AirPathLayout }) {
  const far = layout.reach + 10;
  return (
    <g>
      <Stroke on={on} d="M-8 -9H8V11H-8Z" line="hidden" />
      <Stroke on={on} d={`M${-far} 0H${far}M0 ${layout.fork.y + 2}V${layout.box.bottom + 4}`} line="centre" />
      <Disc on={on} x={0} y={0} r={3.2} line="outline" fill="paper" />
      <Disc on={on} x={0} y={0} r={0.9} line="no-line" fill="ink" />
    </g>
  );
}

/** The lee: before each weak mouth, or opposite the mouth when there is only one. */
function Lee({ on, layout }: { readonly on: Frame; readonly layout: AirPathLayout }) {
  const only = layout.outlets.length === 1 ? layout.outlets[0] : undefined;
  const weak = only === undefined ? layout.outlets.filter((o) => o.lee).map((o) => ({ a: o.outlet.direction, far: levelDistance(o.outlet), half: o.outlet.width / 2 + 4 })) : [{ a: only.outlet.direction + 180, far: 14, half: only.outlet.width / 2 + 4 }];
  return (
    <>
      {weak.map(({ a, far, half }) => {
        const c = Math.cos((a * Math.PI) / 180);
        const s = -Math.sin((a * Math.PI) / 180);
        const at = (r: number, w: number): string => `${r * c - w * s} ${r * s + w * c}`;
        return <Hatched key={a} on={on} d={`M${at(4, -half)}L${at(far, -half)}L${at(far, half)}L${at(4, half)}Z`} kind="lee" />;
      })}
    </>
  );
}

function BranchAir({ on, laid }: { readonly on: Frame; readonly laid: OutletLayout }) {
  const { outlet, way, mouth } = laid;
  const past = beyond(way.at(-2) ?? mouth, mouth, Math.max(2, levelDistance(outlet) - 6));
  const lines = outlet.speed > 4 ? [-0.3, 0, 0.3] : [-0.22, 0.22];
  const room = Math.min(outlet.channel, outlet.width);
  if (outlet.speed < 0.05) return null;
  return (
    <>
      {lines.map((share) => {
        const path = parallelTo([...way.slice(0, -1), past], share * room).map((p) => ({ x: atX(on, p.x), y: atY(on, p.y) }));
        return <FlowLine key={share} points={path} speed={outlet.speed} radius={(outlet.channel * on.k) / 2} />;
      })}
    </>
  );
}

/** A name with its leader in the column at its side. */
function NameBeside({ name }: { readonly name: PlacedName }) {
  const { at, side, accent } = name;
  const anchor = side === 'left' ? 'end' : 'start';
  return (
    <g>
      <Leader to={name.to} at={at} side={side} words={name.lines[0] ?? ''} accent={accent} strong landing={14} />
      <NameLines name={name} x={at.x} anchor={anchor} from={1} />
    </g>
  );
}

/** A number in the plan, and its name under it. */
function ListedName({ name, number }: { readonly name: PlacedName; readonly number: number }) {
  return (
    <g>
      <Balloon x={name.to.x} y={name.to.y} kind="seen" label={number} />
      <Balloon x={12} y={name.at.y - 5} kind="seen" label={number} />
      <NameLines name={name} x={name.at.x} anchor="start" from={0} />
    </g>
  );
}

function NameLines({ name, x, anchor, from }: { readonly name: PlacedName; readonly x: number; readonly anchor: 'start' | 'end'; readonly from: number }) {
  const lines = [...name.lines.map((words) => ({ words, strong: true })), ...name.second.map((words) => ({ words, strong: false }))];
  return (
    <>
      {lines.slice(from).map(({ words, strong }, j) => <Words key={words} x={x} y={name.at.y + (j + from) * 18} anchor={anchor} tone={strong ? (name.accent ? 'accent' : 'ink') : 'ink2'} strong={strong} halo>{words}</Words>)}
      {name.words.map((each) => <Words key={`${each.x} ${each.y}`} x={each.x} y={each.y} tone="ink2">{each.words}</Words>)}
    </>
  );
}

function SpeedKey({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g>
      <Words x={x} y={y - 12} tone="ink2">line weight shows air speed</Words>
      {[1, 3, 6].map((speed, i) => {
        const from = x + i * 82;
        const words = i === 2 ? '6 m/s' : String(speed);
        return (
          <g key={speed}>
            <FlowLine points={[{ x: from, y: y + 6 }, { x: from + 34, y: y + 6 }]} speed={speed} />
            <Words x={Math.min(from + 40, from + 82 - wordWidth(words))} y={y + 11}>{words}</Words>
          </g>
        );
      })}
    </g>
  );
}

const STANDS = { series: 'behind it', parallel: 'beside it on the same duct', 'own-ducts': 'on a duct of its own' } as const;

const fanWords = (fan: PlanFan): string => [fan.name, `frame ${fan.size} mm`, fan.reading].filter(Boolean).join(', ');

/** How wide and high a channel is inside; a height that is its width, or is not told, is left out. */
const insideWords = (width: number, height: number | undefined): string => (height === undefined ? '' : `, ${sizeWords(width)} by ${sizeWords(height)} mm inside,`);

function planWords({ fan, second, unknown }: PlanOfPath, layout: AirPathLayout): string {
  const said = layout.outlets.map(({ outlet, lee }, index) => `${outlet.name}: ${outlet.reading === '' ? '' : `${outlet.reading}, `}${lee ? 'in the lee, ' : ''}${unknown?.has(sizeKey('branch', index)) === true ? 'branch not known' : `branch ${sizeWords(outlet.branch)} mm long${insideWords(outlet.channel, outlet.isRoundChannel === true ? undefined : outlet.channelHeight)} with ${outlet.bends} ${outlet.bends === 1 ? 'bend' : 'bends'}`}, mouth ${sizeWords(outlet.width)} by ${sizeWords(outlet.height)} mm, ${sizeWords(outlet.distance)} mm from the nozzle`).join('; ');
  return `Air path from above, cut through the nozzle, and with its branches unrolled. ${fanWords(fan)}${second === undefined ? '' : `; ${STANDS[second.arrangement]}: ${fanWords(second)}`}. ${said}.`;
}
