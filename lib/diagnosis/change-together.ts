import { bestBatches, expectedCostOfBatches, stillBadAfter, type Repair } from '../inference';
import type { Knowledge } from '../knowledge';
import { UNATTENDED, type Change } from './changes';
import type { Standing } from './standing';

/** Changes that are better made together before one proof print than one after the other. */
export interface ChangeTogether {
  /** Changes to make before the first proof; at least two. */
  readonly together: readonly string[];
  /** Minutes saved on average over making them one at a time. */
  readonly saves: number;
  /** Chance that the proof passes after all of them. */
  readonly cured: number;
  /** When the proof passes: the chance that the likeliest of them alone would have done it. What is missing to 1 is what the record no longer says. */
  readonly likeliestAlone: { readonly change: string; readonly chance: number };
}

/** Changes that are weighed against each other; more at once nobody can keep apart. */
const WEIGHED = 3;

/**
 * Whether the next changes of a case are better made together: the cheapest way of cutting them into batches with one
 * proof each (exhaustive), against one at a time in the best order. A batch wastes the later changes when the first alone
 * would have cured; one at a time wastes proofs when it would not. Only changes that can be undone are weighed: what turns
 * out not to be needed is taken back. Undefined when one at a time is at least as cheap.
 *
 * The proof counts at a quarter of its printing time, the longest one of the changes weighed.
 */
export function changeTogether(standing: Standing, knowledge: Knowledge): ChangeTogether | undefined {
  const changes = standing.orderOfChanges().changes.filter((change) => knowledge.remedies[change.id]?.reversible === 'yes').slice(0, WEIGHED);
  if (changes.length < 2) return undefined;
  const proof = (change: Change): number => UNATTENDED * (knowledge.remedies[change.id]?.provedBy.minutes ?? 0);
  const repairs = changes.map((change): Repair => ({ cost: change.cost - proof(change), removes: change.removes }));
  return cheaperTogether(changes.map((change) => change.id), repairs, standing.repairScenarios(), Math.max(...changes.map(proof)));
}

/** The same for any repairs and scenarios; `ids` name the repairs. p = .5 .3 .1, costs 4 2 10, proof 3: 0 and 1 together, saving 0.7007. */
export function cheaperTogether(ids: readonly string[], repairs: readonly Repair[], scenarios: Parameters<typeof bestBatches>[1], proof: number): ChangeTogether | undefined {
  const best = bestBatches(repairs, scenarios, proof);
  const first = best.batches[0] ?? [];
  if (first.length < 2) return undefined;
  const saves = cheapestOneByOne(repairs, scenarios, proof) - best.cost;
  if (!(saves > 0)) return undefined;
  const cured = 1 - stillBadAfter(first, repairs, scenarios);
  const alone = first.map((position) => ({ change: ids[position] ?? '', chance: (1 - stillBadAfter([position], repairs, scenarios)) / Math.max(cured, 1e-12) }));
  const likeliestAlone = alone.reduce((most, each) => (each.chance > most.chance ? each : most));
  return { together: first.map((position) => ids[position] ?? ''), saves, cured, likeliestAlone };
}

function cheapestOneByOne(repairs: readonly Repair[], scenarios: Parameters<typeof bestBatches>[1], proof: number): number {
  return Math.min(...permutations([...repairs.keys()]).map((order) => expectedCostOfBatches(order.map((position) => [position]), repairs, scenarios, proof)));
}

function permutations(list: readonly number[]): number[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((first) => permutations(list.filter((each) => each !== first)).map((rest) => [first, ...rest]));
}
