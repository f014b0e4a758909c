import { si, type Si } from '@/lib/units';
import type { Air } from './air';
import { demandAt, networkAt, type DuctNetwork, type LossGroup, type OutletFlow } from './duct-network';
import type { CurvePoint, FanCurve } from './fan-curve';

/** Where the fan's curve and the duct's curve meet. */
export interface OperatingPoint {
  readonly flow: Si<'volume-flow'>;
  /** Static pressure of the fan. */
  readonly pressure: Si<'pressure'>;
  /** Flow over free flow, 0 to 1. */
  readonly shareOfFreeFlow: number;
  readonly leakFlow: Si<'volume-flow'>;
  readonly outlets: readonly OutletFlow[];
  /** Where the power of the air goes, shares of 1, biggest first. */
  readonly lossShares: readonly LossShare[];
  /** All of that power, W. */
  readonly lostPower: number;
  /** Power of the jets, W, and their thrust, N, with the speed of each jet: behind a thin slot it is above the mean of the slot. */
  readonly jetPower: number;
  readonly jetThrust: number;
  /** `free-flow`: the duct asks for nothing. `stall-near`: another crossing lies within a tenth of this flow. */
  readonly remarks: readonly ('free-flow' | 'stall-near')[];
}

/** One entry of the loss list. */
export interface LossShare {
  readonly label: string;
  readonly group: LossGroup;
  readonly share: number;
}

/**
 * The operating point of a fan on a duct.
 *
 * The fan's curve falls and the duct's rises, so they cross once; a curve with a stall rise can cross more often, and then the
 * crossing with the most flow counts. A duct that asks for less than the fan's own outlet gives back ends at free flow.
 * Solved on the fork pressure to 1e-11 of its range. Throws when an area is not above 0.
 * Worked: 150 Pa and 4 CFM (straight line), 15 × 20 mm duct, 30 mm, one mitre, two slots of 37.5 mm², static mode: 7.603e-4 m³/s, 89.6 Pa.
 */
export function operatingPoint(curve: FanCurve, network: DuctNetwork, air: Air): OperatingPoint {
  checkAreas(network);
  const spare = (forkPressure: number): number => sparePressure(curve, network, air, forkPressure);
  const top = curve.maxPressure * highestShape(curve) + motionAtFan(network, air, curve.freeFlow);
  const crossings = curve.stallShare > 0 ? crossingsFromTheRight(spare, top) : [crossing(spare, 0, top)];
  const first = crossings[0];
  if (first === undefined) throw new Error('operatingPoint: no crossing found, although a falling and a rising curve must cross');
  return describe(curve, network, air, first, crossings);
}

/**
 * The duct's curve as points for drawing: from 0 to about `maxFlow` (m³/s), as static pressure asked of the fan.
 * `count` points, evenly spread over the flow within a few percent: friction alone bends the spacing.
 */
export function ductCurvePoints(network: DuctNetwork, air: Air, maxFlow: number, count: number): CurvePoint[] {
  checkAreas(network);
  const atOnePascal = demandAt(network, air, 1).flow;
  const top = (maxFlow / atOnePascal) ** 2;
  return Array.from({ length: count }, (_, k) => {
    if (k === 0) return { flow: 0, pressure: 0 };
    const { flow, pressure } = demandAt(network, air, top * (k / (count - 1)) ** 2);
    return { flow, pressure: Math.max(0, pressure - motionAtFan(network, air, flow)) };
  });
}

/** Pressure that the network asks at a flow from the fan, Pa (total in `total` mode). Worked: rises with the flow from 0. */
export function pressureAsked(network: DuctNetwork, air: Air, flow: number): number {
  const guess = (flow / demandAt(network, air, 1).flow) ** 2;
  const top = 20 * guess;
  const forkPressure = crossing((p) => top * (1 - demandAt(network, air, p).flow / flow), 0, top);
  return demandAt(network, air, forkPressure).pressure;
}

function sparePressure(curve: FanCurve, network: DuctNetwork, air: Air, forkPressure: number): number {
  const { flow, pressure } = demandAt(network, air, forkPressure);
  const share = flow / curve.freeFlow;
  if (share > 1) return -forkPressure;
  return curve.maxPressure * curve.shape(share) + motionAtFan(network, air, flow) - pressure;
}

function motionAtFan(network: DuctNetwork, air: Air, flow: number): number {
  return network.mode === 'total' ? (air.density / 2) * (flow / network.fanOutletArea) ** 2 : 0;
}

function describe(curve: FanCurve, network: DuctNetwork, air: Air, forkPressure: number, crossings: readonly number[]): OperatingPoint {
  const state = networkAt(network, air, forkPressure);
  const share = Math.min(1, state.flowFromFan / curve.freeFlow);
  const near = crossings.slice(1).some((other) => demandAt(network, air, other).flow > 0.9 * state.flowFromFan);
  const lost = state.losses.reduce((sum, loss) => sum + loss.power, 0);
  return {
    flow: state.flowFromFan,
    pressure: si('pressure', curve.maxPressure * curve.shape(share)),
    shareOfFreeFlow: share,
    leakFlow: state.leakFlow,
    outlets: state.outlets,
    lossShares: state.losses
      .map(({ label, group, power }) => ({ label, group, share: power / lost }))
      .sort((a, b) => b.share - a.share),
    lostPower: lost,
    jetPower: state.outlets.reduce((sum, outlet) => sum + (air.density / 2) * outlet.flow * outlet.jetSpeed ** 2, 0),
    jetThrust: state.outlets.reduce((sum, outlet) => sum + air.density * outlet.flow * outlet.jetSpeed, 0),
    remarks: [...(share > 1 - 1e-9 ? ['free-flow' as const] : []), ...(near ? ['stall-near' as const] : [])],
  };
}

/** A curve with a stall rise may stand above its sealed-outlet value somewhere. */
function highestShape(curve: FanCurve): number {
  if (curve.stallShare === 0) return 1;
  return Math.max(...Array.from({ length: 101 }, (_, k) => curve.shape(k / 100)));
}

/** All crossings, the one with the most flow first: 400 steps find the brackets, false position the places. */
function crossingsFromTheRight(spare: (p: number) => number, top: number): number[] {
  const steps = 400;
  const found: number[] = [];
  for (let k = steps; k > 0; k -= 1) {
    const low = (top * (k - 1)) / steps;
    const high = (top * k) / steps;
    const belowIsSpare = k === 1 || spare(low) > 0;
    if (belowIsSpare !== spare(high) > 0) found.push(belowIsSpare ? crossing(spare, low, high) : crossing((p) => -spare(p), low, high));
  }
  return found;
}

/** The place where a pressure (Pa, of the order of `right`) that is above 0 on the left falls below it: false position with the Illinois rule, halving when it crawls. */
function crossing(f: (x: number) => number, left: number, right: number): number {
  let low = left;
  let high = right;
  let atLow = left === 0 ? Math.abs(f(right * 1e-9)) : f(left);
  let atHigh = f(right);
  if (atHigh > 0) return right;
  for (let round = 0; round < 200 && high - low > 1e-13 * right; round += 1) {
    const guess = round % 4 === 3 ? (low + high) / 2 : (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = Math.min(high, Math.max(low, guess));
    const value = f(Math.max(middle, 1e-9 * right));
    if (value === 0) return middle;
    if (value > 0) { low = middle; atLow = value; atHigh /= 2; } else { high = middle; atHigh = value; atLow /= 2; }
    if (Math.abs(value) < 1e-11 * right) return middle;
  }
  return (low + high) / 2;
}

function checkAreas(network: DuctNetwork): void {
  const areas = [network.fanOutletArea, network.trunkArea, ...network.outlets.flatMap((outlet) => [outlet.area, outlet.branchArea])];
  const wrong = areas.find((area) => !(area > 0 && Number.isFinite(area)));
  if (wrong !== undefined) throw new Error(`operatingPoint: got an area of ${wrong} m², expected above 0`);
  if (network.outlets.length === 0) throw new Error('operatingPoint: got no outlet, expected at least one');
}
