/**
 * The tables that the inference core works on. It knows causes by number, not printers.
 *
 * A cause has a state: 0 is absent, 1 … K are ways of being present (one way for an ordinary cause; "present and
 * fixed" and "present still" for a cause in a repair round). Every finding is a *gate*: its level is the largest
 * level that any present cause, earlier gate or the leak contributes (noisy-MAX; with two levels noisy-OR).
 * All numbers are non-negative, so nothing is ever subtracted.
 */
export interface Cause {
  /**
   * Weight of each state, state 0 (absent) first; need not sum to 1. Prior odds, context multipliers and every
   * piece of evidence that concerns this cause alone are already multiplied in.
   */
  readonly weights: readonly number[];
}

/** Probability of each level 0 … L that one contributor adds to a gate, given that it is at work; sums to 1. */
export type LevelTable = readonly number[];

export interface GateLink {
  readonly cause: number;
  /** One table per state 1 … K of the cause. A state that contributes nothing has the table [1, 0, …]. */
  readonly contributes: readonly LevelTable[];
}

/** A gate whose level, once settled, contributes to a later gate: a chain of symptoms. */
export interface GateFeed {
  /** Index of the earlier gate. Feeds form no cycle. */
  readonly gate: number;
  /** One table per level 1 … L of the earlier gate. */
  readonly contributes: readonly LevelTable[];
}

export interface Inhibitor {
  readonly cause: number;
  /** Chance, 0 … 1, that a level above 0 drops to 0 while the cause is present. */
  readonly strength: number;
}

/**
 * What is known of one finding. `weights[l]` is the likelihood of everything observed about it when its level is l:
 * seen = [0, 1], not seen = [1, 0], graded level 2 of 0 … 2 = [0, 0, 1], a measurement = p(reading | level),
 * not looked at = all ones (the gate then matters only when it feeds another).
 */
export interface Gate {
  readonly leak: LevelTable;
  readonly links: readonly GateLink[];
  readonly feeds?: readonly GateFeed[];
  readonly weights: readonly number[];
  /** Inhibiting causes: when this cause is in a present state, a level above 0 drops to 0 with this chance. */
  readonly inhibitedBy?: readonly Inhibitor[];
}

/** A likelihood over the states of two or three causes together, for evidence that depends on them jointly. */
export interface JointFactor {
  readonly causes: readonly number[];
  /** Row-major over the states of the causes in the order given; the last cause varies fastest. */
  readonly table: readonly number[];
}

export interface Net {
  readonly causes: readonly Cause[];
  readonly gates: readonly Gate[];
  readonly joints?: readonly JointFactor[];
}

/** Cost of an exact answer, known before it is run. */
export interface Cost {
  /** Largest number of table entries held at once. */
  readonly width: number;
  /** Sum over steps of (links + 1) × table entries; about 3.3 ns each. */
  readonly units: number;
}

export interface Answer {
  /** Per cause: probability of each state; state 0 first. */
  readonly states: readonly (readonly number[])[];
  /**
   * Per cause and state: probability that it is in this state and contributes to no gate that takes part (state 0: the
   * same as in `states`). What is left of a present state had a hand in something, or in a level that cannot be told apart.
   */
  readonly silent: readonly (readonly number[])[];
  /** Natural log of the probability (or likelihood) of all evidence together. */
  readonly logEvidence: number;
  /**
   * Per gate: probability that its level comes from the leak alone, nothing listed and no earlier gate reaching as
   * high. 0 for a gate that is at level 0 for certain, and for one that takes no part (see `levels`).
   */
  readonly leakAlone: readonly number[];
  /**
   * Per gate: probability of each level given all evidence. Empty for a gate that takes no part because nothing is
   * known of it and nothing known follows from it, unless it was asked for with `predict`.
   */
  readonly levels: readonly (readonly number[])[];
  readonly cost: Cost;
}

/** Given instead of an answer when the exact sweep would take longer than allowed. */
export interface TooDense {
  readonly cost: Cost;
  /** Gates in the order in which confirming or withdrawing them would make the answer cheaper. */
  readonly confirmFirst: readonly number[];
}
