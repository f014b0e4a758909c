import type { CaseFile } from '../cases';
import { answer, type Answer, type Net, type Outcome } from '../inference';
import type { BranchId, Knowledge } from '../knowledge';
import type { Problem } from '../problems';
import { atWorkNow, buildNet, type CaseNet } from './build-net';
import { evidenceOf, type Evidence } from './evidence';
import { havingAHand } from './having-a-hand';
import { likelyRange, type Band } from './likely-range';

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
  /** Chance before anything was told, in the circumstances of this machine and print. */
  readonly before: number;
}

/** A part of the machine, with the chance that at least one of its causes is at work. */
export interface RankedBranch {
  readonly part: BranchId;
  readonly probability: number;
  readonly causes: readonly string[];
}

/** How much of what was seen nothing listed explains. */
export interface Unexplained {
  /** Mean over the findings that were there: 0.25 means that a quarter of what was seen is explained by nothing here. */
  readonly share: number;
  readonly byFinding: readonly { readonly about: string; readonly share: number }[];
}

/** Everything that later steps (next checks, explanations, remedies) need of a finished diagnosis. */
export interface Diagnosis {
  readonly kind: 'diagnosis';
  readonly causes: readonly RankedCause[];
  readonly branches: readonly RankedBranch[];
  readonly unexplained: Unexplained;
  /** Natural log of (product of single chances / joint chance): above 2 the evidence contradicts itself. */
  readonly conflict: number;
  readonly items: readonly Evidence[];
  readonly problems: readonly Problem[];
  readonly net: CaseNet;
  readonly answer: Answer;
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
}

/**
 * Ranks every cause of the knowledge base for one case: exact posterior over all combinations of causes.
 *
 * Never throws on what a case may hold; unknown ids and unusable readings come back as notes in `problems`.
 */
export function diagnose(file: CaseFile, knowledge: Knowledge, options: DiagnoseOptions = {}): Diagnosis | TooMuchAtOnce {
  const { items, problems } = evidenceOf(file, knowledge);
  const net = buildNet(file, items, knowledge, options.fading);
  const outcome = answer(net.net);
  if (outcome.kind === 'too-dense') return { kind: 'too-much', confirmFirst: outcome.confirmFirst.map((gate) => net.gates[gate]?.about ?? ''), items, problems };
  if (outcome.kind === 'impossible') throw new Error('diagnose: got evidence of probability 0, expected tables without zeros');
  const bands = likelyRange(net.net, options.copies ?? 100);
  const acting = havingAHand(net, outcome);
  return {
    kind: 'diagnosis',
    causes: rankedCauses(net, outcome, acting, bands, knowledge),
    branches: rankedBranches(net, outcome, acting, knowledge),
    unexplained: unexplainedOf(net, outcome),
    conflict: conflictOf(net.net, outcome.logEvidence),
    items, problems, net, answer: outcome,
  };
}

/** Log evidence of a net that is known to be answerable; throws otherwise. */
export function logEvidenceOf(outcome: Outcome): number {
  if (outcome.kind !== 'answer') throw new Error(`logEvidenceOf: got ${outcome.kind}, expected an answer`);
  return outcome.logEvidence;
}

function rankedCauses(net: CaseNet, result: Answer, acting: readonly number[], bands: readonly Band[], knowledge: Knowledge): RankedCause[] {
  return net.causes
    .map((id, index): RankedCause => {
      const cause = knowledge.causes[id];
      const present = atWorkNow(result.states[index] ?? []);
      const probability = acting[index] ?? present;
      // The band is that of its presence; the share of it that acts is taken as known.
      const share = present > 0 ? probability / present : 0;
      const band = bands[index] ?? { low: present, high: present };
      const weights = net.net.causes[index]?.weights ?? [1];
      return {
        id, title: cause?.title ?? id, part: cause?.part ?? 'settings', probability, present,
        low: Math.min(band.low * share, probability), high: Math.max(band.high * share, probability),
        before: 1 - (weights[0] ?? 1) / weights.reduce((sum, weight) => sum + weight, 0),
      };
    })
    .sort((a, b) => b.probability - a.probability || b.present - a.present || (a.id < b.id ? -1 : 1));
}

/**
 * Chance that at least one cause of a branch that had a hand in this is there: one minus the share of evidence left when
 * none of them may be. Causes that nothing told points to are left out.
 */
function rankedBranches(net: CaseNet, result: Answer, acting: readonly number[], knowledge: Knowledge): RankedBranch[] {
  const members = new Map<BranchId, number[]>();
  net.causes.forEach((id, index) => {
    const part = knowledge.causes[id]?.part ?? 'settings';
    members.set(part, [...(members.get(part) ?? []), index]);
  });
  const chance = (index: number): number => acting[index] ?? 0;
  const involved = (index: number): boolean => chance(index) > 0.5 * atWorkNow(result.states[index] ?? []);
  return [...members]
    .map(([part, indices]) => ({
      part,
      probability: atLeastOne(net.net, result, indices.filter(involved)),
      causes: [...indices].sort((a, b) => chance(b) - chance(a)).map((index) => net.causes[index] ?? ''),
    }))
    .sort((a, b) => b.probability - a.probability);
}

function atLeastOne(net: Net, result: Answer, indices: readonly number[]): number {
  if (indices.length === 0) return 0;
  const chosen = new Set(indices);
  const causes = net.causes.map((cause, index) => (chosen.has(index) ? { weights: cause.weights.map((weight, state) => (state === cause.weights.length - 1 ? 0 : weight)) } : cause));
  const without = answer({ ...net, causes });
  return without.kind === 'answer' ? Math.min(1, Math.max(0, 1 - Math.exp(without.logEvidence - result.logEvidence))) : 1;
}

function unexplainedOf(net: CaseNet, result: Answer): Unexplained {
  const byFinding = net.gates.flatMap((gate, index) => {
    const there = gate.items.some((item) => (item.kind === 'symptom' && item.seen) || (item.kind === 'answer' && item.yes));
    return there ? [{ about: gate.about, share: result.leakAlone[index] ?? 0 }] : [];
  });
  const share = byFinding.length === 0 ? 0 : byFinding.reduce((sum, row) => sum + row.share, 0) / byFinding.length;
  return { share, byFinding };
}

function conflictOf(net: Net, logEvidence: number): number {
  const nothing = (gate: Net['gates'][number]): Net['gates'][number] => ({ ...gate, weights: gate.weights.map(() => 1) });
  const informed = net.gates.flatMap((gate, index) => (gate.weights.some((weight) => weight !== gate.weights[0]) ? [index] : []));
  if (informed.length < 2) return 0;
  const alone = informed.map((index) => logEvidenceOf(answer({ ...net, gates: net.gates.map((gate, other) => (other === index ? gate : nothing(gate))) })));
  const base = logEvidenceOf(answer({ ...net, gates: net.gates.map(nothing) }));
  return alone.reduce((sum, each) => sum + each - base, 0) - (logEvidence - base);
}
