import { logEvidenceOf, type Gate, type Net } from '../inference';
import type { Knowledge } from '../knowledge';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import { supposed, type Leader } from './supposed';

/** Something told, and what would be left if it were taken back. */
export interface LookAgain {
  /** Symptom or check id. */
  readonly about: string;
  readonly items: readonly Evidence[];
  /** Conflict of everything else; see `Diagnosis.conflict`. */
  readonly conflictWithout: number;
  /** The likeliest cause without it; undefined when that is too much for an exact answer. */
  readonly leaderWithout: Leader | undefined;
}

/** From this conflict on, answers do not go together well: they are e² = 7 times rarer together than each by itself. */
export const CONFLICTING = 2;

/** From this conflict on, answers can hardly be true together: 1000 times rarer together than each by itself. */
export const HARDLY_TOGETHER = Math.log(1000);

/**
 * The thing told whose withdrawal lowers the conflict most, with what would follow; undefined below two things told, or
 * when nothing lowers it.
 *
 * Conflict is Σ ln P(one) − ln P(all) (diagnosis.md 4), so without item k it is the old one, less ln P(k), plus
 * ln P(all) − ln P(all but k). Worked (diagnosis.md 2.4): f0 seen, f1 and f3 not seen: .507943; any two of them less.
 */
export function lookAgain({ net, answer: known, conflict, items }: Pick<Diagnosis, 'net' | 'answer' | 'conflict' | 'items'>, file: CaseFacts, knowledge: Knowledge): LookAgain | undefined {
  const told = net.gates.flatMap((subject, index) => (subject.items.length > 0 && isInformed(net.net.gates[index]) ? [{ subject, index }] : []));
  if (told.length < 2) return undefined;
  const base = logOf(net.net, () => false);
  const rows = told.map(({ subject, index }) => {
    const alone = logOf(net.net, (gate) => gate === index) - base;
    const without = logOf(net.net, (gate) => gate !== index);
    return { subject, conflictWithout: conflict - alone + (known.logEvidence - without) };
  });
  const [worst] = rows.sort((a, b) => a.conflictWithout - b.conflictWithout);
  if (!worst || worst.conflictWithout >= conflict) return undefined;
  const left = new Set(worst.subject.items);
  const result = supposed(file, items.filter((item) => !left.has(item)), knowledge);
  return { about: worst.subject.items[0]?.about ?? worst.subject.about, items: worst.subject.items, conflictWithout: worst.conflictWithout, leaderWithout: result?.leader };
}

function isInformed(gate: Gate | undefined): boolean {
  return gate?.weights.some((weight) => weight !== gate.weights[0]) ?? false;
}

/** Natural log of the probability of what the kept gates know. */
function logOf(net: Net, keeps: (gate: number) => boolean): number {
  return logEvidenceOf({ ...net, gates: net.gates.map((gate, index) => (keeps(index) ? gate : { ...gate, weights: gate.weights.map(() => 1) })) }) ?? -Infinity;
}
