import { si, type Si } from '@/lib/units';
import type { Air } from './air';
import {
  DISCHARGE_COEFFICIENT, EXIT_LOSS, contractionLoss, expansionLoss, taperedContractionLoss, thinSlotLoss,
} from './fittings';
import { frictionFactor } from './friction';
import { areaOf, hydraulicDiameterOf, type Section } from './section';

/** Kinds of loss, as the picture and the share list name them. */
export type LossGroup = 'friction' | 'bend' | 'contraction' | 'expansion' | 'exit' | 'slot' | 'leak' | 'other';

/** A place where pressure is lost: a fitting with a coefficient on the speed in `area`, or a straight piece with friction. */
export type DuctElement =
  | { readonly kind: 'fitting'; readonly label: string; readonly group: LossGroup; readonly coefficient: number; readonly area: number }
  | { readonly kind: 'straight'; readonly label: string; readonly section: Section; readonly length: number; readonly roughness: number };

/**
 * How an outlet ends. `land`: a step down to a short straight mouth; `thin`: a slot in a wall thinner than the slot;
 * `tapered`: walls that slope or round towards the mouth; `open`: the duct simply ends.
 */
export type OutletEnding = 'land' | 'thin' | 'tapered' | 'open';

/** One outlet with the branch that leads to it from the fork. Areas in m². */
export interface OutletBranch {
  readonly name: string;
  readonly ending: OutletEnding;
  readonly area: number;
  /** Area of the branch just before the mouth, m². */
  readonly branchArea: number;
  /** Share of its area that the jet through a thin slot keeps; of no account for other endings. */
  readonly dischargeCoefficient: number;
  readonly elements: readonly DuctElement[];
  /** A gap just before the mouth, m². */
  readonly leakArea?: number;
  /** What the mouth costs where readings have moved it; the figures of its ending otherwise. */
  readonly mouth?: readonly DuctElement[];
}

/** A gap that lets air out before it reaches an outlet. Area in m². */
export interface LeakGap {
  readonly at: 'fan' | 'fork';
  readonly area: number;
  readonly dischargeCoefficient: number;
}

/** From the fan's outlet to one or more outlets. */
export interface DuctNetwork {
  /** `total`: the motion of the air at the fan's outlet is credited, as the duct carries on from there. `static`: it is not. */
  readonly mode: 'static' | 'total';
  /** Area of the fan's own outlet, m². */
  readonly fanOutletArea: number;
  /** Area of the duct behind the fan, m², and just before the fork when it differs. */
  readonly trunkArea: number;
  readonly forkArea?: number;
  readonly trunk: readonly DuctElement[];
  readonly outlets: readonly OutletBranch[];
  readonly leaks: readonly LeakGap[];
}

/** Air through one outlet. */
export interface OutletFlow {
  readonly name: string;
  readonly flow: Si<'volume-flow'>;
  /** Flow over the area of the mouth. */
  readonly meanSpeed: Si<'speed'>;
  /** Speed of the jet itself: faster than the mean behind a thin slot, because the jet is narrower than the slot. */
  readonly jetSpeed: Si<'speed'>;
}

/** Power lost at one place, W, for the share list. */
export interface LossAtElement {
  readonly label: string;
  readonly group: LossGroup;
  readonly power: number;
}

/** The whole network at one driving pressure. */
export interface NetworkFlow {
  readonly flowFromFan: Si<'volume-flow'>;
  /** Pressure that the network takes at the fan, Pa: total pressure in `total` mode, static in `static` mode. */
  readonly pressureAtFan: Si<'pressure'>;
  readonly leakFlow: Si<'volume-flow'>;
  readonly outlets: readonly OutletFlow[];
  readonly losses: readonly LossAtElement[];
}

/**
 * What flows where when the pressure at the fork is `forkPressure` (Pa, above 0; throws otherwise).
 *
 * Parallel outlets share one pressure: each takes sqrt(p/k) of its own k. Friction depends on each branch's own Reynolds number.
 * A leak is driven by the static pressure at its place. The turn at the fork costs nothing, which is an estimate for short ducts.
 * Source: energy line with sudden fittings, any fluid mechanics text. Worked: equal slots of 37.5 and 30 mm² share 0.5556 to 0.4444.
 */
export function networkAt(network: DuctNetwork, air: Air, forkPressure: number): NetworkFlow {
  const { branches, trunkFlow, forkLeak, fanLeak, pressureBeforeTrunk } = stateAt(network, air, forkPressure);
  const mouthLeak = branches.reduce((sum, { flow, out }) => sum + flow - out, 0);
  const leakFlow = forkLeak + fanLeak + mouthLeak;
  const leakPower = forkLeak * forkPressure + fanLeak * pressureBeforeTrunk + branches.reduce((sum, { outlet, flow, out }) => sum + (flow - out) * mouthPressure(outlet, air, out), 0);
  return {
    flowFromFan: si('volume-flow', trunkFlow + fanLeak),
    pressureAtFan: si('pressure', pressureBeforeTrunk),
    leakFlow: si('volume-flow', leakFlow),
    outlets: branches.map(({ outlet, out }) => outletFlowOf(outlet, out)),
    losses: [
      ...network.trunk.map((element) => lossAt(element, air, trunkFlow)),
      ...branches.flatMap(({ outlet, flow, out }) => [
        ...outlet.elements.map((element) => lossAt(element, air, flow)),
        ...mouthElements(outlet).map((element) => lossAt(element, air, out)),
      ]),
      ...(leakFlow > 0 ? [{ label: 'leak', group: 'leak' as const, power: leakPower }] : []),
    ],
  };
}

/** Flow from the fan (m³/s) and pressure there (Pa) at a fork pressure: what a solver asks for hundreds of times. As `networkAt`. */
export function demandAt(network: DuctNetwork, air: Air, forkPressure: number): { readonly flow: number; readonly pressure: number } {
  const { trunkFlow, fanLeak, pressureBeforeTrunk } = stateAt(network, air, forkPressure);
  return { flow: trunkFlow + fanLeak, pressure: pressureBeforeTrunk };
}

interface BranchState {
  readonly outlet: OutletBranch;
  /** Into the branch, and out of its mouth, m³/s; a gap before the mouth takes the rest. */
  readonly flow: number;
  readonly out: number;
}

interface NetworkState {
  readonly branches: readonly BranchState[];
  readonly trunkFlow: number;
  readonly forkLeak: number;
  readonly fanLeak: number;
  readonly pressureBeforeTrunk: number;
}

function stateAt(network: DuctNetwork, air: Air, forkPressure: number): NetworkState {
  if (!(forkPressure > 0)) throw new Error(`networkAt: got fork pressure ${forkPressure} Pa, expected above 0`);
  const branches = network.outlets.map((outlet) => branchAt(outlet, network.mode, air, forkPressure));
  const outletFlow = branches.reduce((sum, { flow }) => sum + flow, 0);
  const forkLeak = leakThrough(network, 'fork', air, forkPressure, outletFlow);
  const trunkFlow = outletFlow + forkLeak;
  const pressureBeforeTrunk = forkPressure + runResistanceAt(network.trunk, air, trunkFlow) * trunkFlow ** 2;
  const fanLeak = leakThrough(network, 'fan', air, pressureBeforeTrunk, trunkFlow);
  return { branches, trunkFlow, forkLeak, fanLeak, pressureBeforeTrunk };
}

/** The loss coefficient of an element at a flow (m³/s), on the speed in its own section. Worked: 30 mm of 15 × 20 mm at 7.6e-4 m³/s gives 0.050. */
export function lossCoefficientOf(element: DuctElement, air: Air, flow: number): number {
  if (element.kind === 'fitting') return element.coefficient;
  const diameter = hydraulicDiameterOf(element.section);
  const reynolds = (air.density * (flow / areaOf(element.section)) * diameter) / air.viscosity;
  return frictionFactor(element.section, Math.max(reynolds, 1e-9), element.roughness / diameter) * (element.length / diameter);
}

/** Area that an element's coefficient refers to, m². */
export function referenceAreaOf(element: DuctElement): number {
  return element.kind === 'fitting' ? element.area : areaOf(element.section);
}

/** The fittings that the mouth of a branch makes. */
export function mouthElements(outlet: OutletBranch): readonly DuctElement[] {
  const known = MOUTHS.get(outlet);
  if (known !== undefined) return known;
  const elements = outlet.mouth ?? madeByMouth(outlet);
  MOUTHS.set(outlet, elements);
  return elements;
}

/** Mouths that were met before: a solver asks for the same ones hundreds of times. */
const MOUTHS = new WeakMap<OutletBranch, readonly DuctElement[]>();

function madeByMouth(outlet: OutletBranch): DuctElement[] {
  const { name, area, branchArea } = outlet;
  const fitting = (label: string, group: LossGroup, coefficient: number, at: number): DuctElement =>
    ({ kind: 'fitting', label: `${label}, ${name}`, group, coefficient, area: at });
  const exit = fitting('air leaving', 'exit', EXIT_LOSS, area);
  if (area > branchArea) return [fitting('widening', 'expansion', expansionLoss(branchArea / area), branchArea), exit];
  const ratio = area / branchArea;
  switch (outlet.ending) {
    case 'land': return [fitting('narrowing', 'contraction', contractionLoss(ratio), area), exit];
    case 'tapered': return [fitting('narrowing', 'contraction', taperedContractionLoss(ratio), area), exit];
    case 'thin': return [fitting('thin slot', 'slot', thinSlotLoss(outlet.dischargeCoefficient), area)];
    case 'open': return [exit];
    default: return outlet.ending satisfies never;
  }
}

/**
 * Flow through a branch under a pressure. At once where nothing in it depends on the flow; else repeated substitution, which
 * shrinks the error at least by half each round, carried on to its limit every other round (Aitken).
 */
function branchAt(outlet: OutletBranch, mode: DuctNetwork['mode'], air: Air, pressure: number): BranchState {
  const mouth = mouthConductance(outlet, mode, air);
  const atMouth = 1 / mouth.all ** 2;
  const run = splitRun(outlet.elements);
  let flow = Math.sqrt(pressure / ((air.density / 2) * run.fittings + atMouth));
  if (run.straights.length === 0) return { outlet, flow, out: flow * mouth.share };
  for (let round = 0; round < 50; round += 1) {
    const once = flowThrough(run, air, pressure, atMouth, flow);
    if (Math.abs(once - flow) <= 1e-12 * once) return { outlet, flow: once, out: once * mouth.share };
    const twice = flowThrough(run, air, pressure, atMouth, once);
    const bend = twice - 2 * once + flow;
    const limit = bend === 0 ? twice : flow - (once - flow) ** 2 / bend;
    flow = limit > 0.5 * twice && limit < 2 * twice ? limit : twice;
  }
  return { outlet, flow, out: flow * mouth.share };
}

/** Flow through a branch if its friction were that of another flow. */
function flowThrough(run: SplitRun, air: Air, pressure: number, atMouth: number, frictionOf: number): number {
  return Math.sqrt(pressure / (resistanceOf(run, air, frictionOf) + atMouth));
}

/** Flow per root of the pressure before a mouth through mouth and gap together, m³/s/√Pa, and the share that leaves by the mouth. */
function mouthConductance(outlet: OutletBranch, mode: DuctNetwork['mode'], air: Air): { readonly all: number; readonly share: number } {
  const open = 1 / Math.sqrt(runResistanceAt(mouthElements(outlet), air, 0));
  const { leakArea = 0 } = outlet;
  if (leakArea === 0) return { all: open, share: 1 };
  const gap = DISCHARGE_COEFFICIENT * leakArea * Math.sqrt(2 / air.density);
  const motion = mode === 'total' ? air.density / 2 / outlet.branchArea ** 2 : 0;
  // Driven by the static pressure of the air that goes on to the mouth, as at the other gaps.
  const all = open + gap * Math.sqrt(Math.max(0, 1 - motion * open ** 2));
  return { all, share: open / all };
}

function mouthPressure(outlet: OutletBranch, air: Air, out: number): number {
  return runResistanceAt(mouthElements(outlet), air, out) * out ** 2;
}

/** Resistance of elements in a row, Pa·s²/m⁶: fittings once and for all, friction at the flow. */
function runResistanceAt(elements: readonly DuctElement[], air: Air, flow: number): number {
  return resistanceOf(splitRun(elements), air, flow);
}

function resistanceOf(run: SplitRun, air: Air, flow: number): number {
  let perHalfDensity = run.fittings;
  for (const { section, reynoldsPerFlow, relativeRoughness, perFactor } of run.straights) {
    const reynolds = (air.density / air.viscosity) * reynoldsPerFlow * flow;
    perHalfDensity += perFactor * frictionFactor(section, Math.max(reynolds, 1e-9), relativeRoughness);
  }
  return (air.density / 2) * perHalfDensity;
}

interface SplitRun {
  /** Sum of coefficient over area squared, 1/m⁴. */
  readonly fittings: number;
  readonly straights: readonly StraightRun[];
}

/** What a straight piece has of its own, worked out once. */
interface StraightRun {
  readonly section: Section;
  /** Reynolds number per flow, times the kinematic viscosity: diameter over area, 1/m. */
  readonly reynoldsPerFlow: number;
  readonly relativeRoughness: number;
  /** Coefficient over area squared per friction factor, 1/m⁴. */
  readonly perFactor: number;
}

/** Runs that were met before. */
const RUNS = new WeakMap<readonly DuctElement[], SplitRun>();

function splitRun(elements: readonly DuctElement[]): SplitRun {
  const known = RUNS.get(elements);
  if (known !== undefined) return known;
  const run = {
    fittings: elements.reduce((sum, element) => (element.kind === 'fitting' ? sum + element.coefficient / element.area ** 2 : sum), 0),
    straights: elements.flatMap((element) => (element.kind === 'straight' ? [straightRun(element)] : [])),
  };
  RUNS.set(elements, run);
  return run;
}

function straightRun({ section, length, roughness }: Extract<DuctElement, { kind: 'straight' }>): StraightRun {
  const area = areaOf(section);
  const diameter = hydraulicDiameterOf(section);
  return { section, reynoldsPerFlow: diameter / area, relativeRoughness: roughness / diameter, perFactor: length / diameter / area ** 2 };
}

function leakThrough(network: DuctNetwork, place: LeakGap['at'], air: Air, totalPressure: number, flowPast: number): number {
  const area = place === 'fan' ? network.trunkArea : (network.forkArea ?? network.trunkArea);
  const motion = network.mode === 'total' ? (air.density / 2) * (flowPast / area) ** 2 : 0;
  const staticPressure = Math.max(0, totalPressure - motion);
  const speed = Math.sqrt((2 * staticPressure) / air.density);
  return network.leaks.reduce((sum, leak) => (leak.at === place ? sum + leak.dischargeCoefficient * leak.area * speed : sum), 0);
}

function elementLoss(element: DuctElement, air: Air, flow: number): number {
  return (((air.density / 2) * lossCoefficientOf(element, air, flow)) / referenceAreaOf(element) ** 2) * flow ** 2;
}

function lossAt(element: DuctElement, air: Air, flow: number): LossAtElement {
  const group = element.kind === 'fitting' ? element.group : 'friction';
  return { label: element.label, group, power: elementLoss(element, air, flow) * flow };
}

function outletFlowOf(outlet: OutletBranch, flow: number): OutletFlow {
  const meanSpeed = flow / outlet.area;
  const jetSpeed = isThinSlot(outlet) ? meanSpeed / outlet.dischargeCoefficient : meanSpeed;
  return { name: outlet.name, flow: si('volume-flow', flow), meanSpeed: si('speed', meanSpeed), jetSpeed: si('speed', jetSpeed) };
}

/** Whether the jet of an outlet gets narrower than its mouth: a thin slot does, unless it is wider than the duct before it. */
export function isThinSlot(outlet: OutletBranch): boolean {
  return mouthElements(outlet).some((element) => element.kind === 'fitting' && element.group === 'slot');
}

/** A leak with the usual sharp-edged coefficient. */
export function sharpLeak(at: LeakGap['at'], area: number): LeakGap {
  return { at, area, dischargeCoefficient: DISCHARGE_COEFFICIENT };
}
