import type { Fact } from '@/lib/airflow';

/** A quantity and its half-width times a factor of 0 or more. Worked: 4 ± 1 mm times 2 gives 8 ± 2 mm. */
export function times<K extends Fact['kind']>(fact: Fact<K>, factor: number): Fact<K> {
  return { ...fact, value: factor * fact.value, plusMinus: factor * fact.plusMinus };
}
