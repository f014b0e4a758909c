import type { Drawing } from '@/lib/knowledge';
import type { BalloonKind } from './balloon';
import type { StackSpec } from './stack-layers';

export type Faces = 'left' | 'right' | 'front' | 'back' | 'front-left' | 'front-right' | 'back-left' | 'back-right' | 'all-round';

/** One fact of the case as far as it can be drawn. */
export interface KnownFact {
  readonly number: number | string;
  readonly about: string;
  readonly shape: BalloonKind;
  readonly faces?: Faces | undefined;
  /** The drawing of its symptom; a stack tells where on the part the fact sits. */
  readonly drawing?: Drawing | undefined;
  /** For example "1.6": written at the step or at the height, without unit when the caption names it. */
  readonly size?: string | undefined;
}

/** Where a fact sits: on the front view or on the side view, and at what. */
export type FactSpot = 'curl-left' | 'curl-right' | 'corners' | 'wall' | 'gaps' | 'top' | 'shift' | 'lean' | 'split';

/** What the seen facts together make of the part. */
export interface KnownShape {
  readonly curlLeft: number;
  readonly curlRight: number;
  readonly corners: number;
  readonly gaps: boolean;
  readonly melted: boolean;
  readonly shift: number;
  readonly lean: number;
  readonly split: boolean;
}

const seen = (fact: KnownFact): boolean => fact.shape === 'seen' || fact.shape === 'measured';

/** Caption of the view that shows the step: the part from the right side, or only the step where it goes left and right. */
export function stepView(facts: readonly KnownFact[]): 'right side' | 'step, left to right' {
  return facts.some((fact) => seen(fact) && fact.about === 'shift-along-x') ? 'step, left to right' : 'right side';
}

export function knownShape(facts: readonly KnownFact[]): KnownShape {
  const stacks = facts.filter(seen).flatMap((fact) => (fact.drawing?.show === 'stack' ? [{ fact, spec: fact.drawing }] : []));
  const most = (pick: (spec: StackSpec) => number | undefined): number => stacks.reduce((far, { spec }) => (Math.abs(pick(spec) ?? 0) > Math.abs(far) ? (pick(spec) ?? 0) : far), 0);
  const curl = (side: 'left' | 'right'): number => Math.max(0, ...stacks.filter(({ fact, spec }) => sidesOf(fact, spec, facts)[side]).map(({ spec }) => spec.curl ?? 0));
  return {
    curlLeft: curl('left'),
    curlRight: curl('right'),
    corners: most((s) => s.liftedCorners),
    gaps: most((s) => s.gaps) > 0 || most((s) => s.thin) > 0,
    melted: most((s) => s.melted) > 0,
    shift: most((s) => s.shift),
    lean: most((s) => s.lean),
    split: stacks.some(({ spec }) => spec.split !== undefined),
  };
}

/** A curl that is told of one side is drawn there, also when another fact told the side. */
function sidesOf(fact: KnownFact, spec: StackSpec, facts: readonly KnownFact[]): { left: boolean; right: boolean } {
  const told = fact.faces ?? facts.find((f) => seen(f) && f.faces !== undefined && f.drawing?.show === 'stack' && (f.drawing.curl ?? 0) > 0)?.faces;
  if (told === undefined) return { left: spec.curlSide !== 'right', right: spec.curlSide === 'right' || spec.curlSide === 'both' };
  return { left: told.includes('left') || told === 'all-round' || told === 'front', right: told.includes('right') || told === 'all-round' || told === 'back' };
}

/** Where the balloon of a fact points, or nowhere when the fact has no place on the part. */
export function spotOf(fact: KnownFact, facts: readonly KnownFact[]): FactSpot | undefined {
  if (fact.drawing?.show !== 'stack' || !seen(fact)) return undefined;
  const spec = fact.drawing;
  if ((spec.shift ?? 0) !== 0) return 'shift';
  if ((spec.curl ?? 0) > 0) return sidesOf(fact, spec, facts).left ? 'curl-left' : 'curl-right';
  if ((spec.liftedCorners ?? 0) > 0 || (spec.wideFoot ?? 0) > 0) return 'corners';
  if ((spec.lean ?? 0) !== 0) return 'lean';
  if (spec.split !== undefined) return 'split';
  if ((spec.gaps ?? 0) > 0 || (spec.thin ?? 0) > 0) return 'gaps';
  return (spec.melted ?? 0) > 0 || spec.stopsAt !== undefined ? 'top' : 'wall';
}

/** The part in words. */
export function knownPartWords(facts: readonly KnownFact[]): string {
  const shape = knownShape(facts);
  const said = [
    shape.curlLeft > 0 ? 'edges of the steep underside curled up on the left' : '',
    shape.curlRight > 0 ? 'edges of the steep underside curled up on the right' : '',
    shape.corners > 0 ? 'bottom corners lifted' : '',
    shape.gaps ? 'stretches of lines missing' : '',
    shape.melted ? 'the top slumped' : '',
    shape.shift !== 0 ? 'upper layers moved over' : '',
    shape.lean !== 0 ? 'the wall leaning' : '',
    shape.split ? 'layers parted' : '',
  ].filter((s) => s !== '');
  const placed = facts.filter((f) => spotOf(f, facts) !== undefined).map((f) => f.number);
  return `The part as told, from the front and ${stepView(facts) === 'right side' ? 'from the right side' : 'with its step from left to right'}: ${said.length === 0 ? 'nothing to draw yet' : said.join(', ')}.${placed.length === 0 ? '' : ` Numbered on the drawing: ${placed.join(', ')}.`}`;
}
