import { answer, goodRepairOrder } from '../inference';
import type { Knowledge } from '../knowledge';
import { atWorkNow } from './build-net';
import { changesOf, costInMinutes } from './changes';
import type { Diagnosis } from './diagnose';
import { chanceOfUse, GIVING_UP, type Standing } from './standing';
import { standingOf } from './standing-of-case';

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
  /** It was made before and did not cure the case: it stands behind all others. */
  readonly isTried: boolean;
}

/** Changes at the head of the list whose order is searched; behind them hardly anybody comes. */
const SEARCHED = 8;

/**
 * Remedies in the order in which to try them: odds of curing divided by cost, the optimal order for several independent
 * faults (exchange argument, diagnosis.md section 3), first those that come before giving up would be cheaper. As faults
 * are not independent, each of the first eight is then moved to wherever that lowers the expected cost over draws from the
 * joint posterior. Cost: see changes.ts. Changes in `tried` come last.
 * The chance is exact for a remedy of one cause. Causes of one remedy mostly explain the same thing, so that one of them makes
 * the others less likely: for a remedy of several the chance is that over the same draws (off by 0.02 at most, one standard
 * error), held between that of its likeliest cause and the sum of all.
 */
export function rankRemedies(diagnosis: Diagnosis, knowledge: Knowledge, tried: ReadonlySet<string> = new Set()): RankedRemedy[] {
  const chances = new Map(diagnosis.causes.map((cause) => [cause.id, cause.probability]));
  const changes = changesOf(knowledge, diagnosis.net.causes);
  const standing = standingOf(diagnosis, { checks: [], changes }, { tried });
  const scenarios = standing.repairScenarios();
  const removes = new Map(changes.map((change) => [change.id, change]));
  const ranked = Object.values(knowledge.remedies).flatMap((remedy) => {
    const cures = Object.keys(remedy.cures).sort((a, b) => (chances.get(b) ?? 0) - (chances.get(a) ?? 0));
    const bound = cures.reduce((sum, id) => sum + (chances.get(id) ?? 0), 0);
    if (bound < 1e-4) return [];
    const each = Object.entries(remedy.cures).map(([id, link]) => link.chance * (chances.get(id) ?? 0));
    const [least, most] = [Math.max(...each), Math.min(1, each.reduce((sum, one) => sum + one, 0))];
    const change = removes.get(remedy.id);
    const chance = each.length === 1 || change === undefined ? least : Math.min(most, Math.max(least, chanceOfUse(change, scenarios)));
    const row: RankedRemedy = { id: remedy.id, does: remedy.does, chance, minutes: remedy.minutes + (remedy.printMinutes ?? 0) + (remedy.waitMinutes ?? 0) + remedy.provedBy.minutes, price: remedy.price, cures, isTried: tried.has(remedy.id) };
    return [{ row, worth: oddsOf(chance) / costInMinutes(remedy) }];
  });
  const byWorth = ranked.sort((a, b) => Number(a.row.isTried) - Number(b.row.isTried) || b.worth - a.worth || (a.row.id < b.row.id ? -1 : 1)).map(({ row }) => row);
  const first = beforeGivingUp(standing).flatMap((id) => byWorth.filter((row) => row.id === id));
  return [...first, ...byWorth.filter((row) => !first.includes(row))];
}

function beforeGivingUp(standing: Standing): string[] {
  const { changes } = standing.orderOfChanges();
  const head = changes.slice(0, SEARCHED);
  const { order } = goodRepairOrder(head, standing.repairScenarios(), { unsolvedCost: GIVING_UP });
  const moved = order.flatMap((position) => head[position] ?? []);
  // Those that would cure nothing more after the others keep their places behind them.
  return [...moved, ...changes.filter((change) => !moved.includes(change))].map((change) => change.id);
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

function oddsOf(chance: number): number {
  const inside = Math.min(0.9999, chance);
  return inside / (1 - inside);
}
