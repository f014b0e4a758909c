import { buildNet, standingOf, type Evidence, type Possibilities } from '@/lib/diagnosis';
import type { CaseFile } from '@/lib/cases';
import { prepare } from '@/lib/inference';
import type { Knowledge } from '@/lib/knowledge';
import { answerTruly, leftAfter } from './answer-truly';
import { isSeen, shareLeft, type Session } from './draw-session';
import type { Policy } from './policies';

/** How a session went under one policy. Minutes are a person's own; `cost` adds money and, where it was given up, giving up by the share that is left. */
export interface Played {
  readonly isCured: boolean;
  readonly minutes: number;
  readonly cost: number;
  readonly checks: number;
  readonly changes: number;
}

export interface PlayOptions {
  readonly givingUp: number;
  readonly draws: number;
  readonly possible: Possibilities;
}

/** More steps than this nobody takes: it counts as given up. */
const MOST_STEPS = 40;

/** Plays one session to its end: after every step the posterior is worked out anew, exactly; only the choice rests on draws. */
export function playSession(session: Session, policy: Policy, knowledge: Knowledge, { givingUp, draws, possible }: PlayOptions): Played {
  let left: ReadonlySet<string> = session.causes;
  let round = 1;
  const items: Evidence[] = looks(session, left, round);
  const rounds: CaseFile['rounds'] = [];
  const tried = new Set<string>();
  const spent = { minutes: 0, cost: 0, checks: 0, changes: 0 };
  const over = (isCured: boolean): Played => ({ isCured, ...spent, cost: spent.cost + (isCured ? 0 : shareLeft(session, left) * givingUp) });
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const net = buildNet({ ...session.facts, rounds }, items, knowledge);
    const ready = prepare(net.net);
    if (ready.kind !== 'prepared') return over(false);
    const next = policy.choose(standingOf({ net, items, prepared: ready.prepared }, possible, { draws, seed: step, tried }), givingUp);
    if (next.kind === 'give-up') return over(false);
    if (next.kind === 'check') {
      const check = knowledge.checks[next.check.id];
      const item = check && answerTruly(check, next.check.method, left, round, knowledge, String(session.number));
      if (!item) return over(false);
      items.push(item);
      spent.checks += 1;
      spent.minutes += next.check.minutes;
      spent.cost += next.check.minutes;
    } else {
      const remedy = knowledge.remedies[next.change.id];
      if (!remedy) return over(false);
      left = leftAfter(remedy, left, String(session.number));
      tried.add(remedy.id);
      rounds.push({ number: round, remedy: remedy.id, verdict: 'no-change' });
      round += 1;
      spent.changes += 1;
      spent.minutes += next.change.minutes;
      spent.cost += next.change.cost;
      if (shareLeft(session, left) === 0) return over(true);
      items.push(...looks(session, left, round));
    }
  }
  return over(false);
}

/** What is seen of the told symptoms in this round; a detail only where its symptom is there. */
function looks(session: Session, left: ReadonlySet<string>, round: number): Evidence[] {
  return session.told.map((symptom) => {
    const seen = isSeen(session, symptom, left);
    return { kind: 'symptom' as const, about: symptom, round, seen, observation: { symptom, state: seen ? 'seen' as const : 'not-seen' as const, round } };
  });
}
