import type { ReactNode } from 'react';
import type { ChartAxis, ChartLine, ChartStretch } from '../../_charts';

/** Something a person may slide. Whole steps from `from` to `to`, in the unit that its words show. */
export interface Slider {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Where it stands before anybody moves it, and on paper. */
  readonly start: number;
  /** The value as it is read out: "5 mm". */
  readonly words: (value: number) => string;
}

/** What a figure shows at one setting of its sliders. */
export interface Picture {
  readonly x: ChartAxis;
  readonly y: ChartAxis;
  readonly lines: readonly ChartLine[];
  readonly stretch?: ChartStretch;
  readonly mark: { readonly x: number; readonly y: number; readonly words: string };
  /** The same in one or two sentences. */
  readonly said: string;
  /** Something drawn beside the chart. */
  readonly beside?: ReactNode;
}

/** A drawing of the handbook that moves with sliders. Every number in it comes from lib. */
export interface MovingFigure {
  readonly title: string;
  /** The first slider is the one that the table follows. One or two. */
  readonly sliders: readonly [Slider, ...Slider[]];
  readonly at: (values: readonly number[]) => Picture;
  /** The table for readers without the slider: its columns after the first slider's own, and their words at one setting. */
  readonly columns: readonly string[];
  readonly row: (values: readonly number[]) => readonly string[];
  readonly tabled: readonly number[];
  /** What is assumed, in a line under the figure. */
  readonly holds: string;
}

/** The value of a slider; throws when a figure asks for one that it does not have. */
export function settingOf(values: readonly number[], place: number): number {
  const value = values[place];
  if (value === undefined) throw new Error(`moving figure: got ${values.length} settings, expected at least ${place + 1}`);
  return value;
}

/** A figure to so many significant digits, without an exponent: rounded(0.0608) is "0.061", rounded(2) is "2.0", rounded(163) is "160". */
export function rounded(value: number, digits = 2): string {
  const kept = Number(value.toPrecision(digits));
  const before = kept === 0 ? 1 : Math.floor(Math.log10(Math.abs(kept))) + 1;
  return kept.toFixed(Math.max(0, digits - before));
}

/** Evenly spread values with both ends. spread(0, 1, 3) is 0, 0.5, 1. */
export function spread(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}
