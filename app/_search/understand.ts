import { BRANCH_TITLES, type Knowledge, type WholeKnowledge } from '@/lib/knowledge';
import { makeFinder, type Finder, type Found } from './find';

/** How much a suspected cause counts towards the symptoms that it would show, and from which chance on it leads there. */
const SUSPICION = 0.8;
const SHOWS_AT_LEAST = 0.5;
/** How much a detail counts by itself, and how much of its score goes to what it is a detail of. */
const DETAIL = 0.85;
const WHOLE_OF_DETAIL = 0.8;
/** How much of its own score a symptom keeps when something else raises it. */
const OWN_SHARE = 0.2;

/**
 * From what somebody typed to the symptoms they may mean, best first. A suspected cause ("is my belt loose?") leads to
 * the symptoms that it would show, a detail ("shifted to the left") also to what it is a detail of.
 */
export function understander(knowledge: Knowledge): Finder {
  const all = Object.values(knowledge.symptoms);
  const symptoms = makeFinder(all.map((symptom) => ({ id: symptom.id, phrases: [symptom.title, ...symptom.says], weight: symptom.detailOf === undefined ? 1 : DETAIL })));
  const causes = makeFinder(Object.values(knowledge.causes).map((cause) => ({ id: cause.id, phrases: [cause.title, ...(cause.says ?? [])] })));
  return (text) => {
    const found = new Map(symptoms(text).map((row) => [row.id, row]));
    const raise = (id: string, gained: number, youWrote: readonly string[]): void => {
      const earlier: Found = found.get(id) ?? { id, score: 0, youWrote };
      if (gained > earlier.score) found.set(id, { ...earlier, score: gained + OWN_SHARE * earlier.score });
    };
    for (const suspicion of causes(text).slice(0, 3)) {
      for (const symptom of all) {
        const link = symptom.links[suspicion.id];
        if (link && link.chance >= SHOWS_AT_LEAST) raise(symptom.id, SUSPICION * suspicion.score * link.chance, suspicion.youWrote);
      }
    }
    for (const symptom of all) {
      const detail = found.get(symptom.id);
      if (detail && symptom.detailOf !== undefined) raise(symptom.detailOf, WHOLE_OF_DETAIL * detail.score, detail.youWrote);
    }
    return [...found.values()].sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
  };
}

/** How much more a check or a way of measuring counts for somebody who asks how to measure something. */
const ASKED_HOW = 1.6;

/** Everything that can be looked up in the handbook, by any of its words. */
export function handbookFinder(knowledge: WholeKnowledge): Finder {
  const find = finderOfPages(knowledge);
  return (text) => {
    const found = find(text);
    if (!/\b(?:measur|test|check)/i.test(text)) return found;
    return found.map((row) => (row.id in knowledge.checks || row.id in knowledge.methods ? { ...row, score: row.score * ASKED_HOW } : row)).sort((a, b) => b.score - a.score);
  };
}

function finderOfPages(knowledge: WholeKnowledge): Finder {
  return makeFinder([
    ...Object.values(knowledge.symptoms).map((page) => ({ id: page.id, phrases: [page.title, ...page.says] })),
    ...Object.values(knowledge.causes).map((page) => ({ id: page.id, phrases: [page.title, ...(page.says ?? [])], weight: 1.05 })),
    ...Object.values(knowledge.checks).map((page) => ({ id: page.id, phrases: [page.asks, ...(page.says ?? [])] })),
    ...Object.values(knowledge.methods).map((page) => ({ id: page.id, phrases: [page.title, page.short, ...(page.says ?? [])] })),
    ...Object.values(knowledge.remedies).map((page) => ({ id: page.id, phrases: [page.does, ...(page.says ?? [])] })),
    ...Object.values(knowledge.topics).map((page) => ({ id: page.id, phrases: [page.title, page.inShort, ...(page.says ?? [])], weight: 1.05 })),
  ]);
}

/** The ways of measuring, by their own words, by those of the check that they take, its part of the machine, and the tools that they need. */
export function benchFinder({ methods, checks, tools }: WholeKnowledge): Finder {
  return makeFinder(Object.values(methods).map(({ id, title, short, says = [], takes, needs }) => {
    const check = checks[takes];
    return { id, phrases: [title, short, ...says, ...(check ? [check.asks, BRANCH_TITLES[check.part], ...(check.says ?? [])] : []), ...needs.map((tool) => tools[tool]?.title ?? tool)] };
  }));
}
