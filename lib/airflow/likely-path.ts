import { mapped } from '@/lib/elementary';
import { si } from '@/lib/units';
import type { Air } from './air';
import type { FanFacts } from './air-path';
import { mouthElements, sharpLeak, type DuctElement, type DuctNetwork, type OutletBranch } from './duct-network';
import type { FanCurve } from './fan-curve';
import { fansInParallel, fansInSeries } from './fan-pairs';
import { EXIT_LOSS } from './fittings';
import { contractsOf, multipliersOf, type Multipliers } from './path-multipliers';
import { curveAlone, fanBranchesOf, fanCurveOf, fanSlotsUsed, type FanBranch, type PathVariant } from './path-network';
import { columnsOfPath } from './path-readings';
import type { SampledFan } from './sampled-fan';
import { fanOfBranch, sampleFans } from './sampled-pair';
import { ductColumn, fanColumn, withDeviates, type UncertainInputs } from './uncertain-inputs';

/** A fan's part of the path with the curve of what blows into it, both at the most likely values. */
export interface LikelyBranch extends FanBranch {
  readonly curve: FanCurve;
}

/**
 * The one sample in the middle of joint samples that readings have moved: of every input that the path depends on the mean deviate,
 * so the geometric mean of what it multiplies. All others are 0.
 *
 * Why the mean and not the median of each: readings tie inputs to each other (a slow outlet is a narrow mouth or a hard way to it), and
 * only means pass through sums. Flows and speeds are nearly products of powers of the inputs, so their logarithms at the means are
 * nearly the means of their logarithms, which is where the middle of their bands lies; medians of tied inputs need not fit together.
 * A fault that nobody entered is there or not: of its column the median, so it counts from the half of the samples on that have it.
 */
export function centreOfSamples(inputs: UncertainInputs, variant: PathVariant): UncertainInputs {
  const { count, layout, deviates } = inputs;
  const centre = withDeviates(layout, 1, new Float64Array(layout.columns));
  for (const column of columnsOfPath(inputs, variant)) {
    let sum = 0;
    const end = (column + 1) * count;
    for (let at = column * count; at < end; at += 1) sum += deviates[at] ?? 0;
    centre.deviates[column] = sum / count;
  }
  const { leak = 0, inlet = 0 } = variant.faults ?? {};
  if (leak > 0) ductColumn(centre, variant.ductSlot, 'leak').fill(medianOf(ductColumn(inputs, variant.ductSlot, 'leak')));
  if (inlet > 0) for (const slot of fanSlotsUsed(variant)) fanColumn(centre, slot, 'fan-inlet').fill(medianOf(fanColumn(inputs, slot, 'fan-inlet')));
  return centre;
}

function medianOf(values: Float64Array): number {
  return values.slice().sort()[values.length >> 1] ?? 0;
}

/**
 * Curves and networks of a path, one for each fan with a duct of its own, for `operatingPoint`: as entered, or at one sample of the
 * inputs (`centre`, of count 1), everything scaled as `samplePath` scales it. With all deviates 0 the two are the same to rounding,
 * as long as no fault that nobody entered is likelier than not. SI.
 */
export function likelyBranches(variant: PathVariant, air: Air, centre?: UncertainInputs): LikelyBranch[] {
  const branches = fanBranchesOf(variant);
  if (centre === undefined) return branches.map((branch) => ({ ...branch, curve: curveAsEntered(variant.fan, branch, air) }));
  const fans = sampleFans(variant, air, centre);
  return branches.map((branch) => {
    const times = multipliersOf(branch, variant, centre);
    return { ...branch, network: scaledNetwork(branch.network, times), curve: throughInlet(curveAt(variant.fan, branch, fanOfBranch(fans, branch), air), only(times.extraInlet, 0)) };
  });
}

function curveAsEntered(fan: FanFacts, branch: FanBranch, air: Air): FanCurve {
  return branch.fan === 'second' && fan.second !== undefined ? curveAlone(fan.second, air) : fanCurveOf(fan, air);
}

function curveAt(fan: FanFacts, branch: FanBranch, { pair, ...ends }: SampledFan, air: Air): FanCurve {
  if (fan.second === undefined) return withEnds(fanCurveOf(fan, air, only(ends.shapeWeight)), ends);
  if (pair === undefined) return ofOne(branch.fan === 'second' ? fan.second : fan, ends, air);
  const [first, second] = [ofOne(fan, pair.first, air), ofOne(fan.second, pair.second, air)];
  return pair.arrangement === 'series' ? fansInSeries(first, second) : fansInParallel(first, second);
}

function ofOne(fan: FanFacts, sampled: SampledFan, air: Air): FanCurve {
  return withEnds(curveAlone(fan, air, only(sampled.shapeWeight)), sampled);
}

function withEnds(curve: FanCurve, { freeFlow, maxPressure }: Pick<SampledFan, 'freeFlow' | 'maxPressure'>): FanCurve {
  return { ...curve, freeFlow: si('volume-flow', only(freeFlow)), maxPressure: si('pressure', only(maxPressure)) };
}

/** A covered inlet takes its part before the duct sees it. */
function throughInlet(curve: FanCurve, loss: number): FanCurve {
  return loss === 0 ? curve : { ...curve, shape: (q) => curve.shape(q) - loss * q * q };
}

/** The value of the only sample. */
function only(values: Float64Array | undefined, otherwise = 1): number {
  return values?.[0] ?? otherwise;
}

function scaledNetwork(network: DuctNetwork, times: Multipliers): DuctNetwork {
  const mouths = network.outlets.reduce((sum, { area }) => sum + area, 0);
  const extraGap = only(times.extraGap, 0) * mouths;
  return {
    ...network,
    trunk: scaledRun(network.trunk, times, only(times.trunk)),
    outlets: mapped(network.outlets, (outlet, k) => scaledOutlet(outlet, times, k)),
    leaks: [
      ...mapped(network.leaks, (leak) => ({ ...leak, area: leak.area * only(times.leak) })),
      ...(extraGap > 0 ? [sharpLeak('fan', extraGap)] : []),
    ],
  };
}

function scaledOutlet(outlet: OutletBranch, times: Multipliers, k: number): OutletBranch {
  const area = only(times.area[k]);
  return {
    ...outlet,
    area: outlet.area * area,
    dischargeCoefficient: outlet.dischargeCoefficient * contractionOfJet(outlet, times),
    elements: scaledRun(outlet.elements, times, only(times.way[k])),
    leakArea: (outlet.leakArea ?? 0) * only(times.leak),
    mouth: scaledMouth(outlet, times, area, only(times.branch[k])),
  };
}

/** How much more or less of its area the jet through a thin slot keeps. */
function contractionOfJet(outlet: OutletBranch, { discharge }: Multipliers): number {
  return 1 + contractsOf(outlet) * (only(discharge) - 1);
}

/** Fittings by their coefficient; friction by the length, which leaves the Reynolds number as it is. */
function scaledRun(run: readonly DuctElement[], times: Multipliers, all: number): DuctElement[] {
  return mapped(run, (element) => {
    if (element.kind === 'straight') return { ...element, length: element.length * all * only(times.friction) };
    return { ...element, coefficient: element.coefficient * all * only(element.group === 'bend' ? times.bend : element.group === 'contraction' ? times.contraction : undefined) };
  });
}

type Fitting = Extract<DuctElement, { readonly kind: 'fitting' }>;

/**
 * A mouth on its scaled area. What leaves it takes its own motion along and no more, so what the mouth with its fork costs besides is
 * told of the narrowing, or of uneven flow where the mouth has none. Readings that make it cost less than that motion leave it all to
 * the air leaving.
 */
function scaledMouth(outlet: OutletBranch, times: Multipliers, area: number, branch: number): DuctElement[] {
  const slot = 1 / contractionOfJet(outlet, times) ** 2;
  const fittings = mouthElements(outlet).flatMap((element): Fitting[] => (element.kind === 'fitting'
    ? [{ ...element, area: element.area * area, coefficient: element.coefficient * branch * (element.group === 'contraction' ? only(times.contraction) : slot) }]
    : []));
  const exit = fittings.find(({ group }) => group === 'exit');
  if (exit === undefined) return fittings;
  const others = fittings.filter((each) => each !== exit);
  const costOf = (each: Fitting): number => each.coefficient * (exit.area / each.area) ** 2;
  const besides = others.reduce((sum, each) => sum + costOf(each), 0);
  const whole = exit.coefficient + besides;
  const leaving = { ...exit, coefficient: Math.min(EXIT_LOSS, whole) };
  const rest = whole - leaving.coefficient;
  if (besides === 0) return rest < 1e-9 ? [...others, leaving] : [...others, { ...exit, label: `uneven flow, ${outlet.name}`, group: 'other', coefficient: rest }, leaving];
  return [...others.map((each) => ({ ...each, coefficient: (each.coefficient * rest) / besides })), leaving];
}
