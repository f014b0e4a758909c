import { useId } from 'react';
import { layOutAirPath, beyond, parallelTo } from './air-path-layout';
import type { AirPathLayout, OutletLayout, PlanFan, PlanOutlet } from './air-path-layout';
import { AirPathFront, frontHeight } from './air-path-front';
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
import { spread } from './labels';
import { Disc, Stroke } from './lines';
import { Sheet } from './sheet';
import { Words } from './words';
import { wordWidth } from './word-width';
import { wrapWords } from './wrap-words';

export type { PlanFan, PlanOutlet } from './air-path-layout';

export interface AirPathPlanProps {
  readonly fan: PlanFan;
  /** Clear width and length of the duct from the fan to the fork, mm. */
  readonly duct: { readonly width: number; readonly length: number };
  /** One to four outlets. */
  readonly outlets: readonly PlanOutlet[];
  readonly width: number;
  readonly id?: string;
}

/** At this scale 40 mm on screen are about 40 mm on paper at 1 : 1 (96 px per inch gives 3.78 px/mm; the sheet is printed a little smaller). */
const largestScale = 3.43;
const narrow = 560;

interface Named {
  readonly key: string;
  readonly at: Point;
  readonly words: string;
  readonly second: string;
  readonly accent: boolean;
}

/** The air path of this machine from above, cut through the duct, and from the front; to scale from its dimensions. */
export function AirPathPlan({ fan, duct, outlets, width, id }: AirPathPlanProps) {
  const own = useId().replace(/[^A-Za-z0-9]/g, '');
  const layout = layOutAirPath(fan, duct, outlets);
  const slim = width < narrow;
  const { box } = layout;
  const side = slim ? 30 : 176;
  const k = Math.min(largestScale, (width - 2 * side) / (box.right - box.left));
  const top = 46 - box.top * k;
  const centre = slim ? width / 2 - ((box.left + box.right) / 2) * k : side + (width - 2 * side) / 2 - ((box.left + box.right) / 2) * k;
  const planEnd = top + box.bottom * k + 34;
  const on: Frame = { id: id ?? `p${own}`, width, height: 0, size: 'figure', k, left: centre, top };
  const names = namesOf(fan, layout, on);
  const list = slim ? listLines(names, width) : [];
  const listHeight = list.reduce((sum, item) => sum + item.height, 0);
  const frontTop = planEnd + 24;
  const height = Math.round(frontTop + frontHeight * k + 54 + listHeight);
  return (
    <Sheet width={width} height={height} label={planWords(fan, layout)}>
      <Hatches id={on.id} kinds={['cut', 'lee']} />
      <Words x={0} y={14} tone="ink2">{layout.toScale ? 'From above, cut through the duct' : slim ? 'From above; branch lengths not to scale' : 'From above, cut through the duct; branch lengths not to scale'}</Words>
      <Channels on={on} channels={layout.channels} />
      <Lee on={on} layout={layout} />
      <NozzleFromAbove on={on} layout={layout} />
      {layout.outlets.map((o) => <BranchAir key={o.outlet.name} on={on} laid={o} />)}
      <FanAt on={on} fan={fan} layout={layout} />
      <Sizes on={on} fan={fan} layout={layout} />
      {slim ? names.map((n, i) => <Balloon key={n.key} x={n.at.x} y={n.at.y} kind="seen" label={i + 1} />) : <SideNames names={names} width={width} centre={centre} bottom={planEnd} />}
      <AirPathFront on={{ ...on, top: frontTop }} layout={layout} />
      <SpeedKey x={slim ? 0 : width - 240} y={frontTop + frontHeight * k + 30} />
      {list.map((item, i) => (
        <g key={item.name.key}>
          <Balloon x={12} y={height - listHeight + item.y + 12} kind="seen" label={i + 1} />
          {item.lines.map((line, j) => <Words key={line} x={34} y={height - listHeight + item.y + 17 + j * 19} tone={j === 0 ? (item.name.accent ? 'accent' : 'ink') : 'ink2'} strong={j === 0}>{line}</Words>)}
        </g>
      ))}
    </Sheet>
  );
}

function FanAt({ on, fan, layout }: { readonly on: Frame; readonly fan: PlanFan; readonly layout: AirPathLayout }) {
  const body = { cx: atX(on, layout.fan.x), cy: atY(on, layout.fan.y), side: px(fan.size * on.k) };
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
  const weak = only === undefined ? layout.outlets.filter((o) => o.lee).map((o) => ({ a: o.outlet.direction, far: o.outlet.distance, half: o.outlet.width / 2 + 4 })) : [{ a: only.outlet.direction + 180, far: 14, half: only.outlet.width / 2 + 4 }];
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
  const past = beyond(way.at(-2) ?? mouth, mouth, Math.max(2, outlet.distance - 6));
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

/** Size of the fan's frame over it; the nearest mouth's distance below the plan. */
function Sizes({ on, fan, layout }: { readonly on: Frame; readonly fan: PlanFan; readonly layout: AirPathLayout }) {
  const r = fan.size / 2;
  const beside = layout.outlets.find((o) => Math.cos((o.outlet.direction * Math.PI) / 180) > 0.9) ?? layout.outlets.find((o) => Math.cos((o.outlet.direction * Math.PI) / 180) < -0.9);
  const y = atY(on, layout.box.top);
  const below = atY(on, layout.box.bottom) + 14;
  return (
    <g>
      <Dimension from={atX(on, layout.fan.x - r)} to={atX(on, layout.fan.x + r)} at={y - 12} edges={[y, y]} words={String(fan.size)} />
      {beside !== undefined && <Dimension from={atX(on, 0)} to={atX(on, beside.mouth.x)} at={below} edges={[atY(on, 5), atY(on, beside.outlet.width / 2)]} words={sizeOf(beside.outlet.distance)} />}
    </g>
  );
}

const sizeOf = (mm: number): string => String(Math.round(mm * 10) / 10);

function namesOf(fan: PlanFan, layout: AirPathLayout, on: Frame): Named[] {
  const place = (p: Point): Point => ({ x: atX(on, p.x), y: atY(on, p.y) });
  return [
    { key: 'fan', at: place({ x: layout.fan.x + fan.size * 0.22, y: layout.fan.y }), words: fan.name, second: fan.reading, accent: false },
    ...layout.outlets.map(({ outlet, way, mouth, lee }): Named => {
      const turn = way.at(-2) ?? mouth;
      const bends = outlet.bends === 0 ? 'no bend' : outlet.bends === 1 ? '1 bend' : `${outlet.bends} bends`;
      return { key: outlet.name, at: place({ x: turn.x * 0.7 + mouth.x * 0.3, y: turn.y * 0.7 + mouth.y * 0.3 }), words: `${outlet.name} ${outlet.reading}${lee ? ', lee' : ''}`, second: `${sizeOf(outlet.width)} × ${sizeOf(outlet.height)}, ${sizeOf(outlet.branch)} mm, ${bends}`, accent: lee };
    }),
  ];
}

/** Names in a column at either side, whichever their place is nearer to; wrapped to the column. */
function SideNames({ names, width, centre, bottom }: { readonly names: readonly Named[]; readonly width: number; readonly centre: number; readonly bottom: number }) {
  const column = 148;
  return (
    <>
      {(['left', 'right'] as const).map((side) => {
        const here = names.filter((n) => (n.at.x < centre ? 'left' : 'right') === side).sort((a, b) => a.at.y - b.at.y);
        const ys = spread(here.map((n) => n.at.y - 6), 46, bottom - 60, 78);
        return here.map((n, i) => {
          const lines = wrapWords(n.words, column);
          const x = side === 'left' ? column : width - column;
          const y = ys[i] ?? n.at.y;
          const anchor = side === 'left' ? 'end' : 'start';
          return (
            <g key={n.key}>
              <Leader to={n.at} at={{ x, y }} side={side} words={lines[0] ?? ''} accent={n.accent} strong landing={14} />
              {[...lines.slice(1).map((line) => ({ line, strong: true })), ...wrapWords(n.second, column).map((line) => ({ line, strong: false }))].map(({ line, strong }, j) => (
                <Words key={line} x={x} y={y + (j + 1) * 18} anchor={anchor} tone={strong ? (n.accent ? 'accent' : 'ink') : 'ink2'} strong={strong} halo>{line}</Words>
              ))}
            </g>
          );
        });
      })}
    </>
  );
}

function listLines(names: readonly Named[], width: number): { name: Named; lines: string[]; y: number; height: number }[] {
  let y = 0;
  return names.map((name) => {
    const lines = [...wrapWords(name.words, width - 40), ...wrapWords(name.second, width - 40)];
    const item = { name, lines, y, height: lines.length * 19 + 12 };
    y += item.height;
    return item;
  });
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

function planWords(fan: PlanFan, layout: AirPathLayout): string {
  const said = layout.outlets.map(({ outlet, lee }) => `${outlet.name}: ${outlet.reading}${lee ? ', in the lee' : ''}, mouth ${sizeOf(outlet.width)} by ${sizeOf(outlet.height)} mm, ${sizeOf(outlet.distance)} mm from the nozzle`).join('; ');
  return `Air path from above and from the front. ${fan.name}, frame ${fan.size} mm, ${fan.reading}. ${said}.${layout.toScale ? '' : ' Branch lengths are not drawn to scale.'}`;
}
