import { BedLine, Bead, liftedBead, straightBead } from './bead';
import { Dimension } from './dimension';
import type { Plate } from './frame';
import { px } from './frame';
import { layerCount, shapeOf, shiftStart, stackOf } from './stack-layers';
import type { Stack, StackLayer, StackSpec } from './stack-layers';

interface StackPlace {
  readonly h: number;
  readonly middle: number;
  readonly bed: number;
}

/** A stack of layers on the bed, with its faults. Drawn layers may stand for several printed ones. */
export function StackDrawing({ spec, plate }: { readonly spec: StackSpec; readonly plate: Plate }) {
  const stack = stackOf(spec);
  const place = placeStack(stack, plate, (spec.shift ?? 0) !== 0);
  const half = Math.min(plate.width / 2 - 2, Math.max(-stack.left, stack.right) * place.h + 18);
  return (
    <>
      <BedLine from={px(plate.width / 2 - half)} to={px(plate.width / 2 + half)} y={place.bed} />
      {(spec.lean ?? 0) !== 0 && <UprightLine stack={stack} place={place} />}
      {stack.layers.map((layer) => <Layer key={layer.index} layer={layer} spec={spec} place={place} />)}
      {(spec.shift ?? 0) !== 0 && <StepSize spec={spec} stack={stack} place={place} />}
      {(spec.ripple ?? 0) > 0 && <Ripples share={spec.ripple ?? 0} stack={stack} place={place} />}
      {(spec.blobs ?? 0) > 0 && <Blobs count={spec.blobs ?? 0} stack={stack} place={place} />}
      {(spec.melted ?? 0) > 0 && <Melt share={spec.melted ?? 0} stack={stack} place={place} />}
    </>
  );
}

function placeStack(stack: Stack, plate: Plate, dimensioned: boolean): StackPlace {
  const above = dimensioned ? 14 : 3;
  const below = 9;
  const width = stack.right - stack.left;
  const roomy = plate.size === 'figure' ? 14 : 9;
  const h = Math.min(roomy, (plate.height - above - below) / stack.top, (plate.width - 10) / width);
  const tall = (plate.height + above - below - stack.top * h) / 2;
  return { h, middle: plate.width / 2 - ((stack.left + stack.right) / 2) * h, bed: px(Math.min(plate.height - below, plate.height - below - Math.max(0, tall - above))) };
}

function Layer({ layer, spec, place: { h, middle, bed } }: { readonly layer: StackLayer; readonly spec: StackSpec; readonly place: StackPlace }) {
  const y = bed - (layer.index + 0.5) * h;
  const x1 = middle + layer.left * h;
  const x2 = middle + layer.right * h;
  const height = h * (1 - 0.55 * (layer.index > 0 ? (spec.thin ?? 0) : 0));
  if (layer.missing) return <path className="d-line d-ghost" d={`M${px(x1 + h / 2)} ${px(y - h / 2)}H${px(x2 - h / 2)}A${px(h / 2)} ${px(h / 2)} 0 0 1 ${px(x2 - h / 2)} ${px(y + h / 2)}H${px(x1 + h / 2)}A${px(h / 2)} ${px(h / 2)} 0 0 1 ${px(x1 + h / 2)} ${px(y - h / 2)}Z`} />;
  if ((spec.liftedCorners ?? 0) > 0) return <Bead d={bowed(x1, x2, y, h, layer.liftLeft * h)} height={height} fault={layer.fault} />;
  if (layer.opened > 0) return <Bead d={wedged(x1, x2, y, h, layer.opened * h)} height={height} fault={layer.index === spec.split} />;
  if ((spec.gaps ?? 0) > 0 && gapsIn(spec, layer.index) > 0) return <Broken x1={x1} x2={x2} y={y} h={height} shift={layer.index} gaps={gapsIn(spec, layer.index)} />;
  if (layer.liftLeft > 0 || layer.liftRight > 0) return <Curled layer={layer} x1={x1} x2={x2} y={y} h={height} />;
  return <Bead d={straightBead(x1, x2, y, height)} height={height} fault={layer.fault} />;
}

function Curled({ layer, x1, x2, y, h }: { readonly layer: StackLayer; readonly x1: number; readonly x2: number; readonly y: number; readonly h: number }) {
  const reach = (x2 - x1) * (layer.liftLeft > 0 && layer.liftRight > 0 ? 0.4 : 0.55);
  const left = liftedBead(x1, x2, y, h, layer.liftLeft * h, reach, 'left');
  const right = liftedBead(x1, x2, y, h, layer.liftRight * h, reach, 'right');
  const straight = `M${px(layer.liftLeft > 0 ? x1 + h / 2 + reach : x1 + h / 2)} ${px(y)}H${px(layer.liftRight > 0 ? x2 - h / 2 - reach : x2 - h / 2)}`;
  return (
    <>
      <Bead d={straight} height={h} fault={layer.fault} />
      {layer.liftLeft > 0 && <Bead d={left.tip} height={h} fault />}
      {layer.liftRight > 0 && <Bead d={right.tip} height={h} fault />}
    </>
  );
}

/** Both ends up, the middle still on the layer below. */
const bowed = (x1: number, x2: number, y: number, h: number, lift: number): string =>
  `M${px(x1 + h / 2)} ${px(y - lift)}Q${px((x1 + x2) / 2)} ${px(y + lift)} ${px(x2 - h / 2)} ${px(y - lift)}`;

/** Open at the left end, closed at 0.8 of the width: the crack between two layers. */
const wedged = (x1: number, x2: number, y: number, h: number, open: number): string =>
  `M${px(x1 + h / 2)} ${px(y - open)}Q${px(x1 + (x2 - x1) * 0.45)} ${px(y - open * 0.25)} ${px(x1 + (x2 - x1) * 0.8)} ${px(y)}H${px(x2 - h / 2)}`;

/** Missing stretches are dealt out over the upper layers, never on the first. */
function gapsIn(spec: StackSpec, index: number): number {
  const rows = layerCount(spec) - 1;
  let count = 0;
  for (let gap = 0; gap < (spec.gaps ?? 0); gap += 1) if (1 + ((gap * 2 + 1) % rows) === index) count += 1;
  return Math.min(2, count);
}

function Broken({ x1, x2, y, h, shift, gaps }: { readonly x1: number; readonly x2: number; readonly y: number; readonly h: number; readonly shift: number; readonly gaps: number }) {
  const w = x2 - x1;
  const cuts = gaps === 1 ? [0.25 + ((shift * 0.37) % 0.4)] : [0.2 + ((shift * 0.31) % 0.15), 0.6 + ((shift * 0.23) % 0.15)];
  const starts = [x1, ...cuts.map((c) => x1 + (c + 0.17) * w)];
  const ends = [...cuts.map((c) => x1 + c * w), x2];
  return <>{starts.map((start, i) => <Bead key={start} d={straightBead(start, ends[i] ?? x2, y, h)} height={h} fault />)}</>;
}

function UprightLine({ stack, place: { h, middle, bed } }: { readonly stack: Stack; readonly place: StackPlace }) {
  const first = stack.layers[0];
  const last = stack.layers.at(-1);
  if (first === undefined || last === undefined) return null;
  const x = middle + (last.left > first.left ? first.left : first.right) * h;
  return <path className="d-line d-centre" d={`M${px(x)} ${px(bed + 4)}V${px(bed - stack.top * h - 2)}`} />;
}

function StepSize({ spec, stack, place: { h, middle, bed } }: { readonly spec: StackSpec; readonly stack: Stack; readonly place: StackPlace }) {
  const at = shiftStart(spec);
  const below = stack.layers[at - 1];
  const above = stack.layers[at];
  if (below === undefined || above === undefined) return null;
  const end = (spec.shift ?? 0) > 0 ? 'right' : 'left';
  const line = bed - stack.top * h - 8;
  return <Dimension from={middle + below[end] * h} to={middle + above[end] * h} at={px(line)} edges={[px(bed - at * h + 2), px(bed - stack.top * h)]} accent />;
}

/** Waves along the wall that fade away from the corner at the right. */
function Ripples({ share, stack, place: { h, middle, bed } }: { readonly share: number; readonly stack: Stack; readonly place: StackPlace }) {
  const top = stack.layers.at(-1);
  if (top === undefined) return null;
  const right = middle + top.right * h;
  return (
    <g className="d-line d-accent">
      {[0, 1, 2, 3, 4].filter((i) => i / 5 < 0.25 + share * 0.75).map((i) => (
        <path key={i} strokeWidth={px(2.4 - i * 0.4)} d={`M${px(right - (1 + i * 1.45) * h)} ${px(bed - stack.top * h + 1)}q${px(-0.5 * h)} ${px((stack.top * h) / 2)} 0 ${px(stack.top * h - 2)}`} />
      ))}
    </g>
  );
}

const blobPlaces = [[1, 0.62], [0.42, 0.8], [0, 0.4], [0.7, 0.3], [1, 0.25], [0.2, 0.6], [0.55, 0.52], [0, 0.75]] as const;

function Blobs({ count, stack, place: { h, middle, bed } }: { readonly count: number; readonly stack: Stack; readonly place: StackPlace }) {
  return (
    <>
      {blobPlaces.slice(0, count).map(([across, up]) => {
        const layer = stack.layers[Math.floor(up * stack.layers.length)];
        if (layer === undefined) return null;
        return <circle key={`${across}-${up}`} className="d-line d-accent d-fill-accw" cx={px(middle + (layer.left + across * (layer.right - layer.left)) * h)} cy={px(bed - (layer.index + 0.5) * h)} r={px(h * 0.62)} />;
      })}
    </>
  );
}

/** The top has slumped into a rounded lump that hangs over its own wall. */
function Melt({ share, stack, place: { h, middle, bed } }: { readonly share: number; readonly stack: Stack; readonly place: StackPlace }) {
  const from = Math.max(1, Math.round(stack.layers.length * (1 - 0.6 * share)));
  const layer = stack.layers[from];
  if (layer === undefined) return null;
  const y = bed - from * h;
  const top = bed - stack.layers.length * h + h * share;
  const left = middle + layer.left * h;
  const right = middle + layer.right * h;
  const over = h * (0.5 + share * 1.1);
  return (
    <path
      className="d-line d-accent d-fill-accw"
      d={`M${px(left)} ${px(y)}C${px(left - over)} ${px(y + h)} ${px(left - over * 1.4)} ${px((y + top) / 2)} ${px(left + (right - left) * 0.22)} ${px(top)}Q${px((left + right) / 2)} ${px(top - h * 0.9)} ${px(right - (right - left) * 0.22)} ${px(top + 1)}C${px(right + over * 1.2)} ${px((y + top) / 2)} ${px(right + over * 0.9)} ${px(y + h * 1.6)} ${px(right)} ${px(y + h * 0.4)}Q${px((left + right) / 2)} ${px(y - h * 0.6)} ${px(left)} ${px(y)}Z`}
    />
  );
}

const shapeWords = { block: 'A stack of', overhang: 'A steep underside of', tower: 'A narrow tower of', pyramid: 'A shape that narrows upward, of' } as const;

/** The picture in words, from its parameters. */
export function stackWords(spec: StackSpec): string {
  const said = [
    (spec.curl ?? 0) > 0 ? `the ${sideWords(spec.curlSide)} curled up ${degree(spec.curl ?? 0)}` : '',
    (spec.shift ?? 0) !== 0 ? `from layer ${shiftStart(spec) + 1} up moved to the ${(spec.shift ?? 0) > 0 ? 'right' : 'left'} by ${Math.abs(spec.shift ?? 0)} layer heights` : '',
    (spec.lean ?? 0) !== 0 ? `leaning more to the ${(spec.lean ?? 0) > 0 ? 'right' : 'left'} with every layer` : '',
    (spec.liftedCorners ?? 0) > 0 ? `both bottom corners lifted off the bed ${degree(spec.liftedCorners ?? 0)}` : '',
    (spec.gaps ?? 0) > 0 ? `with ${spec.gaps ?? 0} missing stretches` : '',
    spec.split !== undefined ? `split open above layer ${spec.split}` : '',
    spec.bands !== undefined ? (spec.bands === 'irregular' ? 'with layers of uneven width' : 'with every fourth layer wider') : '',
    (spec.ripple ?? 0) > 0 ? 'with ripples that fade from the corner' : '',
    (spec.blobs ?? 0) > 0 ? `with ${spec.blobs ?? 0} blobs on the wall` : '',
    (spec.wideFoot ?? 0) > 0 ? 'with a foot wider than the wall' : '',
    (spec.thin ?? 0) > 0 ? 'with lines too thin to touch each other' : '',
    spec.stopsAt !== undefined ? `ending after layer ${spec.stopsAt}, the rest missing` : '',
    (spec.melted ?? 0) > 0 ? 'with a top slumped into a lump' : '',
  ].filter((s) => s !== '');
  return `${shapeWords[shapeOf(spec)]} ${layerCount(spec)} layers on the bed${said.length > 0 ? `, ${said.join(', ')}` : ''}.`;
}

const sideWords = (side: StackSpec['curlSide']): string => (side === 'both' ? 'edges on both sides' : `${side ?? 'left'} edge`);
const degree = (share: number): string => (share < 0.34 ? 'a little' : share < 0.67 ? 'clearly' : 'strongly');
