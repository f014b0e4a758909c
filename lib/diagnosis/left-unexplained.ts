import { answer, type Gate } from '../inference';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';

/** Something that was found, and how much of it one cause alone leaves unexplained. */
export interface LeftUnexplained {
  /** Symptom or check id. */
  readonly about: string;
  readonly items: readonly Evidence[];
  /** Chance that it came from nothing listed if this cause alone were at work; 1 when the cause says nothing of it. */
  readonly share: number;
}

/**
 * What each thing found would rest on if one cause were at work and no other: an exact run with every other cause absent,
 * asked for the leak's share of each finding. Most unexplained first. Things not seen, answers "no" and readings that
 * look healthy need no explanation and are left out.
 *
 * Worked: curl and shift seen, the root of shift (.7) alone at work: nothing accounts for the curl, share 1; the shift has
 * the root, the curl (.5) or the leak (.01) behind it, share .01·.3·.5 / (1 − .99·.3·.5) = .00176.
 */
export function leftUnexplained({ net }: Pick<Diagnosis, 'net'>, cause: string): LeftUnexplained[] {
  const index = net.causes.indexOf(cause);
  if (index < 0) throw new Error(`leftUnexplained: got cause ${cause}, expected one of the net`);
  const causes = net.net.causes.map(({ weights }, each) => ({ weights: weights.map((_, state) => (state === (each === index ? weights.length - 1 : 0) ? 1 : 0)) }));
  const gates = net.net.gates.map((gate): Gate => ({ ...gate, links: gate.links.filter((link) => link.cause === index) }));
  const alone = answer({ ...net.net, causes, gates });
  if (alone.kind !== 'answer') throw new Error(`leftUnexplained: got ${alone.kind}, expected tables without zeros`);
  const found = net.gates.flatMap((subject, position): LeftUnexplained[] => {
    const gate = gates[position];
    if (!gate || !needsExplaining(subject.items, gate)) return [];
    const explained = gate.links.length > 0 || gate.feeds !== undefined;
    // A healthy level of an odd reading means that the cause did not make it odd; elsewhere the leak stands for the unlisted.
    const share = !explained ? 1 : subject.kind === 'reading' ? (alone.levels[position]?.[0] ?? 1) : (alone.leakAlone[position] ?? 1);
    return [{ about: subject.about, items: subject.items, share: Math.min(1, share) }];
  });
  return found.sort((a, b) => b.share - a.share);
}

function needsExplaining(items: readonly Evidence[], gate: Gate): boolean {
  return items.some((item) => {
    switch (item.kind) {
      case 'symptom': return item.seen;
      case 'answer': return item.yes;
      case 'reading': return looksOdd(gate.weights);
      default: return item satisfies never;
    }
  });
}

/** A reading that some listed cause would make likelier than a healthy machine does, by at least two to one. */
function looksOdd(weights: readonly number[]): boolean {
  return (weights[0] ?? 1) < 0.5 * Math.max(...weights);
}
