import { mappedNumbers } from '../elementary';
import type { LevelTable } from '../inference';
import { GRADES, type Grade } from '../knowledge';

/** What one observation says: there or not in a round, and how bad where that was told. */
export interface ToldOfSymptom {
  readonly round: number;
  readonly on: boolean;
  readonly grade?: Grade | undefined;
}

/**
 * The levels of a symptom's gate. Level 0 is "never fires"; each further one means that it fires through a certain round,
 * and, in the rounds for which a grade was told, that its worst mechanism has a certain grade.
 */
export interface SymptomLevels {
  /** Per level: the last round in which it fires; 0 for level 0. */
  readonly through: readonly number[];
  /** Likelihood of what was told at each level. */
  readonly weights: readonly number[];
  /** Turns a table over "last round 0 … R" into one over these levels; `shares` are those of slight, clear and severe. */
  readonly spread: (byLastRound: LevelTable, shares: readonly number[]) => number[];
}

/**
 * P(told | true grade), rows by what was told, columns by what it is: people tell the grade right in seven or eight of ten
 * cases and hardly ever take slight for severe. Estimate.
 */
const TOLD_GRADE: Readonly<Record<Grade, readonly number[]>> = { slight: [0.8, 0.15, 0.03], clear: [0.17, 0.7, 0.17], severe: [0.03, 0.15, 0.8] };

/** Levels of a symptom that is only there or not: one per round. */
export function plainLevels(told: readonly ToldOfSymptom[], rounds: number): SymptomLevels {
  const through = Array.from({ length: rounds + 1 }, (_, level) => level);
  return { through, weights: mappedNumbers(through, (last) => likelihoodOfStory(told, last)), spread: (table) => [...table] };
}

/**
 * Levels of a symptom of which it was told how bad it is; undefined when no grade was told while it was seen.
 *
 * The grade last told holds for the last round in which the symptom was seen, and rules the worst of the mechanisms that
 * still fire there: mechanisms that end before do not touch it, those that go on too long contradict the story. So one row of
 * levels is exact where nothing follows from the symptom. Where another symptom follows from it, every round is a level
 * of its own (the later symptom needs to know how long it lasts), and in rounds after the last that was told of it the grade
 * is that of the mechanism that lasts longest; with one round, or once it was looked at again, that is exact too.
 */
export function gradedLevels(told: readonly ToldOfSymptom[], rounds: number, isFollowed: boolean): SymptomLevels | undefined {
  const seen = told.filter((entry) => entry.on).sort((a, b) => a.round - b.round);
  const grade = seen.reduce<Grade | undefined>((last, entry) => entry.grade ?? last, undefined);
  const lastSeen = seen[seen.length - 1]?.round;
  if (grade === undefined || lastSeen === undefined) return undefined;
  const gone = Math.min(rounds + 1, ...told.filter((entry) => !entry.on && entry.round > lastSeen).map((entry) => entry.round));
  const stops = isFollowed ? Array.from({ length: rounds }, (_, index) => index + 1) : [...new Set(told.map((entry) => entry.round))].sort((a, b) => a - b);
  const levels = [{ through: 0, grade: -1 }, ...stops.flatMap((through) => (through >= lastSeen && through < gone ? GRADES.map((_, each) => ({ through, grade: each })) : [{ through, grade: -1 }]))];
  return {
    through: mappedNumbers(levels, (level) => level.through),
    weights: mappedNumbers(levels, (level) => likelihoodOfStory(told, level.through) * (level.grade < 0 ? 1 : (TOLD_GRADE[grade][level.grade] ?? 0))),
    spread: (table, shares) => {
      const lasts = table.map((_, last) => Math.max(0, ...stops.filter((stop) => stop <= last)));
      return mappedNumbers(levels, (level) => table.reduce((sum, share, last) => (lasts[last] === level.through ? sum + share * (level.grade < 0 ? 1 : (shares[level.grade] ?? 0)) : sum), 0));
    },
  };
}

/** 1 when "there" and "not there" were told just as a symptom that fires through this round would have it, else 0. */
function likelihoodOfStory(told: readonly ToldOfSymptom[], through: number): number {
  return told.every((entry) => through >= entry.round === entry.on) ? 1 : 0;
}
