import {
  MOST_NEEDED_SPEED, airOfPath, bottleneckOf, centreOfSamples, claimsToday, credibilityOfFan, curveAlone, curvePoints, drawInputs, ductCurvePoints, electricalFit, fanBranchesOf, fanCurveOf, fansAtWork, inputLayout, mouthAreaOf,
  readingConflicts, sharedColumn, updateByReadings, variantOfToday,
  type Air, type AirOption, type AirPath, type AirPathResult, type FanFigures, type FanResult, type OperatingResult, type OutletResult, type PathFaults, type PathVariant, type SampledPath, type UncertainInputs,
} from '@/lib/airflow';
import { SIDES, minimumLayerTime, neededCoefficient, polymerNamed } from '@/lib/cooling';
import { exponential, mapped, naturalLog } from '@/lib/elementary';
import { bandOf, chanceAtLeast, sumOf } from './air-bands';
import { faultsOf } from './air-faults';
import { remarksOf } from './air-remarks';
import { airChanges, taskOf, type AirChange } from './air-options';
import { sampleOptions, updateBySides, type SampledOption } from './air-samples';
import { sideEffectsOf } from './air-side-effects';
import { bestMouthFactor } from './best-mouths';
import { effectiveCount } from './effective-count';
import { sensitivityOf } from './air-sensitivity';
import { lossSharesOf, mostLikelyPoints } from './most-likely-points';
import { unknownsWorthMeasuring } from './air-unknowns';

/** How the comparison is reckoned. */
export interface CompareSettings {
  /** Joint samples; 2000 for a result to act on, 400 while a dimension is being dragged. */
  readonly samples: number;
  readonly seed: number;
  /** What an hour at the machine, an hour of printing and a failed cure are worth, in the currency. Estimates to be set. */
  readonly hourOfHands: number;
  readonly hourOfPrinting: number;
  readonly failedCure: number;
  /** Chances of faults that nobody entered, from the diagnosis of the case; undefined for none. */
  readonly faults?: PathFaults;
}

export const USUAL_SETTINGS: CompareSettings = { samples: 2000, seed: 3, hourOfHands: 10, hourOfPrinting: 0.5, failedCure: 30 };

/** Prints over which a longer print counts in the expected cost. Estimate. */
const PRINTS_COUNTED = 10;

/**
 * From a described air path to the decision: operating points, outlet speeds, cooling, need, options and the unknown most worth
 * measuring, over joint samples that the readings have re-weighted. Same input, same result. All values SI.
 *
 * The rule: an option holds in a sample when the worst of eight sides gets the coefficient that the print needs.
 * Expected cost of an option = price + hours at their worth + chance that it does not hold × worth of a failed cure.
 */
export function compareAirOptions(path: AirPath, problems: AirPathResult['problems'] = [], settings: Partial<CompareSettings> = {}): AirPathResult {
  const set = { ...USUAL_SETTINGS, ...settings };
  const air = airOfPath(path);
  const today = variantOfToday(path, set.faults);
  const plan = airChanges(path, today, air);
  const drawn = drawInputs(inputLayout(plan.fans, plan.ducts), set.samples, set.seed);
  const updated = updateByReadings(today, air, drawn, path.measured, set.seed);
  const prior = path.measured.length === 0 ? undefined : updated.prior;
  const leave = plan.changes[0];
  const { inputs, path: pathToday, known } = leave === undefined ? { ...updated, known: undefined } : updateBySides(path.print.sides, leave, air, updated.inputs, updated.path);
  const options = sampleOptions(plan.changes, air, inputs, pathToday, known);
  const costs = mapped(options, (option) => costPerSample(option, set));
  // What the sides of the part say draws whole samples again; this input of theirs nothing else moves, so its copies are theirs.
  const count = effectiveCount(sharedColumn(inputs, 'need-model'));
  const rows = options.map((option, k) => ({ ...optionRow(option, options[0] ?? option, path, air, costs[k] ?? new Float64Array(1)), ...chanceOf(option, count) }));
  const ranked = [...rows].sort((a, b) => a.expectedCost - b.expectedCost);
  return {
    ...likelyFacts(path, today, pathToday, air, path.measured.length === 0 ? undefined : centreOfSamples(inputs, today)),
    title: path.title,
    currency: path.currency,
    geometry: path,
    samples: set.samples,
    today: operatingOf(pathToday),
    outlets: outletsOf(today, pathToday),
    beforeReadings: prior === undefined ? undefined : { today: operatingOf(prior), outlets: outletsOf(today, prior), fanCurve: fanCurveEdges(today, air, prior) },
    claimsToday: claimsToday(path),
    ...bottleneckToday(today, pathToday, air),
    fanCurve: fanCurveEdges(today, air, pathToday),
    ...coolingFacts(path, options),
    options: ranked,
    best: ranked[0]?.id ?? 'leave',
    unknowns: unknownsWorthMeasuring(path, options, costs, inputs, set.seed),
    faults: faultsOf(today, inputs),
    conflicts: prior === undefined ? [] : readingConflicts(path.measured, today, prior),
    problems,
  };
}

function costPerSample({ change, coverage }: SampledOption, set: CompareSettings): Float64Array {
  const { price, handsTime, printingTime, timePerPrint } = change;
  const { failedCure } = set;
  const fixed = price + (handsTime / 3600) * set.hourOfHands + ((printingTime + PRINTS_COUNTED * timePerPrint) / 3600) * set.hourOfPrinting;
  const costs = new Float64Array(coverage.length);
  for (let s = 0; s < costs.length; s += 1) costs[s] = fixed + ((coverage[s] ?? 0) >= 1 ? 0 : failedCure);
  return costs;
}

/** Chance that an option holds, and its sampling error with as many independent samples as there are. */
function chanceOf({ cooling, needed }: SampledOption, count: number): Pick<AirOption, 'chance' | 'chanceError'> {
  const chance = chanceAtLeast(cooling.worst, needed);
  return { chance, chanceError: Math.sqrt((chance * (1 - chance)) / count) };
}

function optionRow(option: SampledOption, leave: SampledOption, path: AirPath, air: Air, costs: Float64Array): Omit<AirOption, 'chance' | 'chanceError'> {
  const { change, cooling, needed, coverage } = option;
  const chanceOfTooMuch = chanceAtLeast(cooling.best, needed, tooMuchFactor(path));
  const weakest = weakestSpeeds(option.path);
  const fans = fansOf(change.variant, option.path, air);
  return {
    id: change.id,
    kind: change.kind,
    title: change.title,
    chanceOfTooMuch,
    operating: operatingOf(option.path),
    outlets: outletsOf(change.variant, option.path),
    fans,
    weakestSpeed: bandOf(weakest),
    neededSpeed: bandOf(neededSpeeds(weakest, coverage)),
    worstCoefficient: bandOf(cooling.worst),
    neededCoefficient: bandOf(needed),
    coverage: bandOf(coverage),
    gain: bandOf(differences(coverage, leave.coverage)),
    price: change.price,
    handsTime: change.handsTime,
    printingTime: change.printingTime,
    timePerPrint: change.timePerPrint,
    sideEffects: sideEffectsOf(change, option, path, chanceOfTooMuch, fans),
    ...newFanFacts(change, path),
    reversible: change.reversible,
    expectedCost: sumOf(costs) / costs.length,
    ...optionCurves(change, air),
  };
}

function newFanFacts(change: AirChange, path: AirPath): Pick<AirOption, 'electricalFit' | 'credibility' | 'credibilityOfSecond'> {
  const { fan, fanSlot } = change.variant;
  if (fanSlot === 0) return { electricalFit: [], credibility: undefined, credibilityOfSecond: undefined };
  return { electricalFit: electricalFit(fan, path.output), credibility: credibilityOfFan(fan, trustedFor(fanSlot, path)), credibilityOfSecond: fan.second && credibilityOfFan(fan.second, undefined) };
}

/** The trusted figures beside the fan in a slot; slots count the candidates that bring a fan. */
function trustedFor(fanSlot: number, path: AirPath): FanFigures | undefined {
  return path.candidates.filter((candidate) => candidate.fan !== undefined)[fanSlot - 1]?.trusted;
}

/**
 * From how many times the need on the best side layers are taken to turn weak: 1.6 for polymers that profiles hardly cool,
 * 4 for the others. Estimate; forced air changed the strength of a PLA part four-fold between 0 and 5 m/s (published abstract).
 */
function tooMuchFactor(path: AirPath): number {
  return polymerNamed(path.print.polymer).fanShare[1] < 0.3 ? 1.6 : 4;
}

function differences(a: Float64Array, b: Float64Array): Float64Array {
  const apart = new Float64Array(a.length);
  for (let s = 0; s < apart.length; s += 1) apart[s] = (a[s] ?? 0) - (b[s] ?? 0);
  return apart;
}

function quotients(a: Float64Array, b: Float64Array): Float64Array {
  const over = new Float64Array(a.length);
  for (let s = 0; s < over.length; s += 1) over[s] = (a[s] ?? 0) / (b[s] ?? 1);
  return over;
}

/** Slowest outlet of every sample; options on the same path share it, and so its band. */
const WEAKEST = new WeakMap<SampledPath, Float64Array>();

function weakestSpeeds(path: SampledPath): Float64Array {
  const known = WEAKEST.get(path);
  if (known !== undefined) return known;
  const weakest = new Float64Array(path.flow.length).fill(Number.POSITIVE_INFINITY);
  for (const { speed } of path.outlets) for (let s = 0; s < weakest.length; s += 1) weakest[s] = Math.min(weakest[s] ?? 0, speed[s] ?? 0);
  WEAKEST.set(path, weakest);
  return weakest;
}

/** Speed at the weakest outlet that would just do, m/s, at most `MOST_NEEDED_SPEED`: the coefficient grows about as the speed to the power 0.65. */
function neededSpeeds(weakest: Float64Array, coverage: Float64Array): Float64Array {
  const needed = new Float64Array(weakest.length);
  for (let s = 0; s < needed.length; s += 1) needed[s] = Math.min(MOST_NEEDED_SPEED, (weakest[s] ?? 0) * exponential(naturalLog(Math.max(1e-6, coverage[s] ?? 1)) / -0.65));
  return needed;
}

/** Bands of a path that several options share. */
const OPERATING = new WeakMap<SampledPath, OperatingResult>();
const OUTLETS = new WeakMap<SampledPath, OutletResult[]>();

function operatingOf(path: SampledPath): OperatingResult {
  const known = OPERATING.get(path);
  if (known !== undefined) return known;
  const result = {
    flow: bandOf(path.flow),
    pressure: bandOf(path.pressure),
    shareOfFreeFlow: bandOf(sharesOfFreeFlow(path)),
  };
  OPERATING.set(path, result);
  return result;
}

function sharesOfFreeFlow({ flow, fanCount, fan: { freeFlow } }: SampledPath): Float64Array {
  const shares = new Float64Array(flow.length);
  for (let s = 0; s < shares.length; s += 1) shares[s] = Math.min(1, (flow[s] ?? 0) / (fanCount * (freeFlow[s] ?? 1)));
  return shares;
}

function outletsOf(variant: PathVariant, path: SampledPath): OutletResult[] {
  const known = OUTLETS.get(path);
  if (known !== undefined) return known;
  const total = differences(path.flow, path.leakFlow);
  const results = path.outlets.flatMap((outlet, k) => {
    const facts = variant.outlets[k];
    if (facts === undefined) return [];
    return [{
      name: facts.name,
      direction: facts.direction.value,
      flow: bandOf(outlet.flow),
      speed: bandOf(outlet.speed),
      share: bandOf(quotients(outlet.flow, total)),
    }];
  });
  OUTLETS.set(path, results);
  return results;
}

/** Each of two fans on a path; options that keep the path share them. */
const FANS = new WeakMap<SampledPath, FanResult[]>();

function fansOf(variant: PathVariant, path: SampledPath, air: Air): FanResult[] {
  const known = FANS.get(path);
  if (known !== undefined) return known;
  const { fan } = variant;
  const branches = fan.arrangement === 'own-ducts' ? fanBranchesOf(variant) : [];
  const results = fansAtWork(variant, path).map(({ name, flow, pressure, freeFlow }, k): FanResult => {
    const curve = curveAlone(k === 0 ? fan : (fan.second ?? fan), air);
    const network = branches[k]?.network;
    return {
      name,
      flow: bandOf(flow),
      pressure: bandOf(pressure),
      shareOfFreeFlow: bandOf(quotients(flow, freeFlow)),
      overpowered: flow.filter((through, s) => through < 0 || (pressure[s] ?? 0) < 0).length / flow.length,
      fanCurve: curvePoints(curve, CHART_POINTS),
      ductCurve: network === undefined ? undefined : ductCurvePoints(network, air, curve.freeFlow, CHART_POINTS),
    };
  });
  FANS.set(path, results);
  return results;
}

/** With a duct for each of two fans the part waits for the slowest outlet: what limits it is told by the fan that feeds it. */
function bottleneckToday(today: PathVariant, path: SampledPath, air: Air): Pick<AirPathResult, 'bottleneck' | 'bottleneckOfFan'> {
  if (today.fan.arrangement !== 'own-ducts') return { bottleneck: bottleneckOf(operatingOf(path).shareOfFreeFlow.value), bottleneckOfFan: undefined };
  const speeds = outletsOf(today, path).map(({ speed }) => speed.value);
  const slowest = speeds.indexOf(Math.min(...speeds));
  const isFirst = fanBranchesOf(today).some(({ fan, outletIndices }) => fan === 'first' && outletIndices.includes(slowest));
  const share = fansOf(today, path, air)[isFirst ? 0 : 1]?.shareOfFreeFlow.value ?? 1;
  return { bottleneck: bottleneckOf(Math.min(1, Math.max(0, share))), bottleneckOfFan: isFirst ? 1 : 2 };
}

/** What holds at the most likely values, those that the readings leave where there are any. */
function likelyFacts(path: AirPath, today: PathVariant, sampled: SampledPath, air: Air, centre: UncertainInputs | undefined): Pick<AirPathResult, 'remarks' | 'lossShares' | 'jetThrust' | 'ductCurve' | 'sensitivity' | 'bestOutletArea' | 'outletArea'> {
  const likely = mostLikelyPoints(today, air, centre);
  const outletArea = today.outlets.reduce((sum, outlet) => sum + mouthAreaOf(outlet), 0);
  return {
    remarks: remarksOf(today, sampled, likely, air),
    lossShares: lossSharesOf(likely),
    jetThrust: likely.reduce((sum, { point }) => sum + point.jetThrust, 0),
    ductCurve: ductCurveOf(today, air, fanCurveOf(path.fan, air).freeFlow),
    sensitivity: sensitivityOf(today, air, centre),
    bestOutletArea: outletArea * bestMouthFactor(today, air, centre),
    outletArea,
  };
}

/** Points of a curve on the chart: enough for a smooth line at any size. */
const CHART_POINTS = 25;

function optionCurves(change: AirChange, air: Air): Pick<AirOption, 'fanCurve' | 'ductCurve'> {
  const curve = fanCurveOf(change.variant.fan, air);
  return { fanCurve: curvePoints(curve, CHART_POINTS), ductCurve: ductCurveOf(change.variant, air, curve.freeFlow) };
}

/** Duct curves of variants met before: slower layers and a cooler melt leave the path as it is. */
const DUCT_CURVES = new WeakMap<PathVariant, { flow: number; pressure: number }[]>();

function ductCurveOf(variant: PathVariant, air: Air, freeFlow: number): { flow: number; pressure: number }[] {
  const known = DUCT_CURVES.get(variant);
  if (known !== undefined) return known;
  const first = fanBranchesOf(variant)[0];
  const points = first === undefined ? [] : ductCurvePoints(first.network, air, freeFlow, CHART_POINTS);
  DUCT_CURVES.set(variant, points);
  return points;
}

/** The fan's most likely curve and the edges of its band, after the readings. */
function fanCurveEdges(today: PathVariant, air: Air, path: SampledPath): AirPathResult['fanCurve'] {
  // With ducts of their own the chart shows the first fan on the first duct.
  const drawn = path.fan.pair?.arrangement === 'own-ducts' ? path.fan.pair.first : path.fan;
  const flow = bandOf(drawn.freeFlow);
  const pressure = bandOf(drawn.maxPressure);
  const edge = (freeFlow: number, maxPressure: number, weight: number): { flow: number; pressure: number }[] => {
    const { shape } = fanCurveOf(today.fan, air, weight);
    return Array.from({ length: CHART_POINTS }, (_, k) => ({ flow: (freeFlow * k) / (CHART_POINTS - 1), pressure: maxPressure * shape(k / (CHART_POINTS - 1)) }));
  };
  return { middle: edge(flow.value, pressure.value, 0.5), low: edge(flow.low, pressure.low, 0), high: edge(flow.high, pressure.high, 1) };
}

function coolingFacts(path: AirPath, options: readonly SampledOption[]): Pick<AirPathResult, 'sides' | 'worstDirection' | 'need'> {
  const leave = options[0];
  const task = taskOf(path);
  const printTask = { ...task, airTemperature: task.chamberTemperature + 6 };
  const worst = leave === undefined ? 20 : bandOf(leave.cooling.worst).value;
  return {
    sides: Array.from({ length: SIDES }, (_, k) => ({ direction: (k * 2 * Math.PI) / SIDES, coefficient: leave?.cooling.bySide[k] ?? 0 })),
    worstDirection: leave?.cooling.worstDirection ?? 0,
    need: {
      coefficient: leave === undefined ? { value: 0, low: 0, high: 0 } : bandOf(leave.needed),
      ...neededCoefficient(printTask, 'table'),
      minimumLayerTime: minimumLayerTime(printTask, worst, 'table'),
    },
  };
}
