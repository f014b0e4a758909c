import { LINK_WORDS, type CitedLink, type CitedReadingLink, type Shelf, type WholeKnowledge } from '@/lib/knowledge';
import { PACKING, type PackedBasis, type PackedFirst, type PackedLink, type PackedMore, type PackedReading } from './packed';

/** The part of the knowledge base that travels to the browser first. `unpackFirst` gives it back. */
export function packFirst(knowledge: WholeKnowledge): PackedFirst {
  const symptoms = placesOf(knowledge.symptoms);
  const causes = placesOf(knowledge.causes);
  return {
    packing: PACKING,
    symptoms: mapped(knowledge.symptoms, (page) => ({ ...without(page, 'id', 'confusedWith'), links: packLinks(page.links, causes), followsFrom: packLinks(page.followsFrom, symptoms) })),
    causes: mapped(knowledge.causes, ({ context, ...page }) => ({
      ...without(page, 'id', 'shows', 'yes', 'reads', 'curedBy', 'confusedWith', 'topics'), ...(context ? { context: context.map((row) => without(row, 'basis')) } : {}),
    })),
    checks: mapped(knowledge.checks, (page) => ({ ...without(page, 'id', 'methods', 'says', 'topics'), yes: packLinks(page.yes, causes), reads: packReadings(page.reads, causes) })),
    methods: mapped(knowledge.methods, (page) => without(page, 'id', 'says', 'readings', 'steps', 'topics')),
    remedies: mapped(knowledge.remedies, (page) => ({ ...without(page, 'id', 'says', 'steps', 'topics'), provedBy: { minutes: page.provedBy.minutes }, cures: packLinks(page.cures, causes) })),
    topics: mapped(knowledge.topics, ({ title }) => ({ title })),
    tools: knowledge.tools,
    hazards: mapped(knowledge.hazards, ({ title }) => ({ title })),
  };
}

/** The rest of the knowledge base, fetched when somebody asks for it. `unpackWhole` puts it to the first part. */
export function packMore(knowledge: WholeKnowledge): PackedMore {
  return {
    packing: PACKING,
    symptoms: mapped(knowledge.symptoms, ({ confusedWith, links, followsFrom }) => ({ confusedWith, links: basesOf(links), followsFrom: basesOf(followsFrom) })),
    causes: mapped(knowledge.causes, ({ confusedWith, topics, context }) => ({ confusedWith, topics, context })),
    checks: mapped(knowledge.checks, ({ says, topics, yes, reads }) => ({ says, topics, yes: basesOf(yes), reads: basesOf(reads) })),
    methods: mapped(knowledge.methods, ({ says, readings, steps, topics }) => ({ says, readings, steps, topics })),
    remedies: mapped(knowledge.remedies, ({ says, steps, topics, provedBy, cures }) => ({ says, steps, topics, provedBy, cures: basesOf(cures) })),
    topics: mapped(knowledge.topics, (page) => without(page, 'id')),
    sources: knowledge.sources,
    hazards: knowledge.hazards,
  };
}

function placesOf(shelf: Shelf<unknown>): (id: string) => number {
  const places = new Map(Object.keys(shelf).map((id, place) => [id, place]));
  return (id) => {
    const place = places.get(id);
    if (place === undefined) throw new Error(`packing: got a link to "${id}", expected one of ${places.size} known pages`);
    return place;
  };
}

const WORDS = Object.keys(LINK_WORDS).map((word) => word.replaceAll('-', ' '));

function packLinks(links: Shelf<CitedLink>, placeOf: (id: string) => number): PackedLink[] {
  return Object.entries(links).map(([id, link]) => {
    const how = WORDS.indexOf(link.said) + 1 || link.chance;
    const more = without(link, 'chance', 'said', 'basis', 'statedIn', 'gradesRestOn');
    return isEmpty(more) ? [placeOf(id), how] : [placeOf(id), how, more];
  });
}

function packReadings(reads: Shelf<CitedReadingLink>, placeOf: (id: string) => number): PackedReading[] {
  return Object.entries(reads).map(([id, read]) => {
    const normal = read.shape === 'normal' ? 1 : 0;
    const row = [placeOf(id), read.chance, read.median, read.spread] as const;
    const more = without(read, 'shape', 'chance', 'median', 'spread', 'basis', 'statedIn');
    return !isEmpty(more) ? [...row, normal, more] : normal ? [...row, normal] : row;
  });
}

function basesOf(links: Shelf<CitedLink | CitedReadingLink>): PackedBasis[] {
  return Object.values(links).map((link) => ('gradesRestOn' in link ? [link.basis, link.statedIn, link.gradesRestOn] : [link.basis, link.statedIn]));
}

/** The fields but for some: those that the other file, the key or the other side of a relation holds. */
function without<T extends object, K extends keyof T>(fields: T, ...keys: readonly K[]): Omit<T, K> {
  const rest = { ...fields };
  for (const key of keys) Reflect.deleteProperty(rest, key);
  return rest;
}

function isEmpty(fields: object): boolean {
  return Object.keys(fields).length === 0;
}

function mapped<T, R>(shelf: Shelf<T>, change: (page: T) => R): Record<string, R> {
  return Object.fromEntries(Object.entries(shelf).map(([id, page]) => [id, change(page)]));
}
