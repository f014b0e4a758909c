import type { Knowledge } from '@/lib/knowledge';
import { understander } from '@/app/_search/understand';
import { quantile } from './bootstrap';
import type { SolvedCase } from './read-solved-cases';

/** How well a person's own words led to what was later noted as seen. */
export interface WordScore {
  readonly id: string;
  readonly words: string;
  readonly seen: readonly string[];
  /** Place of the best placed seen symptom among what was understood; Infinity when none was found. */
  readonly rank: number;
  readonly firstFive: readonly string[];
  readonly ms: number;
}

/** Runs the words of every case that has words and something seen, each in one call on a warm index. */
export function scoreWords(cases: readonly SolvedCase[], knowledge: Knowledge): WordScore[] {
  const understand = understander(knowledge);
  const usable = cases.map(({ id, file }) => ({ id, words: file.words, seen: file.observations.filter((each) => each.state === 'seen').map((each) => each.symptom) })).filter(({ words, seen }) => words.trim() !== '' && seen.length > 0);
  for (const { words } of usable.slice(0, 20)) understand(words);
  return usable.map(({ id, words, seen }) => {
    const start = performance.now();
    const found = understand(words).map((row) => row.id);
    const ms = performance.now() - start;
    const place = found.findIndex((symptom) => seen.includes(symptom));
    return { id, words, seen, rank: place === -1 ? Infinity : place + 1, firstFive: found.slice(0, 5), ms };
  });
}

/** Time per call below which 95 % of the calls stayed, ms. */
export function slowCall(scores: readonly WordScore[]): number {
  return quantile(scores.map((score) => score.ms).sort((a, b) => a - b), 0.95);
}
