import { LINK_WORDS, type CitedLink, type CitedReadingLink, type Knowledge, type KnownCheck, type KnownRemedy, type KnownSymptom, type Link, type ReadingLink, type Shelf, type WholeKnowledge } from '@/lib/knowledge';
import { PACKING, type PackedBasis, type PackedFirst, type PackedLink, type PackedMore, type PackedReading } from './packed';

/** The knowledge that rankings and first screens read, from the file that came first. Throws when it was packed in another way. */
export function unpackFirst(packed: PackedFirst): Knowledge {
  expectPacking(packed.packing);
  const ids = { symptoms: Object.keys(packed.symptoms), causes: Object.keys(packed.causes) };
  const methodsOf = grouped(Object.entries(packed.methods).map(([id, method]) => [method.takes, id]));
  const symptoms = mapped(packed.symptoms, (page, id): KnownSymptom => ({ ...page, id, links: unpackLinks(page.links, ids.causes), followsFrom: unpackLinks(page.followsFrom, ids.symptoms) }));
  const checks = mapped(packed.checks, (page, id): KnownCheck => ({ ...page, id, yes: unpackLinks(page.yes, ids.causes), reads: unpackReadings(page.reads, ids.causes), methods: methodsOf.get(id) ?? [] }));
  const remedies = mapped(packed.remedies, (page, id): KnownRemedy => ({ ...page, id, cures: unpackLinks(page.cures, ids.causes) }));
  const sides = causeSides(symptoms, checks, remedies);
  return {
    symptoms, checks, remedies,
    causes: mapped(packed.causes, (page, id) => ({ ...page, id, ...sides(id) })),
    methods: mapped(packed.methods, (page, id) => ({ ...page, id })),
    topics: mapped(packed.topics, (page, id) => ({ ...page, id })),
    tools: packed.tools,
    hazards: packed.hazards,
  };
}

/** The whole knowledge, when the second file has come too. Throws when the two files are not of one build. */
export function unpackWhole(first: Knowledge, more: PackedMore): WholeKnowledge {
  expectPacking(more.packing);
  const symptoms = both(first.symptoms, more.symptoms, (page, rest) => ({ ...page, ...rest, links: cited(page.links, rest.links), followsFrom: cited(page.followsFrom, rest.followsFrom) }));
  const checks = both(first.checks, more.checks, (page, rest) => ({ ...page, ...rest, yes: cited(page.yes, rest.yes), reads: cited(page.reads, rest.reads) }));
  const remedies = both(first.remedies, more.remedies, (page, rest) => ({ ...page, ...rest, cures: cited(page.cures, rest.cures) }));
  const sides = causeSides<CitedLink, CitedReadingLink>(symptoms, checks, remedies);
  return {
    symptoms, checks, remedies,
    causes: both(first.causes, more.causes, (page, rest) => ({ ...page, ...rest, ...sides(page.id) })),
    methods: both(first.methods, more.methods, (page, rest) => ({ ...page, ...rest })),
    topics: both(first.topics, more.topics, (page, rest) => ({ ...page, ...rest })),
    tools: first.tools,
    sources: more.sources,
    hazards: more.hazards,
  };
}

function expectPacking(packing: number): void {
  if (packing !== PACKING) throw new Error(`knowledge base: got packing ${packing}, expected ${PACKING}; the page is older or newer than the file`);
}

const WORDS = Object.entries(LINK_WORDS).map(([word, chance]): Link => ({ said: word.replaceAll('-', ' '), chance }));

/** Places of words count from 1, so no chance (always below 1) is taken for one. */
function unpackLinks(links: readonly PackedLink[], ids: readonly string[]): Record<string, Link> {
  return Object.fromEntries(links.map(([to, how, more]) => [idAt(ids, to), { ...(WORDS[how - 1] ?? { chance: how, said: String(how) }), ...more }]));
}

function unpackReadings(reads: readonly PackedReading[], ids: readonly string[]): Record<string, ReadingLink> {
  return Object.fromEntries(reads.map(([to, chance, median, spread, normal, more]) => [idAt(ids, to), { shape: normal ? 'normal' : 'log-normal', chance, median, spread, ...more }]));
}

function idAt(ids: readonly string[], place: number): string {
  const id = ids[place];
  if (id === undefined) throw new Error(`knowledge base: got a link to place ${place}, expected one of ${ids.length}`);
  return id;
}

interface CauseSides<L extends Link, R extends ReadingLink> {
  readonly shows: Shelf<L>;
  readonly yes: Shelf<L>;
  readonly reads: Shelf<R>;
  readonly curedBy: Shelf<L>;
}

/** Relations are packed on one side; this is how they look from the cause. */
function causeSides<L extends Link, R extends ReadingLink>(
  symptoms: Shelf<{ readonly links: Shelf<L> }>, checks: Shelf<{ readonly yes: Shelf<L>; readonly reads: Shelf<R> }>, remedies: Shelf<{ readonly cures: Shelf<L> }>,
): (cause: string) => CauseSides<L, R> {
  const shows = turned(symptoms, (page) => page.links);
  const yes = turned(checks, (page) => page.yes);
  const reads = turned(checks, (page) => page.reads);
  const curedBy = turned(remedies, (page) => page.cures);
  return (cause) => ({ shows: shows.get(cause) ?? {}, yes: yes.get(cause) ?? {}, reads: reads.get(cause) ?? {}, curedBy: curedBy.get(cause) ?? {} });
}

function turned<P, T>(shelf: Shelf<P>, linksOf: (page: P) => Shelf<T>): Map<string, Record<string, T>> {
  const columns = new Map<string, Record<string, T>>();
  for (const [from, page] of Object.entries(shelf)) {
    for (const [to, link] of Object.entries(linksOf(page))) columns.set(to, { ...columns.get(to), [from]: link });
  }
  return columns;
}

function grouped(pairs: readonly (readonly [string, string])[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [key, value] of pairs) groups.set(key, [...(groups.get(key) ?? []), value]);
  return groups;
}

function cited<T extends object>(links: Shelf<T>, bases: readonly PackedBasis[]): Record<string, T & Pick<CitedLink, 'basis' | 'statedIn' | 'gradesRestOn'>> {
  return Object.fromEntries(Object.entries(links).map(([id, link], place) => {
    const stated = bases[place];
    if (!stated) throw new Error(`knowledge base: got ${bases.length} reasons for ${Object.keys(links).length} links, expected one each`);
    const [basis, statedIn, gradesRestOn] = stated;
    return [id, { ...link, basis, statedIn, ...(gradesRestOn ? { gradesRestOn } : {}) }];
  }));
}

function both<A, B, R>(first: Shelf<A>, more: Shelf<B>, join: (page: A, rest: B) => R): Record<string, R> {
  return mapped(first, (page, id) => {
    const rest = more[id];
    if (!rest) throw new Error(`knowledge base: got no second half of "${id}", expected one for every page`);
    return join(page, rest);
  });
}

function mapped<T, R>(shelf: Shelf<T>, change: (page: T, id: string) => R): Record<string, R> {
  return Object.fromEntries(Object.entries(shelf).map(([id, page]) => [id, change(page, id)]));
}
