import type { Knowledge } from '../knowledge';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import { minutesToLookAgain } from './minutes-to-look';
import { overtakenBy, supposed, type Leader, type Supposed } from './supposed';

/** One thing told, supposed to be otherwise. A reading has no opposite: it is left out. */
export interface Flip {
  readonly item: Evidence;
  readonly to: 'seen' | 'not-seen' | 'yes' | 'no' | 'left-out';
}

/** One or two answers that would put another cause first if they were otherwise. */
export interface FlipOfLead {
  readonly flips: readonly Flip[];
  readonly now: Leader;
  /** The cause that would lead then. */
  readonly then: Leader;
  /**
   * By which factor the rest of what was told speaks for the other answers: their odds given the rest, over their odds by
   * themselves. Above 1 the answers given are suspect. How common the things are cancels out.
   */
  readonly likelier: number;
  /** Minutes of the person alone to look at them again. */
  readonly minutes: number;
}

/** By this much the new leader must be ahead: less does not show in whole per cent. */
const AHEAD = 0.01;
/** Answers that are tried in pairs when no single one is enough. */
const PAIRED = 8;

/**
 * The answer, or the pair of answers, that would change the leader if it were otherwise: of all that would, the one that
 * is most suspect for the minutes that it takes to look again. Undefined when no single answer and no pair of the most
 * suspect ones does. Every flip is an exact run.
 *
 * Worked (diagnosis.md 2.2 and 2.5): f0, f1, f3 seen and f2 not in the net of 4 causes, d0 leads; with f2 seen d2 does. Odds of
 * f2 given the rest P(++++)/P(++−+) = .0045448 / .0266217 = .1707, by itself .1207 / .8793 = .1372: the rest speaks 1.24 times for it.
 */
export function flipOfLead(diagnosis: Pick<Diagnosis, 'items' | 'causes' | 'answer'>, file: CaseFacts, knowledge: Knowledge): FlipOfLead | undefined {
  const leader = diagnosis.causes[0];
  if (!leader || diagnosis.items.length === 0) return undefined;
  const now: Leader = { id: leader.id, chance: leader.probability };
  const flips = diagnosis.items.filter((item) => !isGoneByNow(item, diagnosis.items)).map(flipped);
  const suppose = (items: readonly Evidence[]): Supposed | undefined => supposed(file, items, knowledge);
  const tried = (chosen: readonly Flip[]): Tried | undefined => {
    const given = chosen.map((flip) => flip.item);
    // Details of a symptom count only where it is seen: they are left out on both sides, or their absence would count as evidence.
    const rest = diagnosis.items.filter((item) => given.includes(item) || !isDetailOfOne(item, given, knowledge));
    const result = suppose(itemsWith(rest, chosen));
    const asTold = rest.length === diagnosis.items.length ? diagnosis.answer : suppose(rest);
    const [otherAlone, givenAlone] = [suppose(itemsWith(given, chosen)), suppose(given)];
    if (!result || !asTold || !otherAlone || !givenAlone) return undefined;
    const minutes = given.reduce((sum, item) => sum + minutesToLookAgain(item, knowledge), 0);
    const likelier = Math.exp(result.logEvidence - asTold.logEvidence - (otherAlone.logEvidence - givenAlone.logEvidence));
    return { flips: chosen, likelier, minutes, then: overtakenBy(leader.id, Object.keys(knowledge.causes), result.chances, AHEAD) };
  };
  const singles = flips.flatMap((flip) => tried([flip]) ?? []).sort(suspectFirst);
  const suspects = singles.slice(0, PAIRED).flatMap((each) => each.flips);
  const pairs = (): Tried[] => suspects.flatMap((first, index) => suspects.slice(index + 1).flatMap((second) => tried([first, second]) ?? [])).sort(suspectFirst);
  const found = changing(singles) ?? changing(pairs());
  return found && { ...found, now };
}

/** True where a symptom that was there before is gone: a change was made for that, and nothing about it is suspect. */
function isGoneByNow(item: Evidence, items: readonly Evidence[]): boolean {
  return item.kind === 'symptom' && !item.seen && items.some((other) => other.kind === 'symptom' && other.about === item.about && other.seen && other.round < item.round);
}

function isDetailOfOne(item: Evidence, given: readonly Evidence[], knowledge: Knowledge): boolean {
  const parent = item.kind === 'symptom' ? knowledge.symptoms[item.about]?.detailOf : undefined;
  return parent !== undefined && given.some((other) => other.kind === 'symptom' && other.about === parent && other.round === item.round);
}

/** Flips with the cause that would lead then, if any. */
type Tried = Omit<FlipOfLead, 'now' | 'then'> & { readonly then: Leader | undefined };

/** The first of these that changes the lead. */
function changing(rows: readonly Tried[]): Omit<FlipOfLead, 'now'> | undefined {
  for (const { then, ...row } of rows) if (then) return { ...row, then };
  return undefined;
}

function flipped(item: Evidence): Flip {
  switch (item.kind) {
    case 'symptom': return { item, to: item.seen ? 'not-seen' : 'seen' };
    case 'answer': return { item, to: item.yes ? 'no' : 'yes' };
    case 'reading': return { item, to: 'left-out' };
    default: return item satisfies never;
  }
}

function itemsWith(items: readonly Evidence[], flips: readonly Flip[]): Evidence[] {
  const ofItem = new Map(flips.map((flip) => [flip.item, flip.to]));
  return items.flatMap((item): Evidence[] => {
    if (!ofItem.has(item)) return [item];
    switch (item.kind) {
      case 'symptom': return [{ ...item, seen: !item.seen }];
      case 'answer': return [{ ...item, yes: !item.yes }];
      case 'reading': return [];
      default: return item satisfies never;
    }
  });
}

function suspectFirst(a: Tried, b: Tried): number {
  return b.likelier / b.minutes - a.likelier / a.minutes;
}
