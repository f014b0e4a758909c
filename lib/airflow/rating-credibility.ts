import type { FanKind } from './fan-ratings';
import { maxPressureFromFreeFlow, statisticsOfFrame } from './frame-statistics';

/** Figures of a fan, SI: flow m³/s, speed 1/s, current A, voltage V, pressure Pa. Whatever is missing stays out. */
export interface FanFigures {
  readonly freeFlow: number;
  readonly speed?: number;
  readonly current?: number;
  readonly voltage?: number;
  readonly maxPressure?: number;
  /** True when the label or sheet prints the largest current. */
  readonly currentIsLargest?: boolean;
}

/** `impossible`: more air power than electrical power. `not-credible`: outside the band. `doubtful`: near its edge, or figures at odds. */
export type CredibilityVerdict = 'credible' | 'doubtful' | 'not-credible' | 'impossible' | 'cannot-say';

export interface Credibility {
  /** Free flow that can be expected, m³/s; undefined when nothing can be said. */
  readonly band: { readonly low: number; readonly middle: number; readonly high: number } | undefined;
  readonly verdict: CredibilityVerdict;
  readonly sentence: string;
  readonly reasons: readonly string[];
  /** Air power over electrical power at the best point of a straight-line curve, 0 to 1; undefined without voltage and current. */
  readonly efficiency: number | undefined;
  /** Check in the knowledge base that would settle it. */
  readonly settledBy: string;
}

/**
 * Exponents of flow against electrical power within one family of fans: 1/3 by the fan laws, 0.62 ± 0.04 pooled over 33 published
 * ratings of one frame with different windings; 0.5 in the middle.
 */
export const POWER_EXPONENT = { low: 1 / 3, middle: 0.5, high: 0.65 } as const;

/** Speed and flow tolerance of data sheets: 10 to 15 %; a tenth to each side. */
const TOLERANCE = 0.1;
/** Efficiency of small fans: most are below 0.08; above 0.12 is doubted and above 0.25 not believed. Engineering choice. */
const EFFICIENCY_GATE = { usual: 0.08, doubted: 0.12, refused: 0.25 } as const;
/** Largest over typical current in published sheets: 1.2 to 2.7. */
const LARGEST_OVER_TYPICAL = { low: 1.2, high: 2.7 } as const;

/**
 * Is an advertised free flow believable, beside a trusted sheet of the same frame and kind, or the published ratings of it?
 *
 * Speed law: flow goes with speed. Power law: flow goes with electrical power to an exponent between 1/3 and 0.65. Both must hold,
 * so the band runs from the lower edge of the power law to the lower of the two upper edges, a tenth wider at each end. No flow in
 * the band needs more power than the gate allows: with flow goes pressure as its square, so air power goes as its cube.
 * Flow above 0, otherwise it throws. Different voltages are compared by power, never by current.
 * Worked: trusted 5 CFM, 6500 rpm, 0.18 A; claimed 5.36 CFM, 6000 rpm, 0.10 A, same voltage: 3.07 to 4.52 CFM, not credible.
 * 12 CFM and 900 Pa from 24 V and 0.08 A would be 66 %; 25 % is left at 12·(0.25/0.664)^(1/3) = 8.67 CFM, the most of its band.
 */
export function credibilityOf(claim: FanFigures, kind: FanKind, frame?: string, trusted?: FanFigures): Credibility {
  if (!(claim.freeFlow > 0)) throw new Error(`credibilityOf: got flow ${claim.freeFlow} m³/s, expected above 0`);
  const reasons: string[] = [];
  const bySpeed = speedLaw(claim, kind, frame, trusted, reasons);
  const byPower = powerLaw(claim, trusted, reasons);
  const efficiency = efficiencyOf(claim, kind, frame, reasons);
  const band = balanced(joined(bySpeed, byPower, reasons), claim.freeFlow, efficiency, reasons);
  const verdict = verdictOf(claim.freeFlow, band, efficiency, reasons);
  return { band, verdict, sentence: SENTENCE[verdict], reasons, efficiency, settledBy: 'part-fan-free-flow' };
}

interface Edges { readonly low: number; readonly middle: number; readonly high: number }

const AT_ODDS = 'Its speed and its power do not fit each other: one of the two figures is wrong.';

const SENTENCE: Readonly<Record<CredibilityVerdict, string>> = {
  credible: 'The claim fits its own speed and power.',
  doubtful: 'The claim stands at the edge of what its speed and power allow.',
  'not-credible': 'The claim does not fit its own speed and power. Count on the band instead.',
  impossible: 'The claim needs more power than the fan draws. It cannot be true.',
  'cannot-say': 'Speed, voltage and current are missing, so nothing speaks for or against the claim.',
};

function speedLaw(claim: FanFigures, kind: FanKind, frame: string | undefined, trusted: FanFigures | undefined, reasons: string[]): Edges | undefined {
  if (claim.speed === undefined) return undefined;
  if (trusted?.speed !== undefined) {
    const flow = trusted.freeFlow * (claim.speed / trusted.speed);
    reasons.push(`By its speed it would move ${percent(flow / claim.freeFlow)} of the claim.`);
    return { low: flow, middle: flow, high: flow };
  }
  const own = frame === undefined ? undefined : statisticsOfFrame(frame, kind);
  if (own === undefined) return undefined;
  const { low, median, high } = own.flowPerTurn;
  reasons.push(`${own.count} published ${own.count === 1 ? 'rating of this frame moves' : 'ratings of this frame move'} ${percent((median * claim.speed) / claim.freeFlow)} of the claim at this speed.`);
  const least = own.count < 3 ? 0.15 : 0;
  return { low: Math.min(low, (1 - least) * median) * claim.speed, middle: median * claim.speed, high: Math.max(high, (1 + least) * median) * claim.speed };
}

function powerLaw(claim: FanFigures, trusted: FanFigures | undefined, reasons: string[]): Edges | undefined {
  const ratio = powerRatio(claim, trusted);
  if (ratio === undefined || trusted === undefined) return undefined;
  const flows = [ratio.low, ratio.high].flatMap((power) => [POWER_EXPONENT.low, POWER_EXPONENT.high].map((b) => trusted.freeFlow * power ** b));
  const middle = trusted.freeFlow * Math.sqrt(ratio.low * ratio.high) ** POWER_EXPONENT.middle;
  reasons.push(`It draws ${percent(Math.sqrt(ratio.low * ratio.high))} of the trusted fan’s power, enough for ${percent(middle / claim.freeFlow)} of the claim.`);
  return { low: Math.min(...flows), middle, high: Math.max(...flows) };
}

/** Ratio of electrical powers; a band when only one of the two currents is the largest one. */
function powerRatio(claim: FanFigures, trusted: FanFigures | undefined): { low: number; high: number } | undefined {
  if (claim.current === undefined || trusted?.current === undefined) return undefined;
  const voltages = claim.voltage !== undefined && trusted.voltage !== undefined ? claim.voltage / trusted.voltage : 1;
  const ratio = voltages * (claim.current / trusted.current);
  const claimIs = claim.currentIsLargest ?? false;
  const trustedIs = trusted.currentIsLargest ?? false;
  if (claimIs === trustedIs) return { low: ratio, high: ratio };
  return claimIs
    ? { low: ratio / LARGEST_OVER_TYPICAL.high, high: ratio / LARGEST_OVER_TYPICAL.low }
    : { low: ratio * LARGEST_OVER_TYPICAL.low, high: ratio * LARGEST_OVER_TYPICAL.high };
}

function efficiencyOf(claim: FanFigures, kind: FanKind, frame: string | undefined, reasons: string[]): number | undefined {
  if (claim.voltage === undefined || claim.current === undefined) return undefined;
  const pressure = claim.maxPressure ?? maxPressureFromFreeFlow(claim.freeFlow, kind, frame, claim.speed).low;
  const efficiency = (0.25 * pressure * claim.freeFlow) / (claim.voltage * claim.current);
  if (efficiency > EFFICIENCY_GATE.doubted) reasons.push(`It would turn at least ${percent(efficiency)} of its power into moving air; fans of this size turn 2 to 8 %.`);
  return efficiency;
}

function joined(bySpeed: Edges | undefined, byPower: Edges | undefined, reasons: string[]): Edges | undefined {
  const only = bySpeed ?? byPower;
  if (only === undefined) return undefined;
  if (bySpeed === undefined || byPower === undefined) return widened(only);
  const high = Math.min(bySpeed.high, byPower.high);
  const low = Math.min(byPower.low, high);
  if (bySpeed.high < byPower.low / (1 + TOLERANCE)) reasons.push(AT_ODDS);
  return widened({ low: Math.min(low, bySpeed.low), middle: Math.min(bySpeed.middle, byPower.middle, high), high });
}

/**
 * The band without the flows that the electrical power cannot move: at most the flow where the claim, slowed down to it, turns as much
 * as the gate allows into air, and from no more than what the best of usual fans moves, so that the band never shrinks to a line.
 */
function balanced(edges: Edges | undefined, claimed: number, efficiency: number | undefined, reasons: string[]): Edges | undefined {
  if (edges === undefined || efficiency === undefined) return edges;
  const flowAt = (share: number): number => claimed * Math.cbrt(share / efficiency);
  const high = Math.min(edges.high, flowAt(EFFICIENCY_GATE.refused));
  const low = Math.min(edges.low, flowAt(EFFICIENCY_GATE.usual));
  if (high === edges.high) return { ...edges, low };
  reasons.push(`With the pressure that goes with it, its power moves ${percent(high / claimed)} of the claim at most.`);
  if (high < edges.low && !reasons.includes(AT_ODDS)) reasons.push(AT_ODDS);
  return { low, middle: Math.min(edges.middle, Math.sqrt(low * high)), high };
}

function widened(edges: Edges): Edges {
  return { low: edges.low * (1 - TOLERANCE), middle: edges.middle, high: edges.high * (1 + TOLERANCE) };
}

function verdictOf(flow: number, band: Edges | undefined, efficiency: number | undefined, reasons: readonly string[]): CredibilityVerdict {
  if (efficiency !== undefined && efficiency > 1) return 'impossible';
  if (efficiency !== undefined && efficiency > EFFICIENCY_GATE.refused) return 'not-credible';
  if (band === undefined) return efficiency === undefined ? 'cannot-say' : efficiency > EFFICIENCY_GATE.doubted ? 'doubtful' : 'credible';
  if (flow > 1.05 * band.high || flow < 0.7 * band.low) return 'not-credible';
  const atOdds = reasons.includes(AT_ODDS);
  return flow > band.high || atOdds || (efficiency ?? 0) > EFFICIENCY_GATE.doubted ? 'doubtful' : 'credible';
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}
