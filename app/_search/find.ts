import { similarWords, type Similar } from './similar-words';
import { wordsOf, type Word } from './words';

/** One thing that can be found: its phrases, and how much they weigh against those of other things. */
export interface Findable {
  readonly id: string;
  readonly phrases: readonly string[];
  readonly weight?: number;
}

export interface Found {
  readonly id: string;
  /** 0 … about 3; only the order and rough size mean something. */
  readonly score: number;
  /** What of the typed words led here, as typed, in their order. */
  readonly youWrote: readonly string[];
}

export type Finder = (text: string) => Found[];

interface Phrase {
  readonly thing: number;
  readonly stems: readonly string[];
}

/** How much further phrases of the same thing add; how far a half-said phrase falls short; what one word of many is worth. Estimates, tried on half of the solved cases. */
const FURTHER_PHRASES = 0.2;
const WHOLENESS = 0.8;
const LONE_WORD = 0.7;

/**
 * Makes a finder over many things. Words are stemmed, trade synonyms joined, typing errors forgiven; a thing scores by its best phrase, by how much of that phrase was said and how telling those words are,
 * so that a long rambling sentence still finds the few words that matter in it.
 */
export function makeFinder(things: readonly Findable[]): Finder {
  const phrases: Phrase[] = things.flatMap((thing, index) => thing.phrases.map((phrase) => ({ thing: index, stems: [...new Set(wordsOf(phrase).map((word) => word.stem))] })));
  const rarity = rarityOfStems(phrases, things.length);
  const postings = new Map<string, number[]>();
  phrases.forEach((phrase, index) => { for (const stem of phrase.stems) postings.set(stem, [...(postings.get(stem) ?? []), index]); });
  const similar = similarWords([...rarity.keys()]);
  return (text) => {
    const typed = wordsOf(text.slice(0, 2000));
    const heard = heardStems(typed, rarity, similar);
    if (heard.size === 0) return [];
    const touched = new Set([...heard.keys()].flatMap((stem) => postings.get(stem) ?? []));
    const best = new Map<number, { score: number; stems: Set<string> }>();
    for (const index of touched) {
      const phrase = phrases[index];
      if (!phrase) continue;
      const score = scoreOf(phrase, heard, rarity) * (things[phrase.thing]?.weight ?? 1);
      const earlier = best.get(phrase.thing) ?? { score: 0, stems: new Set<string>() };
      for (const stem of phrase.stems) if (heard.has(stem)) earlier.stems.add(stem);
      // Further phrases of the same thing that also fit add a little.
      best.set(phrase.thing, { score: Math.max(earlier.score, score) + FURTHER_PHRASES * Math.min(earlier.score, score), stems: earlier.stems });
    }
    return [...best]
      .map(([thing, { score, stems }]): Found => ({ id: things[thing]?.id ?? '', score, youWrote: wordsThat(typed, stems, heard) }))
      .sort((a, b) => b.score - a.score || (a.id < b.id ? -1 : 1));
  };
}

/** Telling words weigh more: natural log of how few things say them. */
function rarityOfStems(phrases: readonly Phrase[], things: number): Map<string, number> {
  const sayers = new Map<string, Set<number>>();
  for (const phrase of phrases) for (const stem of phrase.stems) sayers.set(stem, (sayers.get(stem) ?? new Set()).add(phrase.thing));
  return new Map([...sayers].map(([stem, who]) => [stem, Math.log(1 + things / who.size)]));
}

interface Heard {
  readonly certainty: number;
  readonly words: readonly Word[];
}

function heardStems(typed: readonly Word[], rarity: ReadonlyMap<string, number>, similar: (stem: string) => readonly Similar[]): Map<string, Heard> {
  const heard = new Map<string, Heard>();
  const hear = (stem: string, certainty: number, word: Word): void => {
    const earlier = heard.get(stem);
    heard.set(stem, { certainty: Math.max(certainty, earlier?.certainty ?? 0), words: [...(earlier?.words ?? []), word] });
  };
  for (const word of typed) {
    if (rarity.has(word.stem)) hear(word.stem, 1, word);
    else for (const { stem, certainty } of similar(word.stem)) hear(stem, certainty, word);
  }
  return heard;
}

function scoreOf(phrase: Phrase, heard: ReadonlyMap<string, Heard>, rarity: ReadonlyMap<string, number>): number {
  let said = 0;
  let whole = 0;
  let matched = 0;
  for (const stem of phrase.stems) {
    const weight = rarity.get(stem) ?? 0;
    const certainty = heard.get(stem)?.certainty ?? 0;
    whole += weight;
    said += weight * certainty;
    if (certainty > 0) matched += 1;
  }
  if (whole === 0) return 0;
  // Share of the phrase that was said, times how telling it is; one lone common word is not worth much.
  return (said / whole) ** WHOLENESS * Math.log(1 + said) * (matched === 1 && phrase.stems.length > 2 ? LONE_WORD : 1);
}

function wordsThat(typed: readonly Word[], stems: ReadonlySet<string>, heard: ReadonlyMap<string, Heard>): string[] {
  const telling = new Set([...stems].flatMap((stem) => heard.get(stem)?.words.map((word) => word.start) ?? []));
  return typed.filter((word) => telling.has(word.start)).map((word) => word.typed);
}
