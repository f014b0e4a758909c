import { mapped } from '@/lib/elementary';
import type { Air } from './air';
import { isThinSlot, mouthElements, type DuctElement, type OutletBranch } from './duct-network';
import { DISCHARGE_COEFFICIENT } from './fittings';
import { frictionFactor } from './friction';
import { fanBranchesOf, type FanBranch, type PathVariant } from './path-network';
import { contractsOf, multipliersOf, type Multipliers } from './path-multipliers';
import { shapeOfSample, shareThrough, type SampledFan } from './sampled-fan';
import { fanOfBranch, sampleFans, shareThroughOf } from './sampled-pair';
import { areaOf, aspectOf, hydraulicDiameterOf, type Section } from './section';
import { withDeviates, type UncertainInputs } from './uncertain-inputs';

/** A path once per joint sample. Every array has one value per sample. */
export interface SampledPath {
  readonly fan: SampledFan;
  /** How often the free flow of `fan` counts: twice for two equal fans with ducts of their own. */
  readonly fanCount: number;
  /** Flow from the fan (both fans when each has its own duct), m³/s, and the static pressure behind the first, Pa. */
  readonly flow: Float64Array;
  readonly pressure: Float64Array;
  readonly leakFlow: Float64Array;
  /** The same of the second fan by itself; undefined unless it has a duct of its own. */
  readonly second: { readonly flow: Float64Array; readonly pressure: Float64Array } | undefined;
  readonly outlets: readonly SampledOutlet[];
}

export interface SampledOutlet {
  /** m³/s, and the speed of the jet, m/s. */
  readonly flow: Float64Array;
  readonly speed: Float64Array;
}

/** Turns on the middle of all samples before the samples start from its shares; each turn shrinks the error tenfold or better. */
const SETTLING = 6;

/**
 * Solves the path of every sample: losses as one quadratic per branch, friction read from a table.
 * Friction is a small part of the loss, so it is read once per sample, at the share of its fan's free flow that the middle of
 * all samples settles at; a test holds what that leaves out below 0.5 %.
 * Agrees with `operatingPoint` within 0.1 % when all deviates are 0 (a test holds it to that).
 */
export function samplePath(variant: PathVariant, air: Air, inputs: UncertainInputs): SampledPath {
  const branches = fanBranchesOf(variant);
  const path = emptyPath(variant, branches.length, sampleFans(variant, air, inputs), inputs.count);
  const middle = middleOf(inputs);
  const fanInMiddle = sampleFans(variant, air, middle);
  for (const branch of branches) {
    const losses = branchLosses(branch, air);
    const shares = startingShares(losses.mouths.length);
    const settled = emptyPath(variant, branches.length, fanInMiddle, 1);
    const multipliersInMiddle = multipliersOf(branch, variant, middle);
    for (let turn = 0; turn < SETTLING; turn += 1) solveBranch(losses, multipliersInMiddle, branch, settled, shares, true);
    solveBranch(losses, multipliersOf(branch, variant, inputs), branch, path, shares, false);
  }
  return path;
}

function emptyPath(variant: PathVariant, branches: number, fan: SampledFan, count: number): SampledPath {
  return {
    fan, fanCount: fan.pair === undefined ? branches : 1,
    second: branches < 2 ? undefined : { flow: new Float64Array(count), pressure: new Float64Array(count) },
    flow: new Float64Array(count), pressure: new Float64Array(count), leakFlow: new Float64Array(count),
    outlets: mapped(variant.outlets, () => ({ flow: new Float64Array(count), speed: new Float64Array(count) })),
  };
}

/** The one sample in which everything is as likely to be more as to be less; the middle of a single sample is itself. */
function middleOf(inputs: UncertainInputs): UncertainInputs {
  if (inputs.count === 1) return inputs;
  return withDeviates(inputs.layout, 1, new Float64Array(inputs.layout.columns));
}

/** Losses of a run of elements, sorted by which uncertain input scales them. Resistances in Pa·s²/m⁶ on the flow. */
interface RunLoss {
  readonly bends: number;
  readonly contractions: number;
  readonly rest: number;
  readonly straights: readonly StraightLoss[];
}

interface StraightLoss {
  readonly reynoldsPerFlow: number;
  readonly resistancePerFactor: number;
  readonly factors: FactorTable;
}

/** A branch with its mouth: what the air meets on the way, and at the mouth itself. */
interface MouthLoss {
  readonly way: RunLoss;
  readonly contractions: number;
  readonly rest: number;
  /** Flow through the gap before the mouth per root of the pressure, m³/s/√Pa, and pressure of the air moving past per flow squared. */
  readonly gap: number;
  readonly motion: number;
  readonly area: number;
  /** Share of the area that the jet keeps, and how much of the uncertainty of the discharge coefficient counts in it: 1 and 0 without a thin slot. */
  readonly narrowing: number;
  readonly contracts: number;
}

/** Everything of a branch that is the same in all samples. */
interface BranchLosses {
  readonly trunk: RunLoss;
  readonly mouths: readonly MouthLoss[];
  /** Flow through the gaps per root of the pressure, m³/s/√Pa. */
  readonly leakAtFan: number;
  /** The same for a gap as large as all mouths together. */
  readonly leakOfMouths: number;
  readonly leakAtFork: number;
  /** Pressure of the moving air per flow squared: given back at the fan's outlet, and not pushing sideways behind the fan and at the fork. */
  readonly credit: number;
  readonly motionAtFan: number;
  readonly motionAtFork: number;
}

/** Shares of the fan's free flow that friction is read at. */
interface FlowShares {
  trunk: number;
  readonly mouths: Float64Array;
}

function startingShares(mouths: number): FlowShares {
  return { trunk: 0.5, mouths: new Float64Array(mouths).fill(0.5 / mouths) };
}

function branchLosses({ network }: FanBranch, air: Air): BranchLosses {
  const half = air.density / 2;
  const leakAt = (at: 'fan' | 'fork'): number => network.leaks.filter((leak) => leak.at === at).reduce((sum, leak) => sum + leak.dischargeCoefficient * leak.area, 0) * Math.sqrt(1 / half);
  return {
    trunk: runLoss(network.trunk, air),
    mouths: mapped(network.outlets, (outlet) => mouthLoss(outlet, network.mode, air)),
    leakAtFan: leakAt('fan'),
    leakOfMouths: DISCHARGE_COEFFICIENT * network.outlets.reduce((sum, outlet) => sum + outlet.area, 0) * Math.sqrt(1 / half),
    leakAtFork: leakAt('fork'),
    credit: network.mode === 'total' ? half / network.fanOutletArea ** 2 : 0,
    motionAtFan: network.mode === 'total' ? half / network.trunkArea ** 2 : 0,
    motionAtFork: network.mode === 'total' ? half / (network.forkArea ?? network.trunkArea) ** 2 : 0,
  };
}

/** Solves one fan's branch for every sample and adds it to the path; `settle` writes the shares back for the next turn. */
function solveBranch(losses: BranchLosses, times: Multipliers, branch: FanBranch, path: SampledPath, shares: FlowShares, settle: boolean): void {
  const fan = fanOfBranch(path.fan, branch);
  // Asked once: the loop below is what dragging a size waits for.
  const single = fan.pair === undefined;
  const ownFlow = branch.fan === 'first' ? undefined : path.second?.flow;
  const ownPressure = branch.fan === 'first' ? path.pressure : path.second?.pressure;
  const { trunk, leakAtFan, leakOfMouths, leakAtFork, credit, motionAtFan, motionAtFork } = losses;
  const { flow: flows, leakFlow: leakFlows } = path;
  const { freeFlow: freeFlows, maxPressure: maxPressures } = fan;
  const { leak, trunk: trunkTimes, extraGap, extraInlet } = times;
  const count = flows.length;
  const ways = mapped(losses.mouths, (mouth, k) => conductanceOf(mouth, times, k, freeFlows, shares.mouths[k] ?? 0));
  const open = sumOf(mapped(ways, (way) => way.into), count);
  const leaving = losses.mouths.every((mouth) => mouth.gap === 0) ? open : sumOf(mapped(ways, (way) => way.out), count);
  const trunkBefore = runResistances(trunk, times, freeFlows, shares.trunk);
  const rootPressure = new Float64Array(count);
  for (let s = 0; s < count; s += 1) {
    const freeFlow = freeFlows[s] ?? 0;
    const maxPressure = maxPressures[s] ?? 0;
    const leakScale = leak[s] ?? 1;
    const mouths = open[s] ?? 0;
    const inlet = extraInlet === undefined ? 0 : (extraInlet[s] ?? 0);
    // A leak is driven by static pressure: what the moving air carries as speed does not push it out sideways.
    const fork = leakAtFork * leakScale;
    const forkFlow = fork === 0 ? mouths : mouths + fork * Math.sqrt(Math.max(0, 1 - motionAtFork * mouths * mouths));
    const alongTrunk = (trunkBefore[s] ?? 0) * (trunkTimes[s] ?? 1) + 1 / (forkFlow * forkFlow);
    const gapAtFan = leakAtFan * leakScale + (extraGap === undefined ? 0 : leakOfMouths * (extraGap[s] ?? 0));
    const past = gapAtFan === 0 ? 1 : 1 + gapAtFan * Math.sqrt(Math.max(0, alongTrunk - motionAtFan));
    const kappa = ((alongTrunk / (past * past) - credit) * freeFlow * freeFlow) / maxPressure + inlet;
    const share = single ? shareThrough(fan, s, kappa) : shareThroughOf(fan, s, kappa);
    const flow = share * freeFlow;
    const root = flow / (past * forkFlow);
    rootPressure[s] = root;
    flows[s] = (flows[s] ?? 0) + flow;
    // Where a pair meets the duct its pressure is what the duct asks; at free flow it is none.
    // A covered inlet takes its part before the duct: what a tap behind the fan shows is what is left.
    if (ownPressure !== undefined) ownPressure[s] = maxPressure * ((single ? shapeOfSample(fan, s, share) : Math.max(0, kappa) * share * share) - inlet * share * share);
    if (ownFlow !== undefined) ownFlow[s] = flow;
    leakFlows[s] = (leakFlows[s] ?? 0) + flow - root * (leaving[s] ?? 0);
    if (settle) shares.trunk = share / past;
  }
  losses.mouths.forEach((mouth, k) => {
    const outlet = path.outlets[branch.outletIndices[k] ?? -1];
    const way = ways[k];
    if (outlet === undefined || way === undefined) return;
    leaveMouth(mouth, times, k, way.out, rootPressure, outlet);
    if (settle) shares.mouths[k] = ((way.into[0] ?? 0) * (rootPressure[0] ?? 0)) / (fan.freeFlow[0] ?? 1);
  });
}

function leaveMouth(mouth: MouthLoss, times: Multipliers, k: number, conductance: Float64Array, rootPressure: Float64Array, outlet: SampledOutlet): void {
  const area = times.area[k] ?? times.trunk;
  const { narrowing: narrowest, contracts } = mouth;
  const { flow, speed } = outlet;
  const { discharge } = times;
  const narrowestArea = mouth.area * narrowest;
  for (let s = 0; s < flow.length; s += 1) {
    const through = (conductance[s] ?? 0) * (rootPressure[s] ?? 0);
    flow[s] = through;
    speed[s] = through / (narrowestArea * (area[s] ?? 1) * (1 + contracts * ((discharge[s] ?? 1) - 1)));
  }
}

/** Flow into a branch, and out of its mouth, per root of the fork pressure, per sample; the same where no gap lies between. */
interface BranchConductance {
  readonly into: Float64Array;
  readonly out: Float64Array;
}

function conductanceOf(mouth: MouthLoss, times: Multipliers, k: number, freeFlow: Float64Array, share: number): BranchConductance {
  const into = runResistances(mouth.way, times, freeFlow, share);
  const out = mouth.gap === 0 ? into : new Float64Array(into.length);
  const areas = times.area[k] ?? times.trunk;
  const branches = times.branch[k] ?? times.trunk;
  const ways = times.way[k] ?? times.trunk;
  const { contracts, rest, contractions, gap: gapOfMouth, motion } = mouth;
  const { discharge: dischargeTimes, contraction, leak } = times;
  for (let s = 0; s < into.length; s += 1) {
    const area = areas[s] ?? 1;
    const branch = branches[s] ?? 1;
    const discharge = 1 + contracts * ((dischargeTimes[s] ?? 1) - 1);
    const way = (into[s] ?? 0) * (ways[s] ?? 1);
    const atMouth = (branch * (rest / (discharge * discharge) + contractions * (contraction[s] ?? 1))) / (area * area);
    if (gapOfMouth === 0) {
      into[s] = 1 / Math.sqrt(way + atMouth);
      continue;
    }
    const open = 1 / Math.sqrt(atMouth);
    const gap = gapOfMouth * (leak[s] ?? 1);
    const all = open + gap * Math.sqrt(Math.max(0, 1 - motion * open * open));
    const through = 1 / Math.sqrt(way + 1 / (all * all));
    into[s] = through;
    out[s] = (through * open) / all;
  }
  return { into, out };
}

/** Fittings and friction of a run, per sample, with the friction of a share of the free flow. */
function runResistances(run: RunLoss, times: Multipliers, freeFlow: Float64Array, share: number): Float64Array {
  const resistances = new Float64Array(freeFlow.length);
  const { bends, contractions, rest } = run;
  const { bend, contraction, friction } = times;
  for (let s = 0; s < resistances.length; s += 1) resistances[s] = rest + bends * (bend[s] ?? 1) + contractions * (contraction[s] ?? 1);
  for (const straight of run.straights) {
    const reynoldsPerFreeFlow = share * straight.reynoldsPerFlow;
    const { resistancePerFactor, factors } = straight;
    for (let s = 0; s < resistances.length; s += 1) {
      const factor = factorAt(factors, (freeFlow[s] ?? 0) * reynoldsPerFreeFlow);
      resistances[s] = (resistances[s] ?? 0) + resistancePerFactor * factor * (friction[s] ?? 1);
    }
  }
  return resistances;
}

function sumOf(columns: readonly Float64Array[], count: number): Float64Array {
  const sum = new Float64Array(count);
  for (const column of columns) for (let s = 0; s < count; s += 1) sum[s] = (sum[s] ?? 0) + (column[s] ?? 0);
  return sum;
}

function mouthLoss(outlet: OutletBranch, mode: 'static' | 'total', air: Air): MouthLoss {
  const { contractions, rest } = runLoss(mouthElements(outlet), air);
  const narrowing = isThinSlot(outlet) ? outlet.dischargeCoefficient : 1;
  return {
    way: runLoss(outlet.elements, air), contractions, rest,
    gap: DISCHARGE_COEFFICIENT * (outlet.leakArea ?? 0) * Math.sqrt(2 / air.density),
    motion: mode === 'total' ? air.density / 2 / outlet.branchArea ** 2 : 0,
    area: outlet.area, narrowing,
    contracts: contractsOf(outlet),
  };
}

function runLoss(elements: readonly DuctElement[], air: Air): RunLoss {
  const half = air.density / 2;
  const sum = (group: (name: string) => boolean): number => elements.reduce((total, element) =>
    element.kind === 'fitting' && group(element.group) ? total + (half * element.coefficient) / element.area ** 2 : total, 0);
  return {
    bends: sum((group) => group === 'bend'),
    contractions: sum((group) => group === 'contraction'),
    rest: sum((group) => group !== 'bend' && group !== 'contraction'),
    straights: mapped(elements.filter((element) => element.kind === 'straight'), (element) => straightLoss(element, air)),
  };
}

function straightLoss(element: Extract<DuctElement, { kind: 'straight' }>, air: Air): StraightLoss {
  const area = areaOf(element.section);
  const diameter = hydraulicDiameterOf(element.section);
  return {
    reynoldsPerFlow: (air.density * diameter) / (area * air.viscosity),
    resistancePerFactor: ((air.density / 2) * (element.length / diameter)) / area ** 2,
    factors: factorTable(element.section, element.roughness / diameter),
  };
}

/**
 * Friction factor times Reynolds number on even steps of the Reynolds number: constant while laminar, a gentle curve above.
 * Steps of 100 fall on both edges of the transition, so no kink is smoothed over.
 */
type FactorTable = Float64Array;
const FACTOR_STEP = 100;
const FACTOR_STEPS = 250;

/** Tables by shape and roughness: a change keeps most of its runs, and a dimension that is dragged keeps all others. */
const TABLES = new Map<string, FactorTable>();
const MOST_TABLES = 200;

function factorTable(section: Section, relativeRoughness: number): FactorTable {
  const key = `${section.shape} ${aspectOf(section)} ${relativeRoughness}`;
  const known = TABLES.get(key);
  if (known !== undefined) return known;
  const table = Float64Array.from({ length: FACTOR_STEPS + 2 }, (_, k) => {
    const reynolds = Math.max(1, k * FACTOR_STEP);
    return frictionFactor(section, reynolds, relativeRoughness) * reynolds;
  });
  if (TABLES.size >= MOST_TABLES) TABLES.clear();
  TABLES.set(key, table);
  return table;
}

/** Beyond the table (Re 25,000) its last slope carries on, which is 3 % too much at twice that. */
function factorAt(table: FactorTable, reynolds: number): number {
  const place = reynolds / FACTOR_STEP;
  const step = Math.min(FACTOR_STEPS, place | 0);
  const low = table[step] ?? 0;
  return (low + (place - step) * ((table[step + 1] ?? 0) - low)) / Math.max(1, reynolds);
}
