import { nearestName, stops, type Problem, type Reading } from '../problems';
import type { CitedLink, CitedReadingLink, PageKind, WholeCause, WholeCheck, WholeKnowledge, WholeSymptom } from './knowledge';
import { PAGE_KINDS } from './knowledge';
import { EVEN_SHARES, GRADE_SHARES, chanceOf, chanceOfClass, priorOfClass } from './number-words';
import { readReadingModel, type StatedModel } from './read-reading-model';
import { idOf, readPage, readYaml, type ContentFile, type Page } from './read-page';
import { causeSchema, checkSchema, hazardSchema, methodSchema, remedySchema, sourceSchema, symptomSchema, toolSchema, topicSchema } from './schemas';
import type { Basis, Cause, Check, Hazard, Method, Remedy, Source, Symptom, Tool, Topic } from './schemas';
import { z } from 'zod';

/** All pages as they were read, before linking: what the completeness tests and the handbook look at. */
export interface Pages {
  readonly symptoms: readonly Page<Symptom>[];
  readonly causes: readonly Page<Cause>[];
  readonly checks: readonly Page<Check>[];
  readonly methods: readonly Page<Method>[];
  readonly remedies: readonly Page<Remedy>[];
  readonly topics: readonly Page<Topic>[];
}

export interface ReadContent {
  readonly pages: Pages;
  readonly knowledge: WholeKnowledge;
}

/**
 * Reads every file of content/ into one linked knowledge base. All problems of all files come back together; a file
 * with a problem is left out of the value, so one bad page does not hide the faults of the others.
 */
export function readKnowledge(files: readonly ContentFile[]): Reading<ReadContent> {
  const problems: Problem[] = [];
  const pages: Pages = {
    symptoms: pagesOf('symptoms', symptomSchema, files, problems),
    causes: pagesOf('causes', causeSchema, files, problems),
    checks: pagesOf('checks', checkSchema, files, problems),
    methods: pagesOf('methods', methodSchema, files, problems),
    remedies: pagesOf('remedies', remedySchema, files, problems),
    topics: pagesOf('topics', topicSchema, files, problems),
  };
  const sources = sourcesOf(files, problems);
  const tools = listOf<Tool>('tools.yaml', z.record(z.string(), toolSchema), files, problems);
  const hazards = listOf<Hazard>('hazards.yaml', z.record(z.string(), hazardSchema), files, problems);
  problems.push(...sharedIds(pages));
  const knowledge = linkPages(pages, { sources, tools, hazards }, problems);
  return { value: { pages, knowledge }, problems };
}

function pagesOf<T>(folder: PageKind, schema: z.ZodType<T>, files: readonly ContentFile[], problems: Problem[]): Page<T>[] {
  const pages: Page<T>[] = [];
  for (const file of files) {
    if (!file.path.startsWith(`${folder}/`) || !file.path.endsWith('.mdx')) continue;
    const page = readPage(file, schema);
    problems.push(...page.problems);
    if (page.value) pages.push(page.value);
  }
  return pages.sort((a, b) => (a.id < b.id ? -1 : 1));
}

function sourcesOf(files: readonly ContentFile[], problems: Problem[]): Record<string, Source> {
  const sources: Record<string, Source> = {};
  for (const file of files) {
    if (!file.path.startsWith('sources/') || !file.path.endsWith('.yaml')) continue;
    const source = readYaml(file, sourceSchema);
    problems.push(...source.problems);
    if (source.value) sources[idOf(file.path)] = source.value;
  }
  return sources;
}

function listOf<T>(path: string, schema: z.ZodType<Record<string, T>>, files: readonly ContentFile[], problems: Problem[]): Record<string, T> {
  const file = files.find((candidate) => candidate.path === path);
  if (!file) {
    problems.push({ code: 'missing-file', level: 'stop', where: path, what: 'The list is missing.', next: `Put ${path} back.` });
    return {};
  }
  const list = readYaml(file, schema);
  problems.push(...list.problems);
  return list.value ?? {};
}

function sharedIds(pages: Pages): Problem[] {
  const first = new Map<string, string>();
  const problems: Problem[] = [];
  for (const kind of PAGE_KINDS) {
    for (const page of pages[kind]) {
      const other = first.get(page.id);
      if (other === undefined) first.set(page.id, page.path);
      else problems.push({ code: 'shared-id', level: 'stop', where: page.path, what: `${other} has the same id.`, next: 'Rename one of the two files; an id is used once over all kinds.' });
    }
  }
  return problems;
}

/* Linking: every relation is stated once, in either of the two files that it joins. */

type StatedLink = NonNullable<Cause['shows']>[string];
type StatedGrades = NonNullable<StatedLink['grade']>;

interface Shelves {
  readonly sources: Record<string, Source>;
  readonly tools: Record<string, Tool>;
  readonly hazards: Record<string, Hazard>;
}

function linkPages(pages: Pages, shelves: Shelves, problems: Problem[]): WholeKnowledge {
  const linker = new Linker(pages, shelves, problems);
  const shows = linker.links('causes', 'shows', 'symptoms', pages.causes, (page) => page.front.shows, pages.symptoms, (page) => page.front.shownBy);
  const yes = linker.links('causes', 'yes', 'checks', pages.causes, (page) => page.front.yes, pages.checks, (page) => page.front.yesBy);
  const cures = linker.links('causes', 'curedBy', 'remedies', pages.causes, (page) => page.front.curedBy, pages.remedies, (page) => page.front.cures);
  const reads = readingLinks(pages, linker);
  linker.references();
  return {
    symptoms: byId(pages.symptoms, (page) => knownSymptom(page, pages, shows, linker)),
    causes: byId(pages.causes, (page) => knownCause(page, { shows, yes, cures, reads })),
    checks: byId(pages.checks, (page) => knownCheck(page, pages, yes, reads, linker)),
    methods: byId(pages.methods, (page) => ({ id: page.id, ...without(page.front, 'examples') })),
    remedies: byId(pages.remedies, (page) => ({ ...without(without(page.front, 'examples'), 'keptBecause'), id: page.id, cures: cures.to(page.id) })),
    topics: byId(pages.topics, (page) => ({ id: page.id, ...page.front })),
    ...shelves,
  };
}

function byId<T, K>(pages: readonly Page<T>[], make: (page: Page<T>) => K): Record<string, K> {
  return Object.fromEntries(pages.map((page) => [page.id, make(page)]));
}

function knownSymptom(page: Page<Symptom>, pages: Pages, shows: LinkTable<CitedLink>, linker: Linker): WholeSymptom {
  const { followsFrom, ...rest } = without(page.front, 'shownBy');
  return {
    ...rest,
    id: page.id,
    leak: chanceOfClass(rest.withoutKnownCause),
    leakGrades: linker.shares(page.path, 'grades.otherwise', rest.grades?.otherwise) ?? EVEN_SHARES,
    links: shows.to(page.id),
    followsFrom: linker.oneSided('symptoms', page, followsFrom ?? {}),
    details: pages.symptoms.filter((other) => other.front.detailOf === page.id).map((other) => other.id),
  };
}

function knownCause(page: Page<Cause>, tables: { shows: LinkTable<CitedLink>; yes: LinkTable<CitedLink>; cures: LinkTable<CitedLink>; reads: LinkTable<CitedReadingLink> }): WholeCause {
  const rest = without(without(without(without(without(page.front, 'examples'), 'shows'), 'yes'), 'reads'), 'curedBy');
  return {
    ...rest,
    id: page.id,
    prior: priorOfClass(rest.howOften),
    shows: tables.shows.from(page.id), yes: tables.yes.from(page.id), reads: tables.reads.from(page.id), curedBy: tables.cures.from(page.id),
  };
}

function knownCheck(page: Page<Check>, pages: Pages, yes: LinkTable<CitedLink>, reads: LinkTable<CitedReadingLink>, linker: Linker): WholeCheck {
  const { otherwise, ...rest } = without(without(without(page.front, 'yesBy'), 'examples'), 'keptBecause');
  return {
    ...rest,
    id: page.id,
    leak: chanceOfClass(rest.yesWithoutKnownCause ?? 'uncommon'),
    yes: yes.to(page.id),
    reads: reads.to(page.id),
    otherwise: otherwise && linker.model(page, 'otherwise', otherwise, page.front),
    methods: pages.methods.filter((method) => method.front.takes === page.id).map((method) => method.id),
  };
}

/** The fields as they are stated in one file give way to the merged ones. */
function without<T extends object, K extends keyof T>(fields: T, key: K): Omit<T, K> {
  const rest = { ...fields };
  Reflect.deleteProperty(rest, key);
  return rest;
}

function readingLinks(pages: Pages, linker: Linker): LinkTable<CitedReadingLink> {
  const table = new LinkTable<CitedReadingLink>();
  const checks = new Map(pages.checks.map((page) => [page.id, page.front]));
  for (const cause of pages.causes) {
    for (const [checkId, stated] of Object.entries(cause.front.reads ?? {})) {
      const check = checks.get(checkId);
      if (!check) {
        linker.unknown(cause.path, `reads.${checkId}`, checkId, checks.keys());
        continue;
      }
      linker.basis(cause.path, `reads.${checkId}`, stated.basis);
      const model = linker.model(cause, `reads.${checkId}`, stated, check);
      if (model) table.add(cause.id, checkId, { ...model, chance: chanceOf(stated.how ?? 'always'), basis: stated.basis, statedIn: cause.path });
    }
  }
  return table;
}

/** Relations between two kinds of page, readable from both sides. */
class LinkTable<T extends { readonly statedIn: string }> {
  private readonly rows = new Map<string, Record<string, T>>();
  private readonly columns = new Map<string, Record<string, T>>();

  add(from: string, to: string, link: T): string | undefined {
    const row = this.rows.get(from) ?? {};
    const earlier = row[to];
    if (earlier) return earlier.statedIn;
    row[to] = link;
    this.rows.set(from, row);
    const column = this.columns.get(to) ?? {};
    column[from] = link;
    this.columns.set(to, column);
    return undefined;
  }

  from(id: string): Record<string, T> {
    return this.rows.get(id) ?? {};
  }

  to(id: string): Record<string, T> {
    return this.columns.get(id) ?? {};
  }
}

class Linker {
  private readonly ids: Record<PageKind, ReadonlySet<string>>;

  constructor(private readonly pages: Pages, private readonly shelves: Shelves, private readonly problems: Problem[]) {
    const idsOf = (kind: PageKind): ReadonlySet<string> => new Set(pages[kind].map((page) => page.id));
    this.ids = { symptoms: idsOf('symptoms'), causes: idsOf('causes'), checks: idsOf('checks'), methods: idsOf('methods'), remedies: idsOf('remedies'), topics: idsOf('topics') };
  }

  links<A, B>(
    fromKind: PageKind, fromField: string, toKind: PageKind,
    fromPages: readonly Page<A>[], statedFrom: (page: Page<A>) => Record<string, StatedLink> | undefined,
    toPages: readonly Page<B>[], statedTo: (page: Page<B>) => Record<string, StatedLink> | undefined,
  ): LinkTable<CitedLink> {
    const table = new LinkTable<CitedLink>();
    const add = (from: string, to: string, stated: StatedLink, path: string): void => {
      const earlier = table.add(from, to, this.link(path, `${from} and ${to}`, stated));
      if (earlier !== undefined) this.problems.push({ code: 'stated-twice', level: 'stop', where: path, what: `The relation of ${from} and ${to} is also stated in ${earlier}.`, next: 'Keep it in one of the two files.' });
    };
    for (const page of fromPages) for (const [to, stated] of Object.entries(statedFrom(page) ?? {})) {
      if (this.ids[toKind].has(to)) add(page.id, to, stated, page.path);
      else this.unknown(page.path, `${fromField}.${to}`, to, this.ids[toKind]);
    }
    for (const page of toPages) for (const [from, stated] of Object.entries(statedTo(page) ?? {})) {
      if (this.ids[fromKind].has(from)) add(from, page.id, stated, page.path);
      else this.unknown(page.path, from, from, this.ids[fromKind]);
    }
    return table;
  }

  oneSided(kind: PageKind, page: Page<unknown>, stated: Record<string, StatedLink>): Record<string, CitedLink> {
    const links: Record<string, CitedLink> = {};
    for (const [id, link] of Object.entries(stated)) {
      if (this.ids[kind].has(id)) links[id] = this.link(page.path, id, link);
      else this.unknown(page.path, `followsFrom.${id}`, id, this.ids[kind]);
    }
    return links;
  }

  model(page: Page<unknown>, field: string, stated: StatedModel, check: Check): ReturnType<typeof readReadingModel>['value'] {
    if (check.answer.kind !== 'quantity') {
      this.problems.push({ code: 'not-a-quantity', level: 'stop', where: `${page.path}, ${field}`, what: 'That check is answered with yes or no.', next: 'State the relation under "yes", or make the check ask for a quantity.' });
      return undefined;
    }
    const read = readReadingModel(stated, check.answer, `${page.path}, ${field}`);
    this.problems.push(...read.problems);
    return read.value;
  }

  basis(path: string, field: string, basis: Basis): void {
    if ('source' in basis && !(basis.source in this.shelves.sources)) this.unknown(path, `${field}.basis.source`, basis.source, Object.keys(this.shelves.sources));
  }

  unknown(path: string, field: string, id: string, known: Iterable<string>): void {
    const near = nearestName(id, known);
    this.problems.push({ code: 'unknown-id', level: 'stop', where: `${path}, ${field}`, what: `Nothing here is called "${id}".`, next: near ? `Did you mean "${near}"?` : 'Write that page first, or take the relation out.' });
  }

  /** Every other id that a page mentions must exist. */
  references(): void {
    const all = new Set(PAGE_KINDS.flatMap((kind) => [...this.ids[kind]]));
    const told = new Set([...this.ids.symptoms, ...this.ids.checks]);
    const need = (path: string, field: string, ids: readonly string[] | undefined, known: ReadonlySet<string> | Record<string, unknown>): void => {
      const set = known instanceof Set ? known : new Set(Object.keys(known));
      for (const id of ids ?? []) if (!set.has(id)) this.unknown(path, field, id, set);
    };
    for (const { path, front } of this.pages.symptoms) {
      need(path, 'detailOf', front.detailOf === undefined ? [] : [front.detailOf], this.ids.symptoms);
      need(path, 'confusedWith', front.confusedWith, all);
      need(path, 'notWith', front.notWith, told);
    }
    for (const { path, front } of this.pages.causes) {
      need(path, 'settledBy', front.settledBy, this.ids.checks);
      need(path, 'confusedWith', Object.keys(front.confusedWith ?? {}), this.ids.causes);
      need(path, 'topics', front.topics, this.ids.topics);
      for (const row of front.context ?? []) this.basis(path, 'context', row.basis);
      for (const row of front.examples) {
        need(path, 'examples', [...(row.seen ?? []), ...(row.notSeen ?? [])], this.ids.symptoms);
        need(path, 'examples', [...(row.yes ?? []), ...(row.no ?? []), ...Object.keys(row.measured ?? {})], this.ids.checks);
      }
    }
    for (const { path, front } of this.pages.checks) {
      need(path, 'topics', front.topics, this.ids.topics);
      need(path, 'measures', front.measures === undefined ? [] : [front.measures], this.ids.symptoms);
      need(path, 'notWith', front.notWith, told);
      for (const row of front.examples) need(path, 'examples', [...(row.raises ?? []), ...(row.lowers ?? []), ...(row.leaves ?? [])], this.ids.causes);
    }
    for (const { path, front } of this.pages.methods) {
      need(path, 'takes', [front.takes], this.ids.checks);
      need(path, 'needs', front.needs, this.shelves.tools);
      need(path, 'hazards', front.hazards, this.shelves.hazards);
      need(path, 'topics', front.topics, this.ids.topics);
    }
    for (const { path, front } of this.pages.remedies) {
      need(path, 'needs', front.needs, this.shelves.tools);
      need(path, 'hazards', front.hazards, this.shelves.hazards);
      need(path, 'topics', front.topics, this.ids.topics);
      need(path, 'provedBy.reading', front.provedBy.reading === undefined ? [] : [front.provedBy.reading], this.ids.checks);
      for (const row of front.examples) need(path, 'examples', row.present, this.ids.causes);
    }
    for (const { path, front } of this.pages.topics) {
      need(path, 'about', front.about, all);
      need(path, 'sideBySide', front.sideBySide, this.ids.causes);
      need(path, 'separatedBy', front.separatedBy, this.ids.checks);
      need(path, 'sources', front.sources, this.shelves.sources);
    }
  }

  /** Shares of the three grades, from the word or the figures; undefined when nothing is said. */
  shares(path: string, field: string, stated: StatedGrades | undefined): readonly number[] | undefined {
    if (stated === undefined) return undefined;
    this.basis(path, field, stated.basis);
    return 'mostly' in stated ? GRADE_SHARES[stated.mostly] : [stated.slight, stated.clear, stated.severe];
  }

  private link(path: string, field: string, stated: StatedLink): CitedLink {
    this.basis(path, field, stated.basis);
    for (const [other, basis] of Object.entries(stated.oftenerThan ?? {})) this.basis(path, `${field}, oftener than ${other}`, basis);
    const grades = this.shares(path, `${field}, grade`, stated.grade);
    return { chance: chanceOf(stated.how), said: typeof stated.how === 'number' ? String(stated.how) : stated.how.replaceAll('-', ' '), basis: stated.basis, statedIn: path, ...(grades && stated.grade ? { grades, gradesRestOn: stated.grade.basis } : {}) };
  }
}

/** True when the knowledge base may be used: no problem forbids it. */
export function usable(reading: Reading<ReadContent>): boolean {
  return reading.value !== undefined && !stops(reading.problems);
}
