import type { Problem } from '@/lib/problems';
import type { AirPath } from './air-path';
import type { Bottleneck } from './bottleneck';
import type { ClaimToday } from './claim-of-fan';
import type { FitPoint } from './electrical-fit';
import type { CurvePoint } from './fan-curve';
import type { LossShare } from './operating-point';
import type { Credibility } from './rating-credibility';
import type { ReadingConflict } from './reading-conflicts';

/** A quantity over the joint samples: median, and the edges between which nine of ten samples lie. SI. */
export interface Band {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** One outlet: where it stands and what comes out. */
export interface OutletResult {
  readonly name: string;
  /** Round the nozzle, rad; 0 right, a quarter turn back. */
  readonly direction: number;
  readonly flow: Band;
  readonly speed: Band;
  /** Share of all the air that leaves through it, 0 to 1. */
  readonly share: Band;
}

/** The fan's most likely curve and the edges of its band. */
export interface FanCurveBand {
  readonly middle: readonly CurvePoint[];
  readonly low: readonly CurvePoint[];
  readonly high: readonly CurvePoint[];
}

/** Where fan and duct meet. */
export interface OperatingResult {
  readonly flow: Band;
  readonly pressure: Band;
  readonly shareOfFreeFlow: Band;
}

/** One of two fans: what it gives of the whole, and its own curve. With a duct of its own, the curve of that duct besides. */
export interface FanResult {
  readonly name: string;
  readonly flow: Band;
  readonly pressure: Band;
  readonly shareOfFreeFlow: Band;
  /** Chance that the other fan works against this one: pushes air back through it, or drives it beyond its free flow. */
  readonly overpowered: number;
  readonly fanCurve: readonly CurvePoint[];
  readonly ductCurve: readonly CurvePoint[] | undefined;
}

/** Kinds of change that are compared. */
export type AirOptionKind =
  | 'leave' | 'new-fan' | 'seal-leak' | 'open-outlets' | 'smooth-bends' | 're-aim' | 'second-outlet' | 'new-duct' | 'new-fan-and-duct'
  | 'slower-layers' | 'cooler-melt';

/** What a change brings besides. */
export interface SideEffect {
  readonly kind: 'output-current' | 'voltage' | 'noise' | 'clearance' | 'weak-layers' | 'heater-block-cooled' | 'longer-print' | 'uneven' | 'fans-at-odds' | 'feeding-harder' | 'claim-not-believed';
  readonly sentence: string;
}

/** One row of the comparison. */
export interface AirOption {
  readonly id: string;
  readonly kind: AirOptionKind;
  readonly title: string;
  /** Chance that the worst side of the part gets what the print needs, and its sampling error (one standard deviation). */
  readonly chance: number;
  readonly chanceError: number;
  /** Chance that the best side gets so much that layers turn weak. */
  readonly chanceOfTooMuch: number;
  readonly operating: OperatingResult;
  readonly outlets: readonly OutletResult[];
  /** Each of two fans; empty with one. */
  readonly fans: readonly FanResult[];
  /** Air speed at the weakest outlet, m/s, and the speed there that the print needs: `MOST_NEEDED_SPEED` where no air would do. */
  readonly weakestSpeed: Band;
  readonly neededSpeed: Band;
  /** Coefficient on the worst side, and the one that the print needs, W/(m²·K); endless where the air is too warm for the plastic. */
  readonly worstCoefficient: Band;
  readonly neededCoefficient: Band;
  /** Worst side over need; 1 is enough. And how much more of it than when left as it is. */
  readonly coverage: Band;
  readonly gain: Band;
  readonly price: number;
  /** s: at the machine, printing parts for it, and more on every print. */
  readonly handsTime: number;
  readonly printingTime: number;
  readonly timePerPrint: number;
  readonly sideEffects: readonly SideEffect[];
  /** For a new fan: points to look at before buying and again before connecting. Empty when the fan stays. */
  readonly electricalFit: readonly FitPoint[];
  /** For a new fan that is only advertised: whether its free flow is believable. */
  readonly credibility: Credibility | undefined;
  /** The same for the other of two unlike new fans. */
  readonly credibilityOfSecond: Credibility | undefined;
  readonly reversible: boolean;
  /** Expected cost of choosing it, in the currency: price, hours and the failures that remain. */
  readonly expectedCost: number;
  readonly fanCurve: readonly CurvePoint[];
  readonly ductCurve: readonly CurvePoint[];
}

/** Something that a measurement could settle. */
export interface AirUnknown {
  readonly id: string;
  readonly title: string;
  /** Id of the check in the knowledge base. */
  readonly check: string;
  readonly minutes: number;
  /** Expected saving by choosing after the measurement instead of now, in the currency. */
  readonly saving: number;
  /** Chance that the measurement changes the choice, 0 to 1. */
  readonly chanceOfChange: number;
}

/** Something that the figures rest on, as a sentence. */
export interface AirRemark {
  readonly about: 'stall' | 'law';
  readonly sentence: string;
}

/** Everything that the screens and the command line show. Plain data, SI. */
export interface AirPathResult {
  readonly title: string;
  readonly currency: string;
  /** Dimensions for the drawing to scale, as read from the file. */
  readonly geometry: AirPath;
  readonly samples: number;
  /** Today, after the readings. */
  readonly today: OperatingResult;
  readonly outlets: readonly OutletResult[];
  /** Today, before any reading; undefined when nothing was measured. */
  readonly beforeReadings: { readonly today: OperatingResult; readonly outlets: readonly OutletResult[]; readonly fanCurve: FanCurveBand } | undefined;
  /** Claims of today's fans that stand unmeasured. */
  readonly claimsToday: readonly ClaimToday[];
  /** Of two fans with a duct each: of the one that feeds the slowest outlet. */
  readonly bottleneck: Bottleneck;
  /** That fan, 1 or 2; undefined where all air goes through one duct. */
  readonly bottleneckOfFan: 1 | 2 | undefined;
  /** Percent of air speed at the slowest outlet per percent of change of each thing, at the most likely point that readings leave; of two ducts for each. */
  readonly sensitivity: readonly { readonly change: string; readonly speedPerPercent: number }[];
  /** Mouth area of all outlets together with the most jet momentum for this fan and duct, m². */
  readonly bestOutletArea: number;
  readonly outletArea: number;
  /** What the figures rest on and do not show themselves: a fan that may stall, jets outside the range of a law. */
  readonly remarks: readonly AirRemark[];
  /** Of the power that the whole path loses at that point; of two ducts the label says which. */
  readonly lossShares: readonly LossShare[];
  /** Of all jets together, N. */
  readonly jetThrust: number;
  readonly fanCurve: FanCurveBand;
  readonly ductCurve: readonly CurvePoint[];
  /** Coefficient on eight sides of the part, from +X by 45°, W/(m²·K). */
  readonly sides: readonly { readonly direction: number; readonly coefficient: number }[];
  readonly worstDirection: number;
  readonly need: { readonly coefficient: Band; readonly lumped: number; readonly layerHistory: number; readonly minimumLayerTime: { readonly lumped: number; readonly layerHistory: number } };
  /** Best first; the order of the letters on screen is `options` in the order of `kind`. */
  readonly options: readonly AirOption[];
  /** Id of the option with the least expected cost. */
  readonly best: string;
  readonly unknowns: readonly AirUnknown[];
  /** Faults that nobody entered: chance before (from the diagnosis) and after the readings of the path. Empty without a diagnosis. */
  readonly faults: readonly { readonly cause: string; readonly before: number; readonly after: number }[];
  readonly conflicts: readonly ReadingConflict[];
  readonly problems: readonly Problem[];
}
