import type { Evidence } from '@/lib/diagnosis';

/** One thing that is known, with every word told of it, first to last. */
export interface ToldFact {
  readonly last: Evidence;
  readonly words: readonly Evidence[];
}

const thingOf = ({ kind, about }: Evidence): string => `${kind === 'symptom' ? 'seen' : 'checked'} ${about}`;

/** What was told, each thing once however many rounds tell of it, in the order in which things were first told. */
export function toldFacts(items: readonly Evidence[]): ToldFact[] {
  const facts = new Map<string, ToldFact>();
  for (const item of [...items].sort((a, b) => a.round - b.round)) facts.set(thingOf(item), { last: item, words: [...(facts.get(thingOf(item))?.words ?? []), item] });
  return [...facts.values()];
}

/** The number of the fact that an item tells of: its place among what was told. */
export function factNumber(items: readonly Evidence[], item: Evidence): number {
  return toldFacts(items).findIndex(({ last }) => thingOf(last) === thingOf(item)) + 1;
}
