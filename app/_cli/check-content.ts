import { readContent } from '@/content/read-content';
import { PAGE_KINDS, completenessProblems } from '@/lib/knowledge';
import { problemAsText } from '@/lib/problems';

const reading = readContent();
const problems = [...reading.problems, ...(reading.value ? completenessProblems(reading.value) : [])];
for (const problem of problems) console.error(problemAsText(problem));
const counts = PAGE_KINDS.map((kind) => `${reading.value?.pages[kind].length ?? 0} ${kind}`).join(', ');
console.log(`${counts}; ${problems.length} problems`);
process.exitCode = problems.length === 0 ? 0 : 2;
