/** One way the world may be, with its probability: which causes are present. */
export interface RepairScenario {
  readonly share: number;
  readonly present: readonly number[];
}

export interface Repair {
  /** Cost of carrying it out, in any one unit. */
  readonly cost: number;
  /** Chance that it removes each cause, by cause number; a cause not listed stays. */
  readonly removes: ReadonlyMap<number, number>;
}

/**
 * Expected cost of carrying out repairs in this order until the scenario is good, each followed by a re-test.
 * Repairs succeed independently of each other. Shares are taken relative to their sum.
 *
 * One cause present with p = .4 .3 .2 .1, costs 8 3 1 4, no re-test cost, order 2 1 0 3: 7.8.
 */
export function expectedCost(order: readonly number[], repairs: readonly Repair[], scenarios: readonly RepairScenario[], retestCost = 0): number {
  return expectedCostOfBatches(order.map((repair) => [repair]), repairs, scenarios, retestCost);
}

/** As `expectedCost`, with a re-test only after each batch of repairs. */
export function expectedCostOfBatches(batches: readonly (readonly number[])[], repairs: readonly Repair[], scenarios: readonly RepairScenario[], retestCost: number): number {
  const state = new RepairState(scenarios);
  let cost = 0;
  for (const batch of batches) {
    const stillBad = state.stillBad();
    cost += stillBad * (batch.reduce((sum, repair) => sum + (repairs[repair]?.cost ?? 0), 0) + retestCost);
    for (const repair of batch) state.apply(repairs[repair]);
  }
  return cost;
}

/** Expected cost of "inspect, repair if faulty" in this order when exactly one cause is present. */
export function expectedCostOfInspections(order: readonly number[], probabilities: readonly number[], inspectionCosts: readonly number[], repairCosts: readonly number[]): number {
  let left = probabilities.reduce((sum, p) => sum + p, 0);
  let cost = 0;
  for (const i of order) {
    cost += left * (inspectionCosts[i] ?? 0) + (probabilities[i] ?? 0) * (repairCosts[i] ?? 0);
    left -= probabilities[i] ?? 0;
  }
  return cost;
}

/** Share that is still bad when all these repairs have been carried out. */
export function stillBadAfter(order: readonly number[], repairs: readonly Repair[], scenarios: readonly RepairScenario[]): number {
  const state = new RepairState(scenarios);
  for (const repair of order) state.apply(repairs[repair]);
  return state.stillBad();
}

/** Scenarios in which exactly one cause is present. */
export function oneCauseScenarios(probabilities: readonly number[]): RepairScenario[] {
  return probabilities.map((share, cause) => ({ share, present: [cause] }));
}

/** All combinations of independent causes, at least one of them present. At most 16 causes. */
export function independentScenarios(probabilities: readonly number[]): RepairScenario[] {
  if (probabilities.length > 16) throw new Error(`inference: independentScenarios: got ${probabilities.length} causes, expected at most 16`);
  return Array.from({ length: 2 ** probabilities.length - 1 }, (_, i) => {
    const isPresent = probabilities.map((_p, cause) => (((i + 1) >> cause) & 1) === 1);
    const share = probabilities.reduce((product, p, cause) => product * (isPresent[cause] === true ? p : 1 - p), 1);
    return { share, present: probabilities.flatMap((_p, cause) => (isPresent[cause] === true ? [cause] : [])) };
  });
}

/** A repair that removes these causes for certain. */
export function perfectRepair(cost: number, ...causes: readonly number[]): Repair {
  return { cost, removes: new Map(causes.map((cause) => [cause, 1])) };
}

/** Chance, per scenario and present cause, that the cause is still there. */
export class RepairState {
  readonly #left: Float64Array[];
  readonly #shares: readonly number[];

  constructor(private readonly scenarios: readonly RepairScenario[]) {
    const total = scenarios.reduce((sum, { share }) => sum + share, 0);
    this.#shares = scenarios.map(({ share }) => share / total);
    this.#left = scenarios.map(({ present }) => new Float64Array(present.length).fill(1));
  }

  apply(repair: Repair | undefined): void {
    this.scenarios.forEach(({ present }, s) => {
      const left = this.#left[s] ?? new Float64Array();
      present.forEach((cause, i) => (left[i] = (left[i] ?? 0) * (1 - (repair?.removes.get(cause) ?? 0))));
    });
  }

  stillBad(): number {
    let bad = 0;
    this.#shares.forEach((share, s) => {
      let good = 1;
      for (const left of this.#left[s] ?? []) good *= 1 - left;
      bad += share * (1 - good);
    });
    return bad;
  }
}
