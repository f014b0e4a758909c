import { answer } from '../inference';
import type { Knowledge, KnownRemedy } from '../knowledge';
import { atWorkNow } from './build-net';
import type { Diagnosis } from './diagnose';

/** A remedy with the chance that it cures something that is at work now. */
export interface RankedRemedy {
  readonly id: string;
  readonly does: string;
  /** Chance that at least one cause is at work and cured by it. */
  readonly chance: number;
  /** Minutes of hands, and of printing the proof. */
  readonly minutes: number;
  readonly price: { readonly from: number; readonly to: number };
  /** Causes that it may cure, likeliest first. */
  readonly cures: readonly string[];
}

/** Minutes that a unit of money counts for when remedies are ordered. Estimate: 20 an hour. */
const MINUTES_PER_PRICE = 3;

/**
 * Remedies in the order in which to try them: odds of curing divided by cost in minutes, the optimal order for several
 * independent faults (exchange argument, diagnosis.md section 3). Cost: hands, proof print, and money at 3 min a unit.
 * The chance takes the causes that one remedy cures as independent given the evidence; they mostly explain the same thing,
 * so it is a little low for remedies that cure several.
 */
export function rankRemedies(diagnosis: Diagnosis, knowledge: Knowledge): RankedRemedy[] {
  const chances = new Map(diagnosis.causes.map((cause) => [cause.id, cause.probability]));
  const ranked = Object.values(knowledge.remedies).flatMap((remedy): RankedRemedy[] => {
    const cures = Object.keys(remedy.cures).sort((a, b) => (chances.get(b) ?? 0) - (chances.get(a) ?? 0));
    const bound = cures.reduce((sum, id) => sum + (chances.get(id) ?? 0), 0);
    if (bound < 1e-4) return [];
    const chance = 1 - Object.entries(remedy.cures).reduce((left, [id, link]) => left * (1 - link.chance * (chances.get(id) ?? 0)), 1);
    return [{ id: remedy.id, does: remedy.does, chance, minutes: remedy.minutes + (remedy.printMinutes ?? 0) + remedy.provedBy.minutes, price: remedy.price, cures }];
  });
  return ranked.sort((a, b) => worth(b) - worth(a) || (a.id < b.id ? -1 : 1));
}

/** Chance that at least one of these causes is at work now and is cured, each with its chance of being cured. */
export function chanceOfCure({ net, answer: known }: Pick<Diagnosis, 'net' | 'answer'>, cures: ReadonlyMap<string, number>): number {
  const causes = net.net.causes.map((cause, index) => {
    const cured = cures.get(net.causes[index] ?? '') ?? 0;
    return cured === 0 ? cause : { weights: cause.weights.map((weight, state) => (state === cause.weights.length - 1 ? weight * (1 - cured) : weight)) };
  });
  const left = answer({ ...net.net, causes });
  if (left.kind !== 'answer') return Math.max(0, ...net.causes.map((id, index) => (cures.get(id) ?? 0) * atWorkNow(known.states[index] ?? [])));
  return Math.min(1, Math.max(0, 1 - Math.exp(left.logEvidence - known.logEvidence)));
}

/** Share at which printing counts against a person's own minutes: nobody has to stand by all the while. Estimate. */
const UNATTENDED = 0.25;

/** What a change costs a person, in their own minutes: hands, printing and proof at a quarter, money at its worth in minutes. */
export function costInMinutes(remedy: Pick<KnownRemedy, 'minutes' | 'printMinutes' | 'provedBy' | 'price'>): number {
  return remedy.minutes + UNATTENDED * ((remedy.printMinutes ?? 0) + remedy.provedBy.minutes) + MINUTES_PER_PRICE * ((remedy.price.from + remedy.price.to) / 2);
}

function worth(remedy: RankedRemedy): number {
  const inside = Math.min(0.9999, remedy.chance);
  return inside / (1 - inside) / (remedy.minutes + MINUTES_PER_PRICE * ((remedy.price.from + remedy.price.to) / 2));
}
