import type { Round } from '../cases';

/** Ids of the remedies of a round: the chosen one, and those whose change is made together with it. Empty where none is chosen. */
export function remediesOfRound({ remedy, also = [] }: Pick<Round, 'remedy' | 'also'>): readonly string[] {
  return remedy === undefined ? also : [remedy, ...also];
}

/** The same where the change was made, as its date or its verdict says; empty while it is only chosen. */
export function fittedInRound(round: Round): readonly string[] {
  return round.fittedOn === undefined && round.verdict === undefined ? [] : remediesOfRound(round);
}
