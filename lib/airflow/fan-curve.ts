import { si, type Si } from '@/lib/units';
import { monotoneCurve, monotoneValue } from './pchip';

/** How a fan's static pressure falls as its flow rises, at one speed and one air density. */
export interface FanCurve {
  /** Static pressure with the outlet sealed, Pa, above 0. */
  readonly maxPressure: Si<'pressure'>;
  /** Flow with nothing attached, m³/s, above 0. */
  readonly freeFlow: Si<'volume-flow'>;
  /**
   * Share of the maximum pressure left at a share of the free flow; 1 at 0 and 0 at 1. Beyond 1 other air drives the fan and it takes
   * pressure: a formula is carried on (pressure of the wheel less losses that grow with the flow times itself), a table by its last slope.
   */
  readonly shape: (shareOfFreeFlow: number) => number;
  /** Share of free flow below which the fan is stalled; 0 for a curve that only falls. */
  readonly stallShare: number;
}

/** One point of a curve: flow in m³/s, static pressure in Pa. */
export interface CurvePoint {
  readonly flow: number;
  readonly pressure: number;
}

/** Exponents of the shape band 1 - q^m: a straight line as the low edge, a parabola as the high edge. */
export const SHAPE_BAND = { low: 1, high: 2 } as const;

/**
 * A curve from its two ends and an exponent: p = p0·(1 - (Q/Q0)^m).
 * `maxPressure` Pa and `freeFlow` m³/s above 0; `exponent` 1 (straight line) to 2.2; throws outside.
 * Basis: one digitised 40×10 mm axial fits m = 0.94, a textbook centrifugal m = 2.20, a 120 mm axial m = 1.79.
 * Worked: exponent 2 leaves 0.75 of the pressure at half the flow.
 */
export function curveFromEnds(maxPressure: number, freeFlow: number, exponent: number): FanCurve {
  checkEnds(maxPressure, freeFlow);
  if (!(exponent >= 0.5 && exponent <= 5)) throw new Error(`curveFromEnds: got exponent ${exponent}, expected 0.5 to 5`);
  return {
    maxPressure: si('pressure', maxPressure),
    freeFlow: si('volume-flow', freeFlow),
    shape: exponent === 1 ? (q) => 1 - q : exponent === 2 ? (q) => 1 - q * q : (q) => 1 - q ** exponent,
    stallShare: 0,
  };
}

/**
 * The exponent m of 1 - q^m through one point between the ends: m = ln(1 - y) / ln(q).
 * `shareOfFreeFlow` and `shareOfPressure` strictly between 0 and 1; throws outside.
 * Worked: half the flow at 0.75 of the pressure gives 2.
 */
export function exponentFromMidPoint(shareOfFreeFlow: number, shareOfPressure: number): number {
  if (!(shareOfFreeFlow > 0 && shareOfFreeFlow < 1)) throw new Error(`exponentFromMidPoint: flow share ${shareOfFreeFlow}, expected between 0 and 1`);
  if (!(shareOfPressure > 0 && shareOfPressure < 1)) throw new Error(`exponentFromMidPoint: pressure share ${shareOfPressure}, expected between 0 and 1`);
  return Math.log(1 - shareOfPressure) / Math.log(shareOfFreeFlow);
}

/**
 * A curve through measured or published points, shape-keeping between them.
 * Points: flow ascending from 0 without repeats, last pressure 0, at least three; a rise in pressure is kept and marked as stall.
 * Throws on anything else: `checkCurvePoints` in the file reader tells the person first.
 * Worked: 0..4 CFM at 150, 135, 105, 60, 0 Pa gives 122 Pa at 1.5 CFM.
 */
export function curveFromPoints(points: readonly CurvePoint[]): FanCurve {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined || points.length < 3) throw new Error(`curveFromPoints: got ${points.length} points, expected 3 or more`);
  if (first.flow !== 0 || last.pressure !== 0) throw new Error('curveFromPoints: the first flow and the last pressure must be 0');
  checkEnds(first.pressure, last.flow);
  const curve = monotoneCurve(points.map((point) => point.flow / last.flow), points.map((point) => point.pressure / first.pressure));
  return {
    maxPressure: si('pressure', first.pressure),
    freeFlow: si('volume-flow', last.flow),
    shape: (q) => (q <= 1 ? monotoneValue(curve, q) : (curve.slope[curve.slope.length - 1] ?? 0) * (q - 1)),
    stallShare: stallShareOf(points, last.flow),
  };
}

/**
 * Static pressure at a flow, Pa. `flow` in m³/s, 0 to the free flow; outside it throws, because a fan driven backwards or
 * forwards by other air is not on its curve.
 * Worked: 150 Pa and 4 CFM, straight line, gives 75 Pa at 2 CFM.
 */
export function pressureOnCurve(curve: FanCurve, flow: number): Si<'pressure'> {
  const share = flow / curve.freeFlow;
  if (!(share >= -1e-12 && share <= 1 + 1e-12)) throw new Error(`pressureOnCurve: got flow ${flow} m³/s, expected 0 to ${curve.freeFlow}`);
  return si('pressure', curve.maxPressure * curve.shape(Math.min(1, Math.max(0, share))));
}

/** The curve as points for drawing: `count` of them, evenly spread over the flow, from 0 to free flow. */
export function curvePoints(curve: FanCurve, count: number): CurvePoint[] {
  return Array.from({ length: count }, (_, k) => {
    const share = k / (count - 1);
    return { flow: share * curve.freeFlow, pressure: curve.maxPressure * curve.shape(share) };
  });
}

/** The flow share at the top of the last rise: to the right of it the curve only falls. */
function stallShareOf(points: readonly CurvePoint[], freeFlow: number): number {
  let share = 0;
  points.forEach((point, k) => {
    const before = points[k - 1];
    if (before !== undefined && point.pressure > before.pressure) share = point.flow / freeFlow;
  });
  return share;
}

function checkEnds(maxPressure: number, freeFlow: number): void {
  if (!(maxPressure > 0 && Number.isFinite(maxPressure))) throw new Error(`fan curve: got maximum pressure ${maxPressure} Pa, expected above 0`);
  if (!(freeFlow > 0 && Number.isFinite(freeFlow))) throw new Error(`fan curve: got free flow ${freeFlow} m³/s, expected above 0`);
}
