import type { Repair } from '../inference';
import type { Knowledge, KnownRemedy } from '../knowledge';

/** A change with what it costs a person and what it removes: a repair for lib/inference that knows its page. */
export interface Change extends Repair {
  readonly id: string;
  /** Minutes of the person alone: hands, and the quarter of the printing that they stand by. `cost` adds the money. */
  readonly minutes: number;
  /** Price, the middle of what its page gives. */
  readonly money: number;
}

/** Minutes that a unit of money counts for when changes and checks are weighed. Estimate: 20 an hour. */
export const MINUTES_PER_PRICE = 3;
/** Share at which printing and other waiting counts against a person's own minutes: nobody has to stand by all the while. Estimate. */
export const UNATTENDED = 0.25;

/** All changes of the knowledge base; `causes` are ids in the order in which they are numbered. */
export function changesOf(knowledge: Knowledge, causes: readonly string[]): Change[] {
  const index = new Map(causes.map((id, number) => [id, number]));
  return Object.values(knowledge.remedies).map((remedy) => ({
    id: remedy.id, minutes: ownMinutes(remedy), money: priceOf(remedy), cost: costInMinutes(remedy),
    removes: new Map(Object.entries(remedy.cures).flatMap(([id, link]) => { const cause = index.get(id); return cause === undefined ? [] : [[cause, link.chance] as const]; })),
  }));
}

/** What a change costs, in minutes: the person's own, and money at its worth in minutes. */
export function costInMinutes(remedy: Pick<KnownRemedy, 'minutes' | 'printMinutes' | 'waitMinutes' | 'provedBy' | 'price'>): number {
  return ownMinutes(remedy) + MINUTES_PER_PRICE * priceOf(remedy);
}

function priceOf({ price }: Pick<KnownRemedy, 'price'>): number {
  return (price.from + price.to) / 2;
}

/** A person's own minutes for a change and its proof: hands in full, printing and waiting at a quarter. 20 min hands, 60 min proof: 35. */
function ownMinutes(remedy: Pick<KnownRemedy, 'minutes' | 'printMinutes' | 'waitMinutes' | 'provedBy'>): number {
  return remedy.minutes + UNATTENDED * ((remedy.printMinutes ?? 0) + (remedy.waitMinutes ?? 0) + remedy.provedBy.minutes);
}
