import type { AirPath, FanFacts } from './air-path';
import { credibilityOf, type Credibility, type FanFigures } from './rating-credibility';

/** Whether the free flow that a fan is sold with is believable; undefined where it is not an advertisement. */
export function credibilityOfFan(fan: FanFacts, trusted: FanFigures | undefined): Credibility | undefined {
  return fan.claim === 'advertised' ? credibilityOf(claimedFigures(fan), fan.kind, fan.frame, trusted) : undefined;
}

/** The claim of one of today's fans that no reading has taken the place of. */
export interface ClaimToday {
  readonly of: 'first' | 'second';
  readonly credibility: Credibility;
}

/** The same for the fans that are there, where they are advertised and nobody has measured their own flow. */
export function claimsToday({ fan, trusted, measured }: Pick<AirPath, 'fan' | 'trusted' | 'measured'>): readonly ClaimToday[] {
  const isMeasured = (of: ClaimToday['of']): boolean => measured.some((reading) => reading.what === 'free-flow' && (reading.fan ?? 'first') === of);
  const claim = (of: ClaimToday['of'], each: FanFacts | undefined, beside: FanFigures | undefined): ClaimToday[] => {
    const credibility = each === undefined || isMeasured(of) ? undefined : credibilityOfFan(each, beside);
    return credibility === undefined ? [] : [{ of, credibility }];
  };
  return [...claim('first', fan, trusted), ...claim('second', fan.second, undefined)];
}

/** How far 5 and 95 % of a normal law lie from its middle, in standard deviations. */
const NINE_IN_TEN = 1.644854;

/**
 * A band in which nine of ten values lie, as a log-normal law: median in the unit of the band, and logarithmic standard deviation.
 * `low` above 0 and below `high`; throws otherwise. Worked: 1 to 4 gives 2 and 0.4214.
 */
export function lawOfBand({ low, high }: { readonly low: number; readonly high: number }): { readonly median: number; readonly spread: number } {
  if (!(low > 0 && high > low)) throw new Error(`lawOfBand: got ${low} to ${high}, expected above 0 and rising`);
  return { median: Math.sqrt(low * high), spread: Math.log(high / low) / (2 * NINE_IN_TEN) };
}

function claimedFigures({ freeFlow, currentIsLargest, speed, current, voltage, maxPressure }: FanFacts): FanFigures {
  return {
    freeFlow: freeFlow.value,
    currentIsLargest,
    ...(speed === undefined ? {} : { speed: speed.value }),
    ...(current === undefined ? {} : { current: current.value }),
    ...(voltage === undefined ? {} : { voltage: voltage.value }),
    ...(maxPressure.basis === 'given' ? { maxPressure: maxPressure.value } : {}),
  };
}
