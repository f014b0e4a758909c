import type { Drawing } from '@/lib/knowledge';
import { BedLine, Bead, straightBead } from './bead';
import { atX, atY, fit, px } from './frame';
import type { Frame, Plate } from './frame';
import { Block, Disc, Stroke } from './lines';
import { BridgeDrawing, TowersDrawing } from './towers-drawing';
import { Words } from './words';

type TestPrintSpec = Extract<Drawing, { show: 'test-print' }>;

/** The test bodies, sound, as they should come off the bed. */
export function TestPrintDrawing({ spec, plate }: { readonly spec: TestPrintSpec; readonly plate: Plate }) {
  switch (spec.which) {
    case 'eight-directions':
      return <EightDirections plate={plate} />;
    case 'two-towers':
      return <TowersDrawing spec={{ show: 'towers', strings: 0 }} plate={plate} />;
    case 'cube':
      return <Cube on={fit(plate, { w: 62, h: 62 }, { top: 5, bottom: 10 })} wall={false} />;
    case 'single-wall':
      return <Cube on={fit(plate, { w: 62, h: 62 }, { top: 5, bottom: 10 })} wall />;
    case 'bridges':
      return <BridgeDrawing spec={{ show: 'bridge' }} plate={plate} />;
    case 'first-layer-squares':
      return <Squares on={fit(plate, { w: 100, h: 66 }, { top: 5, bottom: 5 })} />;
    case 'temperature-steps':
      return <Steps on={fit(plate, { w: 70, h: 66 }, { top: 4, bottom: 10 })} />;
    default:
      return never(spec.which);
  }
}

function never(which: never): never {
  throw new Error(`TestPrintDrawing: got "${String(which)}", expected a test print of the drawing schema`);
}

/** A hub with eight arms, from above, and one arm from the side where there is room. */
function EightDirections({ plate }: { readonly plate: Plate }) {
  const beside = plate.size === 'figure';
  const on = fit(plate, { w: beside ? 150 : 66, h: 66 }, { top: 5, bottom: 5 });
  const arms = [0, 45, 90, 135, 180, 225, 270, 315];
  const cx = atX(on, 33);
  const cy = atY(on, 33);
  return (
    <>
      {arms.map((deg) => (
        <g key={deg} transform={`rotate(${deg} ${cx} ${cy})`}>
          <Stroke on={on} d="M29 22V2H37V22" line="outline" fill="paper" />
          <Stroke on={on} d="M29 8H37M29 13H37M29 18H37" line="grid" />
        </g>
      ))}
      <Disc on={on} x={33} y={33} r={14} line="outline" fill="paper" />
      <Disc on={on} x={33} y={33} r={5} line="thin" fill="wash" />
      {beside && <ArmFromSide on={on} />}
    </>
  );
}

function ArmFromSide({ on }: { readonly on: Frame }) {
  const h = 4.6 * on.k;
  return (
    <g>
      <BedLine from={atX(on, 88)} to={atX(on, 148)} y={atY(on, 60)} />
      {Array.from({ length: 10 }, (_, i) => <Bead key={i} d={straightBead(atX(on, 112 - i * 2.3), atX(on, 140), atY(on, 60 - (i + 0.5) * 4.6), h)} height={h} />)}
      <Words x={atX(on, 118)} y={atY(on, 6)} anchor="middle" tone="ink2">one arm, from the side</Words>
    </g>
  );
}

function Cube({ on, wall }: { readonly on: Frame; readonly wall: boolean }) {
  return (
    <>
      <BedLine from={atX(on, -8)} to={atX(on, 68)} y={atY(on, 62)} />
      <Stroke on={on} d="M2 18L18 4H60V46L44 62V18Z" line="edge" fill="wash" />
      <Stroke on={on} d="M2 18L18 4H60L44 18Z" line="edge" fill="paper" />
      {wall && <Stroke on={on} d="M7 16.4L19.4 6H55L42.6 16.4Z" line="thin" fill="wash" />}
      <Block on={on} x={2} y={18} w={42} h={44} line="outline" fill="paper" />
      <Stroke on={on} d={[24, 30, 36, 42, 48, 54].map((y) => `M2 ${y}H44`).join('')} line="grid" />
      <Stroke on={on} d="M44 18L60 4M44 62L60 46" line="edge" />
    </>
  );
}

function Squares({ on }: { readonly on: Frame }) {
  const spots = [[8, 6], [80, 6], [44, 28], [8, 50], [80, 50]];
  return (
    <>
      <Block on={on} x={2} y={1} w={96} h={64} line="outline" fill="paper" />
      {spots.map(([x = 0, y = 0]) => (
        <g key={`${x}-${y}`}>
          <Block on={on} x={x} y={y} w={12} h={10} line="edge" fill="paper" />
          <Stroke on={on} d={[2.5, 5, 7.5].map((d) => `M${x} ${y + d}H${x + 12}`).join('')} line="thin" />
        </g>
      ))}
    </>
  );
}

function Steps({ on }: { readonly on: Frame }) {
  return (
    <>
      <BedLine from={atX(on, 4)} to={atX(on, 66)} y={atY(on, 66)} />
      {[0, 1, 2, 3, 4].map((i) => (
        <g key={i}>
          <Stroke on={on} d={`M18 ${52 - i * 13}H52V${66 - i * 13}H18ZM52 ${54 - i * 13}H60L52 ${62 - i * 13}Z`} line="edge" fill="paper" />
          <Stroke on={on} d={[3, 6, 9].map((d) => `M18 ${53 + d - i * 13}H52`).join('')} line="grid" />
          {on.size === 'figure' && <Words x={px(atX(on, 35))} y={atY(on, 59 - i * 13) + 5} anchor="middle" halo>{['hottest', '', '', '', 'coolest'][i] ?? ''}</Words>}
        </g>
      ))}
    </>
  );
}

const testNames: Readonly<Record<TestPrintSpec['which'], string>> = {
  'eight-directions': 'A hub with eight arms, one for each direction, seen from above', 'two-towers': 'Two towers side by side', cube: 'A cube', 'single-wall': 'A box with a single wall', bridges: 'A span across a gap', 'first-layer-squares': 'Five squares of one layer, in the corners and in the middle of the bed', 'temperature-steps': 'A tower of five steps, each printed at another temperature',
};
export const testPrintWords = (spec: TestPrintSpec): string => `Test print: ${testNames[spec.which]}.`;
