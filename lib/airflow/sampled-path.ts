import type { Air } from './air';
import type { OutletFacts } from './air-path';
import { branchElements, type DuctElement, type OutletBranch } from './duct-network';
import { frictionFactor } from './friction';
import { fanBranchesOf, type FanBranch, type PathVariant } from './path-network';
import { sampleFan, shapeOfSample, shareThrough, type SampledFan } from './sampled-fan';
import { areaOf, hydraulicDiameterOf } from './section';
import { ductColumn, logSpread, multiplierOf, outletColumn, sharedColumn, type UncertainInputs } from './uncertain-inputs';

/** A path once per joint sample. Every array has one value per sample. */
export interface SampledPath {
  readonly fan: SampledFan;
  /** Fans that blow at the same time, each into a duct of its own. */
  readonly fanCount: number;
  /** Flow from the fan (both fans when each has its own duct), m³/s, and its static pressure, Pa. */
  readonly flow: Float64Array;
  readonly pressure: Float64Array;
  readonly leakFlow: Float64Array;
  readonly outlets: readonly SampledOutlet[];
}

export interface SampledOutlet {
  /** m³/s, and the speed of the jet, m/s. */
  readonly flow: Float64Array;
  readonly speed: Float64Array;
}

/*
 * Spreads of the loss coefficients (log standard deviations). The published bands behind them: mitre 1.20 to 1.50,
 * contraction 0.31 to 0.50, discharge coefficient 0.58 to 0.70. Friction and branch: estimates; the branch covers the fork.
 */
const SPREAD = { bend: 0.12, contraction: 0.2, friction: 0.15, discharge: 0.05, branch: 0.2 } as const;

/**
 * Solves the path of every sample: losses as one quadratic per branch, friction read from a table.
 * Friction is a small part of the loss, so it is read once, at the flow that the sample before would have with this sample's fan;
 * a test holds what that leaves out below 0.5 %.
 * Agrees with `operatingPoint` within 0.5 % when all deviates are 0 (a test holds it to that).
 */
export function samplePath(variant: PathVariant, air: Air, inputs: UncertainInputs): SampledPath {
  const branches = fanBranchesOf(variant);
  const path: SampledPath = {
    fanCount: branches.length,
    fan: sampleFan(variant.fan, variant.fanSlot, air, inputs),
    flow: new Float64Array(inputs.count),
    pressure: new Float64Array(inputs.count),
    leakFlow: new Float64Array(inputs.count),
    outlets: variant.outlets.map(() => ({ flow: new Float64Array(inputs.count), speed: new Float64Array(inputs.count) })),
  };
  for (const branch of branches) solveBranch(branch, variant, air, inputs, path);
  return path;
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

interface MouthLoss extends RunLoss {
  readonly area: number;
  readonly thin: boolean;
  readonly dischargeCoefficient: number;
}

/** Columns as multipliers, worked out once per branch so the inner loop only multiplies. */
interface Multipliers {
  readonly bend: Float64Array;
  readonly contraction: Float64Array;
  readonly friction: Float64Array;
  readonly discharge: Float64Array;
  readonly trunk: Float64Array;
  readonly leak: Float64Array;
  readonly area: readonly Float64Array[];
  readonly branch: readonly Float64Array[];
}

/** Turns on the first sample before it counts. */
const SETTLING = 4;

function solveBranch(branch: FanBranch, variant: PathVariant, air: Air, inputs: UncertainInputs, path: SampledPath): void {
  const { network } = branch;
  const half = air.density / 2;
  const trunk = runLoss(network.trunk, air);
  const mouths = network.outlets.map((outlet) => mouthLoss(outlet, air));
  const times = multipliers(branch, variant, inputs);
  const leakAt = (at: 'fan' | 'fork'): number => network.leaks.filter((leak) => leak.at === at).reduce((sum, leak) => sum + leak.dischargeCoefficient * leak.area, 0) * Math.sqrt(1 / half);
  const leakAtFan = leakAt('fan');
  const leakAtFork = leakAt('fork');
  const credit = network.mode === 'total' ? half / network.fanOutletArea ** 2 : 0;
  const motionInTrunk = network.mode === 'total' ? half / network.trunkArea ** 2 : 0;
  const outlets = branch.outletIndices.map((k) => path.outlets[k]);
  const conductance = new Float64Array(mouths.length);
  const { fan } = path;

  // Shares of the free flow, carried from sample to sample; the first sample is solved a few times to start them.
  let trunkShare = 0.5;
  const shares = new Float64Array(mouths.length).fill(0.5 / mouths.length);
  for (let turn = -SETTLING; turn < inputs.count; turn += 1) {
    const s = Math.max(0, turn);
    const freeFlow = fan.freeFlow[s] ?? 0;
    const maxPressure = fan.maxPressure[s] ?? 0;
    const trunkScale = times.trunk[s] ?? 1;
    const leakScale = times.leak[s] ?? 1;
    let open = 0;
    for (let k = 0; k < mouths.length; k += 1) {
      const mouth = mouths[k];
      if (mouth === undefined) continue;
      const g = 1 / Math.sqrt(mouthResistance(mouth, times, k, s, (shares[k] ?? 0) * freeFlow));
      conductance[k] = g;
      open += g;
    }
    // A leak is driven by static pressure: what the moving air carries as speed does not push it out sideways.
    const fork = leakAtFork * leakScale;
    const forkFlow = open + fork * Math.sqrt(Math.max(0, 1 - motionInTrunk * (open + fork) ** 2));
    const trunkResistance = runResistance(trunk, times, s, trunkShare * freeFlow) + trunk.rest + trunk.contractions * (times.contraction[s] ?? 1);
    const alongTrunk = trunkResistance * trunkScale + 1 / (forkFlow * forkFlow);
    const past = 1 + leakAtFan * leakScale * Math.sqrt(Math.max(0, alongTrunk - motionInTrunk));
    const kappa = ((alongTrunk / (past * past) - credit) * freeFlow * freeFlow) / maxPressure;
    const share = shareThrough(fan, s, kappa);
    const flow = share * freeFlow;
    trunkShare = share / past;
    const root = trunkShare / forkFlow;
    for (let k = 0; k < mouths.length; k += 1) shares[k] = (conductance[k] ?? 0) * root;
    if (turn < 0) continue;
    let out = 0;
    for (let k = 0; k < mouths.length; k += 1) {
      const outletFlow = (shares[k] ?? 0) * freeFlow;
      out += outletFlow;
      const outlet = outlets[k];
      const mouth = mouths[k];
      if (outlet === undefined || mouth === undefined) continue;
      outlet.flow[s] = outletFlow;
      const narrowing = mouth.thin ? mouth.dischargeCoefficient * (times.discharge[s] ?? 1) : 1;
      outlet.speed[s] = outletFlow / (mouth.area * (times.area[k]?.[s] ?? 1) * narrowing);
    }
    path.flow[s] = (path.flow[s] ?? 0) + flow;
    path.pressure[s] = maxPressure * shapeOfSample(fan, s, share);
    path.leakFlow[s] = (path.leakFlow[s] ?? 0) + (flow - out);
  }
}

function mouthResistance(mouth: MouthLoss, times: Multipliers, k: number, s: number, flow: number): number {
  const area = times.area[k]?.[s] ?? 1;
  const scale = 1 / (area * area);
  const upstream = runResistance(mouth, times, s, flow);
  const discharge = mouth.thin ? (times.discharge[s] ?? 1) : 1;
  const atMouth = (mouth.rest / (discharge * discharge) + mouth.contractions * (times.contraction[s] ?? 1)) * scale;
  return (upstream + atMouth) * (times.branch[k]?.[s] ?? 1);
}

/** Bends and friction of a run. */
function runResistance(run: RunLoss, times: Multipliers, s: number, flow: number): number {
  let resistance = run.bends * (times.bend[s] ?? 1);
  for (const straight of run.straights) {
    resistance += straight.resistancePerFactor * factorAt(straight.factors, flow * straight.reynoldsPerFlow) * (times.friction[s] ?? 1);
  }
  return resistance;
}

function multipliers(branch: FanBranch, variant: PathVariant, inputs: UncertainInputs): Multipliers {
  const { section } = variant.duct;
  const shared = (name: Parameters<typeof sharedColumn>[1], spread: number): Float64Array => multiplierOf(inputs, sharedColumn(inputs, name), spread);
  const outletOf = (k: number): OutletFacts | undefined => variant.outlets[k];
  const slot = variant.ductSlot;
  const leakArea = variant.leaks.reduce((sum, leak) => sum + leak.area.value, 0);
  const leakPlusMinus = Math.hypot(...variant.leaks.map((leak) => leak.area.plusMinus));
  return {
    bend: shared('bend-loss', SPREAD.bend),
    contraction: shared('contraction-loss', SPREAD.contraction),
    friction: shared('friction', SPREAD.friction),
    discharge: shared('discharge', SPREAD.discharge),
    trunk: multiplierOf(inputs, ductColumn(inputs, slot, 'duct-area'), 2 * areaSpread(section.width, section.height)),
    leak: multiplierOf(inputs, ductColumn(inputs, slot, 'leak'), logSpread(leakArea, leakPlusMinus)),
    area: branch.outletIndices.map((k) => {
      const mouth = outletOf(k)?.mouth;
      return multiplierOf(inputs, outletColumn(inputs, slot, k, 'outlet-area'), mouth === undefined ? 0 : areaSpread(mouth.width, mouth.height));
    }),
    branch: branch.outletIndices.map((k) => multiplierOf(inputs, outletColumn(inputs, slot, k, 'outlet-branch'), SPREAD.branch)),
  };
}

function areaSpread(width: { value: number; plusMinus: number }, height: { value: number; plusMinus: number }): number {
  return Math.hypot(logSpread(width.value, width.plusMinus), logSpread(height.value, height.plusMinus));
}

function mouthLoss(outlet: OutletBranch, air: Air): MouthLoss {
  return { ...runLoss(branchElements(outlet), air), area: outlet.area, thin: outlet.ending === 'thin', dischargeCoefficient: outlet.dischargeCoefficient };
}

function runLoss(elements: readonly DuctElement[], air: Air): RunLoss {
  const half = air.density / 2;
  const sum = (group: (name: string) => boolean): number => elements.reduce((total, element) =>
    element.kind === 'fitting' && group(element.group) ? total + (half * element.coefficient) / element.area ** 2 : total, 0);
  return {
    bends: sum((group) => group === 'bend'),
    contractions: sum((group) => group === 'contraction'),
    rest: sum((group) => group !== 'bend' && group !== 'contraction'),
    straights: elements.flatMap((element) => (element.kind === 'straight' ? [straightLoss(element, air)] : [])),
  };
}

function straightLoss(element: Extract<DuctElement, { kind: 'straight' }>, air: Air): StraightLoss {
  const area = areaOf(element.section);
  const diameter = hydraulicDiameterOf(element.section);
  return {
    reynoldsPerFlow: (air.density * diameter) / (area * air.viscosity),
    resistancePerFactor: ((air.density / 2) * (element.length / diameter)) / area ** 2,
    factors: factorTable((reynolds) => frictionFactor(element.section, reynolds, element.roughness / diameter)),
  };
}

/** Friction factor on even steps of the logarithm of the Reynolds number. */
type FactorTable = Float64Array;
const LOWEST = Math.log(20);
const PER_STEP = 12;
const FACTOR_STEPS = Math.ceil((Math.log(2e5) - LOWEST) * PER_STEP);

function factorTable(factor: (reynolds: number) => number): FactorTable {
  return Float64Array.from({ length: FACTOR_STEPS + 1 }, (_, k) => factor(Math.exp(LOWEST + k / PER_STEP)));
}

function factorAt(table: FactorTable, reynolds: number): number {
  const place = Math.min(FACTOR_STEPS - 1e-9, Math.max(0, (Math.log(reynolds) - LOWEST) * PER_STEP));
  const step = place | 0;
  const low = table[step] ?? 0;
  return low + (place - step) * ((table[step + 1] ?? 0) - low);
}
