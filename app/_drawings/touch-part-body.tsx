import { BedLine } from './bead';
import { atX, atY } from './frame';
import type { Frame } from './frame';
import { Hatched } from './hatches';
import { Disc, Stroke } from './lines';

/** The part is this large, in its own units, without bed and bracket. */
export const partBox = { w: 127, h: 87 };

const front = 'M0 33H112V87H10V79H33V64L0 39Z';
const gap = 'M56 44H95V79H56Z';
const broken = 'M79 87Q80 80 88 79H95V65Q98 60 101 63T107 60T112 61V87Z';

/**
 * One extruded profile with every kind of place where a print can fail: base, wall with a hole, arm with a steep
 * underside, span over a gap, thin tip, seam, and a break that shows walls and infill. The front is true to scale,
 * depth runs to the upper right at 35° and 0.45, so circles stay circles and the front matches the layer stacks.
 */
export function TouchPartBody({ on }: { readonly on: Frame }) {
  const fine = on.k > 2;
  return (
    <g>
      <BedLine from={atX(on, -8)} to={atX(on, 134)} y={atY(on, 87)} />
      <Stroke on={on} d="M10 79L25 68.5H33V79Z" line="edge" fill="paper" />
      <Stroke on={on} d="M112 33L127 22.5V76.5L112 87Z" line="outline" fill="wash" />
      <Stroke on={on} d="M0 33L15 22.5H127L112 33Z" line="outline" fill="paper" />
      <Stroke on={on} d={skin(fine ? 4 : 8)} line="grid" />
      <Stroke on={on} d={front} line="outline" fill="paper" />
      <Stroke on={on} d={layerLines(fine ? 3 : 5)} line="grid" />
      <Hole on={on} />
      <Stroke on={on} d={gap} line="outline" fill="paper" />
      <Stroke on={on} d="M56 44H71V68.5L56 79Z" line="thin" fill="wash" />
      <Stroke on={on} d="M71 68.5H95" line="thin" />
      <Break on={on} fine={fine} />
      <Stroke on={on} d={gap} line="outline" />
      <Stroke on={on} d="M112 61V87H79" line="outline" />
      <Seam on={on} fine={fine} />
      <Tip on={on} fine={fine} />
    </g>
  );
}

/** The raster of the top skin, kept within the top face. */
function skin(pitch: number): string {
  const lines: string[] = [];
  for (let foot = pitch; foot < 134; foot += pitch) {
    const from = Math.max(0, (foot - 112) / 22);
    const to = Math.min(1, foot / 22);
    if (to > from) lines.push(`M${foot - 7 * from} ${33 - 10.5 * from}L${foot - 7 * to} ${33 - 10.5 * to}`);
  }
  return lines.join('');
}

/** Layer lines on the front, leaving out the gap; the hole and the break are drawn over them. */
function layerLines(pitch: number): string {
  const lines: string[] = [];
  for (let y = 87 - pitch; y > 33.5; y -= pitch) {
    const left = y > 79 ? 10 : y > 64 ? 33 : y > 39 ? ((y - 39) / 25) * 33 : 0;
    if (y > 44 && y < 79) lines.push(`M${left} ${y}H56M95 ${y}H112`);
    else lines.push(`M${left} ${y}H112`);
  }
  return lines.join('');
}

const Hole = ({ on }: { readonly on: Frame }) => (
  <g>
    <Disc on={on} x={44.5} y={52} r={6.5} line="outline" fill="paper" />
    <Stroke on={on} d="M44.6 45.6Q43 53 50 55.4" line="thin" />
    <Stroke on={on} d="M35 52H54M44.5 42.5V61.5" line="centre" />
  </g>
);

function Break({ on, fine }: { readonly on: Frame; readonly fine: boolean }) {
  return (
    <g>
      <Stroke on={on} d={broken} line="no-line" fill="paper" />
      <Hatched on={on} d={fine ? 'M84.5 82.6Q86 81.8 98.6 82.2V66.5Q101 66 103 66.5T108.4 64.5V83.4H84.5Z' : 'M84 83Q90 81 98 82V67Q104 66 109 64V84H84Z'} kind="infill" />
      {fine && <Stroke on={on} d="M80.8 85.2H110.2V61M82.4 83.4H108.4V62M96.8 80.8V64M98.6 82.6V66M96.8 80.8H86M98.6 82.6H84" line="thin" />}
      <Stroke on={on} d="M79 87Q80 80 88 79M95 65Q98 60 101 63T107 60T112 61" line="edge" />
    </g>
  );
}

/** A zip of small arcs where each layer began. */
function Seam({ on, fine }: { readonly on: Frame; readonly fine: boolean }) {
  const pitch = fine ? 2.3 : 4;
  const count = Math.floor(50 / pitch);
  return <Stroke on={on} d={Array.from({ length: count }, (_, i) => `M119.5 ${30 + i * pitch}Q121.6 ${30 + i * pitch + pitch * 0.2} 119.6 ${30 + i * pitch + pitch * 0.75}`).join('')} line="edge" />;
}

function Tip({ on, fine }: { readonly on: Frame; readonly fine: boolean }) {
  const rings = fine ? [24, 20.5, 17, 13.5, 10, 6.5] : [22, 15, 8];
  const half = (y: number): number => 0.6 + ((y - 1) / 28.6) * 4.8;
  return (
    <g>
      <Stroke on={on} d="M102.6 29.6L107.2 1Q108 -0.6 108.8 1L113.4 29.6Q108 32.6 102.6 29.6Z" line="outline" fill="paper" />
      <Stroke on={on} d={rings.map((y) => `M${108 - half(y)} ${y}Q108 ${y + 1.4} ${108 + half(y)} ${y}`).join('')} line="grid" />
    </g>
  );
}
