import { useId } from 'react';
import type { Drawing as DrawingSpec } from '@/lib/knowledge';
import { AirMeterDrawing, airMeterWords } from './air-meter-drawing';
import { AxisDrawing, axisWords } from './axis-drawing';
import { BagDrawing, bagWords } from './bag-drawing';
import { BedDrawing, bedWords } from './bed-drawing';
import { BeltDrawing, beltWords } from './belt-drawing';
import { BoardDrawing, boardWords } from './board-drawing';
import { CalliperDrawing, calliperWords } from './calliper-drawing';
import { FaceDrawing, faceWords } from './face-drawing';
import { FanDrawing, fanWords } from './fan-drawing';
import { FeederDrawing, feederWords } from './feeder-drawing';
import { sizes } from './frame';
import type { Plate, Size } from './frame';
import { HotEndDrawing, hotEndWords } from './hot-end-drawing';
import { DisplayDrawing, displayWords, MeterDrawing, meterWords, PowerDrawing, powerWords, WatchDrawing, watchWords } from './instrument-drawings';
import { KitchenScaleDrawing, kitchenScaleWords } from './kitchen-scale-drawing';
import { OutletsDrawing, outletsWords } from './outlets-drawing';
import { RoomDrawing, roomWords } from './room-drawing';
import { Sheet } from './sheet';
import { SlicerDrawing, slicerWords } from './slicer-drawing';
import { SpoolDrawing, spoolWords } from './spool-drawing';
import { StackDrawing, stackWords } from './stack-drawing';
import { TestPrintDrawing, testPrintWords } from './test-print-drawing';
import { BridgeDrawing, bridgeWords, TowersDrawing, towersWords } from './towers-drawing';

export interface DrawingProps {
  readonly spec: DrawingSpec;
  /** row 92 × 64, step 150 × 114, figure 320 × 220 px, unless width and height say otherwise. */
  readonly size?: Size;
  readonly width?: number;
  readonly height?: number;
  /** What it is for, spoken before the description: "Step 2", "Edges curl up". */
  readonly title?: string;
  /** The words beside it say the same: leave it out for screen readers. */
  readonly decorative?: boolean;
  /** Fixed id for hatches, where the page must not depend on the order of rendering. */
  readonly id?: string;
  readonly className?: string;
}

/** Any drawing of the knowledge base, made from its parameters. */
export function Drawing({ spec, size = 'row', width = sizes[size].width, height = sizes[size].height, title, decorative, id, className }: DrawingProps) {
  const own = useId().replace(/[^A-Za-z0-9]/g, '');
  const plate: Plate = { id: id ?? `d${own}`, width, height, size };
  const words = drawingWords(spec);
  return (
    <Sheet width={width} height={height} size={size} label={title === undefined ? words : `${title}. ${words}`} decorative={decorative} className={className}>
      <Shown spec={spec} plate={plate} />
    </Sheet>
  );
}

function Shown({ spec, plate }: { readonly spec: DrawingSpec; readonly plate: Plate }) {
  switch (spec.show) {
    case 'stack': return <StackDrawing spec={spec} plate={plate} />;
    case 'towers': return <TowersDrawing spec={spec} plate={plate} />;
    case 'bridge': return <BridgeDrawing spec={spec} plate={plate} />;
    case 'face': return <FaceDrawing spec={spec} plate={plate} />;
    case 'fan': return <FanDrawing spec={spec} plate={plate} />;
    case 'outlets': return <OutletsDrawing spec={spec} plate={plate} />;
    case 'bag': return <BagDrawing spec={spec} plate={plate} />;
    case 'air-meter': return <AirMeterDrawing spec={spec} plate={plate} />;
    case 'kitchen-scale': return <KitchenScaleDrawing spec={spec} plate={plate} />;
    case 'hot-end': return <HotEndDrawing spec={spec} plate={plate} />;
    case 'feeder': return <FeederDrawing spec={spec} plate={plate} />;
    case 'belt': return <BeltDrawing spec={spec} plate={plate} />;
    case 'axis': return <AxisDrawing spec={spec} plate={plate} />;
    case 'bed': return <BedDrawing spec={spec} plate={plate} />;
    case 'board': return <BoardDrawing spec={spec} plate={plate} />;
    case 'calliper': return <CalliperDrawing spec={spec} plate={plate} />;
    case 'watch': return <WatchDrawing spec={spec} plate={plate} />;
    case 'meter': return <MeterDrawing spec={spec} plate={plate} />;
    case 'spool': return <SpoolDrawing spec={spec} plate={plate} />;
    case 'display': return <DisplayDrawing spec={spec} plate={plate} />;
    case 'test-print': return <TestPrintDrawing spec={spec} plate={plate} />;
    case 'slicer': return <SlicerDrawing spec={spec} plate={plate} />;
    case 'power': return <PowerDrawing spec={spec} plate={plate} />;
    case 'room': return <RoomDrawing spec={spec} plate={plate} />;
    default: return never(spec);
  }
}

/** Any drawing in words, from its parameters. */
export function drawingWords(spec: DrawingSpec): string {
  switch (spec.show) {
    case 'stack': return stackWords(spec);
    case 'towers': return towersWords(spec);
    case 'bridge': return bridgeWords(spec);
    case 'face': return faceWords(spec);
    case 'fan': return fanWords(spec);
    case 'outlets': return outletsWords(spec);
    case 'bag': return bagWords(spec);
    case 'air-meter': return airMeterWords(spec);
    case 'kitchen-scale': return kitchenScaleWords(spec);
    case 'hot-end': return hotEndWords(spec);
    case 'feeder': return feederWords(spec);
    case 'belt': return beltWords(spec);
    case 'axis': return axisWords(spec);
    case 'bed': return bedWords(spec);
    case 'board': return boardWords(spec);
    case 'calliper': return calliperWords(spec);
    case 'watch': return watchWords(spec);
    case 'meter': return meterWords(spec);
    case 'spool': return spoolWords(spec);
    case 'display': return displayWords(spec);
    case 'test-print': return testPrintWords(spec);
    case 'slicer': return slicerWords(spec);
    case 'power': return powerWords(spec);
    case 'room': return roomWords(spec);
    default: return never(spec);
  }
}

function never(spec: never): never {
  throw new Error(`Drawing: got ${JSON.stringify(spec)}, expected a drawing of the schema`);
}
