import type { Knowledge } from '@/lib/knowledge';
import { makeFinder, type Finder, type Found } from './find';

/** How much a suspected cause counts towards the symptoms that it would show. */
const SUSPICION = 0.55;

/**
 * From what somebody typed to the symptoms they may mean, best first. A suspected cause ("is my belt loose?") leads to
 * the symptoms that it would show.
 */
export function understander(knowledge: Knowledge): Finder {
  const symptoms = makeFinder(Object.values(knowledge.symptoms).map((symptom) => ({ id: symptom.id, phrases: [symptom.title, ...symptom.says], weight: symptom.detailOf === undefined ? 1 : 0.85 })));
  const causes = makeFinder(Object.values(knowledge.causes).map((cause) => ({ id: cause.id, phrases: [cause.title, ...(cause.says ?? [])] })));
  return (text) => {
    const found = new Map(symptoms(text).map((row) => [row.id, row]));
    for (const suspicion of causes(text).slice(0, 3)) {
      for (const symptom of Object.values(knowledge.symptoms)) {
        const link = symptom.links[suspicion.id];
        if (!link || link.chance < 0.5) continue;
        const gained = SUSPICION * suspicion.score * link.chance;
        const earlier: Found = found.get(symptom.id) ?? { id: symptom.id, score: 0, youWrote: suspicion.youWrote };
        if (gained > earlier.score) found.set(symptom.id, { ...earlier, score: gained + 0.2 * earlier.score });
      }
    }
    return [...found.values()].sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
  };
}

/** Everything that can be looked up in the handbook, by any of its words. */
export function handbookFinder(knowledge: Knowledge): Finder {
  return makeFinder([
    ...Object.values(knowledge.symptoms).map((page) => ({ id: page.id, phrases: [page.title, ...page.says] })),
    ...Object.values(knowledge.causes).map((page) => ({ id: page.id, phrases: [page.title, ...(page.says ?? [])], weight: 1.05 })),
    ...Object.values(knowledge.checks).map((page) => ({ id: page.id, phrases: [page.asks, ...(page.says ?? [])] })),
    ...Object.values(knowledge.methods).map((page) => ({ id: page.id, phrases: [page.title, page.short, ...(page.says ?? [])] })),
    ...Object.values(knowledge.remedies).map((page) => ({ id: page.id, phrases: [page.does, ...(page.says ?? [])] })),
    ...Object.values(knowledge.topics).map((page) => ({ id: page.id, phrases: [page.title, page.inShort, ...(page.says ?? [])], weight: 1.05 })),
  ]);
}
