import type { Basis, Cause, Check, Hazard, Method, Remedy, Source, Symptom, Tool, Topic } from './schemas';

/** A stated chance with the word it was said in, what it rests on, and the file that says it. */
export interface Link {
  readonly chance: number;
  readonly said: string;
  readonly basis: Basis;
  readonly statedIn: string;
}

/** How a reading is distributed: around `median`, in SI or as a ratio to what it is compared with. */
export interface ReadingModel {
  readonly shape: 'log-normal' | 'normal';
  /** Median in SI units, or the ratio when the check compares with something. */
  readonly median: number;
  /** Log-normal: standard deviation of the natural log. Normal: standard deviation in SI units. */
  readonly spread: number;
}

export interface ReadingLink extends ReadingModel {
  /** Chance that the cause, when at work, moves the reading at all. */
  readonly chance: number;
  readonly basis: Basis;
  readonly statedIn: string;
}

export interface KnownSymptom extends Omit<Symptom, 'shownBy' | 'followsFrom'> {
  readonly id: string;
  /** Chance that it is seen with no listed cause behind it. */
  readonly leak: number;
  readonly links: Readonly<Record<string, Link>>;
  readonly followsFrom: Readonly<Record<string, Link>>;
  /** Symptoms that are details of this one. */
  readonly details: readonly string[];
}

export interface KnownCause extends Omit<Cause, 'shows' | 'yes' | 'reads' | 'curedBy'> {
  readonly id: string;
  readonly prior: number;
  readonly shows: Readonly<Record<string, Link>>;
  readonly yes: Readonly<Record<string, Link>>;
  readonly reads: Readonly<Record<string, ReadingLink>>;
  /** Remedies that may cure it, with the chance that they do. */
  readonly curedBy: Readonly<Record<string, Link>>;
}

export interface KnownCheck extends Omit<Check, 'yesBy' | 'otherwise'> {
  readonly id: string;
  readonly leak: number;
  readonly yes: Readonly<Record<string, Link>>;
  readonly reads: Readonly<Record<string, ReadingLink>>;
  readonly otherwise: ReadingModel | undefined;
  readonly methods: readonly string[];
}

export interface KnownMethod extends Method {
  readonly id: string;
}

export interface KnownRemedy extends Omit<Remedy, 'cures'> {
  readonly id: string;
  readonly cures: Readonly<Record<string, Link>>;
}

export interface KnownTopic extends Topic {
  readonly id: string;
}

/** The whole knowledge base, linked and checked. Plain data: it travels to the browser as JSON. */
export interface Knowledge {
  readonly symptoms: Readonly<Record<string, KnownSymptom>>;
  readonly causes: Readonly<Record<string, KnownCause>>;
  readonly checks: Readonly<Record<string, KnownCheck>>;
  readonly methods: Readonly<Record<string, KnownMethod>>;
  readonly remedies: Readonly<Record<string, KnownRemedy>>;
  readonly topics: Readonly<Record<string, KnownTopic>>;
  readonly sources: Readonly<Record<string, Source>>;
  readonly tools: Readonly<Record<string, Tool>>;
  readonly hazards: Readonly<Record<string, Hazard>>;
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
