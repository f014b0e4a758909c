import { answer, type Gate, type Net } from '../inference';
import type { Knowledge, KnownCheck, KnownMethod, ReadingModel } from '../knowledge';
import { chanceOfClass } from '../knowledge';
import { atWorkNow } from './build-net';
import type { Diagnosis } from './diagnose';
import { readingLikelihoods } from './reading-likelihood';
import { orderedModels, sameModel } from './reading-levels';

/** A check that could be taken next, by its cheapest method. */
export interface NextCheck {
  readonly check: string;
  readonly method: string;
  readonly minutes: number;
  /** Expected loss of doubt: the drop of the summed entropy of all causes, in bits. */
  readonly gain: number;
  /** Tools that it needs and the case says are not at hand; such checks come after all others. */
  readonly lacks: readonly string[];
  readonly outcomes: readonly CheckOutcome[];
}

/** One way a check may come out: its chance, and the chance of every cause after it, in the order of the net's causes. */
export interface CheckOutcome {
  readonly label: 'yes' | 'no' | 'reading';
  /** For a reading: the value (SI, or ratio) that stands for this part of its distribution. */
  readonly value?: number;
  readonly chance: number;
  readonly after: readonly number[];
}

export interface NextCheckOptions {
  /** Tools that are not at hand. */
  readonly lacksTools?: readonly string[];
  /** How many checks are worked out exactly; the others are left out as hopeless. Default all. */
  readonly most?: number;
}

/** Readings are looked at in this many equally likely parts. */
const PARTS = 5;

/**
 * Every check that is not answered yet and could move something, best first: most expected loss of doubt per minute.
 * Exact: each possible outcome is worked out by a run of its own.
 */
export function nextChecks(diagnosis: Diagnosis, knowledge: Knowledge, options: NextCheckOptions = {}): NextCheck[] {
  const answered = new Set(diagnosis.items.flatMap((item) => (item.kind === 'symptom' ? [] : [item.about])));
  const shares = sharesActing(diagnosis);
  const doubt = summedEntropy(diagnosis.answer.states.map(atWorkNow), shares);
  const found: NextCheck[] = [];
  for (const check of promising(diagnosis, knowledge, answered, options.most)) {
    const method = cheapestMethod(check, knowledge, options.lacksTools ?? []);
    if (!method) continue;
    const outcomes = outcomesOf(check, method.page, diagnosis);
    const left = outcomes.reduce((sum, outcome) => sum + outcome.chance * summedEntropy(outcome.after, shares), 0);
    found.push({ check: check.id, method: method.page.id, minutes: method.page.minutes, gain: Math.max(0, doubt - left), lacks: method.lacks, outcomes });
  }
  const worth = (next: NextCheck): number => next.gain / next.minutes;
  return found.sort((a, b) => Number(a.lacks.length > 0) - Number(b.lacks.length > 0) || worth(b) - worth(a) || (a.check < b.check ? -1 : 1));
}

/** Entropy of independent yes-no questions with these chances, in bits; each counted with its share (1 when left out). */
export function summedEntropy(chances: readonly number[], shares: readonly number[] = []): number {
  let sum = 0;
  chances.forEach((p, index) => { if (p > 0 && p < 1) sum -= (shares[index] ?? 1) * (p * Math.log2(p) + (1 - p) * Math.log2(1 - p)); });
  return sum;
}

/** Per cause of the net: the share of its presence that had a hand in this failure. Doubt about the rest is of no use now. */
function sharesActing(diagnosis: Diagnosis): number[] {
  const byId = new Map(diagnosis.causes.map((cause) => [cause.id, cause.present > 0 ? cause.probability / cause.present : 0]));
  return diagnosis.net.causes.map((id) => byId.get(id) ?? 0);
}

/** Checks by an upper bound of what they can settle: the entropy of the causes that they hear of. */
function promising(diagnosis: Diagnosis, knowledge: Knowledge, answered: ReadonlySet<string>, most = Infinity): KnownCheck[] {
  const chance = new Map(diagnosis.causes.map((cause) => [cause.id, cause.probability]));
  const bound = (check: KnownCheck): number => summedEntropy([...Object.keys(check.yes), ...Object.keys(check.reads)].map((id) => chance.get(id) ?? 0));
  return Object.values(knowledge.checks)
    .filter((check) => !answered.has(check.id))
    .map((check) => ({ check, bound: bound(check) }))
    .filter((row) => row.bound > 0.02)
    .sort((a, b) => b.bound - a.bound)
    .slice(0, most)
    .map((row) => row.check);
}

function cheapestMethod(check: KnownCheck, knowledge: Knowledge, lacking: readonly string[]): { page: KnownMethod; lacks: string[] } | undefined {
  const ways = check.methods.flatMap((id) => {
    const page = knowledge.methods[id];
    return page ? [{ page, lacks: page.needs.filter((tool) => lacking.includes(tool)) }] : [];
  });
  return ways.sort((a, b) => Number(a.lacks.length > 0) - Number(b.lacks.length > 0) || a.page.minutes - b.page.minutes)[0];
}

/** Every way this check may come out when taken by this method, with what would be believed after it. */
export function outcomesOf(check: KnownCheck, method: KnownMethod | undefined, diagnosis: Diagnosis): CheckOutcome[] {
  if (check.answer.kind === 'yes-no') return yesNoOutcomes(check, chanceOfClass(method?.misleads ?? 'uncommon'), diagnosis);
  return readingOutcomes(check, diagnosis);
}

function yesNoOutcomes(check: KnownCheck, misled: number, { net }: Diagnosis): CheckOutcome[] {
  const gate = (weights: readonly number[]): Gate => ({
    leak: [1 - check.leak, check.leak],
    links: linksTo(check.yes, net.causes, net.net, (chance) => [1 - chance, chance]),
    weights,
  });
  return weighted([
    { label: 'yes', run: withGate(net.net, gate([misled, 1 - misled])) },
    { label: 'no', run: withGate(net.net, gate([1 - misled, misled])) },
  ]);
}

/** What a reading is expected to be before it is taken: a mixture of models, with what would be believed given each. */
export interface ExpectedReading {
  readonly models: readonly ReadingModel[];
  /** Chance of each model; sums to 1. */
  readonly shares: readonly number[];
  /** Per model: chance of every cause when the reading comes from it, in the order of the net's causes. */
  readonly given: readonly (readonly number[])[];
}

/** The expectation of a quantity check from everything known so far; undefined when it says nothing of healthy readings. */
export function expectedReading(check: KnownCheck, { net }: Pick<Diagnosis, 'net'>): ExpectedReading | undefined {
  const healthy = check.otherwise;
  if (healthy === undefined || Object.keys(check.reads).length === 0) return undefined;
  const models = [healthy, ...orderedModels(healthy, Object.values(check.reads))];
  const table = (chance: number, level: number): number[] => models.map((_, each) => (each === 0 ? 1 - (level === 0 ? 0 : chance) : each === level ? chance : 0));
  const links = linksTo(check.reads, net.causes, net.net, (chance, id) => {
    const read = check.reads[id];
    return table(chance, read === undefined ? 0 : models.findIndex((model, level) => level > 0 && sameModel(model, read)));
  });
  const runs = models.map((_, level) => withGate(net.net, { leak: table(0, 0), links, weights: models.map((__, other) => (other === level ? 1 : 0)) }));
  return { models, shares: sharesOf(runs), given: runs.map((run) => run.after) };
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
  const expected = expectedReading(check, diagnosis);
  if (!expected) return [];
  // Given the model, nothing else about the reading matters, so every outcome is a mixture over the models.
  return quantiles(expected, PARTS).map((value) => {
    const likely = readingLikelihoods(value, 0, expected.models).map((likelihood, level) => likelihood * (expected.shares[level] ?? 0));
    const total = likely.reduce((a, b) => a + b, 0);
    const after = diagnosis.net.causes.map((_, cause) => likely.reduce((mean, weight, level) => mean + (weight / total) * (expected.given[level]?.[cause] ?? 0), 0));
    return { label: 'reading' as const, value, chance: 1 / PARTS, after };
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

interface WhatIf {
  readonly logEvidence: number;
  readonly after: readonly number[];
}

function withGate(net: Net, gate: Gate): WhatIf {
  const outcome = answer({ ...net, gates: [...net.gates, gate] });
  if (outcome.kind !== 'answer') return { logEvidence: -Infinity, after: net.causes.map(() => 0) };
  return { logEvidence: outcome.logEvidence, after: outcome.states.map(atWorkNow) };
}

function weighted(runs: readonly { readonly label: 'yes' | 'no'; readonly run: WhatIf }[]): CheckOutcome[] {
  const shares = sharesOf(runs.map((each) => each.run));
  return runs.map(({ label, run }, index) => ({ label, chance: shares[index] ?? 0, after: run.after }));
}

/** Chances of several ways of things, from their log evidence. */
function sharesOf(runs: readonly WhatIf[]): number[] {
  const largest = Math.max(...runs.map((run) => run.logEvidence));
  const shares = runs.map((run) => Math.exp(run.logEvidence - largest));
  const sum = shares.reduce((a, b) => a + b, 0);
  return shares.map((share) => share / sum);
}

/** Links to a gate of the present: only the last state of a cause, present and not fixed, still acts. */
function linksTo(links: Readonly<Record<string, { readonly chance: number }>>, causes: readonly string[], net: Net, tableOf: (chance: number, id: string) => number[]): Gate['links'] {
  return causes.flatMap((id, cause) => {
    const link = links[id];
    if (link === undefined) return [];
    const states = (net.causes[cause]?.weights.length ?? 2) - 1;
    const acts = tableOf(link.chance, id);
    const nothing = acts.map((_, level) => (level === 0 ? 1 : 0));
    return [{ cause, contributes: Array.from({ length: states }, (_, state) => (state === states - 1 ? acts : nothing)) }];
  });
}
