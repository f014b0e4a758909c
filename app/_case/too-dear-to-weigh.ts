import type { Diagnosis } from '@/lib/diagnosis';

/** Cost of one answer above which the reasons that need hundreds of them are left out. Estimate: about 1 s in all. */
const DEAREST = 1e6;

/** True where answers hang together so much that weighing each would take too long. The ranking is exact all the same. */
export function isTooDearToWeigh({ prepared }: Pick<Diagnosis, 'prepared'>): boolean {
  return prepared.cost.units > DEAREST;
}
