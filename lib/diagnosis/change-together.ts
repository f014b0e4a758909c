import type { Knowledge } from '../knowledge';
import { UNATTENDED, type Change } from './changes';
import { GIVING_UP, type Batch, type Standing } from './standing';

/** Changes that are better made together before one proof print than one after the other. */
export interface ChangeTogether {
  /** Changes to make before the first proof; at least two. */
  readonly together: readonly string[];
  /** Minutes saved on average over making them one at a time. */
  readonly saves: number;
  /** Chance that nothing of the trouble is left after all of them. */
  readonly cured: number;
  /** When the proof passes: the chance that the likeliest of them alone would have done it. What is missing to 1 is what the record no longer says. */
  readonly likeliestAlone: { readonly change: string; readonly chance: number };
}

/** Changes that are weighed against each other; more at once nobody can keep apart. */
const WEIGHED = 3;
/** Below this chance of passing, several changes at once are a shot in the dark: nothing is said of them. Choice. */
const WORTH_A_TRY = 0.2;

/** A change with the minutes of its own proof, which are part of its cost. */
export interface ProvenChange {
  readonly change: Change;
  readonly proof: number;
}

/**
 * Whether the next changes of a case are better made together: the cheapest way of making the first of up to three with one proof,
 * against one at a time in the best order, both walked through the same draws as every other plan (`costOfBatches`): half a cure
 * counts half, and what is for a symptom that is gone is passed over. A batch wastes the later changes when the first alone
 * would have cured; one at a time wastes proofs when it would not. Only changes that can be undone are weighed: what turns
 * out not to be needed is taken back. Undefined when one at a time is at least as cheap.
 *
 * A proof counts at a quarter of its printing time; the one of a batch is the longest of its changes.
 */
export function changeTogether(standing: Standing, knowledge: Knowledge): ChangeTogether | undefined {
  const changes = standing.orderOfChanges().changes.filter((change) => knowledge.remedies[change.id]?.reversible === 'yes').slice(0, WEIGHED);
  const found = cheaperTogether(standing, changes.map((change) => ({ change, proof: UNATTENDED * (knowledge.remedies[change.id]?.provedBy.minutes ?? 0) })));
  return found !== undefined && found.cured >= WORTH_A_TRY ? found : undefined;
}

/**
 * The same for any changes with their proofs.
 * Worked (diagnosis.md 2.4): independent faults p = .5 .3 .1, costs 4 2 10 without the proof of 3: the first two together save 0.7007.
 */
export function cheaperTogether(standing: Standing, changes: readonly ProvenChange[], givingUp = GIVING_UP): ChangeTogether | undefined {
  if (changes.length < 2) return undefined;
  const orders = permutations(changes);
  const priced = (batches: readonly (readonly ProvenChange[])[]): { batches: typeof batches; cost: number; cured: number } => ({ batches, ...standing.costOfBatches(batches.map(asBatch), givingUp) });
  const single = cheapest(orders.map((order) => priced(order.map((each) => [each]))));
  const best = cheapest(orders.flatMap((order) => order.slice(1).map((_, k) => priced([order.slice(0, k + 2), ...order.slice(k + 2).map((each) => [each])]))));
  if (single === undefined || best === undefined || !(best.cost < single.cost)) return undefined;
  const first = best.batches[0] ?? [];
  const alone = first.map(({ change }) => ({ change: change.id, chance: standing.costOfBatches([{ changes: [change], cost: change.cost }], givingUp).cured / Math.max(best.cured, 1e-12) }));
  return {
    together: first.map(({ change }) => change.id), saves: single.cost - best.cost, cured: best.cured,
    likeliestAlone: alone.reduce((most, each) => (each.chance > most.chance ? each : most)),
  };
}

function asBatch(batch: readonly ProvenChange[]): Batch {
  return { changes: batch.map(({ change }) => change), cost: batch.reduce((sum, { change, proof }) => sum + change.cost - proof, Math.max(...batch.map(({ proof }) => proof))) };
}

function cheapest<T extends { readonly cost: number }>(list: readonly T[]): T | undefined {
  return list.reduce<T | undefined>((best, each) => (best === undefined || each.cost < best.cost ? each : best), undefined);
}

function permutations<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((first, index) => permutations([...list.slice(0, index), ...list.slice(index + 1)]).map((rest) => [first, ...rest]));
}
