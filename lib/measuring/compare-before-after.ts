import { coverageFactor95, studentBelow } from './distributions';
import { failureRateBelow, smallestGroupChange, smallestPairedChange } from './few-prints';
import { describe } from './sample';
import type { Sample } from './sample';

/** The same measurement on prints before and after a change, one number per print, one unit throughout. */
export interface BeforeAfter {
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** True when before[i] and after[i] belong together (same spot, same model, alternating prints). */
  readonly paired: boolean;
  /** Bound that a print must keep to count as good. */
  readonly limit: number;
  readonly good: 'at-most' | 'at-least';
  /** 95 % half-width of one measurement, the same for all. */
  readonly plusMinus: number;
  /** Smallest change worth having; smaller ones count as none even when certain. 0 when left out. */
  readonly worthwhile?: number;
}

/**
 * cured: after keeps the limit with 95 % certainty, before did not. better, worse: the change is certain, the limit is not.
 * no-change: neither; look at `smallestVisible` before believing that nothing changed.
 */
export type Verdict = 'cured' | 'better' | 'no-change' | 'worse';

export interface Comparison {
  readonly verdict: Verdict;
  /** Mean after less mean before, with its 95 % half-width. */
  readonly change: number;
  readonly changePlusMinus: number;
  readonly afterMean: number;
  readonly afterPlusMinus: number;
  readonly beforeMean: number;
  readonly beforePlusMinus: number;
  /** Two-sided chance of such a change by luck; undefined when there is one print on a side. */
  readonly p: number | undefined;
  readonly freedom: number | undefined;
  /** Smallest change that these prints would show with 80 % chance; undefined with one print on a side. */
  readonly smallestVisible: number | undefined;
  /** With all prints after being good, failures may still be this frequent (95 %). */
  readonly failureRateBelow: number;
  /** False when no scatter between prints could be seen, so that the ± is that of the measurement alone. */
  readonly scatterKnown: boolean;
}

/**
 * Judges a change by prints before and after it. Student's t on the differences when paired, Welch's form when not; the
 * uncertainty of one measurement is the floor below which no scatter counts. One print on a side shows no scatter: its verdict rests on the
 * measurement alone (`scatterKnown` false) and can be surer than two prints would allow. Needs at least one print on each side and, when paired,
 * equal numbers; throws otherwise. Source: motion sheet 8; JCGM 100, G.
 * Worked: differences 0.12, 0.05, 0.09, 0.15, 0.04: mean 0.09 ± 0.0576, p 0.01225.
 */
export function compareBeforeAfter(prints: BeforeAfter): Comparison {
  const { before, after, paired } = prints;
  if (before.length === 0 || after.length === 0) throw new Error('compareBeforeAfter: got no prints on one side, expected at least one on each');
  if (paired && before.length !== after.length) throw new Error(`compareBeforeAfter: got ${before.length} and ${after.length} prints, expected pairs`);
  const first = describe(before);
  const second = describe(after);
  const change = paired ? pairedChange(prints) : groupChange(first, second, prints.plusMinus);
  const beforePlusMinus = meanPlusMinus(first, prints.plusMinus);
  const afterPlusMinus = meanPlusMinus(second, prints.plusMinus);
  const scatterKnown = before.length > 1 && after.length > 1;
  return {
    verdict: verdictOf(prints, first.mean, second.mean, afterPlusMinus, change),
    change: change.size,
    changePlusMinus: change.plusMinus,
    afterMean: second.mean,
    afterPlusMinus,
    beforeMean: first.mean,
    beforePlusMinus,
    p: change.p,
    freedom: change.freedom,
    smallestVisible: smallestVisible(prints, first, second, change),
    failureRateBelow: failureRateBelow(after.every((value) => keeps(prints, value)) ? after.length : 0),
    scatterKnown,
  };
}

interface Change {
  readonly size: number;
  readonly plusMinus: number;
  readonly p?: number;
  readonly freedom?: number;
  /** Standard deviation that the test saw, for the smallest visible change. */
  readonly deviation?: number;
}

const NORMAL_95 = 1.959_964;

function pairedChange({ before, after, plusMinus }: BeforeAfter): Change {
  const differences = after.map((value, index) => value - (before[index] ?? Number.NaN));
  const { count, mean, deviation } = describe(differences);
  const reading = (Math.SQRT2 * plusMinus) / NORMAL_95;
  if (count === 1) return { size: mean, plusMinus: NORMAL_95 * reading };
  return tested(mean, Math.max(deviation, reading) / Math.sqrt(count), count - 1, Math.max(deviation, reading));
}

function groupChange(before: Sample, after: Sample, plusMinus: number): Change {
  const size = after.mean - before.mean;
  const reading = plusMinus / NORMAL_95;
  const [first, second] = [before, after].map(({ count, deviation }) => Math.max(deviation, reading) ** 2 / count);
  const variance = (first ?? 0) + (second ?? 0);
  if (before.count === 1 || after.count === 1) return { size, plusMinus: oneSided(before, after, reading) };
  const freedom = variance === 0
    ? before.count + after.count - 2
    : variance ** 2 / ((first ?? 0) ** 2 / (before.count - 1) + (second ?? 0) ** 2 / (after.count - 1));
  return tested(size, Math.sqrt(variance), freedom, Math.max(before.deviation, after.deviation, reading));
}

/** One print on a side: its scatter is taken from the other side when that has some, else only the measurement counts. */
function oneSided(before: Sample, after: Sample, reading: number): number {
  const many = before.count > after.count ? before : after;
  const one = Math.max(many.deviation, reading);
  const factor = many.count > 1 && many.deviation > reading ? coverageFactor95(many.count - 1) : NORMAL_95;
  return factor * one * Math.sqrt(1 / before.count + 1 / after.count);
}

function tested(size: number, standard: number, freedom: number, deviation: number): Change {
  const plusMinus = coverageFactor95(freedom) * standard;
  const p = standard === 0 ? (size === 0 ? 1 : 0) : 2 * (1 - studentBelow(Math.abs(size) / standard, freedom));
  return { size, plusMinus, p, freedom, deviation };
}

/** Scatter between prints and the measurement itself; for one print the measurement alone. */
function meanPlusMinus({ count, deviation }: Sample, plusMinus: number): number {
  if (count === 1) return plusMinus;
  const scatter = (coverageFactor95(count - 1) * deviation) / Math.sqrt(count);
  return Math.max(scatter, plusMinus / Math.sqrt(count));
}

function keeps({ limit, good }: BeforeAfter, value: number): boolean {
  return good === 'at-most' ? value <= limit : value >= limit;
}

function verdictOf(prints: BeforeAfter, beforeMean: number, afterMean: number, afterPlusMinus: number, change: Change): Verdict {
  const towardsGood = prints.good === 'at-most' ? -1 : 1;
  const surelyKept = keeps(prints, afterMean - towardsGood * afterPlusMinus);
  if (surelyKept && !keeps(prints, beforeMean)) return 'cured';
  const certain = Math.abs(change.size) > change.plusMinus && Math.abs(change.size) >= (prints.worthwhile ?? 0);
  if (!certain) return 'no-change';
  return Math.sign(change.size) === towardsGood ? 'better' : 'worse';
}

function smallestVisible(prints: BeforeAfter, before: Sample, after: Sample, change: Change): number | undefined {
  if (change.deviation === undefined) return undefined;
  const count = Math.min(100, before.count, after.count);
  return change.deviation * (prints.paired ? smallestPairedChange(count) : smallestGroupChange(count));
}
