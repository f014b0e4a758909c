import type { CaseFile, Observation } from '@/lib/cases';

/** Symptoms that were seen when the change was fitted: each is looked at again. */
export function symptomsToLookAt(file: CaseFile, round: number): Observation[] {
  const last = new Map<string, Observation>();
  for (const each of file.observations) if (each.round <= round) last.set(each.symptom, each);
  return [...last.values()].filter((each) => each.state === 'seen');
}
