import type { Problem, Reading } from '@/lib/problems';
import type { Measured, QuantityKind, UnitSymbol } from '@/lib/units';

/** Half-width of "certainly within": a fixed part and a part that grows with the value. */
export interface Limits {
  readonly fixed?: number;
  /** Share of the value. */
  readonly share?: number;
}

/** One thing that a formula wants to be told. */
export interface ReadingSpec {
  readonly id: string;
  /** What the field is called, as on screen, small letters: `time to fill`. */
  readonly title: string;
  /** 'any' takes whatever kind the caller measures, the same for all such readings. */
  readonly kind: QuantityKind | 'any';
  /** Unit shown in the field; the preferred metric one when left out. */
  readonly unit?: UnitSymbol;
  /** How often to take it; 1 when repeating adds nothing. */
  readonly repeat: number;
  /** Allowed values in SI. */
  readonly min?: number;
  readonly max?: number;
  /**
   * Limits of the tool, taken as common to all repeats, when no ± is typed (SI). Half of the last typed digit counts when
   * it is wider. A typed ± replaces them. Where they come from stands beside each formula.
   */
  readonly limits?: Limits;
  /** Limits that stand in for the scatter when a reading that should be repeated was taken once (SI). */
  readonly once?: Limits;
  /** Used when the reading is left out (SI); its ± are limits. */
  readonly usual?: { readonly value: number; readonly plusMinus: number };
}

/** A reading as it comes in: typed ± are limits; a computed quantity carries a 95 % interval and says so. */
export interface ReadingValue extends Measured {
  /** False when the ± is only the last digit of what was typed; then the limits of the tool apply. */
  readonly plusMinusTyped?: boolean;
  /** True when the ± is a 95 % interval that a formula computed. */
  readonly interval?: boolean;
}

export type Readings = Readonly<Record<string, readonly ReadingValue[]>>;

/** A share of what the ± is made of. */
export interface BudgetShare {
  readonly part: string;
  /** Share of the squared standard uncertainty, 0 to 1; all shares together make 1. */
  readonly share: number;
}

export interface Outcome {
  /** The value and its 95 % interval. */
  readonly result: Measured;
  /** Unit in which it is best shown. */
  readonly unit: UnitSymbol;
  readonly standard: number;
  readonly freedom: number;
  readonly coverage: number;
  /** Largest share first; empty when nothing is uncertain. */
  readonly budget: readonly BudgetShare[];
  /** ± to expect after one more reading of the kind that helps most. */
  readonly nextReadingPlusMinus?: number;
  /** Which reading that is. */
  readonly nextReading?: string;
  /** The calculation in lines of plain words. */
  readonly steps: readonly string[];
}

export interface Formula {
  readonly id: string;
  readonly title: string;
  readonly readings: readonly ReadingSpec[];
  /** 'same': the kind of its readings; 'difference': the kind of a difference of its readings. */
  readonly result: QuantityKind | 'same' | 'difference';
  readonly unit?: UnitSymbol;
  /** The relation in letters of the handbook and where it is from. */
  readonly source: string;
  /** Turns readings (SI) into the result, its 95 % interval and what that is made of; every fault in them is a Problem. */
  readonly compute: (readings: Readings) => Reading<Outcome>;
}

/** What one formula file says; `defineFormula` adds the handling that is the same for all. */
export interface FormulaText<Id extends string> {
  readonly id: string;
  readonly title: string;
  readonly readings: readonly (ReadingSpec & { readonly id: Id })[];
  readonly result: Formula['result'];
  readonly unit?: UnitSymbol;
  readonly source: string;
  /** The relation, SI in and out. */
  readonly evaluate: (x: Readonly<Record<Id, number>>) => number;
  /** One line that shows the relation with its numbers, and further lines worth knowing. */
  readonly explain: (x: Readonly<Record<Id, number>>, value: number) => readonly string[];
  /** Problems and notes that only this formula knows. */
  readonly judge?: (x: Readonly<Record<Id, number>>, value: number) => readonly Problem[];
}
