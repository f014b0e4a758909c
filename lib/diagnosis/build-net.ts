import { mapped, mappedNumbers } from '../elementary';
import type { CaseFile } from '../cases';
import type { Gate, GateFeed, GateLink, LevelTable, Net } from '../inference';
import type { Knowledge, Link } from '../knowledge';
import { EVEN_SHARES, chanceOfClass } from '../knowledge';
import { priorInCircumstances, type CaseFacts, type Circumstanced } from './circumstances';
import { nameOf, type Evidence } from './evidence';
import { groupBy } from './group-by';
import { readingLikelihoods } from './reading-likelihood';
import { isMeasuredSeen, levelsByItself, orderedModels, sameModel } from './reading-levels';
import { fittedInRound } from './remedies-of-round';
import { gradedLevels, plainLevels, type SymptomLevels } from './symptom-levels';

/** The tables of one case: a net for lib/inference, and which of its parts mean what. */
export interface CaseNet {
  readonly net: Net;
  /** Cause ids in the order of `net.causes`. */
  readonly causes: readonly string[];
  /** What each gate is about: a symptom, or a check (in one round for readings). */
  readonly gates: readonly GateSubject[];
  /** Last round that anything was told of or that began by fitting a remedy. */
  readonly rounds: number;
  readonly builtFrom: BuiltFrom;
}

/** What the gates of a net rest on: while none of it changes they stay as they are. */
interface BuiltFrom {
  /** The very objects that the gates point to. */
  readonly items: readonly Evidence[];
  readonly fitted: CaseFile['rounds'];
  readonly knowledge: Knowledge;
  readonly fading: number;
}

export interface GateSubject {
  readonly about: string;
  readonly kind: 'symptom' | 'answer' | 'reading';
  readonly items: readonly Evidence[];
}

/**
 * Builds the net of a case.
 *
 * Rounds: a remedy fitted in round k splits each cause that it may cure into "fixed after k" and "still there". The
 * mechanism persists: what fired stays fired while its cause is there, so every gate has as its level the last round in
 * which it fires. A symptom told in two rounds is one gate, and nothing is counted twice (diagnosis.md sections 2.5, 6).
 * What has no listed cause, and what only follows from another symptom, may also stay away from one print to the next by
 * luck: `fading` is the share of it that does (0 for strictly persistent mechanisms).
 * Where a symptom's page tells grades apart and one was told, its levels carry the grade too (symptom-levels.ts); without
 * a told grade the net is the same as if there were none.
 * The order of telling does not matter: sums, and so the scenarios drawn from them, come out the same.
 * The gates of an `earlier` net are taken over while only machine and print have changed since.
 */
export function buildNet(file: CaseFacts, told: readonly Evidence[], knowledge: Knowledge, fading = FADING, earlier?: CaseNet): CaseNet {
  const items = [...told].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
  const causes = Object.keys(knowledge.causes);
  const repairs = repairsOf(file, knowledge);
  const rounds = Math.max(1, ...items.map((item) => item.round), ...[...repairs.values()].flatMap((list) => list.map((repair) => repair.round + 1)));
  const frame: Frame = { items, knowledge, causes, rounds, fading, activeThrough: new Map([...repairs].map(([id, list]) => [id, activeRounds(list, rounds)])), always: [rounds], index: new Map(causes.map((id, index) => [id, index])) };
  const now: BuiltFrom = { items, fitted: file.rounds, knowledge, fading };
  const { gates, subjects, builtFrom } = earlier && restsOnTheSame(now, earlier.builtFrom) ? { gates: earlier.net.gates, subjects: earlier.gates, builtFrom: earlier.builtFrom } : { ...gatesOf(items, frame), builtFrom: now };
  return {
    net: { causes: mapped(priorsOf(file, knowledge), (prior, index) => ({ weights: stateWeights(prior, repairs.get(causes[index] ?? '') ?? NONE) })), gates },
    causes, gates: subjects, rounds, builtFrom,
  };
}

function restsOnTheSame(a: BuiltFrom, b: BuiltFrom): boolean {
  return a.knowledge === b.knowledge && a.fitted === b.fitted && a.fading === b.fading && a.items.length === b.items.length && a.items.every((item, index) => sourceOf(item) === sourceOf(b.items[index]));
}

/** What an item was read from. A case is never changed in place, so the same source gives the same item. */
function sourceOf(item: Evidence | undefined): object | undefined {
  return item?.kind === 'symptom' ? item.observation : item?.finding;
}

/** Share of unlisted or passed-on symptoms that stay away from the next print by luck. Estimate. */
const FADING = 0.2;

/** States of a cause that count as "at work now": the last one, present and not fixed by anything fitted. */
export function atWorkNow(states: readonly number[]): number {
  return states[states.length - 1] ?? 0;
}

interface Repair {
  readonly round: number;
  readonly chance: number;
}

interface Frame {
  readonly items: readonly Evidence[];
  readonly knowledge: Knowledge;
  readonly fading: number;
  readonly causes: readonly string[];
  readonly rounds: number;
  /** Per repaired cause and present state: the last round in which the cause still acts. */
  readonly activeThrough: ReadonlyMap<string, readonly number[]>;
  /** The same for every cause that nothing fitted may have cured. */
  readonly always: readonly number[];
  readonly index: ReadonlyMap<string, number>;
}

const NONE: readonly Repair[] = [];

/* The last priors: most answers leave machine and print as they are. */
const lastPriors = new WeakMap<Knowledge, { readonly machine: object; readonly print: object; readonly casebook: object | undefined; readonly priors: readonly number[] }>();

/** Prior of every cause on this machine and print, in the order of the knowledge base. */
function priorsOf({ machine, print, casebook }: Circumstanced, knowledge: Knowledge): readonly number[] {
  const last = lastPriors.get(knowledge);
  if (last?.machine === machine && last.print === print && last.casebook === casebook) return last.priors;
  const priors = mappedNumbers(Object.values(knowledge.causes), (cause) => priorInCircumstances(cause, { machine, print, casebook }));
  lastPriors.set(knowledge, { machine, print, casebook, priors });
  return priors;
}

function repairsOf(file: Pick<CaseFile, 'rounds'>, knowledge: Knowledge): Map<string, Repair[]> {
  const repairs = new Map<string, Repair[]>();
  for (const round of file.rounds) {
    for (const [cause, chance] of chancesOfCure(round, knowledge)) repairs.set(cause, [...(repairs.get(cause) ?? []), { round: round.number, chance }]);
  }
  for (const list of repairs.values()) list.sort((a, b) => a.round - b.round);
  return repairs;
}

/** Per cause: the chance that what was fitted in this round cures it; two changes made together each have their own. */
function chancesOfCure(round: CaseFile['rounds'][number], knowledge: Knowledge): Map<string, number> {
  const chances = new Map<string, number>();
  for (const id of fittedInRound(round)) {
    for (const [cause, { chance }] of Object.entries(knowledge.remedies[id]?.cures ?? {})) chances.set(cause, 1 - (1 - (chances.get(cause) ?? 0)) * (1 - chance));
  }
  return chances;
}

/** absent, fixed by the first repair, by the second …, still there. */
function stateWeights(prior: number, repairs: readonly Repair[]): number[] {
  const weights = [1 - prior];
  let left = prior;
  for (const repair of repairs) {
    weights.push(left * repair.chance);
    left *= 1 - repair.chance;
  }
  weights.push(left);
  return weights;
}

function activeRounds(repairs: readonly Repair[], rounds: number): number[] {
  return [...mappedNumbers(repairs, (repair) => repair.round), rounds];
}

/* Gates */

interface Draft {
  readonly subject: GateSubject;
  readonly leak: LevelTable;
  readonly links: readonly GateLink[];
  readonly weights: readonly number[];
  readonly feedsFrom: readonly { readonly symptom: string; readonly chance: number; readonly shares: readonly number[] }[];
  /** For a symptom: what its levels mean to those that follow from it, and to which it follows from. */
  readonly levels?: SymptomLevels;
}

function gatesOf(items: readonly Evidence[], frame: Frame): { gates: Gate[]; subjects: GateSubject[] } {
  // A detail counts where the last word on its symptom, up to that round, is that it is seen.
  const isSeenBy = (symptom: string, round: number): boolean => items.reduce<{ round: number; seen: boolean }>((last, item) => (item.kind === 'symptom' && item.about === symptom && item.round <= round && item.round >= last.round ? item : last), { round: 0, seen: false }).seen;
  const counted = items.filter((item) => {
    const parent = item.kind === 'symptom' ? frame.knowledge.symptoms[item.about]?.detailOf : undefined;
    return parent === undefined || isSeenBy(parent, item.round);
  });
  const { drafts, followed } = draftsOf(counted, frame);
  const position = new Map(drafts.map((draft, index) => [draft.subject.about, index]));
  const gates = mapped(drafts, (draft) => {
    const gate = withFeeds(draft, drafts, position, frame);
    return draft.subject.kind === 'symptom' && followed.has(draft.subject.items[0]?.about ?? draft.subject.about) ? gate : mergeEqualLevels(gate);
  });
  return { gates, subjects: mapped(drafts, (draft) => draft.subject) };
}

/** Observed symptoms first and, for each, the unobserved ones that it may follow from (`followed`); then checks. */
function draftsOf(items: readonly Evidence[], frame: Frame): { drafts: Draft[]; followed: ReadonlySet<string> } {
  const drafts: Draft[] = [];
  const bySymptom = groupBy(items.filter((item) => item.kind === 'symptom'), (item) => item.about);
  const wanted = new Set(bySymptom.keys());
  const followed = new Set<string>();
  for (const id of wanted) for (const earlier of Object.keys(frame.knowledge.symptoms[id]?.followsFrom ?? {})) { wanted.add(earlier); followed.add(earlier); }
  for (const id of wanted) drafts.push(...symptomDrafts(id, bySymptom.get(id) ?? [], followed, frame));
  for (const [id, answers] of groupBy(items.filter((item) => item.kind === 'answer'), (item) => item.about)) drafts.push(...answerDrafts(id, answers, frame));
  for (const [, readings] of groupBy(items.filter((item) => item.kind === 'reading'), (item) => item.about)) drafts.push(...mapped(asOneReading(readings, frame), (same) => readingDraft(same, frame)));
  return { drafts, followed };
}

function symptomDrafts(id: string, items: readonly Evidence[], followed: ReadonlySet<string>, frame: Frame): Draft[] {
  const symptom = frame.knowledge.symptoms[id];
  if (!symptom) return [];
  const told = items.flatMap((item) => (item.kind === 'symptom' ? [{ round: item.round, on: item.seen, grade: symptom.grades && item.observation.severity, item }] : []));
  const feedsFrom = Object.entries(symptom.followsFrom).map(([earlier, link]) => ({ symptom: earlier, chance: link.chance, shares: link.grades ?? EVEN_SHARES }));
  return mapped(runsOf(told), (run, number) => {
    const about = number === 0 ? id : `${id} again ${number}`;
    const levels = gradedLevels(run, frame.rounds, followed.has(id)) ?? plainLevels(run, frame.rounds);
    return {
      subject: { about, kind: 'symptom', items: mapped(run, (entry) => entry.item) },
      leak: levels.spread(fadingTable(symptom.leak, frame.rounds, frame.rounds + 1, frame.fading), symptom.leakGrades),
      links: linksOf(symptom.links, frame.rounds + 1, frame, (table, link) => levels.spread(table, link.grades ?? EVEN_SHARES)),
      weights: levels.weights, feedsFrom, levels,
    };
  });
}

function answerDrafts(id: string, items: readonly Evidence[], frame: Frame): Draft[] {
  const check = frame.knowledge.checks[id];
  if (!check) return [];
  const told = items.flatMap((item) => (item.kind === 'answer' ? [{ round: item.round, on: item.yes, item }] : []));
  const method = items.map((item) => (item.kind === 'answer' && item.finding.method !== undefined ? frame.knowledge.methods[item.finding.method] : undefined)).find((each) => each !== undefined);
  const misled = chanceOfClass(method?.misleads ?? 'uncommon');
  return [{ subject: { about: id, kind: 'answer', items }, ...answerTables(check.leak, check.yes, told, misled, frame), feedsFrom: [] }];
}

interface Told {
  readonly round: number;
  readonly on: boolean;
  readonly item: Evidence;
}

/** Cuts a story like "seen, gone, seen again" where it starts anew: the same mechanism cannot have come back. */
function runsOf<T extends Told>(told: readonly T[]): T[][] {
  const runs: T[][] = [[]];
  let gone = false;
  for (const entry of [...told].sort((a, b) => a.round - b.round)) {
    if (entry.on && gone) runs.push([]);
    gone = !entry.on;
    runs[runs.length - 1]?.push(entry);
  }
  return runs;
}

/** Tables of a check that comes out yes or no: level l means that it does so in rounds 1 … l. */
function answerTables(leak: number, links: Readonly<Record<string, Link>>, told: readonly Told[], misled: number, frame: Frame): Pick<Draft, 'leak' | 'links' | 'weights'> {
  const levels = frame.rounds + 1;
  const weights = Array.from({ length: levels }, (_, level) => told.reduce((product, entry) => product * (level >= entry.round === entry.on ? 1 - misled : misled), 1));
  return { leak: fadingTable(leak, frame.rounds, levels, frame.fading), links: linksOf(links, levels, frame), weights };
}

function linksOf(links: Readonly<Record<string, Link>>, levels: number, frame: Frame, spread: (byLastRound: number[], link: Link) => number[] = (table) => table): GateLink[] {
  const known: GateLink[] = [];
  for (const [id, link] of Object.entries(links)) {
    const cause = frame.index.get(id);
    const through = frame.activeThrough.get(id) ?? frame.always;
    if (cause !== undefined) known.push({ cause, contributes: mapped(through, (last) => spread(twoLevelTable(link.chance, last, levels), link)) });
  }
  return known;
}

/** Level `level` with `chance`, else level 0. */
function twoLevelTable(chance: number, level: number, levels: number): number[] {
  const table: number[] = [];
  for (let each = 0; each < levels; each += 1) table.push((each === 0 ? 1 - chance : 0) + (each === level ? chance : 0));
  return table;
}

/** Level `level` with `chance`, of which a share ends by itself in one of the rounds before. */
function fadingTable(chance: number, level: number, levels: number, fading: number): number[] {
  const table = twoLevelTable(chance, level, levels);
  if (level < 2) return table;
  const ends = (chance * fading) / (level - 1);
  return mappedNumbers(table, (share, each) => (each === level ? share - chance * fading : each > 0 && each < level ? share + ends : share));
}

type ReadingItem = Extract<Evidence, { kind: 'reading' }>;

/**
 * Readings of one check, cut where a change was fitted that may have cured something the check speaks of. Between two such changes
 * the machine stayed as it was: reading it again makes the figure surer, but is no second witness. Readings of two rounds that their
 * uncertainties keep well apart were not taken of the same machine either, whatever the pages say of the change between them.
 */
function asOneReading(readings: readonly ReadingItem[], { knowledge, activeThrough }: Frame): ReadingItem[][] {
  const groups: ReadingItem[][] = [];
  const heard = Object.keys(knowledge.checks[readings[0]?.about ?? '']?.reads ?? {});
  const isFittedBetween = (from: number, to: number): boolean => heard.some((id) => (activeThrough.get(id) ?? []).slice(0, -1).some((round) => round >= from && round < to));
  for (const reading of [...readings].sort((a, b) => a.round - b.round)) {
    const last = groups.at(-1)?.at(-1);
    if (last === undefined || isFittedBetween(last.round, reading.round) || (last.round < reading.round && areApart(last, reading))) groups.push([reading]);
    else groups.at(-1)?.push(reading);
  }
  return groups;
}

/** Further apart than four standard deviations of their difference. */
function areApart(a: ReadingItem, b: ReadingItem): boolean {
  return Math.abs(a.value - b.value) > 4 * Math.hypot(a.standardUncertainty, b.standardUncertainty);
}

/** Mean of readings by their certainty, with its own. A reading without uncertainty counts alone. */
function meanOf(readings: readonly ReadingItem[]): Pick<ReadingItem, 'value' | 'standardUncertainty'> {
  const weights = readings.map(({ standardUncertainty }) => 1 / standardUncertainty ** 2);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  if (readings.length < 2 || !Number.isFinite(whole)) return readings.find(({ standardUncertainty }) => !(standardUncertainty > 0)) ?? readings.at(-1) ?? { value: 0, standardUncertainty: 0 };
  return { value: readings.reduce((sum, { value }, k) => sum + value * (weights[k] ?? 0), 0) / whole, standardUncertainty: Math.sqrt(1 / whole) };
}

/** A reading: level 0 is the healthy reading, one level for each cause model, the strangest reading highest. */
function readingDraft(items: readonly ReadingItem[], frame: Frame): Draft {
  const [item = { about: '', round: 1 }] = items;
  const check = frame.knowledge.checks[item.about];
  const healthy = check?.otherwise;
  if (!check || !healthy) return { subject: { about: item.about, kind: 'reading', items }, leak: [1], links: [], weights: [1], feedsFrom: [] };
  const read = meanOf(items);
  const models = orderedModels(healthy, Object.values(check.reads));
  const levels = models.length + 1;
  const links: GateLink[] = [];
  for (const [id, model] of Object.entries(check.reads)) {
    const cause = frame.index.get(id);
    const through = frame.activeThrough.get(id) ?? frame.always;
    const level = 1 + models.findIndex((each) => sameModel(each, model));
    if (cause !== undefined) links.push({ cause, contributes: mapped(through, (last) => twoLevelTable(model.chance, last >= item.round ? level : 0, levels)) });
  }
  return {
    subject: { about: item.about, kind: 'reading', items },
    leak: levelsByItself(levels, isMeasuredSeen(check, frame.items, item.round)), links,
    weights: readingLikelihoods(read.value, read.standardUncertainty, [healthy, ...models]),
    feedsFrom: [],
  };
}

/** Name of the gate of a symptom that this one may have followed from: of its runs the last that began no later than this one. */
function runAt(symptom: string, { subject }: Draft, drafts: readonly Draft[]): string {
  const began = ({ items }: GateSubject): number => items.find((item) => item.kind === 'symptom' && item.seen)?.round ?? items[0]?.round ?? 0;
  const runs = drafts.filter((other) => other.subject.kind === 'symptom' && (other.subject.about === symptom || other.subject.about.startsWith(`${symptom} again `)));
  return runs.filter((run) => began(run.subject) <= began(subject)).at(-1)?.subject.about ?? symptom;
}

function withFeeds(draft: Draft, drafts: readonly Draft[], position: ReadonlyMap<string, number>, frame: Frame): Gate {
  const feeds = draft.feedsFrom.flatMap(({ symptom, chance, shares }): GateFeed[] => {
    const gate = position.get(runAt(symptom, draft, drafts));
    const through = drafts[gate ?? -1]?.levels?.through;
    if (gate === undefined || through === undefined || draft.levels === undefined) return [];
    const { spread } = draft.levels;
    return [{ gate, contributes: mapped(through.slice(1), (last) => spread(fadingTable(chance, last, frame.rounds + 1, frame.fading), shares)) }];
  });
  return { leak: draft.leak, links: draft.links, weights: draft.weights, ...(feeds.length > 0 ? { feeds } : {}) };
}

/** Neighbouring levels that the evidence cannot tell apart become one: a smaller table, the same answer. */
function mergeEqualLevels(gate: Gate): Gate {
  const groups: number[][] = [];
  for (const [level, weight] of gate.weights.entries()) {
    const last = groups[groups.length - 1];
    if (last && gate.weights[last[0] ?? 0] === weight) last.push(level);
    else groups.push([level]);
  }
  if (groups.length === gate.weights.length) return gate;
  const merged = (table: LevelTable): number[] => mappedNumbers(groups, (group) => group.reduce((sum, level) => sum + (table[level] ?? 0), 0));
  return {
    leak: merged(gate.leak),
    links: mapped(gate.links, (link) => ({ cause: link.cause, contributes: mapped(link.contributes, merged) })),
    weights: mappedNumbers(groups, (group) => gate.weights[group[0] ?? 0] ?? 1),
    ...(gate.feeds ? { feeds: mapped(gate.feeds, (feed) => ({ gate: feed.gate, contributes: mapped(feed.contributes, merged) })) } : {}),
  };
}
