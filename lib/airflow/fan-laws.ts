import { si, type Si } from '@/lib/units';
import type { FanCurve } from './fan-curve';

/**
 * The same fan at another speed: flow goes with the speed, pressure with its square and with the air density.
 * `speedRatio` new/old, above 0; `densityRatio` new/old, above 0; throws outside. Same fan, same geometry, no change of stall.
 * Source: fan laws of any fan handbook; ISO 5801, conversion rules (clause from memory).
 * Worked: 150 Pa and 4 CFM at 1.25 times the speed give 234.375 Pa and 5 CFM.
 */
export function curveAtSpeed(curve: FanCurve, speedRatio: number, densityRatio = 1): FanCurve {
  checkRatio('speed', speedRatio);
  checkRatio('density', densityRatio);
  return {
    ...curve,
    maxPressure: si('pressure', curve.maxPressure * speedRatio ** 2 * densityRatio),
    freeFlow: si('volume-flow', curve.freeFlow * speedRatio),
  };
}

/**
 * Shaft power at another speed, W: it goes with the cube. The electrical power of a small fan does not; see `electricalPowerBand`.
 * Source: fan laws. Worked: 6.3 hp at 15,800 CFM needs 12.77789 hp at 20,000 CFM.
 */
export function shaftPowerAtSpeed(power: number, speedRatio: number, densityRatio = 1): number {
  checkRatio('speed', speedRatio);
  checkRatio('density', densityRatio);
  return power * speedRatio ** 3 * densityRatio;
}

/** A band of speed ratios: what a voltage or duty most likely gives, and its edges. */
export interface SpeedRatioBand {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** False where a fan of this kind may not start at all. */
  readonly starts: boolean;
}

/**
 * How fast a small brushless fan turns on another voltage, as a ratio to its rated speed.
 * `voltageRatio` supplied/rated, above 0; above 1.3 the fan is outside what its maker allows, which is for the caller to say.
 * Two data sheets give speed ~ V^1.08 and one V^1.33; starting voltages are 0.67 to 0.75 of the rating, so `starts` is false below 0.75.
 * Worked: 0.9 of the voltage gives 0.892 (0.869 to 0.900) of the speed.
 */
export function speedRatioAtVoltage(voltageRatio: number): SpeedRatioBand {
  checkRatio('voltage', voltageRatio);
  const edges = [voltageRatio, voltageRatio ** 1.33].sort((a, b) => a - b);
  const low = edges[0] ?? voltageRatio;
  const high = edges[1] ?? voltageRatio;
  return { low, middle: voltageRatio ** 1.08, high, starts: voltageRatio >= 0.75 };
}

/**
 * How fast a two-wire fan turns on a switched supply of a given duty, as a ratio to full speed. `duty` above 0 to 1; throws outside.
 * Estimate: between proportional (filtered supply) and the square root (fast switching, the wheel coasts). Common practice, no source:
 * below 0.2 to 0.4 many do not start, so `starts` is false below 0.4.
 * Worked: a duty of 0.5 gives 0.595 (0.5 to 0.707).
 */
export function speedRatioAtDuty(duty: number): SpeedRatioBand {
  if (!(duty > 0 && duty <= 1)) throw new Error(`speedRatioAtDuty: got ${duty}, expected above 0 up to 1`);
  return { low: duty, middle: duty ** 0.75, high: Math.sqrt(duty), starts: duty >= 0.4 };
}

/**
 * Two equal fans in series: the pressures add at each flow. Worked (straight line): kappa 0.75 gives 0.7749 of one fan's free flow.
 */
export function twoFansInSeries(curve: FanCurve): FanCurve {
  return { ...curve, maxPressure: si('pressure', 2 * curve.maxPressure) };
}

/**
 * Two equal fans side by side blowing into one duct: the flows add at each pressure. Both must run; a stopped one is a leak.
 * Worked (straight line): kappa 0.75 gives 0.8685 of one fan's free flow, not twice.
 */
export function twoFansInParallel(curve: FanCurve): FanCurve {
  return { ...curve, freeFlow: si('volume-flow', 2 * curve.freeFlow) };
}

/**
 * Power carried by the air, W: static pressure times flow. Worked: 200 CFM at 0.5 inH2O is 11.76 W.
 */
export function airPower(pressure: number, flow: number): Si<'power'> {
  return si('power', pressure * flow);
}

function checkRatio(what: string, ratio: number): void {
  if (!(ratio > 0 && Number.isFinite(ratio))) throw new Error(`fan laws: got ${what} ratio ${ratio}, expected above 0`);
}
