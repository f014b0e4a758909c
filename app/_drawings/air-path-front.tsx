import type { AirPathLayout } from './air-path-layout';
import { wallThickness } from './air-path-layout';
import { bedBeside, nozzleHeight } from './air-path-section';
import type { PlacedCut, PlacedSection } from './air-path-section';
import { Bead, BedLine, straightBead } from './bead';
import { CutWalls } from './cut-walls';
import { FlowLine } from './flow-line';
import { px } from './frame';
import type { Frame } from './frame';
import { Hatched } from './hatches';
import { Stroke } from './lines';

/** Outlets cut through the nozzle at the scale of the plan: nozzle and part of usual size between them. */
export function AirPathSection({ id, section, layout }: { readonly id: string; readonly section: PlacedSection; readonly layout: AirPathLayout }) {
  const { spot, k, cuts, walls } = section;
  // Downward from the tip of the nozzle.
  const on: Frame = { id, width: 0, height: 0, size: 'figure', k, left: spot.x, top: spot.y };
  return (
    <g>
      <NozzleCut on={on} />
      <PartUnder on={on} section={section} reach={layout.reach} />
      <CutWalls id={id} cut={walls} thick={wallThickness * k} />
      <Stroke on={on} d={`M0 ${-nozzleHeight - 2}V${(section.bed - spot.y) / k + 1}`} line="centre" />
      {cuts.map(({ laid, side, air }) => laid.outlet.speed >= 0.05 && <FlowLine key={side} points={air} speed={laid.outlet.speed} radius={10} />)}
    </g>
  );
}

function NozzleCut({ on }: { readonly on: Frame }) {
  const top = -nozzleHeight;
  const halves = `M-8 ${top}H-0.9V0H-1.6L-3.2 -4V-6H-8ZM8 ${top}H0.9V0H1.6L3.2 -4V-6H8Z`;
  return (
    <g>
      <Hatched on={on} d={halves} kind="cut" />
      <Stroke on={on} d={halves} line="edge" />
    </g>
  );
}

const beads = 6;
const beadHeight = 1.9;

/** Layers that lean out on both sides; on the lee side their tips lift. */
function PartUnder({ on, section, reach }: { readonly on: Frame; readonly section: PlacedSection; readonly reach: number }) {
  const { bed, cuts } = section;
  const h = beadHeight * on.k;
  const x = on.left;
  const half = (i: number): number => (5 + i * 1.1) * on.k;
  const level = (i: number): number => bed - (i + 0.5) * h;
  const body = Array.from({ length: beads }, (_, i) => straightBead(x - half(i), x + half(i), level(i), h)).join('');
  const tips = cuts.filter(isLee).flatMap(({ side }) => Array.from({ length: beads - 2 }, (_, j) => {
    const i = j + 2;
    const tip = `${px(x + side * (half(i) - h / 2))} ${px(level(i) - (i - 1) * 0.55 * on.k)}`;
    return `M${tip}Q${px(x + side * half(i) * 0.75)} ${px(level(i))} ${px(x + side * half(i) * 0.5)} ${px(level(i))}`;
  })).join('');
  return (
    <g>
      <BedLine from={x - (reach + bedBeside) * on.k} to={x + (reach + bedBeside) * on.k} y={bed} />
      <Bead d={body} height={h} />
      {tips !== '' && <Bead d={tips} height={h} fault />}
    </g>
  );
}

const isLee = ({ laid }: PlacedCut): boolean => laid.lee;
