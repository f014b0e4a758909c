import { CUBIC_FOOT_PER_MINUTE, FAN_RATINGS, type FanKind, type FanRating } from './fan-ratings';

/** What fans of one frame and kind have in common when their speed is taken out. */
export interface FrameStatistics {
  readonly frame: string;
  readonly kind: FanKind;
  readonly count: number;
  /** Free flow over speed, m³ per turn: median and edges. */
  readonly flowPerTurn: Spread;
  /** Maximum pressure over speed squared, Pa·s². */
  readonly pressurePerSpeedSquared: Spread;
  /** Free flow and maximum pressure themselves, SI. */
  readonly freeFlow: Spread;
  readonly maxPressure: Spread;
}

/** Median and edges of a few published values. */
export interface Spread {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/**
 * Statistics of the published ratings of one frame, or undefined when none is published.
 * Worked: 4020 axial has 27 rows, 1.000 CFM per 1000 rpm (0.942 to 1.350).
 */
export function statisticsOfFrame(frame: string, kind: FanKind): FrameStatistics | undefined {
  const rows = FAN_RATINGS.filter((rating) => rating.frame === frame && rating.kind === kind);
  if (rows.length === 0) return undefined;
  return {
    frame,
    kind,
    count: rows.length,
    flowPerTurn: spreadOf(rows.map((row) => row.freeFlow / row.speed)),
    pressurePerSpeedSquared: spreadOf(rows.map((row) => row.maxPressure / row.speed ** 2)),
    freeFlow: spreadOf(rows.map((row) => row.freeFlow)),
    maxPressure: spreadOf(rows.map((row) => row.maxPressure)),
  };
}

/** Maximum pressure as guessed from free flow alone, Pa, with edges and what it rests on. */
export interface PressureGuess extends Spread {
  readonly basis: 'same-frame' | 'all-of-kind';
  readonly count: number;
}

/**
 * Maximum pressure of a fan of which only the free flow is known (m³/s, above 0), and its speed (1/s) when that is printed.
 * Speed missing: taken from the frame's flow per turn. Then pressure = constant of the frame times speed squared.
 * With fewer than three rows, or for a frame without any, the edges are at least 30 % to each side.
 * Worked: 5015 blower, 5.1 CFM, 6000 rpm gives about 158 Pa.
 */
export function maxPressureFromFreeFlow(freeFlow: number, kind: FanKind, frame?: string, speed?: number): PressureGuess {
  if (!(freeFlow > 0)) throw new Error(`maxPressureFromFreeFlow: got ${freeFlow} m³/s, expected above 0`);
  const own = frame === undefined ? undefined : statisticsOfFrame(frame, kind);
  if (own === undefined) return guessFromKind(freeFlow, kind);
  const turns = speed ?? freeFlow / own.flowPerTurn.median;
  const spread = own.pressurePerSpeedSquared;
  return {
    low: Math.min(spread.low, 0.7 * spread.median) * turns ** 2,
    median: spread.median * turns ** 2,
    high: Math.max(spread.high, 1.3 * spread.median) * turns ** 2,
    basis: 'same-frame',
    count: own.count,
  };
}

/** Free flow of a fan of which only frame, kind and perhaps speed (1/s) are known; undefined when nothing is published. */
export function freeFlowOfFrame(frame: string, kind: FanKind, speed?: number): Spread | undefined {
  const own = statisticsOfFrame(frame, kind);
  if (own === undefined) return undefined;
  if (speed === undefined) return widened(own.freeFlow, 0.3);
  return widened({ low: own.flowPerTurn.low * speed, median: own.flowPerTurn.median * speed, high: own.flowPerTurn.high * speed }, 0.15);
}

/** Free flow of fans of a kind when not even the frame is known, m³/s. From the published rows of 40 to 50 mm frames. */
export function freeFlowOfKind(kind: FanKind): Spread {
  return spreadOf(FAN_RATINGS.filter((row) => row.kind === kind && row.freeFlow < 12 * CUBIC_FOOT_PER_MINUTE).map((row) => row.freeFlow));
}

function guessFromKind(freeFlow: number, kind: FanKind): PressureGuess {
  const rows = FAN_RATINGS.filter((row: FanRating) => row.kind === kind);
  const near = [...rows].sort((a, b) => distance(a, freeFlow) - distance(b, freeFlow)).slice(0, 7);
  const spread = spreadOf(near.map((row) => row.maxPressure * (freeFlow / row.freeFlow) ** 2));
  return { ...spread, basis: 'all-of-kind', count: near.length };
}

function distance(row: FanRating, freeFlow: number): number {
  return Math.abs(Math.log(row.freeFlow / freeFlow));
}

function widened(spread: Spread, least: number): Spread {
  return { low: Math.min(spread.low, (1 - least) * spread.median), median: spread.median, high: Math.max(spread.high, (1 + least) * spread.median) };
}

function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  const pick = (share: number): number => {
    const place = share * (sorted.length - 1);
    const below = sorted[Math.floor(place)] ?? Number.NaN;
    const above = sorted[Math.ceil(place)] ?? Number.NaN;
    return below + (place - Math.floor(place)) * (above - below);
  };
  return { low: pick(0), median: pick(0.5), high: pick(1) };
}
