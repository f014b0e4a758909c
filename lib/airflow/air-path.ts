import type { Measured, QuantityKind } from '@/lib/units';
import type { OutletEnding } from './duct-network';
import type { CurvePoint } from './fan-curve';
import type { FanKind } from './fan-ratings';
import type { FanFigures } from './rating-credibility';

/** One quantity of the path in SI with its 95 % half-width, and whether the person gave it or we took a usual value. */
export interface Fact<K extends QuantityKind = QuantityKind> extends Measured<K> {
  readonly basis: 'given' | 'assumed';
}

/** Inner dimensions of a duct or mouth; for a circle both are the diameter. */
export interface SectionFacts {
  readonly shape: 'rectangle' | 'circle';
  readonly width: Fact<'length'>;
  readonly height: Fact<'length'>;
}

/** What is known of the shape of a fan's curve. */
export type ShapeFacts =
  | { readonly kind: 'band' }
  | { readonly kind: 'mid-point'; readonly exponent: number }
  | { readonly kind: 'points'; readonly points: readonly CurvePoint[] };

/** Where a fan's figures come from; it decides how far they are trusted. */
export type FanClaim = 'advertised' | 'data-sheet' | 'measured' | 'usual';

export interface FanFacts {
  readonly name: string;
  readonly kind: FanKind;
  readonly frame: string | undefined;
  readonly claim: FanClaim;
  readonly freeFlow: Fact<'volume-flow'>;
  /** Free flow to reckon with instead of a claim, m³/s: nine of ten samples lie between. Undefined: the claim itself counts. */
  readonly expectedFlow: { readonly low: number; readonly high: number } | undefined;
  /** True where the claimed flow does not fit the fan's own speed and power, whatever is reckoned with. */
  readonly isClaimRefused: boolean;
  readonly maxPressure: Fact<'pressure'>;
  readonly shape: ShapeFacts;
  readonly outlet: SectionFacts;
  /** Speed that the supply and duty leave, over the speed of the figures above. */
  readonly speedRatio: Fact<'ratio'>;
  readonly count: number;
  readonly arrangement: 'single' | 'series' | 'parallel' | 'own-ducts';
  /**
   * The other of two unlike fans; undefined for one fan and for two equal ones. It is single itself. In series the first one stands
   * at the duct and the second blows into its inlet.
   */
  readonly second: FanFacts | undefined;
  readonly voltage: Fact<'voltage'> | undefined;
  readonly current: Fact<'current'> | undefined;
  readonly currentIsLargest: boolean;
  readonly speed: Fact<'rotation-speed'> | undefined;
  readonly startCurrent: Fact<'current'> | undefined;
  readonly wires: number | undefined;
}

export interface BendFacts {
  readonly kind: 'mitre' | 'radius';
  readonly angle: Fact<'angle'>;
  /** Centre-line radius; undefined for a mitre. */
  readonly radius: Fact<'length'> | undefined;
}

/** Where a run becomes wider or narrower on its way. */
export interface ChangeFacts {
  readonly to: SectionFacts;
  /** Whole opening angle of the sloping walls; undefined for a step. */
  readonly angle: Fact<'angle'> | undefined;
  /** Length of the piece after it. */
  readonly length: Fact<'length'>;
}

/** A run of duct that begins with a section; its bends lie in that first piece. */
export interface RunFacts {
  readonly section: SectionFacts;
  readonly length: Fact<'length'>;
  readonly bends: readonly BendFacts[];
  /** In the order of the air. */
  readonly changes: readonly ChangeFacts[];
}

export interface DuctFacts extends RunFacts {
  readonly mode: 'static' | 'total';
  readonly roughness: Fact<'length'>;
}

export interface OutletFacts {
  readonly name: string;
  readonly mouth: SectionFacts;
  /** Share of the mouth that a grille or a vane leaves open; undefined when nothing stands in it. */
  readonly open: Fact<'ratio'> | undefined;
  readonly ending: OutletEnding;
  /** Where the outlet stands round the nozzle, rad, 0 to 2·pi; 0 faces +X (right), a quarter turn faces +Y (back). */
  readonly direction: Fact<'angle'>;
  /** Downward tilt of the jet from level, rad. */
  readonly tilt: Fact<'angle'>;
  /** From the mouth to the spot under the nozzle. */
  readonly distance: Fact<'length'>;
  /** How far the jet's axis misses that spot. */
  readonly miss: Fact<'length'>;
  readonly aimError: Fact<'angle'>;
  readonly branch: RunFacts | undefined;
  /** Which fan feeds it when every fan has its own duct: 1 or 2. */
  readonly fan: number;
}

export interface LeakFacts {
  readonly name: string;
  /** At the seam with the fan, at the fork, or just before the mouth of an outlet. */
  readonly at: 'fan' | 'fork' | 'outlet';
  /** Index into the outlets when it is at one; undefined otherwise. */
  readonly outlet: number | undefined;
  readonly area: Fact<'area'>;
}

export interface PrintFacts {
  readonly polymer: string;
  readonly layerTime: Fact<'time'>;
  readonly layerHeight: Fact<'length'>;
  /** Cancels in both models of the need: heat of a line and surface that cools it grow alike with it. */
  readonly lineWidth: Fact<'length'>;
  readonly nozzleTemperature: Fact<'temperature'>;
  readonly chamberTemperature: Fact<'temperature'>;
  readonly layers: number | undefined;
  /** How sides of the part came out with the path as it is: the print itself is a reading of what it needs. */
  readonly sides: readonly SideSeen[];
}

/** A side of the part that was looked at: where it faces (rad, as for outlets), and whether its steep undersides held their shape. */
export interface SideSeen {
  readonly direction: number;
  readonly held: boolean;
}

/** A change that the person is thinking of, with what it costs. */
export interface CandidateFacts {
  readonly id: string;
  readonly name: string;
  readonly fan: FanFacts | undefined;
  /** Figures of a fan of the same frame that are trusted, from its data sheet; the claim is held against them. */
  readonly trusted: FanFigures | undefined;
  readonly duct: { readonly duct: DuctFacts; readonly outlets: readonly OutletFacts[]; readonly leaks: readonly LeakFacts[] } | undefined;
  readonly price: number;
  readonly handsTime: number;
  readonly printingTime: number;
}

/** What was measured, and where. */
export type PathReadingKind = 'free-flow' | 'flow-in-duct' | 'outlet-speed' | 'static-pressure' | 'max-pressure' | 'fan-speed';

export interface PathReading {
  readonly what: PathReadingKind;
  /** Index into the outlets for `outlet-speed`; undefined otherwise. */
  readonly outlet: number | undefined;
  /** Of which of two unlike fans a reading of a fan by itself is; the first unless said. */
  readonly fan?: 'second';
  readonly value: number;
  readonly plusMinus: number;
}

/** The output that drives the fan. */
export interface FanOutputFacts {
  readonly voltage: Fact<'voltage'> | undefined;
  readonly currentLimit: Fact<'current'> | undefined;
  readonly drive: 'steady' | 'switched-low-side' | 'switched-high-side' | 'four-wire' | undefined;
  readonly wireGauge: number | undefined;
  readonly wireLength: Fact<'length'> | undefined;
}

/** The whole path as described in the file: every gap filled, every fill marked. */
export interface AirPath {
  readonly title: string;
  readonly currency: string;
  readonly air: { readonly temperature: Fact<'temperature'>; readonly pressure: Fact<'pressure'>; readonly humidity: Fact<'ratio'> };
  readonly fan: FanFacts;
  /** Figures of a trusted fan of the same frame as today's; the claim of today's is held against them. */
  readonly trusted: FanFigures | undefined;
  readonly duct: DuctFacts;
  readonly outlets: readonly OutletFacts[];
  readonly leaks: readonly LeakFacts[];
  readonly print: PrintFacts;
  readonly candidates: readonly CandidateFacts[];
  readonly measured: readonly PathReading[];
  readonly output: FanOutputFacts;
}
