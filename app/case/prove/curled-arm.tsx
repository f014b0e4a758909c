import type { StoredMeasured } from '@/lib/cases';
import { Bead, BedLine, liftedBead, straightBead } from '../../_drawings/bead';
import { Dimension } from '../../_drawings/dimension';
import { Sheet } from '../../_drawings/sheet';
import { isBeyond, type BeforeAfterRow, type FixedLimit } from './before-after-rows';
import './before-after.css';

/** px of one mm of the arm, and how many times larger its curl may be drawn. */
const SCALE = 3.5;
const LARGER = [6, 4, 3, 2, 1] as const;
/** px that the tip may rise before the drawing of the curl gets a smaller scale. */
const MOST_LIFT = 46;
const LAYERS = 8;
const FOOT = 3;
const HEIGHT = 8;

export interface CurledArmProps extends FixedLimit {
  readonly rows: readonly BeforeAfterRow[];
  /** What counts as cured, in the words fixed before: only a rule about curl is drawn as curl. */
  readonly passes: string;
  readonly figure: (value: number) => string;
  readonly width?: number;
}

/** The arm that curled most, from the side, before and after. Nothing when the readings are no lengths of curl. */
export function CurledArm({ rows, limit, good, passes, figure, width = 360 }: CurledArmProps) {
  const worst = [...rows].sort((a, b) => b.before.value - a.before.value)[0];
  const mm = worst && (worst.before.unit === 'mm' ? 1 : worst.before.unit === 'in' ? 25.4 : undefined);
  if (!worst || mm === undefined || !/\bcurl/i.test(passes)) return null;
  const most = Math.max(worst.before.value, worst.after?.value ?? 0) * mm;
  const larger = LARGER.find((each) => most * SCALE * each <= MOST_LIFT) ?? 1;
  const lift = (reading: StoredMeasured): number => Math.min(MOST_LIFT, Math.max(0, reading.value) * mm * SCALE * larger);
  return (
    <figure className="curled-arm">
      <figcaption className="label">{worst.place === 'the place' ? 'The place that was read' : `The ${worst.place} side`}, seen from the side, before{worst.after && ' and after'}; curl drawn {`${larger}\u00A0:\u00A01`}</figcaption>
      <Arm lift={lift(worst.before)} words={figure(worst.before.value)} label={`Before: tip lifted by ${figure(worst.before.value)} ${worst.before.unit}`} beyond={isBeyond(worst.before, { limit, good })} width={width} />
      {worst.after && <Arm lift={lift(worst.after)} words={figure(worst.after.value)} label={`After: tip lifted by ${figure(worst.after.value)} ${worst.after.unit}`} beyond={isBeyond(worst.after, { limit, good })} width={width} />}
    </figure>
  );
}

/** A steep underside to the left: each layer reaches further out, and each tip is lifted more than the one below. */
function Arm({ lift, words, label, beyond, width }: { readonly lift: number; readonly words: string; readonly label: string; readonly beyond: boolean; readonly width: number }) {
  const top = Math.max(22, lift + 8);
  const bed = top + (LAYERS - 0.5) * HEIGHT;
  const right = width - 24;
  const start = Math.min(150, width * 0.4);
  const level = (layer: number): number => bed - (layer + 0.5) * HEIGHT;
  const left = (layer: number): number => start - layer * 9;
  const tip = { x: left(LAYERS - 1), flat: level(LAYERS - 1) - HEIGHT / 2 };
  return (
    <Sheet width={width} height={Math.ceil(bed + 12)} label={label}>
      <BedLine from={start - 40} to={width} y={bed} />
      {Array.from({ length: LAYERS }, (_, layer) => {
        const rise = layer < FOOT ? 0 : lift * ((layer - FOOT + 1) / (LAYERS - FOOT)) ** 1.5;
        if (rise < 0.3) return <Bead key={layer} d={straightBead(left(layer), right, level(layer), HEIGHT)} height={HEIGHT} />;
        const bent = liftedBead(left(layer), right, level(layer), HEIGHT, rise, 58, 'left');
        return <g key={layer}><Bead d={bent.rest} height={HEIGHT} /><Bead d={bent.tip} height={HEIGHT} fault={beyond} /></g>;
      })}
      <Dimension upright from={tip.flat - lift} to={tip.flat} at={tip.x - 34} edges={[tip.x, tip.x]} words={words} spill="before" />
    </Sheet>
  );
}
