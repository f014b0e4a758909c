import { ductColumn, fanColumn, normalShare, outletColumn, placeInFault, type AirPathResult, type PathFaults, type PathVariant, type UncertainInputs } from '@/lib/airflow';

/** Causes of the knowledge base that are faults of a path, whatever was entered of it. */
export const CAUSE_OF_FAULT: Readonly<Record<keyof PathFaults, string>> = {
  inlet: 'blocked-fan-inlet', leak: 'leaking-duct-seal', misaimed: 'outlet-misaimed',
};

/**
 * The chances of a diagnosis as faults of the path: what the joint samples start from. Causes that it does not name count as 0;
 * chances are kept at 0.9 at most, so that the readings of the path can still speak against them.
 * Worked: leaking-duct-seal at 0.4 alone gives leak 0.4, inlet 0, misaimed 0.
 */
export function faultsFromDiagnosis(causes: readonly { readonly id: string; readonly present: number }[]): PathFaults {
  const chance = (fault: keyof PathFaults): number => Math.min(0.9, causes.find(({ id }) => id === CAUSE_OF_FAULT[fault])?.present ?? 0);
  return { inlet: chance('inlet'), leak: chance('leak'), misaimed: chance('misaimed') };
}

/** Chance of each feared fault before and after the readings: the share of the samples that have it. */
export function faultsOf(today: PathVariant, inputs: UncertainInputs): AirPathResult['faults'] {
  const { faults } = today;
  if (faults === undefined) return [];
  const shareOf = (held: (s: number) => boolean): number => {
    let count = 0;
    for (let s = 0; s < inputs.count; s += 1) if (held(s)) count += 1;
    return count / inputs.count;
  };
  const inlet = fanColumn(inputs, 0, 'fan-inlet');
  const leak = ductColumn(inputs, 0, 'leak');
  const aims = today.outlets.map((_, k) => outletColumn(inputs, 0, k, 'outlet-aim'));
  const after: Readonly<Record<keyof PathFaults, number>> = {
    inlet: shareOf((s) => placeInFault(normalShare(inlet[s] ?? 0), faults.inlet) > 0),
    leak: shareOf((s) => placeInFault(normalShare(leak[s] ?? 0), faults.leak) > 0),
    misaimed: aims.length === 0 ? 0 : aims.reduce((sum, aim) => sum + shareOf((s) => placeInFault(2 * normalShare(Math.abs(aim[s] ?? 0)) - 1, faults.misaimed) > 0), 0) / aims.length,
  };
  return (['inlet', 'leak', 'misaimed'] as const).filter((fault) => faults[fault] > 0).map((fault) => ({ cause: CAUSE_OF_FAULT[fault], before: faults[fault], after: after[fault] }));
}
