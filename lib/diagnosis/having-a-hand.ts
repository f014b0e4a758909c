import type { Lookahead, Prepared } from '../inference';
import type { CaseNet } from './build-net';

/**
 * Per cause: chance that it is at work now *and* had a hand in something that was found, i.e. that at least one of its
 * links to a looked-at finding fired.
 *
 * A cause that nothing told points to keeps its usual chance of being there, but did not make this print fail; ranking by
 * mere presence would put every common nuisance before a rarer culprit. Exact: presence, less presence with no link fired.
 * While nothing was found there is nothing to have had a hand in; it is presence itself then.
 * Worked: prior 0.1, one finding seen through a link of 0.8, leak 0.02: present 0.81707, present but silent
 * 0.1 · 0.2 · 0.02 / 0.0984 = 0.00407, so a hand in it 0.81301.
 */
export function havingAHand(seen: Pick<Lookahead, 'states' | 'silent'>, firstState: Prepared['firstState'], isFound: boolean): Float64Array {
  const present = presentNow(seen.states, firstState);
  if (!isFound) return present;
  const silent = presentNow(seen.silent, firstState);
  return present.map((chance, cause) => Math.max(0, chance - (silent[cause] ?? 0)));
}

/** Chance of the last state of every cause, present and not fixed by anything fitted, from a flat array over states. */
export function presentNow(flat: Float64Array, firstState: Prepared['firstState']): Float64Array {
  const present = new Float64Array(firstState.length - 1);
  for (let cause = 0; cause < present.length; cause++) present[cause] = flat[(firstState[cause + 1] ?? 0) - 1] ?? 0;
  return present;
}

/** Whether anything told was there: a symptom seen, a check answered yes, a reading taken. */
export function isAnythingFound({ gates }: Pick<CaseNet, 'gates'>): boolean {
  return gates.some((gate) => gate.items.some((item) => item.kind === 'reading' || (item.kind === 'symptom' ? item.seen : item.yes)));
}
