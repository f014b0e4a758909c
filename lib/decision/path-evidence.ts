import { airOfPath, drawInputs, fanSlotsOf, inputLayout, readAirPath, samplePath, variantOfToday, type AirPath } from '@/lib/airflow';
import { chanceOfClass, type KnownCheck, type Knowledge, type ReadingModel } from '@/lib/knowledge';
import { findUnit, fromUnit, type QuantityKind } from '@/lib/units';
import { taskOf } from './air-options';
import { sampleOptions } from './air-samples';

/** What the described path says to a diagnosis, before anything was measured on it. */
export interface PathEvidence {
  /** Factor on the odds of each cause that the description itself speaks about. */
  readonly odds: Readonly<Record<string, number>>;
  /** How the readings of a check come out on this path: without any cause, and with each. */
  readonly models: Readonly<Record<string, { readonly healthy: ReadingModel; readonly ofCause: Readonly<Record<string, ReadingModel>> }>>;
  /** Chance that the worst side gets less than the print needs. */
  readonly shortOfNeed: number;
}

/** As much of a case as is needed here: the air path as it was entered, and what readings were compared with. */
export interface CaseWithPath {
  readonly airPath?: Readonly<Record<string, unknown>> | undefined;
  readonly rounds?: readonly { readonly airBefore?: Readonly<Record<string, unknown>> | undefined }[];
  readonly findings: readonly { readonly check: string; readonly comparedWith?: { readonly quantity: QuantityKind; readonly value: number; readonly unit: string } | undefined }[];
}

/**
 * The knowledge base as it holds for a case whose air path is described: readings of the air are held against what this fan and
 * duct give when nothing is wrong, and causes that lie in the description itself (fan too small for the print, duct too narrow, one
 * side starved by the fork) are as likely as the description makes them.
 *
 * The path is taken without its readings and without what the sides of the part looked like: both stand in the case already, and
 * nothing may count twice. Without a described path the knowledge base comes back as it is.
 */
export function knowledgeOfCase(knowledge: Knowledge, file: CaseWithPath): Knowledge {
  // Priors and readings speak of the machine as it was found, also once the path is described as something new was fitted.
  const airPath = file.rounds?.find((round) => round.airBefore !== undefined)?.airBefore ?? file.airPath;
  if (airPath === undefined) return knowledge;
  const compared = comparedFlow(file);
  const isSame = last?.knowledge === knowledge && last.airPath === airPath && last.compared === compared;
  if (!isSame) last = { knowledge, airPath, compared, tailored: tailored(knowledge, airPath, compared) };
  return last?.tailored ?? knowledge;
}

/** The last answer: a case is diagnosed anew with every finding, while its air path stays as it is. */
let last: { readonly knowledge: Knowledge; readonly airPath: object; readonly compared: number | undefined; readonly tailored: Knowledge } | undefined;

function tailored(knowledge: Knowledge, airPath: object, compared: number | undefined): Knowledge {
  const path = readAirPath(JSON.stringify(airPath)).value;
  const evidence = path === undefined ? undefined : pathEvidence(path, knowledge, compared);
  return evidence === undefined ? knowledge : knowledgeOnPath(knowledge, evidence);
}

/** The knowledge base with the priors and reading models of one path. */
export function knowledgeOnPath(knowledge: Knowledge, evidence: PathEvidence): Knowledge {
  const modelOf = (check: string, cause: string): ReadingModel | undefined => evidence.models[check]?.ofCause[cause];
  const causes = Object.fromEntries(Object.entries(knowledge.causes).map(([id, cause]) => {
    const odds = (evidence.odds[id] ?? 1) * (cause.prior / (1 - cause.prior));
    const reads = Object.fromEntries(Object.entries(cause.reads).map(([check, link]) => [check, { ...link, ...modelOf(check, id) }]));
    return [id, { ...cause, prior: odds / (1 + odds), reads }];
  }));
  const checks = Object.fromEntries(Object.entries(knowledge.checks).map(([id, check]) => {
    const reads = Object.fromEntries(Object.entries(check.reads).map(([cause, link]) => [cause, { ...link, ...modelOf(id, cause) }]));
    return [id, { ...check, otherwise: evidence.models[id]?.healthy ?? check.otherwise, reads }];
  }));
  return { ...knowledge, causes, checks };
}

const SAMPLES = 1000;
const SEED = 3;

/** Causes that a description can show, and the checks whose readings they move. */
const BY_DESIGN: Readonly<Record<string, readonly string[]>> = {
  'outlet-speed-weakest': ['weak-part-fan', 'duct-restricts-flow', 'outlet-misses-side'],
  'part-fan-flow-in-duct': ['weak-part-fan', 'duct-restricts-flow'],
  'outlet-share-weaker': ['outlet-misses-side'],
};

/** Share of the free flow from which on the fan is the limit rather than the duct. */
const MOST_THROUGH = 0.65;

/** A description is worth at most this on the odds: dimensions are measured, the heat at the part is modelled. Estimate. */
const MOST_FOR = 8;
const MOST_AGAINST = 1 / 4;

/**
 * What a described path says, from its joint samples. A sample counts as short when the worst side gets less than the print needs.
 * Fan too weak: short, and most of the free flow gets through. Duct too narrow: short, and less of it does. What is most lies
 * in the middle between the edges of the bottleneck rule (0.5 and 0.8), so that a sample blames one of the two, as that rule does.
 * One side starved: the weaker outlet has less than 0.6 of the speed of the stronger.
 *
 * The odds stand against how often a machine nobody has described would be so, not against the prior: that one is also
 * small because a hundred other causes compete with it.
 *
 * `comparedFlow` (m³/s): the flow that the case compares its reading of the duct with; the flow that this print needs otherwise.
 * Undefined when too little is described to say anything.
 */
export function pathEvidence(path: AirPath, knowledge: Knowledge, comparedFlow?: number): PathEvidence | undefined {
  if (!isDescribed(path)) return undefined;
  const samples = samplesOf({ ...path, measured: [], candidates: [], print: { ...path.print, sides: [] } });
  const odds = Object.fromEntries(Object.entries(samples.events).flatMap(([cause, held]) => {
    const known = knowledge.causes[cause];
    return known === undefined ? [] : [[cause, oddsFactor(shareHeld(held), chanceOfClass(known.howOften))]];
  }));
  const readings: Readonly<Record<string, Float64Array>> = {
    'outlet-speed-weakest': samples.least,
    'part-fan-flow-in-duct': comparedFlow === undefined ? samples.flowOverNeed : samples.flow.map((flow) => flow / comparedFlow),
    ...(path.outlets.length < 2 ? {} : { 'outlet-share-weaker': samples.leastOverMost }),
  };
  const models = Object.fromEntries(Object.entries(readings).flatMap(([id, values]) => {
    const check = knowledge.checks[id];
    const found = check === undefined ? undefined : modelsOf(check, values, samples.events, knowledge);
    return found === undefined ? [] : [[id, found]];
  }));
  return { odds, models, shortOfNeed: shareHeld(samples.short) };
}

/**
 * Factor that takes the odds of a prior to the odds of a chance, kept from 1/4 to 8; the chance itself is kept from 0.02 to 0.98.
 * Worked: chance 0.3 on a prior of 0.1 gives (3/7)/(1/9) = 3.857; chance 0.9 on 0.1 would give 81 and gives 8.
 */
export function oddsFactor(chance: number, prior: number): number {
  const kept = Math.min(0.98, Math.max(0.02, chance));
  const factor = kept / (1 - kept) / (prior / (1 - prior));
  return Math.min(MOST_FOR, Math.max(MOST_AGAINST, factor));
}

/**
 * One log-normal law with the mean and spread of a mixture of two (of their logarithms). `share` of the first, 0 to 1.
 * Worked: half of 2 and half of 8, spreads 0: median 4, spread ln 2 = 0.693.
 */
export function mixedModel(first: ReadingModel, second: ReadingModel, share: number): ReadingModel {
  const [a, b] = [Math.log(first.median), Math.log(second.median)];
  const mean = share * a + (1 - share) * b;
  const square = share * (first.spread ** 2 + (a - mean) ** 2) + (1 - share) * (second.spread ** 2 + (b - mean) ** 2);
  return { shape: 'log-normal', median: Math.exp(mean), spread: Math.sqrt(square) };
}

interface DescribedSamples {
  readonly least: Float64Array;
  readonly leastOverMost: Float64Array;
  /** Out of all outlets, m³/s, and over the flow that would just serve the worst side. */
  readonly flow: Float64Array;
  readonly flowOverNeed: Float64Array;
  readonly short: Uint8Array;
  /** Per cause by design: 1 in the samples in which the description has it. */
  readonly events: Readonly<Record<string, Uint8Array>>;
}

/** Anything can be answered from usual values, but only what somebody looked up or measured is evidence. */
function isDescribed(path: AirPath): boolean {
  const fanKnown = path.fan.freeFlow.basis === 'given' || path.fan.frame !== undefined;
  return fanKnown && path.outlets.some((outlet) => outlet.mouth.width.basis === 'given');
}

function samplesOf(path: AirPath): DescribedSamples {
  const air = airOfPath(path);
  const today = variantOfToday(path);
  const inputs = drawInputs(inputLayout(fanSlotsOf(path), 1), SAMPLES, SEED);
  const sampled = samplePath(today, air, inputs);
  const leave = { id: 'leave', kind: 'leave' as const, title: '', variant: today, task: taskOf(path), price: 0, handsTime: 0, printingTime: 0, timePerPrint: 0, reversible: true };
  const coverage = sampleOptions([leave], air, inputs, sampled)[0]?.coverage ?? new Float64Array(SAMPLES);
  const speeds = (s: number): number[] => sampled.outlets.map((outlet) => outlet.speed[s] ?? 0);
  const per = (f: (s: number) => number): Float64Array => Float64Array.from({ length: SAMPLES }, (_, s) => f(s));
  const mark = (f: (s: number) => boolean): Uint8Array => Uint8Array.from({ length: SAMPLES }, (_, s) => Number(f(s)));
  const through = (s: number): number => (sampled.flow[s] ?? 0) / (sampled.fanCount * (sampled.fan.freeFlow[s] ?? 1));
  const isShort = (s: number): boolean => (coverage[s] ?? 0) < 1;
  const leastOverMost = per((s) => Math.min(...speeds(s)) / Math.max(...speeds(s)));
  return {
    least: per((s) => Math.min(...speeds(s))),
    leastOverMost,
    flow: per((s) => (sampled.flow[s] ?? 0) - (sampled.leakFlow[s] ?? 0)),
    // The coefficient grows about as the flow to the power 0.65.
    flowOverNeed: per((s) => Math.max(1e-3, coverage[s] ?? 0) ** (1 / 0.65)),
    short: mark(isShort),
    events: {
      'weak-part-fan': mark((s) => isShort(s) && through(s) >= MOST_THROUGH),
      'duct-restricts-flow': mark((s) => isShort(s) && through(s) < MOST_THROUGH),
      ...(path.outlets.length < 2 ? {} : { 'outlet-misses-side': mark((s) => (leastOverMost[s] ?? 1) < 0.6) }),
    },
  };
}

function shareHeld(held: Uint8Array): number {
  return held.reduce((sum, one) => sum + one, 0) / held.length;
}

/** Model error of a computed speed or share, beside what the samples carry (log). Estimate. */
const MODEL_SPREAD = 0.12;
/** Fewer samples than this share say too little about how a reading comes out. */
const ENOUGH = 0.05;

function modelsOf(check: KnownCheck, values: Float64Array, events: DescribedSamples['events'], knowledge: Knowledge): PathEvidence['models'][string] | undefined {
  const usual = check.otherwise;
  const byDesign = (BY_DESIGN[check.id] ?? []).filter((cause) => cause in events);
  const soundValues = values.filter((_, s) => byDesign.every((cause) => events[cause]?.[s] === 0));
  const described = fitted(soundValues, values.length);
  if (usual?.shape !== 'log-normal' || described === undefined) return undefined;
  // A division has a sound value whatever the sizes: the less the description leaves room for it, the more the usual one counts.
  const sound = check.id === 'outlet-share-weaker' ? mixedModel(described, usual, soundValues.length / values.length) : described;
  // What a fault does is told as a share of the sound reading, so it moves along with it.
  const factor = sound.median / usual.median;
  const ofCause = Object.fromEntries(Object.entries(check.reads).map(([cause, read]) => {
    const fault: ReadingModel = { shape: read.shape, median: read.median * factor, spread: read.spread };
    const held = byDesign.includes(cause) ? events[cause] : undefined;
    const design = held === undefined ? undefined : fitted(values.filter((_, s) => held[s] === 1), values.length);
    if (held === undefined || design === undefined) return [cause, fault];
    const chance = shareHeld(held);
    return [cause, mixedModel(design, fault, chance / (chance + chanceOfClass(knowledge.causes[cause]?.howOften ?? 'very-common')))];
  }));
  return { healthy: sound, ofCause };
}

function fitted(values: Float64Array, of: number): ReadingModel | undefined {
  if (values.length < ENOUGH * of) return undefined;
  const logs = values.map(Math.log);
  const mean = logs.reduce((sum, each) => sum + each, 0) / logs.length;
  const square = logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / logs.length;
  return { shape: 'log-normal', median: Math.exp(mean), spread: Math.hypot(Math.sqrt(square), MODEL_SPREAD) };
}

function comparedFlow(file: CaseWithPath): number | undefined {
  const stored = file.findings.find((finding) => finding.check === 'part-fan-flow-in-duct' && finding.comparedWith !== undefined)?.comparedWith;
  const unit = stored === undefined ? undefined : findUnit(stored.unit, stored.quantity);
  return stored === undefined || unit === undefined ? undefined : fromUnit(stored.value, unit);
}
