import type { Prepared } from '../inference';
import type { KnownCheck, KnownMethod, ReadingModel } from '../knowledge';
import { chanceOfClass } from '../knowledge';
import type { Diagnosis } from './diagnose';
import { isAnythingFound, presentNow } from './having-a-hand';
import { readingLikelihoods } from './reading-likelihood';
import { isMeasuredSeen, levelsByItself, orderedModels, sameModel } from './reading-levels';

/** One way a check may come out, and what would be believed after it; lists are in the order of the net's causes. */
export interface CheckOutcome {
  readonly label: 'yes' | 'no' | 'reading';
  /** For a reading: the value (SI, or ratio) that stands for this part of its distribution. */
  readonly value?: number;
  readonly chance: number;
  /** Chance that each cause is there. */
  readonly present: Float64Array;
  /** Chance that each cause is there and had a hand in something found, as the ranking would show it then. */
  readonly after: Float64Array;
}

/** Readings are looked at in this many equally likely parts. */
const PARTS = 5;

/** Every way this check may come out when taken by this method, with what would be believed after it. Exact. */
export function outcomesOf(check: KnownCheck, method: KnownMethod | undefined, diagnosis: Diagnosis): CheckOutcome[] {
  if (check.answer.kind === 'yes-no') return yesNoOutcomes(check, chanceOfClass(method?.misleads ?? 'uncommon'), diagnosis);
  return readingOutcomes(check, diagnosis);
}

function yesNoOutcomes(check: KnownCheck, misled: number, diagnosis: Diagnosis): CheckOutcome[] {
  const levels = levelsAhead(diagnosis, [1 - check.leak, check.leak], Object.entries(check.yes).map(([id, link]) => ({ id, level: 1, chance: link.chance })));
  return [outcomeOf('yes', [misled, 1 - misled], levels, true), outcomeOf('no', [1 - misled, misled], levels, isAnythingFound(diagnosis.net))];
}

/** What a reading is expected to be before it is taken: a mixture of models. */
export interface ExpectedReading {
  readonly models: readonly ReadingModel[];
  /** Chance of each model; sums to 1. */
  readonly shares: readonly number[];
}

/** The expectation of a quantity check from everything known so far; undefined when it says nothing of healthy readings. */
export function expectedReading(check: KnownCheck, diagnosis: Pick<Diagnosis, 'net' | 'prepared'>): ExpectedReading | undefined {
  return levelsOfReading(check, diagnosis)?.expected;
}

function levelsOfReading(check: KnownCheck, diagnosis: Pick<Diagnosis, 'net' | 'prepared'>): { expected: ExpectedReading; levels: LevelsAhead } | undefined {
  const healthy = check.otherwise;
  if (healthy === undefined || Object.keys(check.reads).length === 0) return undefined;
  const models = [healthy, ...orderedModels(healthy, Object.values(check.reads))];
  const links = Object.entries(check.reads).map(([id, read]) => ({ id, level: models.findIndex((model, level) => level > 0 && sameModel(model, read)), chance: read.chance }));
  const levels = levelsAhead(diagnosis, levelsByItself(models.length, isMeasuredSeen(check, diagnosis.net.builtFrom.items)), links);
  return { expected: { models, shares: levels.chances }, levels };
}

/** Density of an expected reading at a value (SI or ratio), in any unit. */
export function expectedDensity(value: number, { models, shares }: ExpectedReading): number {
  return models.reduce((sum, model, index) => {
    const deviation = deviationOf(value, model);
    return sum + (shares[index] ?? 0) * (Math.exp(-0.5 * deviation * deviation) / (model.shape === 'normal' ? model.spread : model.spread * Math.max(value, 1e-12)));
  }, 0);
}

/** Chance that an expected reading is below a value. */
export function expectedBelow(value: number, { models, shares }: ExpectedReading): number {
  return models.reduce((sum, model, index) => sum + (shares[index] ?? 0) * shareBelow(value, model), 0);
}

function readingOutcomes(check: KnownCheck, diagnosis: Diagnosis): CheckOutcome[] {
  const ahead = levelsOfReading(check, diagnosis);
  if (!ahead) return [];
  // Given its model, nothing else about the reading matters, so every outcome is a mixture over the models.
  return partsOf(ahead.expected).map(({ value, chance }) => ({ ...outcomeOf('reading', readingLikelihoods(value, 0, ahead.expected.models), ahead.levels, true), value, chance }));
}

/**
 * Values that stand for the parts of an expectation, and their chances. Where a model comes in whole multiples every model is cut
 * into parts of its own, and those of that model lie on its multiples: between them a reading would speak against it.
 */
function partsOf(expected: ExpectedReading): { readonly value: number; readonly chance: number }[] {
  if (expected.models.every(({ multiplesOf = [] }) => multiplesOf.length === 0)) return quantiles(expected, PARTS).map((value) => ({ value, chance: 1 / PARTS }));
  return expected.models.flatMap((model, level) => {
    const spacings = model.multiplesOf ?? [];
    return quantiles({ models: [model], shares: [1] }, PARTS).map((value, part) => {
      const spacing = spacings[part % Math.max(1, spacings.length)];
      return { value: spacing === undefined ? value : Math.max(1, Math.round(value / spacing)) * spacing, chance: (expected.shares[level] ?? 0) / PARTS };
    });
  });
}

/** Medians of equally likely parts of the expectation, found by bisection on its distribution function. */
function quantiles(expected: ExpectedReading, parts: number): number[] {
  const reach = (model: ReadingModel, deviations: number): number => (model.shape === 'normal' ? model.median + deviations * model.spread : model.median * Math.exp(deviations * model.spread));
  return Array.from({ length: parts }, (_, part) => {
    let low = Math.min(...expected.models.map((model) => reach(model, -5)));
    let high = Math.max(...expected.models.map((model) => reach(model, 5)));
    for (let step = 0; step < 50; step += 1) {
      const middle = (low + high) / 2;
      if (expectedBelow(middle, expected) < (part + 0.5) / parts) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

/** Share of a model's readings below a value. The logistic form of the normal distribution function, good to 0.01. */
function shareBelow(value: number, model: ReadingModel): number {
  return 1 / (1 + Math.exp(-1.702 * deviationOf(value, model)));
}

function deviationOf(value: number, model: ReadingModel): number {
  if (model.shape === 'normal') return (value - model.median) / model.spread;
  return value <= 0 ? -40 : Math.log(value / model.median) / model.spread;
}

/** The joint distribution of a gate that is not in the net yet and of each cause, everything told taken into account. */
interface LevelsAhead {
  /** Chance of each level; sums to 1. */
  readonly chances: readonly number[];
  /** Per level: chance of it together with each cause being there. */
  readonly present: readonly Float64Array[];
  /** Per level: chance of it together with each cause being there without a hand in anything, this gate included. */
  readonly silent: readonly Float64Array[];
}

/**
 * That a new noisy-MAX gate stays at or below a level is a product of one factor per cause, so it is a run of the sweep as
 * planned with other weights; its levels are differences of these. Only causes at work now reach the gate.
 */
function levelsAhead({ net, prepared }: Pick<Diagnosis, 'net' | 'prepared'>, leak: readonly number[], links: readonly { readonly id: string; readonly level: number; readonly chance: number }[]): LevelsAhead {
  const { firstState } = prepared;
  const at = links.flatMap((link) => { const cause = net.causes.indexOf(link.id); return cause < 0 ? [] : [{ ...link, cause }]; });
  const chances: number[] = [];
  const present: Float64Array[] = [];
  const silent: Float64Array[] = [];
  for (let level = 0; level < leak.length; level += 1) {
    const isTop = level === leak.length - 1;
    const reach = at.filter((link) => link.level > level);
    const run = isTop ? prepared : prepared.whatIfFactors(reach.map((link) => ({ cause: link.cause, factors: lastOf(prepared, link.cause, 1 - link.chance) })));
    const upTo = leak.slice(0, level + 1).reduce((sum, share) => sum + share, 0) * Math.exp(run.logEvidence - prepared.logEvidence);
    chances.push(upTo);
    present.push(presentNow(run.states, firstState).map((chance) => chance * upTo));
    const quiet = presentNow(run.silent, firstState).map((chance) => chance * upTo);
    for (const link of at) if (link.level <= level) quiet[link.cause] = (quiet[link.cause] ?? 0) * (1 - link.chance);
    silent.push(quiet);
  }
  return { chances: chances.map((upTo, level) => Math.max(0, upTo - (chances[level - 1] ?? 0))), present: differences(present), silent: differences(silent) };
}

function lastOf(prepared: Prepared, cause: number, factor: number): number[] {
  const states = (prepared.firstState[cause + 1] ?? 0) - (prepared.firstState[cause] ?? 0);
  return Array.from({ length: states }, (_, state) => (state === states - 1 ? factor : 1));
}

function differences(upTo: readonly Float64Array[]): Float64Array[] {
  return upTo.map((row, level) => row.map((chance, cause) => Math.max(0, chance - (upTo[level - 1]?.[cause] ?? 0))));
}

/** What is believed after an outcome with these likelihoods per level. */
function outcomeOf(label: CheckOutcome['label'], likelihoods: readonly number[], { chances, present, silent }: LevelsAhead, isFound: boolean): CheckOutcome {
  const chance = likelihoods.reduce((sum, likelihood, level) => sum + likelihood * (chances[level] ?? 0), 0);
  const mixed = (rows: readonly Float64Array[]): Float64Array => {
    const out = new Float64Array(rows[0]?.length ?? 0);
    rows.forEach((row, level) => { for (let cause = 0; cause < out.length; cause += 1) out[cause] = (out[cause] ?? 0) + ((likelihoods[level] ?? 0) * (row[cause] ?? 0)) / chance; });
    return out;
  };
  const there = mixed(present);
  if (!isFound) return { label, chance, present: there, after: there };
  const quiet = mixed(silent);
  return { label, chance, present: there, after: there.map((share, cause) => Math.max(0, share - (quiet[cause] ?? 0))) };
}
