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
  const pair = { arrangement: fan.arrangement, first, second: sampleFan(fan.second, secondFanSlot, air, inputs) };
  return { ...endsOf(pair, inputs.count), shapeWeight: first.shapeWeight, table: undefined, pair };
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
  if (pair.arrangement === 'series') return risingRoot((share) => kappa * share * share - inSeries(pair, s, share * freeFlow) / maxPressure, 0, 1, NEAR);
  // Flow and pressure are both unknown; along the curve of the stronger fan they are one unknown.
  const pressure = besideEachOther(pair, s, (each) => Math.sqrt(each / resistance)).pressure;
  return Math.min(1, Math.sqrt(pressure / resistance) / freeFlow);
}

/**
 * Two unlike fans side by side in sample `s`: what flows through the first, m³/s, below 0 where air is pushed back through it, and the
 * pressure that both stand against, Pa. `flowAt` says what flows through the duct at a pressure (Pa to m³/s). As `fansInParallel`.
 */
export function besideEachOther({ first, second }: SampledPair, s: number, flowAt: (pressure: number) => number): { readonly throughFirst: number; readonly pressure: number } {
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

/** Pressure of two unlike fans one behind the other at a flow (m³/s) in sample `s`, Pa; below 0 beyond the free flow of the pair. */
function inSeries({ first, second }: SampledPair, s: number, flow: number): number {
  return pressureOfOne(first, s, flow) + pressureOfOne(second, s, flow);
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
        freeFlow[s] = risingRoot((flow) => -inSeries(pair, s, flow), Math.min(...flows), Math.max(...flows), NEAR);
        maxPressure[s] = pressures[0] + pressures[1];
        break;
      case 'parallel':
        freeFlow[s] = flows[0] + flows[1];
        maxPressure[s] = besideEachOther(pair, s, () => 0).pressure;
        break;
      case 'own-ducts':
        freeFlow[s] = flows[0] + flows[1];
        maxPressure[s] = Math.max(...pressures);
        break;
      default: pair.arrangement satisfies never;
    }
  }
  return { freeFlow, maxPressure };
}
