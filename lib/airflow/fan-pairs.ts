import { si } from '@/lib/units';
import type { FanCurve } from './fan-curve';
import { risingRoot } from './monotone-root';

/**
 * Two fans one behind the other: the pressures add at each flow.
 *
 * Beyond its own free flow the weaker one is driven by the other's air and takes pressure instead of giving it: its curve is
 * carried on below 0 (see `FanCurve.shape`). The pair's free flow is where one takes what the other gives, so it lies between
 * the two. Losses between the fans are not counted. Curves at the same air; nothing throws.
 * Source: addition at equal flow, any fan handbook; what the driven fan takes is an estimate.
 * Worked (straight lines): 100 Pa and 1 L/s before 60 Pa and 2 L/s give 160 Pa, 1.230769 L/s free, 95 Pa at 0.5 L/s.
 */
export function fansInSeries(first: FanCurve, second: FanCurve): FanCurve {
  const pressureAt = (flow: number): number => first.maxPressure * first.shape(flow / first.freeFlow) + second.maxPressure * second.shape(flow / second.freeFlow);
  const [low, high] = [Math.min(first.freeFlow, second.freeFlow), Math.max(first.freeFlow, second.freeFlow)];
  const freeFlow = low === high ? low : risingRoot((flow) => -pressureAt(flow), low, high);
  const maxPressure = pressureAt(0);
  return {
    maxPressure: si('pressure', maxPressure),
    freeFlow: si('volume-flow', freeFlow),
    shape: (share) => pressureAt(share * freeFlow) / maxPressure,
    stallShare: Math.max(stallFlow(first), stallFlow(second)) / freeFlow,
  };
}

/**
 * Two fans side by side blowing into one duct: the flows add at each pressure.
 *
 * Above the weaker one's largest pressure the stronger pushes air back through it, against its turning wheel: its flow counts
 * below 0 there (see `shapeEitherWay`), so the pair with its outlet sealed reaches less than the stronger alone. Nothing keeps air
 * from flowing back; with a flap in the weaker one the pair would follow the stronger alone. A stall is left out: to the left of
 * its top a curve is taken as flat. Curves at the same air; nothing throws.
 * Source: addition at equal pressure, any fan handbook; the flow pushed back is an estimate.
 * Worked (straight lines): 100 Pa and 1 L/s beside 60 Pa and 2 L/s give 3 L/s free, 69.230769 Pa sealed, with 0.307692 L/s passing
 * back through the weaker, and 50 Pa at 0.833333 L/s.
 */
export function fansInParallel(first: FanCurve, second: FanCurve): FanCurve {
  const freeFlow = first.freeFlow + second.freeFlow;
  const pressureAt = (flow: number): number => parallelAt(first, second, flow).pressure;
  const maxPressure = pressureAt(0);
  return { maxPressure: si('pressure', maxPressure), freeFlow: si('volume-flow', freeFlow), shape: (share) => pressureAt(share * freeFlow) / maxPressure, stallShare: 0 };
}

/**
 * What each of two fans side by side moves when together they move `flow` (m³/s, 0 to the sum of both free flows): flows of first and
 * second, m³/s, below 0 where air is pushed back, and the pressure that both stand against, Pa.
 * Worked: as `fansInParallel`, with nothing leaving: 0.307692 and -0.307692 L/s at 69.230769 Pa.
 */
export function parallelAt(first: FanCurve, second: FanCurve, flow: number): { readonly first: number; readonly second: number; readonly pressure: number } {
  // The stronger one cannot be pushed back by the weaker, so its share lies between 0 and 1.
  const [strong, weak] = sealedPressure(first) >= sealedPressure(second) ? [first, second] : [second, first];
  const ofWeak = (share: number): number => weak.maxPressure * shapeEitherWay(weak, (flow - share * strong.freeFlow) / weak.freeFlow);
  const share = risingRoot((each) => ofWeak(each) - strong.maxPressure * shapeEitherWay(strong, each), 0, 1);
  const through = share * strong.freeFlow;
  const [ofFirst, ofSecond] = strong === first ? [through, flow - through] : [flow - through, through];
  return { first: ofFirst, second: ofSecond, pressure: strong.maxPressure * shapeEitherWay(strong, share) };
}

/**
 * Share of the largest pressure at any share of the free flow, below 0 too: pushed back, a fan takes as much more than its sealed
 * pressure as it gives less when the same air goes forward. Estimate; exact for the part of the loss that grows with the flow times
 * itself. To the left of a stall's top the curve is flat. Worked: a straight line gives 1.25 at -0.25, a parabola 1.0625.
 */
export function shapeEitherWay(curve: FanCurve, share: number): number {
  const forward = curve.shape(Math.max(Math.abs(share), curve.stallShare));
  return share >= 0 ? forward : 2 * curve.shape(curve.stallShare) - forward;
}

function sealedPressure(curve: FanCurve): number {
  return curve.maxPressure * curve.shape(curve.stallShare);
}

function stallFlow(curve: FanCurve): number {
  return curve.stallShare * curve.freeFlow;
}
