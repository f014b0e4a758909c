import { join } from 'node:path';
import { understander } from '@/app/_search/understand';
import { contentFiles, readContent } from '@/content/read-content';
import { diagnose, evidenceOf, nextChecks, rankRemedies } from '@/lib/diagnosis';
import { readKnowledge, type Knowledge } from '@/lib/knowledge';
import { CASE_TO_TIME } from './case-to-time';
import { timed, type BenchRow } from './timed';

/** One frame at 60 per second is 16 ms; a phone is taken as four times slower than this machine. */
const FRAME_ON_A_SLOW_PHONE = 16 / 4;

/** Times of what a person waits for on the case page and the start page, with the real knowledge base. */
export function diagnosisBench(): BenchRow[] {
  const knowledge = knowledgeBase();
  const items = evidenceOf(CASE_TO_TIME, knowledge).items;
  if (items.length !== 12) throw new Error(`diagnosis bench: got ${items.length} usable findings, expected 8 symptoms and 4 measurements`);
  const ranking = timed('diagnose, 8 symptoms and 4 measurements: ranking only', FRAME_ON_A_SLOW_PHONE, () => diagnose(CASE_TO_TIME, knowledge, { copies: 0 }));
  const bands = timed('the same with bands from 100 shaken copies', Infinity, () => diagnose(CASE_TO_TIME, knowledge), { warmUp: 5, runs: 31 });
  const whole = timed('the same, whole answer: bands, next checks, remedies', Infinity, () => wholeAnswer(knowledge), { warmUp: 3, runs: 21 });
  return [ranking, bands, whole, understanding(knowledge), loading()];
}

function wholeAnswer(knowledge: Knowledge): unknown {
  const result = diagnose(CASE_TO_TIME, knowledge);
  return result.kind === 'diagnosis' ? [nextChecks(result, knowledge), rankRemedies(result, knowledge)] : [];
}

/** As typed: one call for every key, over a whole sentence. */
function understanding(knowledge: Knowledge): BenchRow {
  const understand = understander(knowledge);
  const { words } = CASE_TO_TIME;
  return timed(`understand, per key press over ${words.length} keys`, Infinity, (turn) => understand(words.slice(0, 1 + (turn % words.length))), { warmUp: words.length, runs: 5 * words.length, note: 'p95 target 8 ms' });
}

function loading(): BenchRow {
  const folder = join(process.cwd(), 'content');
  return timed('load content: read, check and link all pages', Infinity, () => readKnowledge(contentFiles(folder)), { warmUp: 1, runs: 5 });
}

function knowledgeBase(): Knowledge {
  const content = readContent();
  if (!content.value) throw new Error('diagnosis bench: the content does not read; npm run check:content says why');
  return content.value.knowledge;
}
