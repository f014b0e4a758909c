import { prepare } from '../inference';
import type { Knowledge } from '../knowledge';
import { buildNet } from './build-net';
import type { CaseFacts } from './circumstances';
import type { Evidence } from './evidence';
import { havingAHand, isAnythingFound } from './having-a-hand';

/** What would be believed if other things were known: the ranking alone, without bands and reasons. */
export interface Supposed {
  /** Natural log of the probability of everything supposed. */
  readonly logEvidence: number;
  /** Chance that each cause is at work and had a hand in it, in the order of `Object.keys(knowledge.causes)`. */
  readonly chances: ArrayLike<number>;
  readonly leader: Leader;
}

/** The likeliest cause. */
export interface Leader {
  readonly id: string;
  /** Chance that it is at work, 0 to 1. */
  readonly chance: number;
}

/**
 * The exact ranking of a case if these and only these things were known of it; undefined when that is too much for an
 * exact answer. With the items of a diagnosis it gives the chances of that diagnosis.
 */
export function supposed(file: CaseFacts, items: readonly Evidence[], knowledge: Knowledge): Supposed | undefined {
  const net = buildNet(file, items, knowledge);
  const outcome = prepare(net.net, { levels: false, limitUnits: WHAT_IF_UNITS });
  if (outcome.kind !== 'prepared') return undefined;
  const { prepared } = outcome;
  const chances = havingAHand(prepared, prepared.firstState, isAnythingFound(net));
  return { logEvidence: prepared.logEvidence, chances, leader: leaderOf(net.causes, chances) };
}

/** The likeliest of these causes, the first of equals. */
export function leaderOf(causes: readonly string[], chances: ArrayLike<number>): Leader {
  let best: Leader = { id: '', chance: -1 };
  causes.forEach((id, index) => { const chance = chances[index] ?? 0; if (chance > best.chance) best = { id, chance }; });
  return best;
}

/** The cause that leads in place of `leader`, by at least `ahead` of chance; undefined when that one still leads or is about level. */
export function overtakenBy(leader: string, causes: readonly string[], chances: ArrayLike<number>, ahead: number): Leader | undefined {
  const then = leaderOf(causes, chances);
  return then.id !== leader && then.chance - (chances[causes.indexOf(leader)] ?? 0) >= ahead ? then : undefined;
}

/** Cost above which a single "what if" is not run: about 10 ms, as tens of them are asked at once. Estimate. */
const WHAT_IF_UNITS = 2e6;
