import type { Knowledge, Link, ReadingLink } from '@/lib/knowledge';

/** The one figure that stands for every link, every prior and every leak (diagnosis.md section 4). */
const LINK = 0.5;
const PRIOR = 0.015;
const LEAK = 0.03;

/**
 * The same knowledge with its figures wiped out: who points to whom stays, how strongly and how often is levelled, and
 * circumstances no longer count. How a reading is distributed stays, for it says which way a cause moves it. What the
 * real figures are worth is the distance to this.
 */
export function structureOnly(knowledge: Knowledge): Knowledge {
  return {
    ...knowledge,
    causes: mapped(knowledge.causes, (cause) => ({ ...cause, prior: PRIOR, context: [], shows: levelled(cause.shows), yes: levelled(cause.yes), reads: levelled(cause.reads) })),
    symptoms: mapped(knowledge.symptoms, (symptom) => ({ ...symptom, leak: LEAK, links: levelled(symptom.links), followsFrom: levelled(symptom.followsFrom) })),
    checks: mapped(knowledge.checks, (check) => ({ ...check, leak: LEAK, yes: levelled(check.yes), reads: levelled(check.reads) })),
  };
}

function levelled<T extends Link | ReadingLink>(links: Readonly<Record<string, T>>): Record<string, T> {
  return mapped(links, (link) => ({ ...link, chance: LINK }));
}

function mapped<T>(record: Readonly<Record<string, T>>, change: (value: T) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}
