import { costInMinutes } from '../diagnosis';
import type { Knowledge, KnownRemedy } from '../knowledge';

/** A remedy that has nothing over others. */
export interface OutdoneRemedy {
  readonly remedy: string;
  /** Per cause that it cures: the remedy that cures it at least as surely, for less, with no more tools. */
  readonly by: readonly { readonly cause: string; readonly remedy: string }[];
}

/**
 * Remedies that cure nothing better than another: for every cause they cure there is a remedy that cures it with at
 * least the same chance, costs less (minutes of hands, printing and money as ranking counts them) and needs no other tool.
 */
export function outdoneRemedies({ remedies }: Knowledge): OutdoneRemedy[] {
  const all = Object.values(remedies);
  return all.flatMap((remedy): OutdoneRemedy[] => {
    const causes = Object.keys(remedy.cures);
    const by = causes.flatMap((cause) => {
      const better = all.find((other) => other !== remedy && outdoes(other, remedy, cause));
      return better ? [{ cause, remedy: better.id }] : [];
    });
    return causes.length > 0 && by.length === causes.length ? [{ remedy: remedy.id, by }] : [];
  });
}

function outdoes(other: KnownRemedy, remedy: KnownRemedy, cause: string): boolean {
  const cures = other.cures[cause]?.chance ?? 0;
  return cures >= (remedy.cures[cause]?.chance ?? 0) && costInMinutes(other) < costInMinutes(remedy) && other.needs.every((tool) => remedy.needs.includes(tool));
}
