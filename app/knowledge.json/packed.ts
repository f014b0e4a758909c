import type {
  Basis, Cause, CitedLink, Hazard, KnownCause, KnownCheck, KnownMethod, KnownRemedy, KnownSymptom, KnownTopic, Remedy, Shelf, Source, Tool,
  WholeCause, WholeCheck, WholeKnowledge, WholeMethod, WholeRemedy, WholeSymptom, WholeTopic,
} from '@/lib/knowledge';

/** Number of this way of packing. An open page that meets another one asks to be reloaded instead of misreading it. */
export const PACKING = 1;

/**
 * A link: place of the page it leads to among the pages of its kind; its chance, or the place of its word counted from 1;
 * and whatever else a link may hold.
 */
export type PackedLink = readonly [to: number, how: number, more?: object];

/** A reading link: place of the cause, chance that it moves the reading, median, spread, and 1 when it is a normal one. */
export type PackedReading = readonly [to: number, chance: number, median: number, spread: number, normal?: 0 | 1, more?: object];

/** What a link rests on, the file that says it, and what its grades rest on where it has any; in the order of the links. */
export type PackedBasis = readonly [basis: Basis, statedIn: CitedLink['statedIn'], gradesRestOn?: Basis];

/** What rankings and first screens read. Relations stand on one side only, ids as keys only. */
export interface PackedFirst {
  readonly packing: number;
  readonly symptoms: Shelf<Omit<KnownSymptom, 'id' | 'links' | 'followsFrom'> & { readonly links: readonly PackedLink[]; readonly followsFrom: readonly PackedLink[] }>;
  readonly causes: Shelf<Omit<KnownCause, 'id' | 'shows' | 'yes' | 'reads' | 'curedBy'>>;
  readonly checks: Shelf<Omit<KnownCheck, 'id' | 'yes' | 'reads' | 'methods'> & { readonly yes: readonly PackedLink[]; readonly reads: readonly PackedReading[] }>;
  readonly methods: Shelf<Omit<KnownMethod, 'id'>>;
  readonly remedies: Shelf<Omit<KnownRemedy, 'id' | 'cures'> & { readonly cures: readonly PackedLink[] }>;
  readonly topics: Shelf<Omit<KnownTopic, 'id'>>;
  readonly tools: Shelf<Tool>;
  readonly hazards: Shelf<Pick<Hazard, 'title'>>;
}

/** Everything else: what each figure rests on, look-alikes, steps, proofs, words that only the handbook's search needs. */
export interface PackedMore {
  readonly packing: number;
  readonly symptoms: Shelf<Pick<WholeSymptom, 'confusedWith'> & { readonly links: readonly PackedBasis[]; readonly followsFrom: readonly PackedBasis[] }>;
  readonly causes: Shelf<Pick<WholeCause, 'confusedWith' | 'topics'> & { readonly context: Cause['context'] }>;
  readonly checks: Shelf<Pick<WholeCheck, 'says' | 'topics'> & { readonly yes: readonly PackedBasis[]; readonly reads: readonly PackedBasis[] }>;
  readonly methods: Shelf<Pick<WholeMethod, 'says' | 'readings' | 'steps' | 'topics'>>;
  readonly remedies: Shelf<Pick<WholeRemedy, 'says' | 'steps' | 'topics'> & { readonly provedBy: Remedy['provedBy']; readonly cures: readonly PackedBasis[] }>;
  readonly topics: Shelf<Omit<WholeTopic, 'id'>>;
  readonly sources: Shelf<Source>;
  readonly hazards: WholeKnowledge['hazards'];
}
