import { beforeCallingHelp, orderByOddsOverCost, prepare, scenariosOf, type Repair, type RepairScenario } from '../inference';
import type { Knowledge, KnownCheck } from '../knowledge';
import { chanceOfClass } from '../knowledge';
import type { Diagnosis } from './diagnose';
import type { CheckOutcome } from './check-outcomes';
import type { NextCheck } from './next-checks';
import { orderedModels, sameModel } from './reading-levels';
import { readingLikelihoods } from './reading-likelihood';
import { costInMinutes } from './rank-remedies';

/** What a case would still take until it is cured, in minutes, and what each check would save of that. */
export interface MinutesToCure {
  /** Expected minutes of changes and proofs, in a good order, from what is known now. */
  readonly now: number;
  /** Per check: expected minutes saved, its own minutes already taken off; may be negative. */
  readonly saves: ReadonlyMap<string, number>;
}

/** Changes that are weighed; further ones hardly ever come up before the case is cured. */
const REPAIRS = 24;
const DRAWS = 400;
const SEED = 11;
/** Minutes that giving up costs: an evening, the search for help, the wait for it. Estimate. */
const GIVING_UP = 600;
/** Causes below this chance are left out: nobody would go through them one by one. */
const WORTH_TRYING = 0.03;

/**
 * Expected minutes to a cure, now and after each of these checks.
 *
 * Draws from the exact joint posterior stand for the ways it may be; changes are tried by odds over cost, each followed by its
 * proof print, and given up where going on would cost more. A check re-weights the draws by how well each explains its outcome.
 */
export function minutesToCure(diagnosis: Diagnosis, checks: readonly NextCheck[], knowledge: Knowledge): MinutesToCure {
  const { repairs, scenarios } = situationOf(diagnosis, knowledge);
  const cost = (weights: readonly number[]): number => {
    const weighted = scenarios.map((scenario, index) => ({ ...scenario, share: scenario.share * (weights[index] ?? 1) })).filter((scenario) => scenario.share > 0);
    const total = weighted.reduce((sum, scenario) => sum + scenario.share, 0);
    if (total === 0) return 0;
    const shared = weighted.map((scenario) => ({ ...scenario, share: scenario.share / total }));
    const order = orderByOddsOverCost(repairs.map((repair) => chanceOfUse(repair, shared)), repairs.map((repair) => repair.cost));
    return beforeCallingHelp(order, repairs, shared, GIVING_UP).cost;
  };
  const now = cost([]);
  const saves = new Map<string, number>();
  for (const row of checks) {
    const check = knowledge.checks[row.check];
    if (!check) continue;
    const misled = chanceOfClass(knowledge.methods[row.method]?.misleads ?? 'uncommon');
    const after = row.outcomes.reduce((sum, outcome) => sum + outcome.chance * cost(scenarios.map((scenario) => likelihood(outcome, check, scenario, misled, diagnosis))), 0);
    saves.set(row.check, now - after - row.minutes);
  }
  return { now, saves };
}

function situationOf(diagnosis: Diagnosis, knowledge: Knowledge): { repairs: Repair[]; scenarios: RepairScenario[] } {
  const { net, causes } = diagnosis.net;
  const acting = new Set(diagnosis.causes.filter((cause) => cause.probability > 0.5 * cause.present && cause.probability >= WORTH_TRYING).map((cause) => cause.id));
  const index = new Map(causes.map((id, position) => [id, position]));
  const chances = new Map(diagnosis.causes.map((cause) => [cause.id, cause.probability]));
  const worth = (cures: Readonly<Record<string, { readonly chance: number }>>): number => Object.entries(cures).reduce((sum, [id, link]) => sum + link.chance * (chances.get(id) ?? 0), 0);
  const repairs = Object.values(knowledge.remedies)
    .map((remedy) => ({ remedy, worth: worth(remedy.cures) }))
    .sort((a, b) => b.worth / costInMinutes(b.remedy) - a.worth / costInMinutes(a.remedy))
    .slice(0, REPAIRS)
    .map(({ remedy }): Repair => ({ cost: costInMinutes(remedy), removes: new Map(Object.entries(remedy.cures).map(([id, link]) => [index.get(id) ?? -1, link.chance])) }));
  const ready = prepare(net);
  if (ready.kind !== 'prepared') return { repairs, scenarios: [] };
  const drawn = scenariosOf(ready.prepared, DRAWS, SEED);
  const causeAtWork = new Map(causes.flatMap((id, position) => (acting.has(id) ? [[(ready.prepared.firstState[position + 1] ?? 0) - 1, position] as const] : [])));
  const scenarios = drawn.present.map((states, row) => ({ share: drawn.shares[row] ?? 0, present: states.flatMap((state) => causeAtWork.get(state) ?? []) }));
  return { repairs, scenarios: scenarios.filter((scenario) => scenario.present.length > 0) };
}

/** Chance that a change removes something that is at work. */
function chanceOfUse(repair: Repair, scenarios: readonly RepairScenario[]): number {
  return scenarios.reduce((sum, { share, present }) => sum + share * (1 - present.reduce((left, cause) => left * (1 - (repair.removes.get(cause) ?? 0)), 1)), 0);
}

/** How likely an outcome of a check is when exactly these causes are at work. */
function likelihood(outcome: CheckOutcome, check: KnownCheck, scenario: RepairScenario, misled: number, { net }: Diagnosis): number {
  const present = scenario.present.map((cause) => net.causes[cause] ?? '');
  if (outcome.label !== 'reading') {
    const no = present.reduce((product, id) => product * (1 - (check.yes[id]?.chance ?? 0)), 1 - check.leak);
    const yes = (1 - no) * (1 - misled) + no * misled;
    return outcome.label === 'yes' ? yes : 1 - yes;
  }
  const healthy = check.otherwise;
  if (healthy === undefined || outcome.value === undefined) return 1;
  const models = [healthy, ...orderedModels(healthy, Object.values(check.reads))];
  const levelOf = (id: string): number => { const read = check.reads[id]; return read === undefined ? 0 : models.findIndex((model, level) => level > 0 && sameModel(model, read)); };
  const atMost = (level: number): number => present.reduce((product, id) => product * (levelOf(id) > level ? 1 - (check.reads[id]?.chance ?? 0) : 1), 1);
  return readingLikelihoods(outcome.value, 0, models).reduce((sum, each, level) => sum + each * (atMost(level) - (level === 0 ? 0 : atMost(level - 1))), 0);
}
