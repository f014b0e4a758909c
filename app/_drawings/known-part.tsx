import type { Point } from './arrows';
import { ArrowHead, angleTo } from './arrows';
import { Balloon } from './balloon';
import { BedLine, Bead, liftedBead, straightBead } from './bead';
import { Dimension } from './dimension';
import { px } from './frame';
import { knownPartWords, knownShape, spotOf, stepView } from './known-part-facts';
import type { FactSpot, KnownFact, KnownShape } from './known-part-facts';
import { Sheet } from './sheet';
import { Words } from './words';

export type { KnownFact } from './known-part-facts';

export interface KnownPartProps {
  readonly facts: readonly KnownFact[];
  readonly width?: number;
  /** Height at which the layers moved, as written on the drawing ("31"), if known. */
  readonly shiftHeight?: string | undefined;
}

/** Layers of the part from the bed up: half width in px of each drawn layer, front view. */
const profile = [40, 40, 15, 15, 15, 18, 22, 26, 30, 34, 38, 42, 46, 50, 22, 22, 22];
const h = 7;
const bed = 164;
const tall = profile.length * h;
const curlScale = 2;
/** The side view starts to be moved at this layer. */
const movedFrom = 12;

/** The case's own part: front with the curl (drawn larger than it is, and saying so), right side with the step, balloons from the facts. */
export function KnownPart({ facts, width = 300, shiftHeight }: KnownPartProps) {
  const shape = knownShape(facts);
  const front = Math.round(width * 0.29);
  const side = Math.round(width * 0.71);
  const spots = facts.flatMap((fact) => {
    const spot = spotOf(fact, facts);
    return spot === undefined ? [] : [{ fact, spot }];
  });
  const curled = shape.curlLeft > 0 || shape.curlRight > 0;
  return (
    <Sheet width={width} height={bed + 34} label={knownPartWords(facts)}>
      <BedLine from={14} to={width - 22} y={bed} />
      <FrontView x={front} shape={shape} />
      <SideView x={side} shape={shape} height={shiftHeight} size={facts.find((f) => spotOf(f, facts) === 'shift' && f.size !== undefined)?.size} />
      <Words x={front} y={bed + 26} anchor="middle" tone="ink2">{curled ? `front, curl × ${curlScale}` : 'front'}</Words>
      <Words x={side} y={bed + 26} anchor="middle" tone="ink2">{stepView(facts)}</Words>
      <Balloons spots={spots} front={front} side={side} width={width} shape={shape} />
    </Sheet>
  );
}

const levelOf = (i: number): number => bed - (i + 0.5) * h;

function FrontView({ x, shape }: { readonly x: number; readonly shape: KnownShape }) {
  return (
    <g>
      {profile.map((half, i) => {
        const y = levelOf(i);
        const flare = i >= 5 && i <= 13 ? (i - 4) / 9 : 0;
        const left = shape.curlLeft * flare * h * 1.4 * curlScale;
        const right = shape.curlRight * flare * h * 1.4 * curlScale;
        const corner = i < 3 ? shape.corners * h * (1 - i * 0.3) : 0;
        if (corner > 0) return <Bead key={i} d={`M${px(x - half + h / 2)} ${px(y - corner)}Q${px(x)} ${px(y + corner)} ${px(x + half - h / 2)} ${px(y - corner)}`} height={h} fault={i === 0} />;
        if (shape.gaps && (i === 1 || i === 8 || i === 10 || i === 13)) return <g key={i}><Bead d={straightBead(x - half, x - half * 0.2, y, h)} height={h} fault /><Bead d={straightBead(x + half * 0.25, x + half, y, h)} height={h} fault /></g>;
        return <CurledLayer key={i} x1={x - half} x2={x + half} y={y} left={left} right={right} />;
      })}
      {shape.melted && <path className="d-line d-accent d-fill-accw" d={`M${x - 22} ${levelOf(14)}C${x - 32} ${levelOf(13)} ${x - 30} ${levelOf(17)} ${x - 6} ${levelOf(17)}S${x + 32} ${levelOf(16)} ${x + 24} ${levelOf(14)}Z`} />}
      <circle className="d-line d-outline d-fill-paper" cx={x} cy={levelOf(15)} r={7} />
      <path className="d-line d-centre" d={`M${x} ${bed + 6}V${bed - tall - 8}M${x - 14} ${levelOf(15)}H${x + 14}`} />
    </g>
  );
}

function CurledLayer({ x1, x2, y, left, right }: { readonly x1: number; readonly x2: number; readonly y: number; readonly left: number; readonly right: number }) {
  const reach = (x2 - x1) * 0.36;
  const leftEnd = liftedBead(x1, x2, y, h, left, reach, 'left');
  const rightEnd = liftedBead(x1, x2, y, h, right, reach, 'right');
  return (
    <>
      <Bead d={straightBead(left > 0 ? x1 + reach : x1, right > 0 ? x2 - reach : x2, y, h)} height={h} />
      {left > 0 && <Bead d={leftEnd.tip} height={h} fault />}
      {right > 0 && <Bead d={rightEnd.tip} height={h} fault />}
    </>
  );
}

const sideHalf = 33;
const stepPx = (shape: KnownShape): number => Math.sign(shape.shift) * (shape.shift === 0 ? 0 : 5);

function SideView({ x, shape, height, size }: { readonly x: number; readonly shape: KnownShape; readonly height: string | undefined; readonly size: string | undefined }) {
  const step = stepPx(shape);
  const seam = bed - movedFrom * h;
  const top = bed - tall;
  return (
    <g>
      {profile.map((_, i) => {
        const lean = shape.lean === 0 ? 0 : Math.sign(shape.lean) * 14 * (i / profile.length) ** 2;
        const moved = i >= movedFrom ? step : 0;
        const open = shape.split && i >= 9 ? 5 : 0;
        const dx = lean + moved;
        return <Bead key={i} d={open > 0 ? `M${px(x - sideHalf + h / 2)} ${px(levelOf(i) - open)}Q${px(x)} ${px(levelOf(i))} ${px(x + sideHalf - h / 2)} ${px(levelOf(i))}` : straightBead(x - sideHalf + dx, x + sideHalf + dx, levelOf(i), h)} height={h} fault={(step !== 0 && i >= movedFrom) || (shape.lean !== 0 && i > 10) || (shape.split && i === 9)} />;
      })}
      <path className="d-line d-centre" d={`M${x} ${bed + 6}V${top - 8}`} />
      {step !== 0 && <Dimension from={x + sideHalf} to={x + sideHalf + step} at={top - 12} edges={[seam + 1, top]} spill="before" {...(size === undefined ? {} : { words: size })} />}
      {step !== 0 && height !== undefined && <Dimension upright from={seam} to={bed} at={x - sideHalf - 16} edges={[x - sideHalf, x - sideHalf]} words={height} />}
    </g>
  );
}

interface Spot {
  readonly fact: KnownFact;
  readonly spot: FactSpot;
}

/** Balloons stand in a column at the left edge for the front view and at the right edge for the side view. */
function Balloons({ spots, front, side, width, shape }: { readonly spots: readonly Spot[]; readonly front: number; readonly side: number; readonly width: number; readonly shape: KnownShape }) {
  const left = spots.filter((s) => columnOf(s.spot) === 'left').slice(0, 5);
  const right = spots.filter((s) => columnOf(s.spot) === 'right').slice(0, 5);
  return (
    <>
      {stacked(left, 'left', (s) => target(s, front, side, shape)).map((b) => <Pointed key={String(b.fact.number)} {...b} x={13} />)}
      {stacked(right, 'right', (s) => target(s, front, side, shape)).map((b) => <Pointed key={String(b.fact.number)} {...b} x={width - 13} />)}
    </>
  );
}

const columnOf = (spot: FactSpot): 'left' | 'right' => (spot === 'shift' || spot === 'lean' || spot === 'split' || spot === 'wall' ? 'right' : 'left');

function target(spot: FactSpot, front: number, side: number, shape: KnownShape): Point {
  switch (spot) {
    case 'curl-left': return { x: front - 26, y: levelOf(8) + 5 };
    case 'curl-right': return { x: front + 26, y: levelOf(8) + 5 };
    case 'corners': return { x: front - 39, y: levelOf(0) };
    case 'gaps': return { x: front - 30, y: levelOf(8) };
    case 'top': return { x: front - 22, y: levelOf(15) };
    case 'shift': return { x: side + sideHalf + Math.max(0, stepPx(shape)) + 1, y: levelOf(movedFrom) };
    case 'lean': return { x: side + sideHalf + 4, y: levelOf(11) };
    case 'split': return { x: side + sideHalf, y: levelOf(9) };
    case 'wall': return { x: side + sideHalf, y: levelOf(6) };
    default: return never(spot);
  }
}

function never(spot: never): never {
  throw new Error(`KnownPart: got spot "${String(spot)}", expected one of FactSpot`);
}

/** Facts at the same spot share a chain: only the one nearest to it carries the leader. */
function stacked(spots: readonly Spot[], side: 'left' | 'right', at: (spot: FactSpot) => Point): { fact: KnownFact; y: number; to: Point | undefined; chain: number | undefined }[] {
  const sorted = [...spots].sort((a, b) => at(a.spot).y - at(b.spot).y);
  const wished = sorted.map((s) => at(s.spot).y - (side === 'left' ? 16 : 10));
  const ys: number[] = [];
  for (const wish of wished) ys.push(Math.max(wish, (ys.at(-1) ?? -20) + 34));
  for (let i = ys.length - 1, limit = bed - 8; i >= 0; i -= 1, limit -= 34) ys[i] = Math.min(ys[i] ?? limit, limit);
  return sorted.map((s, i) => {
    const shared = sorted[i - 1]?.spot === s.spot;
    return { fact: s.fact, y: ys[i] ?? 0, to: shared ? undefined : at(s.spot), chain: shared ? ys[i - 1] : undefined };
  });
}

function Pointed({ fact, x, y, to, chain }: { readonly fact: KnownFact; readonly x: number; readonly y: number; readonly to: Point | undefined; readonly chain: number | undefined }) {
  const angle = to === undefined ? 0 : angleTo({ x, y }, to);
  const rad = (angle * Math.PI) / 180;
  return (
    <g>
      {chain !== undefined && <path className="d-line d-hair" d={`M${x} ${px(chain + 12)}V${px(y - 12)}`} />}
      {to !== undefined && <path className="d-line d-hair" d={`M${px(x + 12 * Math.cos(rad))} ${px(y + 12 * Math.sin(rad))}L${px(to.x)} ${px(to.y)}`} />}
      {to !== undefined && <ArrowHead tip={to} angle={angle} length={9} width={3.2} tone="ink" />}
      <Balloon x={x} y={y} kind={fact.shape} label={fact.number} />
    </g>
  );
}
