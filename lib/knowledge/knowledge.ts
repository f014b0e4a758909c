import type { Basis, Cause, Check, Circumstances, Hazard, Method, Remedy, Source, Symptom, Tool, Topic } from './schemas';

/* Two depths of the same base: what rankings and first screens read, and the whole. The browser has the second later. */

/** A stated chance with the word it was said in. */
export interface Link {
  readonly chance: number;
  readonly said: string;
  /** Shares of slight, clear and severe when this is behind the symptom; sums to 1. Left out when nothing is said. */
  readonly grades?: readonly number[];
}

/** A link with what it rests on and the file that says it. */
export interface CitedLink extends Link {
  readonly basis: Basis;
  readonly statedIn: string;
  /** What the grades rest on; there with `grades`. */
  readonly gradesRestOn?: Basis;
}

/** How a reading is distributed: around `median`, in SI or as a ratio to what it is compared with. */
export interface ReadingModel {
  readonly shape: 'log-normal' | 'normal';
  /** Median in SI units, or the ratio when the check compares with something. */
  readonly median: number;
  /** Log-normal: standard deviation of the natural log. Normal: standard deviation in SI units. */
  readonly spread: number;
  /** Sizes that readings come in whole multiples of (SI), each as likely as the others; undefined when any size may be read. */
  readonly multiplesOf?: readonly number[];
}

export interface ReadingLink extends ReadingModel {
  /** Chance that the cause, when at work, moves the reading at all. */
  readonly chance: number;
}

export interface CitedReadingLink extends ReadingLink {
  readonly basis: Basis;
  readonly statedIn: string;
}

export type Shelf<Entry> = Readonly<Record<string, Entry>>;

export interface KnownSymptom extends Omit<Symptom, 'shownBy' | 'followsFrom' | 'confusedWith'> {
  readonly id: string;
  /** Chance that it is seen with no listed cause behind it. */
  readonly leak: number;
  /** Shares of slight, clear and severe with no listed cause behind it; sums to 1. */
  readonly leakGrades: readonly number[];
  readonly links: Shelf<Link>;
  readonly followsFrom: Shelf<Link>;
  /** Symptoms that are details of this one. */
  readonly details: readonly string[];
}

export interface KnownCause extends Omit<Cause, 'shows' | 'yes' | 'reads' | 'curedBy' | 'context' | 'confusedWith' | 'topics' | 'examples'> {
  readonly id: string;
  readonly prior: number;
  /** Facts that make it likelier or rarer. */
  readonly context?: readonly ContextOdds[] | undefined;
  readonly shows: Shelf<Link>;
  readonly yes: Shelf<Link>;
  readonly reads: Shelf<ReadingLink>;
  /** Remedies that may cure it, with the chance that they do. */
  readonly curedBy: Shelf<Link>;
}

export interface ContextOdds {
  readonly when: Circumstances;
  readonly odds: number;
}

export interface KnownCheck extends Omit<Check, 'yesBy' | 'otherwise' | 'says' | 'topics' | 'examples' | 'keptBecause'> {
  readonly id: string;
  readonly leak: number;
  readonly yes: Shelf<Link>;
  readonly reads: Shelf<ReadingLink>;
  readonly otherwise: ReadingModel | undefined;
  readonly methods: readonly string[];
}

export interface KnownMethod extends Omit<Method, 'says' | 'readings' | 'steps' | 'topics' | 'examples'> {
  readonly id: string;
}

export interface KnownRemedy extends Omit<Remedy, 'cures' | 'says' | 'steps' | 'provedBy' | 'topics' | 'examples' | 'keptBecause'> {
  readonly id: string;
  readonly cures: Shelf<Link>;
  readonly provedBy: Pick<Remedy['provedBy'], 'minutes'>;
}

export interface KnownTopic {
  readonly id: string;
  readonly title: string;
}

/** What rankings and first screens read of the knowledge base. Plain data: it travels to the browser first. */
export interface Knowledge {
  readonly symptoms: Shelf<KnownSymptom>;
  readonly causes: Shelf<KnownCause>;
  readonly checks: Shelf<KnownCheck>;
  readonly methods: Shelf<KnownMethod>;
  readonly remedies: Shelf<KnownRemedy>;
  readonly topics: Shelf<KnownTopic>;
  readonly tools: Shelf<Tool>;
  readonly hazards: Shelf<Pick<Hazard, 'title'>>;
}

export interface WholeSymptom extends KnownSymptom, Pick<Symptom, 'confusedWith'> {
  readonly links: Shelf<CitedLink>;
  readonly followsFrom: Shelf<CitedLink>;
}

export interface WholeCause extends KnownCause, Pick<Cause, 'confusedWith' | 'topics'> {
  readonly context?: Cause['context'];
  readonly shows: Shelf<CitedLink>;
  readonly yes: Shelf<CitedLink>;
  readonly reads: Shelf<CitedReadingLink>;
  readonly curedBy: Shelf<CitedLink>;
}

export interface WholeCheck extends KnownCheck, Pick<Check, 'says' | 'topics'> {
  readonly yes: Shelf<CitedLink>;
  readonly reads: Shelf<CitedReadingLink>;
}

export interface WholeMethod extends KnownMethod, Pick<Method, 'says' | 'readings' | 'steps' | 'topics'> {}

export interface WholeRemedy extends KnownRemedy, Pick<Remedy, 'says' | 'steps' | 'topics'> {
  readonly cures: Shelf<CitedLink>;
  readonly provedBy: Remedy['provedBy'];
}

export interface WholeTopic extends Topic {
  readonly id: string;
}

/** Everything the pages state, linked and checked, but for the worked examples and the reasons why a page is kept: they stay with the pages, for tests and review. */
export interface WholeKnowledge extends Knowledge {
  readonly symptoms: Shelf<WholeSymptom>;
  readonly causes: Shelf<WholeCause>;
  readonly checks: Shelf<WholeCheck>;
  readonly methods: Shelf<WholeMethod>;
  readonly remedies: Shelf<WholeRemedy>;
  readonly topics: Shelf<WholeTopic>;
  readonly sources: Shelf<Source>;
  readonly hazards: Shelf<Hazard>;
}

export const PAGE_KINDS = ['symptoms', 'causes', 'checks', 'methods', 'remedies', 'topics'] as const;
export type PageKind = (typeof PAGE_KINDS)[number];

/** The title a person sees for any page: causes and symptoms have titles, checks ask, remedies do. */
export function titleOf(knowledge: Knowledge, id: string): string {
  return (
    knowledge.causes[id]?.title ?? knowledge.symptoms[id]?.title ?? knowledge.checks[id]?.asks ?? knowledge.methods[id]?.title ??
    knowledge.remedies[id]?.does ?? knowledge.topics[id]?.title ?? id
  );
}
