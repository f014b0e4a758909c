import type { Air } from './air';
import { risingRoot } from './monotone-root';
import type { FanBranch, PathVariant } from './path-network';
import { sampleFan, shapeOfSample, shareAtStall, shareThrough, type SampledFan, type SampledPair } from './sampled-fan';
import type { UncertainInputs } from './uncertain-inputs';

/** How near a sample is solved, as a share of a fan's free flow: far inside the width of any band. */
const NEAR = 1e-6;

/** What blows in every sample: one fan, two equal ones, or two unlike ones as a pair, each with uncertain inputs of its own. */
export function sampleFans(variant: PathVariant, air: Air, inputs: UncertainInputs): SampledFan {
  const { fan, fanSlot, secondFanSlot } = variant;
  const first = sampleFan(fan, fanSlot, air, inputs);
  if (fan.second === undefined || fan.arrangement === 'single') return first;
  if (secondFanSlot === undefined) throw new Error('sampleFans: got two unlike fans and no slot for the second');
  return paired({ arrangement: fan.arrangement, first, second: sampleFan(fan.second, secondFanSlot, air, inputs) }, inputs.count);
}

/** Pairs met before, by their first fan: most changes keep the fans. */
const PAIRED = new WeakMap<SampledFan, readonly (SampledFan & { readonly pair: SampledPair })[]>();

function paired(pair: SampledPair, count: number): SampledFan {
  const known = PAIRED.get(pair.first) ?? [];
  const same = known.find((one) => one.pair.second === pair.second && one.pair.arrangement === pair.arrangement);
  if (same !== undefined) return same;
  const both = { ...endsOf(pair, count), shapeWeight: pair.first.shapeWeight, table: undefined, pair };
  PAIRED.set(pair.first, [...known, both]);
  return both;
}

/** The fan that feeds a branch: with ducts of their own each of two unlike fans feeds one. */
export function fanOfBranch(fan: SampledFan, branch: FanBranch): SampledFan {
  return fan.pair?.arrangement === 'own-ducts' ? fan.pair[branch.fan] : fan;
}

/** As `shareThrough`, for whatever blows into one duct: share of the free flow of fan or pair. */
export function shareThroughOf(fan: SampledFan, s: number, kappa: number): number {
  const { pair } = fan;
  if (pair === undefined) return shareThrough(fan, s, kappa);
  if (kappa <= 0) return 1;
  const freeFlow = fan.freeFlow[s] ?? 1;
  const maxPressure = fan.maxPressure[s] ?? 1;
  const resistance = (kappa * maxPressure) / (freeFlow * freeFlow);
  if (pair.arrangement === 'series') return Math.min(1, flowInSeries(pair, s, resistance, freeFlow) / freeFlow);
  const pressure = pressureBeside(pair, s, 1 / Math.sqrt(resistance));
  return Math.min(1, Math.sqrt(pressure / resistance) / freeFlow);
}

/** What flows through the first of two unlike fans side by side that together move `both` at a pressure (m³/s, Pa), below 0 where air is pushed back. */
export function throughFirst(pair: SampledPair, s: number, both: number, pressure: number): number {
  return pair.first.table === undefined ? flowAtPressure(pair.first, s, pressure) : besideEachOther(pair, s, () => both).throughFirst;
}

/** Most Newton steps; a mixture of line and parabola takes four or five. */
const STEPS = 30;

/**
 * Pressure that two unlike fans side by side stand against in a duct that lets `conductance` times the root of the pressure through
 * (m³/s/√Pa; 0 for a sealed one), Pa. Where both curves are mixtures of line and parabola their flows at a pressure are known, and
 * Newton's rule finds the root of the pressure at which they add up to what the duct takes.
 */
function pressureBeside(pair: SampledPair, s: number, conductance: number): number {
  const { first, second } = pair;
  // Flow and pressure are both unknown; along the curve of the stronger fan they are one unknown.
  if (first.table !== undefined || second.table !== undefined) return besideEachOther(pair, s, (pressure) => conductance * Math.sqrt(pressure)).pressure;
  const top = Math.sqrt(Math.max(first.maxPressure[s] ?? 1, second.maxPressure[s] ?? 1));
  let root = top / 2;
  for (let step = 0; step < STEPS; step += 1) {
    const pressure = root * root;
    const through1 = flowAtPressure(first, s, pressure);
    const through2 = flowAtPressure(second, s, pressure);
    const slope = 2 * root * (slopeAt(first, s, through1) + slopeAt(second, s, through2)) - conductance;
    const next = Math.min(top, Math.max(root / 4, root - (through1 + through2 - conductance * root) / slope));
    if (Math.abs(next - root) <= NEAR * top) return next * next;
    root = next;
  }
  return root * root;
}

/** Flow of a fan without a table at a pressure, m³/s; below 0 above its largest pressure, as `shapeEitherWay` has it. */
function flowAtPressure(fan: SampledFan, s: number, pressure: number): number {
  const weight = fan.shapeWeight[s] ?? 0;
  const line = 1 - weight;
  const spare = 1 - pressure / (fan.maxPressure[s] ?? 1);
  const size = Math.abs(spare);
  const share = (2 * size) / (line + Math.sqrt(line * line + 4 * weight * size));
  return (spare < 0 ? -share : share) * (fan.freeFlow[s] ?? 1);
}

/** How the flow of such a fan changes with the pressure, m³/s/Pa, where it moves `flow`. */
function slopeAt(fan: SampledFan, s: number, flow: number): number {
  const weight = fan.shapeWeight[s] ?? 0;
  const freeFlow = fan.freeFlow[s] ?? 1;
  return -freeFlow / ((fan.maxPressure[s] ?? 1) * (1 - weight + (2 * weight * Math.abs(flow)) / freeFlow));
}

/**
 * Two unlike fans side by side in sample `s`: what flows through the first, m³/s, below 0 where air is pushed back through it, and the
 * pressure that both stand against, Pa. `flowAt` says what flows through the duct at a pressure (Pa to m³/s). As `fansInParallel`.
 */
function besideEachOther({ first, second }: SampledPair, s: number, flowAt: (pressure: number) => number): { readonly throughFirst: number; readonly pressure: number } {
  const firstIsStrong = sealed(first, s) >= sealed(second, s);
  const strong = firstIsStrong ? first : second;
  const weak = firstIsStrong ? second : first;
  const strongFlow = strong.freeFlow[s] ?? 1;
  const weakFlow = weak.freeFlow[s] ?? 1;
  const strongPressure = strong.maxPressure[s] ?? 1;
  const weakPressure = weak.maxPressure[s] ?? 1;
  const pressureAt = (share: number): number => Math.max(0, strongPressure * eitherWay(strong, s, share));
  const share = risingRoot((each) => {
    const pressure = pressureAt(each);
    return weakPressure * eitherWay(weak, s, (flowAt(pressure) - each * strongFlow) / weakFlow) - pressure;
  }, 0, 1, NEAR);
  const pressure = pressureAt(share);
  const throughStrong = share * strongFlow;
  return { throughFirst: firstIsStrong ? throughStrong : flowAt(pressure) - throughStrong, pressure };
}

/**
 * Flow of two unlike fans one behind the other through a duct that asks `resistance` (Pa·s²/m⁶) times the flow squared, m³/s, at most
 * `most`. Where both curves are mixtures of line and parabola the pressures add to a − b·Q − c·Q², which is solved as it stands.
 */
function flowInSeries({ first, second }: SampledPair, s: number, resistance: number, most: number): number {
  if (first.table !== undefined || second.table !== undefined) {
    return risingRoot((flow) => resistance * flow * flow - pressureOfOne(first, s, flow) - pressureOfOne(second, s, flow), 0, most, NEAR);
  }
  const [weight1, weight2] = [first.shapeWeight[s] ?? 0, second.shapeWeight[s] ?? 0];
  const [pressure1, pressure2] = [first.maxPressure[s] ?? 1, second.maxPressure[s] ?? 1];
  const [flow1, flow2] = [first.freeFlow[s] ?? 1, second.freeFlow[s] ?? 1];
  const sealedPressures = pressure1 + pressure2;
  const slope = (pressure1 * (1 - weight1)) / flow1 + (pressure2 * (1 - weight2)) / flow2;
  const bend = (pressure1 * weight1) / (flow1 * flow1) + (pressure2 * weight2) / (flow2 * flow2);
  return Math.min(most, (2 * sealedPressures) / (slope + Math.sqrt(slope * slope + 4 * sealedPressures * (bend + resistance))));
}

/** Pressure of a fan by itself at a flow, Pa; below 0 where other air drives it. */
export function pressureOfOne(fan: SampledFan, s: number, flow: number): number {
  return (fan.maxPressure[s] ?? 1) * shapeOfSample(fan, s, flow / (fan.freeFlow[s] ?? 1));
}

/** As `shapeEitherWay`. */
function eitherWay(fan: SampledFan, s: number, share: number): number {
  const stall = fan.table === undefined ? 0 : shareAtStall(fan.table);
  const forward = shapeOfSample(fan, s, Math.max(Math.abs(share), stall));
  return share >= 0 ? forward : 2 * shapeOfSample(fan, s, stall) - forward;
}

function sealed(fan: SampledFan, s: number): number {
  return (fan.maxPressure[s] ?? 1) * eitherWay(fan, s, 0);
}

function endsOf(pair: SampledPair, count: number): Pick<SampledFan, 'freeFlow' | 'maxPressure'> {
  const freeFlow = new Float64Array(count);
  const maxPressure = new Float64Array(count);
  for (let s = 0; s < count; s += 1) {
    const flows = [pair.first.freeFlow[s] ?? 1, pair.second.freeFlow[s] ?? 1] as const;
    const pressures = [pair.first.maxPressure[s] ?? 1, pair.second.maxPressure[s] ?? 1] as const;
    switch (pair.arrangement) {
      case 'series':
        freeFlow[s] = flowInSeries(pair, s, 0, Math.max(flows[0], flows[1]));
        maxPressure[s] = pressures[0] + pressures[1];
        break;
      case 'parallel':
        freeFlow[s] = flows[0] + flows[1];
        maxPressure[s] = pressureBeside(pair, s, 0);
        break;
      case 'own-ducts':
        freeFlow[s] = flows[0] + flows[1];
        maxPressure[s] = Math.max(pressures[0], pressures[1]);
        break;
      default: pair.arrangement satisfies never;
    }
  }
  return { freeFlow, maxPressure };
}
