import type { CaseFile } from '../cases';
import type { Knowledge } from '../knowledge';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import { minutesToLookAgain } from './minutes-to-look';
import { supposed, type Leader } from './supposed';

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
  /** By which factor everything told would be likelier with these answers the other way; above 1 they are suspect. */
  readonly likelier: number;
  /** Minutes to look at them again. */
  readonly minutes: number;
}

/** Answers that are tried in pairs when no single one is enough. */
const PAIRED = 8;

/**
 * The answer, or the pair of answers, that would change the leader if it were otherwise: of all that would, the one that
 * is most suspect for the minutes that it takes to look again. Undefined when no single answer and no pair of the most
 * suspect ones does. Every flip is an exact run.
 *
 * Worked (diagnosis.md 2.5): f0, f1, f3 seen and f2 not in the net of 4 causes, d0 leads; with f2 seen d2 does, and
 * everything told is P(++++)/P(++−+) = .0045448 / .0266217 = .17 times as likely.
 */
export function flipOfLead(diagnosis: Pick<Diagnosis, 'items' | 'causes' | 'answer'>, file: Pick<CaseFile, 'machine' | 'print' | 'rounds'>, knowledge: Knowledge): FlipOfLead | undefined {
  const leader = diagnosis.causes[0];
  if (!leader || diagnosis.items.length === 0) return undefined;
  const now: Leader = { id: leader.id, chance: leader.probability };
  const flips = diagnosis.items.map(flipped);
  const tried = (chosen: readonly Flip[]): FlipOfLead | undefined => {
    const result = supposed(file, itemsWith(diagnosis.items, chosen), knowledge);
    if (!result) return undefined;
    const minutes = chosen.reduce((sum, flip) => sum + minutesToLookAgain(flip.item, knowledge), 0);
    return { flips: chosen, now, then: result.leader, likelier: Math.exp(result.logEvidence - diagnosis.answer.logEvidence), minutes };
  };
  const singles = flips.flatMap((flip) => tried([flip]) ?? []).sort(suspectFirst);
  const single = singles.find(changesLead);
  if (single) return single;
  const suspects = singles.slice(0, PAIRED).flatMap((each) => each.flips);
  const pairs = suspects.flatMap((first, index) => suspects.slice(index + 1).flatMap((second) => tried([first, second]) ?? []));
  return pairs.sort(suspectFirst).find(changesLead);
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

function changesLead(row: FlipOfLead): boolean {
  return row.then.id !== row.now.id;
}

function suspectFirst(a: FlipOfLead, b: FlipOfLead): number {
  return b.likelier / b.minutes - a.likelier / a.minutes;
}
