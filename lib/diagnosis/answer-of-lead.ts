import type { Knowledge } from '../knowledge';
import type { CheckOutcome } from './check-outcomes';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import { minutesToLook } from './minutes-to-look';
import type { NextCheck } from './next-checks';
import { overtakenBy, supposed, type Leader } from './supposed';

/** A single answer, not given yet, that would put another cause first. */
export interface AnswerOfLead {
  /** A check and one of its outcomes, or a symptom that was not told of and whether it is seen. */
  readonly on: { readonly kind: 'check'; readonly row: NextCheck; readonly outcome: CheckOutcome } | { readonly kind: 'symptom'; readonly symptom: string; readonly seen: boolean };
  /** Chance that the answer comes out so, 0 to 1. */
  readonly chance: number;
  /** Minutes of the person alone that it takes to get the answer. */
  readonly minutes: number;
  /** The cause that would lead then. */
  readonly then: Leader;
}

/** Below this chance an answer is not worth naming: it hardly ever comes. */
const LEAST_CHANCE = 0.03;
/** By this much the new leader must be ahead: a change between causes that are about level tells nobody anything. Choice. */
const AHEAD = 0.03;
/** Symptoms, those most tied to the likeliest causes, that are tried. */
const SYMPTOMS = 16;
/** Causes whose symptoms are tried. */
const SUSPECTS = 6;

/**
 * The cheapest single answer, not given yet, that would change the leader: most chance of coming out so per minute.
 * Looked for among all open checks and among the symptoms, not told of, that belong to the likeliest causes. Exact.
 *
 * Worked (net of 4 causes, f0 and f1 seen, f2 not looked at): d0 leads; f2 comes out seen with chance .174478384167
 * (diagnosis.md 2.4), and then d2 leads.
 */
export function answerOfLead(diagnosis: Diagnosis, next: readonly NextCheck[], file: CaseFacts, knowledge: Knowledge): AnswerOfLead | undefined {
  const leader = diagnosis.causes[0];
  if (!leader || diagnosis.items.length === 0) return undefined;
  const found = [...checkAnswers(diagnosis, next, leader.id), ...symptomAnswers(diagnosis, leader.id, file, knowledge)];
  return found.filter((row) => row.chance >= LEAST_CHANCE).sort((a, b) => b.chance / b.minutes - a.chance / a.minutes)[0];
}

function checkAnswers(diagnosis: Diagnosis, next: readonly NextCheck[], leader: string): AnswerOfLead[] {
  return next
    .filter((row) => row.lacks.length === 0)
    .flatMap((row) => row.outcomes.flatMap((outcome) => {
      const then = overtakenBy(leader, diagnosis.net.causes, outcome.after, AHEAD);
      return then ? [{ on: { kind: 'check' as const, row, outcome }, chance: outcome.chance, minutes: row.own, then }] : [];
    }));
}

function symptomAnswers(diagnosis: Diagnosis, leader: string, file: CaseFacts, knowledge: Knowledge): AnswerOfLead[] {
  const { rounds } = diagnosis.net;
  return candidates(diagnosis, knowledge).flatMap((symptom) => [true, false].flatMap((seen): AnswerOfLead[] => {
    const item: Evidence = { kind: 'symptom', about: symptom, round: rounds, seen, observation: { symptom, state: seen ? 'seen' : 'not-seen', round: rounds } };
    const result = supposed(file, [...diagnosis.items, item], knowledge);
    const then = result && overtakenBy(leader, diagnosis.net.causes, result.chances, AHEAD);
    return then ? [{ on: { kind: 'symptom', symptom, seen }, chance: Math.exp(result.logEvidence - diagnosis.answer.logEvidence), minutes: minutesToLook(symptom, knowledge), then }] : [];
  }));
}

/** Symptoms not told of, details only of what was seen, most strongly tied to the likeliest causes first. */
function candidates(diagnosis: Diagnosis, knowledge: Knowledge): string[] {
  const told = new Set(diagnosis.items.map((item) => item.about));
  const seen = new Set(diagnosis.items.flatMap((item) => (item.kind === 'symptom' && item.seen ? [item.about] : [])));
  const suspects = diagnosis.causes.slice(0, SUSPECTS);
  return Object.values(knowledge.symptoms)
    .filter((symptom) => !told.has(symptom.id) && (symptom.detailOf === undefined || seen.has(symptom.detailOf)))
    .map((symptom) => ({ id: symptom.id, tie: suspects.reduce((sum, cause) => sum + cause.probability * (symptom.links[cause.id]?.chance ?? 0), 0) }))
    .filter((row) => row.tie > 0)
    .sort((a, b) => b.tie - a.tie)
    .slice(0, SYMPTOMS)
    .map((row) => row.id);
}
