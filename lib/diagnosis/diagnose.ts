import { mapped } from '../elementary';
import type { CaseFile } from '../cases';
import { conflict, prepare, type Answer, type CauseFactor, type Net, type Prepared } from '../inference';
import type { BranchId, Knowledge } from '../knowledge';
import type { Problem } from '../problems';
import { buildNet, type CaseNet } from './build-net';
import { evidenceOf, nameOf, type Evidence } from './evidence';
import { groupBy } from './group-by';
import { havingAHand, isAnythingFound, presentNow } from './having-a-hand';
import { likelyRange, type Band } from './likely-range';
import { drawScenarios, UNLISTED } from './scenarios';

/** A cause with its chance of being at work in this failure. Several can be at work at once, so chances do not sum to 1. */
export interface RankedCause {
  readonly id: string;
  readonly title: string;
  readonly part: BranchId;
  /** Chance that it is there now and had a hand in something that was found (see having-a-hand.ts). */
  readonly probability: number;
  /** Chance that it is there at all, whether or not it did anything here. */
  readonly present: number;
  /** 90 % of plausible readings of the knowledge base's figures give a chance between these. */
  readonly low: number;
  readonly high: number;
  /** Best and worst place in the ranking, 1 first, over the same readings; its own place while no bands are reckoned. */
  readonly bestRank: number;
  readonly worstRank: number;
  /** Chance before anything was told, in the circumstances of this machine and print. */
  readonly before: number;
}

/** A part of the machine, with the chance that at least one of its causes is at work. */
export interface RankedBranch {
  readonly part: BranchId;
  /** Reckoned when first asked for: it costs a sweep, and most branches stay closed. */
  readonly probability: number;
  /** The likeliest first. */
  readonly causes: readonly string[];
}

/** How much of what was seen nothing listed explains. */
export interface Unexplained {
  /** Mean over the findings that were there: 0.25 means that a quarter of what was seen is explained by nothing here. Chains count by their root. */
  readonly share: number;
  readonly byFinding: readonly { readonly about: string; readonly share: number }[];
}

/** Everything that later steps (next checks, explanations, remedies) need of a finished diagnosis. */
export interface Diagnosis {
  readonly kind: 'diagnosis';
  readonly causes: readonly RankedCause[];
  /** The branch of the likeliest cause first. */
  readonly branches: readonly RankedBranch[];
  /** Reckoned when first asked for, as the conflict and the full answer are. */
  readonly unexplained: Unexplained;
  /** Natural log of (product of single chances / joint chance): above 2 the evidence contradicts itself. */
  readonly conflict: number;
  readonly items: readonly Evidence[];
  readonly problems: readonly Problem[];
  /** Checks that were answered with "can't tell" in this round: there is no use in asking for them again at once. */
  readonly putOff: readonly string[];
  readonly net: CaseNet;
  readonly answer: Answer;
  /** The finished run behind it, for what-if questions at one sweep each. */
  readonly prepared: Prepared;
}

/** Too many findings at once for an exact answer; confirming or withdrawing the first of these helps most. */
export interface TooMuchAtOnce {
  readonly kind: 'too-much';
  readonly confirmFirst: readonly string[];
  readonly items: readonly Evidence[];
  readonly problems: readonly Problem[];
}

export interface DiagnoseOptions {
  /** Copies with shaken figures behind `low` and `high`; 0 leaves the band at the chance itself. Default 100. */
  readonly copies?: number;
  /** Share of unlisted or passed-on symptoms that stay away by luck between rounds; 0 for strictly persistent mechanisms. */
  readonly fading?: number;
  /** The diagnosis before the last change of the case: what the change leaves as it was is not reckoned again. */
  readonly earlier?: Diagnosis | undefined;
}

/**
 * Ranks every cause of the knowledge base for one case: exact posterior over all combinations of causes.
 *
 * Never throws on what a case may hold; unknown ids and unusable readings come back as notes in `problems`.
 */
export function diagnose(file: CaseFile, knowledge: Knowledge, options: DiagnoseOptions = {}): Diagnosis | TooMuchAtOnce {
  const { items: told, problems, putOff } = evidenceOf(file, knowledge);
  const net = buildNet(file, told, knowledge, options.fading, options.earlier?.net);
  // The net has an order of its own; the items stay in that of telling.
  const ofNet = new Map(net.builtFrom.items.map((item) => [nameOf(item), item]));
  const items = told.map((item) => ofNet.get(nameOf(item)) ?? item);
  const outcome = prepare(net.net, { levels: false }, options.earlier?.prepared);
  if (outcome.kind === 'too-dense') return { kind: 'too-much', confirmFirst: toldOf(outcome.confirmFirst, net), items, problems };
  if (outcome.kind === 'impossible') throw new Error('diagnose: got evidence of probability 0, expected tables without zeros');
  const { prepared } = outcome;
  const isFound = isAnythingFound(net);
  const chances: Chances = { present: presentNow(prepared.states, prepared.firstState), acting: havingAHand(prepared, prepared.firstState, isFound) };
  const causes = rankedCauses(net, chances, likelyRange(prepared, isFound, options.copies ?? 100), knowledge);
  let unexplainedKnown: Unexplained | undefined;
  let conflictKnown: number | undefined;
  return {
    kind: 'diagnosis', causes,
    branches: rankedBranches(causes, net, prepared),
    get unexplained() { return (unexplainedKnown ??= unexplainedOf(net, prepared)); },
    get conflict() { return (conflictKnown ??= conflictOf(net.net)); },
    get answer() { return prepared.answer; },
    items, problems, putOff, net, prepared,
  };
}

/** The same diagnosis with the bands of its causes, reckoned elsewhere; what it reckons when first asked for is shared. */
export function withBands(diagnosis: Diagnosis, causes: readonly RankedCause[]): Diagnosis {
  return Object.create(diagnosis, { causes: { value: causes, enumerable: true } }) as Diagnosis;
}

/** What was told at these gates, without repeats. A gate that only passes something on has nothing to confirm. */
function toldOf(gates: readonly number[], net: CaseNet): string[] {
  return [...new Set(gates.flatMap((gate) => net.gates[gate]?.items[0]?.about ?? []))];
}

/** Per cause of the net: chance that it is there now, and that it is there and had a hand in something found. */
interface Chances {
  readonly present: Float64Array;
  readonly acting: Float64Array;
}

function rankedCauses(net: CaseNet, { present, acting }: Chances, bands: readonly Band[], knowledge: Knowledge): RankedCause[] {
  const likeliestFirst = (a: number, b: number): number => (acting[b] ?? 0) - (acting[a] ?? 0) || (present[b] ?? 0) - (present[a] ?? 0) || ((net.causes[a] ?? '') < (net.causes[b] ?? '') ? -1 : 1);
  return mapped([...net.causes.keys()].sort(likeliestFirst), (index, above): RankedCause => {
    const id = net.causes[index] ?? '';
    const cause = knowledge.causes[id];
    const place = above + 1;
    const probability = acting[index] ?? 0;
    const band = bands[index] ?? { low: probability, high: probability, bestRank: place, worstRank: place };
    const weights = net.net.causes[index]?.weights ?? [1];
    return {
      id, title: cause?.title ?? id, part: cause?.part ?? 'settings', probability, present: present[index] ?? 0,
      low: Math.min(band.low, probability), high: Math.max(band.high, probability),
      bestRank: Math.min(band.bestRank, place), worstRank: Math.max(band.worstRank, place),
      before: 1 - (weights[0] ?? 1) / weights.reduce((sum, weight) => sum + weight, 0),
    };
  });
}

/**
 * The causes by part of the machine, as they are ranked. Chance that at least one of a branch that had a hand in this is
 * there: one minus the share of evidence left when none of them may be. Causes that nothing told points to are left out.
 */
function rankedBranches(causes: readonly RankedCause[], net: CaseNet, prepared: Prepared): RankedBranch[] {
  return mapped([...groupBy(causes, (cause) => cause.part)], ([part, members]): RankedBranch => {
    const involved = (): number[] => members.filter((cause) => cause.probability > 0.5 * cause.present).map((cause) => net.causes.indexOf(cause.id));
    let known: number | undefined;
    return { part, causes: members.map((cause) => cause.id), get probability() { return (known ??= atLeastOne(net.net, prepared, involved())); } };
  });
}

function atLeastOne(net: Net, prepared: Prepared, indices: readonly number[]): number {
  if (indices.length === 0) return 0;
  const none = indices.map((cause): CauseFactor => ({ cause, factors: (net.causes[cause]?.weights ?? []).map((_, state, all) => (state === all.length - 1 ? 0 : 1)) }));
  return Math.min(1, Math.max(0, 1 - Math.exp(prepared.logEvidenceIf(none) - prepared.logEvidence)));
}

function unexplainedOf(net: CaseNet, prepared: Prepared): Unexplained {
  const { leakAlone } = prepared.answer;
  const atRoot = unlistedAtRoot(net, prepared);
  const byFinding = net.gates.flatMap((gate, index) => {
    const there = gate.items.some((item) => (item.kind === 'symptom' && item.seen) || (item.kind === 'answer' && item.yes));
    return there ? [{ about: gate.about, share: atRoot.get(gate.about) ?? leakAlone[index] ?? 0 }] : [];
  });
  const share = byFinding.length === 0 ? 0 : byFinding.reduce((sum, row) => sum + row.share, 0) / byFinding.length;
  return { share, byFinding };
}

/** Draws behind the share of a chain that nothing listed has begun; a share of a half is then off by 0.02. */
const DRAWS = 600;

/**
 * Per symptom that may have followed from another one: how often nothing listed is at the root of it. The exact share of its own leak
 * says nothing of that: a step that followed from a curl which came by itself is no better explained than the curl.
 */
function unlistedAtRoot(net: CaseNet, prepared: Prepared): ReadonlyMap<string, number> {
  const followed = new Set(net.net.gates.flatMap((gate, index) => (gate.feeds === undefined ? [] : [net.gates[index]?.about ?? ''])));
  if (followed.size === 0) return new Map();
  const { symptoms, scenarios } = drawScenarios(net, prepared, DRAWS, 3);
  return new Map(symptoms.flatMap((symptom, m) => {
    const there = followed.has(symptom) ? scenarios.filter(({ bySymptom }) => (bySymptom[m]?.length ?? 0) > 0) : [];
    return there.length === 0 ? [] : [[symptom, there.filter(({ bySymptom }) => bySymptom[m]?.every((culprit) => culprit === UNLISTED)).length / there.length] as const];
  }));
}

/** Undefined conflict (too dense without some gate) counts as none: nothing can be said. */
function conflictOf(net: Net): number {
  const informed = net.gates.flatMap((gate, index) => (gate.weights.some((weight) => weight !== gate.weights[0]) ? [index] : []));
  if (informed.length < 2) return 0;
  const base = { ...net, gates: net.gates.map((gate) => ({ ...gate, weights: gate.weights.map(() => 1) })) };
  return conflict(base, informed.map((gate) => ({ kind: 'gate', gate, weights: net.gates[gate]?.weights ?? [] }))) ?? 0;
}
