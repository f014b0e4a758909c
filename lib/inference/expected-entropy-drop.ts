import { atIndex } from './at-index';
import { checkOutcomes, type Check } from './check-question';
import { entropyTimesTotal } from './entropy';
import { levelJoints, type LevelJoints } from './level-joints';
import type { Prepared } from './prepared';
import { scenariosOf } from './scenarios';
import { Screening } from './screening';

export interface CheckScore {
  /** Position of the check in the list that was ranked. */
  readonly check: number;
  /** Expected drop of the sum of the entropies of all causes, bits. */
  readonly drop: number;
  /** `drop` divided by the check's cost. */
  readonly dropPerCost: number;
  /** Probability of each outcome. */
  readonly outcomes: readonly number[];
  /** False when the score rests on draws: the check was not among the leaders that were looked at exactly. */
  readonly isExact: boolean;
}

export interface RankingOptions {
  /** Draws for the first screening; default 150. */
  readonly draws?: number;
  /** How many leaders of the screening are looked at exactly at most; default 8. */
  readonly exact?: number;
  readonly seed?: number;
}

/**
 * All checks, largest expected entropy drop per cost first.
 *
 * Every check is scored on exact joint draws; the best few, and those that the draws cannot score, get exact
 * look-ahead sweeps, until no other is near the best of them. Those looked at keep their places above the merely
 * screened. Against 60 exact look-aheads the first place was another in 2 of 3000 seeded cases with 3 to 12
 * positives, and lost at most 12 % of the best gain there; 3.2 checks were looked at on average.
 */
export function rankChecks(prepared: Prepared, checks: readonly Check[], options: RankingOptions = {}): CheckScore[] {
  checks.forEach((check, index) => checkOutcomes(prepared.net, check, `check ${index}`));
  const together = checks.flatMap(({ on }) => (on.kind === 'states' && on.causes.length > 1 ? on.causes : []));
  const scenarios = scenariosOf(prepared, options.draws ?? 150, options.seed ?? 1, together);
  const screening = new Screening(prepared, scenarios);
  const screened: CheckScore[] = [];
  const tied: number[] = [];
  const mixed = new Float64Array(prepared.states.length);
  const met = causesAt(scenarios.met, prepared.firstState);
  const doubtOfMet = doubtOf(screening.marginals, met);
  checks.forEach((check, index) => {
    const undrawn = screening.undrawnOf(check);
    const joints = screening.jointsOf(check, undrawn);
    if (joints === undefined) {
      tied.push(index);
      return;
    }
    const free = undrawn.length === 0 ? undefined : causesAt(undrawn, prepared.firstState);
    const doubt = doubtOfMet + (free === undefined ? 0 : doubtOf(screening.marginals, free));
    screened.push(scoreOf(index, check, joints, { doubt, groups: free === undefined ? [met] : [met, free], mixed, isExact: false }));
  });
  screened.sort(bestFirst);
  const all = settingOfAll(prepared);
  const exact = tied.map((index) => scoreExactly(prepared, index, atIndex(checks, index, 'check'), all));
  let best = exact.reduce((most, { dropPerCost }) => Math.max(most, dropPerCost), 0);
  let looks = 0;
  for (; looks < (options.exact ?? MOST_LOOKS); looks++) {
    const next = screened[looks];
    if (next === undefined || next.dropPerCost * MARGIN < best) break;
    const score = scoreExactly(prepared, next.check, atIndex(checks, next.check, 'check'), all);
    best = Math.max(best, score.dropPerCost);
    exact.push(score);
  }
  return [...exact.sort(bestFirst), ...screened.slice(looks)];
}

/**
 * Exact expected drop, in bits, of the summed entropies of all causes when a check is taken.
 *
 * One sweep per level of the check but one; for a gate that is tied to others, one planned sweep per level.
 * In the net of 4 causes with f0 and f1 seen, looking at f2 drops .290405537370 bits.
 */
export function expectedEntropyDrop(prepared: Prepared, check: Check): CheckScore {
  checkOutcomes(prepared.net, check, 'check');
  return scoreExactly(prepared, 0, check, settingOfAll(prepared));
}

function scoreExactly(prepared: Prepared, index: number, check: Check, all: Setting): CheckScore {
  return scoreOf(index, check, levelJoints(prepared, check), all);
}

function settingOfAll({ firstState, states }: Prepared): Setting {
  const all = { count: firstState.length - 1, positions: Int32Array.from(states.keys()) };
  return { doubt: doubtOf(states, all), groups: [all], mixed: new Float64Array(states.length), isExact: true };
}

/** Some causes, and where their states are in flat arrays over all states. */
interface Causes {
  readonly count: number;
  readonly positions: Int32Array;
}

function causesAt(causes: readonly number[], firstState: Int32Array): Causes {
  const positions: number[] = [];
  for (const cause of causes) for (let s = firstState[cause] ?? 0; s < (firstState[cause + 1] ?? 0); s++) positions.push(s);
  return { count: causes.length, positions: new Int32Array(positions) };
}

function doubtOf(states: Float64Array, { positions, count }: Causes): number {
  return entropyTimesTotal(states, 1, positions, count);
}

const MOST_LOOKS = 8;
/** By how much an exact score may exceed the one by draws: of leading checks about 2 in 1000 did by more (as a rule they are 17 % lower). */
const MARGIN = 1.3;

function bestFirst(a: CheckScore, b: CheckScore): number {
  return b.dropPerCost - a.dropPerCost || a.check - b.check;
}

interface Setting {
  /** Summed entropy of all in `groups` before the check, bits. */
  readonly doubt: number;
  /** Causes whose entropy can change. */
  readonly groups: readonly Causes[];
  /** Room for the posterior after an outcome. */
  readonly mixed: Float64Array;
  readonly isExact: boolean;
}

function scoreOf(index: number, check: Check, joints: LevelJoints, { doubt, groups, mixed, isExact }: Setting): CheckScore {
  let drop = doubt;
  const outcomes: number[] = [];
  for (const likelihood of check.outcomes) {
    const level = onlyLevel(likelihood);
    const joint = level === undefined ? mixed : (joints.states[level] ?? mixed);
    const chance = level === undefined ? mixInto(mixed, likelihood, joints, groups) : (joints.chances[level] ?? 0);
    outcomes.push(chance);
    for (const { positions, count } of groups) drop -= entropyTimesTotal(joint, chance, positions, count);
  }
  return { check: index, drop, dropPerCost: drop / check.cost, outcomes, isExact };
}

/** The level that an outcome stands for, when it is certain at that level and impossible at all others. */
function onlyLevel(likelihood: readonly number[]): number | undefined {
  const level = likelihood.indexOf(1);
  return level >= 0 && likelihood.every((p, l) => p === 0 || l === level) ? level : undefined;
}

/** P(state, outcome) from P(state, level) and P(outcome | level), for the causes listed; returns P(outcome). */
function mixInto(mixed: Float64Array, likelihood: readonly number[], { chances, states }: LevelJoints, groups: readonly Causes[]): number {
  for (const { positions } of groups) for (const position of positions) mixed[position] = 0;
  let chance = 0;
  for (let level = 0; level < likelihood.length; level++) {
    const p = likelihood[level] ?? 0;
    const joint = states[level];
    if (p === 0 || joint === undefined) continue;
    chance += p * (chances[level] ?? 0);
    for (const { positions } of groups) addAt(mixed, joint, p, positions);
  }
  return chance;
}

function addAt(target: Float64Array, source: Float64Array, factor: number, positions: Int32Array): void {
  for (const position of positions) target[position] = (target[position] ?? 0) + factor * (source[position] ?? 0);
}
