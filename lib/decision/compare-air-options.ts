import {
  airOfPath, areaOf, bestOutletArea, bottleneckOf, credibilityOf, curvePoints, drawInputs, ductCurvePoints, electricalFit, fanBranchesOf, fanCurveOf, inputLayout, operatingPoint,
  readingConflicts, samplePath, sectionOf, updateByReadings, variantOfToday,
  type Air, type AirOption, type AirPath, type AirPathResult, type FanFigures, type OperatingResult, type OutletResult, type PathVariant, type SampledPath, type UpdatedInputs,
} from '@/lib/airflow';
import { SIDES, minimumLayerTime, neededCoefficient, polymerNamed } from '@/lib/cooling';
import { bandOf, chanceAtLeast } from './air-bands';
import { airChanges, taskOf, type AirChange } from './air-options';
import { sampleOptions, updateBySides, type SampledOption } from './air-samples';
import { sideEffectsOf } from './air-side-effects';
import { sensitivityOf } from './air-sensitivity';
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
  const today = variantOfToday(path);
  const plan = airChanges(path, today, air);
  const drawn = drawInputs(inputLayout(plan.fans, plan.ducts), set.samples, set.seed);
  const updated = updateByReadings(today, air, drawn, path.measured, set.seed);
  const prior = path.measured.length === 0 ? undefined : samplePath(today, air, drawn);
  const { inputs, path: pathToday } = afterSides(path, plan.changes, air, updated);
  const options = sampleOptions(plan.changes, air, inputs, pathToday);
  const costs = options.map((option) => costPerSample(option, set));
  const rows = options.map((option, k) => optionRow(option, options[0] ?? option, path, air, costs[k] ?? new Float64Array(1)));
  const ranked = [...rows].sort((a, b) => a.expectedCost - b.expectedCost);
  return {
    ...nominalFacts(path, today, air),
    title: path.title,
    currency: path.currency,
    geometry: path,
    samples: set.samples,
    today: operatingOf(pathToday),
    outlets: outletsOf(today, pathToday),
    beforeReadings: prior === undefined ? undefined : { today: operatingOf(prior), outlets: outletsOf(today, prior), fanCurve: fanCurveEdges(today, air, prior) },
    bottleneck: bottleneckOf(operatingOf(pathToday).shareOfFreeFlow.value),
    fanCurve: fanCurveEdges(today, air, pathToday),
    ...coolingFacts(path, options),
    options: ranked,
    best: ranked[0]?.id ?? 'leave',
    unknowns: unknownsWorthMeasuring(path, options, costs, inputs, set.seed),
    conflicts: prior === undefined ? [] : readingConflicts(path.measured, today, prior),
    problems,
  };
}

function afterSides(path: AirPath, changes: readonly AirChange[], air: Air, updated: UpdatedInputs): Pick<UpdatedInputs, 'inputs' | 'path'> {
  const leave = changes[0];
  if (leave === undefined || path.print.sides.length === 0) return updated;
  const inputs = updateBySides(path.print.sides, leave, air, updated.inputs, updated.path);
  return { inputs, path: samplePath(leave.variant, air, inputs) };
}

function costPerSample(option: SampledOption, set: CompareSettings): Float64Array {
  const { price, handsTime, printingTime, timePerPrint } = option.change;
  const fixed = price + (handsTime / 3600) * set.hourOfHands + ((printingTime + PRINTS_COUNTED * timePerPrint) / 3600) * set.hourOfPrinting;
  return option.coverage.map((coverage) => fixed + (coverage >= 1 ? 0 : set.failedCure));
}

function optionRow(option: SampledOption, leave: SampledOption, path: AirPath, air: Air, costs: Float64Array): AirOption {
  const { change, cooling, needed, coverage } = option;
  const chance = chanceAtLeast(cooling.worst, needed);
  const chanceOfTooMuch = chanceAtLeast(cooling.best, needed, tooMuchFactor(path));
  const weakest = weakestSpeeds(option.path);
  return {
    id: change.id,
    kind: change.kind,
    title: change.title,
    chance,
    chanceError: Math.sqrt((chance * (1 - chance)) / coverage.length),
    chanceOfTooMuch,
    operating: operatingOf(option.path),
    outlets: outletsOf(change.variant, option.path),
    weakestSpeed: bandOf(weakest),
    neededSpeed: bandOf(neededSpeeds(weakest, coverage)),
    worstCoefficient: bandOf(cooling.worst),
    neededCoefficient: bandOf(needed),
    coverage: bandOf(coverage),
    gain: bandOf(coverage.map((value, s) => value - (leave.coverage[s] ?? 0))),
    price: change.price,
    handsTime: change.handsTime,
    printingTime: change.printingTime,
    timePerPrint: change.timePerPrint,
    sideEffects: sideEffectsOf(change, option, path, chanceOfTooMuch),
    ...newFanFacts(change, path),
    reversible: change.reversible,
    expectedCost: costs.reduce((sum, cost) => sum + cost, 0) / costs.length,
    ...optionCurves(change, air),
  };
}

function newFanFacts(change: AirChange, path: AirPath): Pick<AirOption, 'electricalFit' | 'credibility'> {
  const { fan, fanSlot } = change.variant;
  if (fanSlot === 0) return { electricalFit: [], credibility: undefined };
  const { speed, current, voltage, maxPressure } = fan;
  const claim = {
    freeFlow: fan.freeFlow.value,
    currentIsLargest: fan.currentIsLargest,
    ...(speed === undefined ? {} : { speed: speed.value }),
    ...(current === undefined ? {} : { current: current.value }),
    ...(voltage === undefined ? {} : { voltage: voltage.value }),
    ...(maxPressure.basis === 'given' ? { maxPressure: maxPressure.value } : {}),
  };
  return { electricalFit: electricalFit(fan, path.output), credibility: fan.claim === 'advertised' ? credibilityOf(claim, fan.kind, fan.frame, trustedFor(fanSlot, path)) : undefined };
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

function weakestSpeeds(path: SampledPath): Float64Array {
  const weakest = new Float64Array(path.flow.length).fill(Number.POSITIVE_INFINITY);
  for (const outlet of path.outlets) outlet.speed.forEach((speed, s) => { if (speed < (weakest[s] ?? 0)) weakest[s] = speed; });
  return weakest;
}

/** Speed at the weakest outlet that would just do: the coefficient grows about as the speed to the power 0.65. */
function neededSpeeds(weakest: Float64Array, coverage: Float64Array): Float64Array {
  return weakest.map((speed, s) => speed * Math.max(1e-6, coverage[s] ?? 1) ** (-1 / 0.65));
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
    shareOfFreeFlow: bandOf(path.flow.map((flow, s) => Math.min(1, flow / (path.fanCount * (path.fan.freeFlow[s] ?? 1))))),
  };
  OPERATING.set(path, result);
  return result;
}

function outletsOf(variant: PathVariant, path: SampledPath): OutletResult[] {
  const known = OUTLETS.get(path);
  if (known !== undefined) return known;
  const total = path.flow.map((_, s) => path.outlets.reduce((sum, outlet) => sum + (outlet.flow[s] ?? 0), 0));
  const results = path.outlets.flatMap((outlet, k) => {
    const facts = variant.outlets[k];
    if (facts === undefined) return [];
    return [{
      name: facts.name,
      direction: facts.direction.value,
      flow: bandOf(outlet.flow),
      speed: bandOf(outlet.speed),
      share: bandOf(outlet.flow.map((flow, s) => flow / (total[s] ?? 1))),
    }];
  });
  OUTLETS.set(path, results);
  return results;
}

function nominalFacts(path: AirPath, today: PathVariant, air: Air): Pick<AirPathResult, 'lossShares' | 'jetThrust' | 'ductCurve' | 'sensitivity' | 'bestOutletArea' | 'outletArea'> {
  const curve = fanCurveOf(path.fan, air);
  const points = fanBranchesOf(today).map(({ network }) => operatingPoint(curve, network, air));
  const first = points[0];
  const outletArea = today.outlets.reduce((sum, outlet) => sum + areaOf(sectionOf(outlet.mouth)), 0);
  const speed = first === undefined ? 1 : Math.max(...first.outlets.map((outlet) => outlet.meanSpeed));
  const lossFactor = first === undefined ? 1.5 : Math.max(1, first.pressure / ((air.density / 2) * speed * speed));
  return {
    lossShares: first?.lossShares ?? [],
    jetThrust: points.reduce((sum, point) => sum + point.jetThrust, 0),
    ductCurve: ductCurveOf(today, air, curve.freeFlow),
    sensitivity: sensitivityOf(today, curve, air),
    bestOutletArea: bestOutletArea('momentum', 'parabola', curve.maxPressure, curve.freeFlow, air.density, lossFactor).area,
    outletArea,
  };
}

/** Points of a curve on the chart: enough for a smooth line at any size. */
const CHART_POINTS = 25;

function optionCurves(change: AirChange, air: Air): Pick<AirOption, 'fanCurve' | 'ductCurve'> {
  const curve = fanCurveOf(change.variant.fan, air);
  return { fanCurve: curvePoints(curve, CHART_POINTS), ductCurve: ductCurveOf(change.variant, air, curve.freeFlow) };
}

function ductCurveOf(variant: PathVariant, air: Air, freeFlow: number): { flow: number; pressure: number }[] {
  const first = fanBranchesOf(variant)[0];
  return first === undefined ? [] : ductCurvePoints(first.network, air, freeFlow, CHART_POINTS);
}

/** The fan's most likely curve and the edges of its band, after the readings. */
function fanCurveEdges(today: PathVariant, air: Air, path: SampledPath): AirPathResult['fanCurve'] {
  const flow = bandOf(path.fan.freeFlow);
  const pressure = bandOf(path.fan.maxPressure);
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
