import { prepare } from '../inference';
import type { Knowledge } from '../knowledge';
import { buildNet } from './build-net';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import { presentNow } from './having-a-hand';
import { summedEntropy } from './next-checks';

/** A closer look at something that was seen, with what it would take away of the doubt. */
export interface CloserLook {
  readonly symptom: string;
  /** Expected drop of the summed entropy of all causes, bits, 0 or more; 0 as well where it is too much to reckon. */
  readonly gain: number;
}

/**
 * Closer looks at one symptom that was seen and that nothing was said of yet in this round, the most telling first; equal
 * ones in the order of the page. Each is supposed seen and not seen, weighed by how likely either is. Exact runs.
 *
 * Worked (toy net of two causes, curl seen): a look that only one of them shows, at 0.9, is worth 0.925 bit; one that no
 * cause shows is worth nothing.
 */
export function closerLooks(diagnosis: Diagnosis, symptom: string, file: CaseFacts, knowledge: Knowledge): CloserLook[] {
  const { rounds } = diagnosis.net;
  const told = new Set(diagnosis.items.flatMap((item) => (item.kind === 'symptom' && item.round === rounds ? [item.about] : [])));
  return (knowledge.symptoms[symptom]?.details ?? [])
    .filter((id) => knowledge.symptoms[id] && !told.has(id))
    .map((id) => ({ symptom: id, gain: gainOf(id, diagnosis, file, knowledge) }))
    .sort((a, b) => b.gain - a.gain);
}

function gainOf(symptom: string, diagnosis: Diagnosis, file: CaseFacts, knowledge: Knowledge): number {
  const now = summedEntropy(presentNow(diagnosis.prepared.states, diagnosis.prepared.firstState));
  const [seen, notSeen] = [true, false].map((isSeen) => doubtWith(symptom, isSeen, diagnosis, file, knowledge));
  return seen && notSeen ? Math.max(0, now - seen.chance * seen.doubt - notSeen.chance * notSeen.doubt) : 0;
}

/** Chance that the look comes out so, and the doubt that is left then. */
function doubtWith(symptom: string, seen: boolean, { items, net, answer }: Diagnosis, file: CaseFacts, knowledge: Knowledge): { readonly chance: number; readonly doubt: number } | undefined {
  const item: Evidence = { kind: 'symptom', about: symptom, round: net.rounds, seen, observation: { symptom, state: seen ? 'seen' : 'not-seen', round: net.rounds } };
  const outcome = prepare(buildNet(file, [...items, item], knowledge).net, { levels: false, limitUnits: UNITS });
  if (outcome.kind !== 'prepared') return undefined;
  const { prepared } = outcome;
  return { chance: Math.exp(prepared.logEvidence - answer.logEvidence), doubt: summedEntropy(presentNow(prepared.states, prepared.firstState)) };
}

/** Cost above which a single look is not reckoned: about 10 ms, as tens of them are asked at once. Estimate. */
const UNITS = 2e6;
