import { orderByOddsOverCost, sameDecision, type Gate, type OpenCheck } from '../inference';
import type { Knowledge } from '../knowledge';
import { atWorkNow, buildNet } from './build-net';
import { changesOf, type Change } from './changes';
import type { CaseFacts } from './circumstances';
import type { Diagnosis } from './diagnose';
import type { Evidence } from './evidence';
import type { NextCheck } from './next-checks';
import { STRAY } from './reading-likelihood';
import { GIVING_UP } from './standing';

/** How surely the advice stays the same whatever the next checks say. */
export interface SameAdvice {
  /** Remedy that comes first now by odds over cost. */
  readonly remedy: string;
  /** Probability that the same remedy comes first when all these checks have been taken. */
  readonly probability: number;
  readonly checks: readonly string[];
}

/** From this probability on, more checks would hardly change the advice (diagnosis.md 3, stop rule). */
export const ADVICE_SETTLED = 0.95;

/** Combinations of outcomes that are gone through; each is an exact answer. */
const COMBINATIONS = 32;
/** Cost of one combination above which the question is not asked: about 3 ms. Estimate. */
const UNITS = 1e6;

/**
 * Same-decision probability of the advice: the chance that the remedy which comes first now, by odds over cost, still does
 * when the most telling checks have all been taken, over every combination of their outcomes (diagnosis.md 4; the core is
 * `sameDecision`, check value .825521615833). Answers and readings are taken to tell what made them, but for the strays of reading-likelihood.ts: more than
 * they really tell, so the probability is rather too low than too high. Changes in `tried` are left out. Undefined without a remedy or a check that tells
 * anything, or when an exact answer would be too dear.
 */
export function sameAdvice(diagnosis: Diagnosis, next: readonly NextCheck[], file: CaseFacts, knowledge: Knowledge, tried: ReadonlySet<string> = new Set()): SameAdvice | undefined {
  const { causes } = diagnosis.net;
  const changes = changesOf(knowledge, causes).filter((change) => !tried.has(change.id));
  const byId = new Map(diagnosis.causes.map((cause) => [cause.id, cause]));
  const remedy = firstChange(changes, causes.map((id) => byId.get(id)?.probability ?? 0));
  if (remedy === undefined) return undefined;
  const telling = next.filter((row) => row.lacks.length === 0 && !diagnosis.items.some((item) => item.about === row.check)).sort((a, b) => b.gain - a.gain);
  const { net, checks, taken } = openChecks(diagnosis, telling, file, knowledge);
  if (taken.length === 0) return undefined;
  // The share of a cause's presence that had a hand in this is taken as known.
  const shares = causes.map((id) => { const cause = byId.get(id); return cause && cause.present > 0 ? cause.probability / cause.present : 0; });
  const decide = (states: readonly (readonly number[])[]): string => firstChange(changes, shares.map((share, index) => share * atWorkNow(states[index] ?? []))) ?? '';
  const probability = sameDecision(net, checks, decide, { limitCombinations: COMBINATIONS, limitUnits: UNITS });
  return probability === undefined ? undefined : { remedy, probability: Math.min(1, probability), checks: taken };
}

/** The change with the best odds of curing something for its cost; undefined when none cures anything, or when giving up is cheaper than even the first. */
function firstChange(changes: readonly Change[], chances: readonly number[]): string | undefined {
  const odds = changes.map((change) => 1 - [...change.removes].reduce((left, [cause, chance]) => left * (1 - chance * (chances[cause] ?? 0)), 1));
  const first = orderByOddsOverCost(odds, changes.map((change) => change.cost))[0];
  if (first === undefined || (changes[first]?.cost ?? Infinity) > (odds[first] ?? 0) * GIVING_UP) return undefined;
  return changes[first]?.id;
}

interface Open {
  readonly net: Parameters<typeof sameDecision>[0];
  readonly checks: readonly OpenCheck[];
  readonly taken: readonly string[];
}

/** The net with a gate for each open check of which nothing is known yet, as many as the combinations allow. */
function openChecks(diagnosis: Diagnosis, telling: readonly NextCheck[], file: CaseFacts, knowledge: Knowledge): Open {
  const { rounds } = diagnosis.net;
  const items = telling.slice(0, 8).map((row): Evidence => {
    const finding = { check: row.check, method: row.method, round: rounds };
    return row.outcomes[0]?.label === 'reading' ? { kind: 'reading', about: row.check, round: rounds, value: row.outcomes[0].value ?? 0, standardUncertainty: 0, finding } : { kind: 'answer', about: row.check, round: rounds, yes: true, finding };
  });
  const built = buildNet(file, [...diagnosis.items, ...items], knowledge);
  const checks: OpenCheck[] = [];
  const taken: string[] = [];
  let combinations = 1;
  const gates = built.net.gates.map((gate, index): Gate => {
    const subject = built.gates[index];
    if (!subject?.items.some((item) => items.includes(item))) return gate;
    const levels = gate.weights.length;
    if (combinations * levels <= COMBINATIONS) {
      combinations *= levels;
      checks.push(outcomesOf(index, levels));
      taken.push(subject.about);
    }
    return { ...gate, weights: gate.weights.map(() => 1) };
  });
  return { net: { ...built.net, gates }, checks, taken };
}

/** One outcome per level, told truly but for the strays, which are spread over the others. Sums to 1 for every level. */
function outcomesOf(gate: number, levels: number): OpenCheck {
  const stray = levels > 1 ? STRAY / (levels - 1) : 0;
  return Array.from({ length: levels }, (_, told) => ({ kind: 'gate', gate, weights: Array.from({ length: levels }, (__, level) => (level === told ? 1 - STRAY : stray)) }));
}
