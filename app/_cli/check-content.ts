import { readContent } from '@/content/read-content';
import { PAGE_KINDS, completenessProblems } from '@/lib/knowledge';
import { problemAsText, type Problem } from '@/lib/problems';
import { certainFigures, pairsOfCauses, unseparatedProblems } from '@/lib/review';
import { wordsOfCommand } from './words-of-command';

wordsOfCommand({ usage: 'npm run -s check:content', gives: 'Checks every page of content/ and prints each fault with file, line and next step, and the counts.', most: 0 });
const reading = readContent();
const problems = [
  ...reading.problems,
  ...(reading.value ? [...completenessProblems(reading.value), ...unseparatedProblems(pairsOfCauses(reading.value.knowledge)), ...certainProblems(certainFigures(reading.value.knowledge))] : []),
];
for (const problem of problems) console.error(problemAsText(problem));
const counts = PAGE_KINDS.map((kind) => `${reading.value?.pages[kind].length ?? 0} ${kind}`).join(', ');
console.log(`${counts}; ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 2;

function certainProblems(figures: readonly string[]): Problem[] {
  return figures.map((figure) => ({ code: 'certain-figure', level: 'stop', where: 'content', what: `A chance is 0 or 1: ${figure}.`, next: 'Say it in one of the words, or as a figure between 0.002 and 0.998.' }));
}
