import { readFileSync, statSync } from 'node:fs';
import { problemAsText, type Problem } from '@/lib/problems';

/** Largest file a command reads, in bytes. */
const LARGEST = 50_000_000;

/** The words after a command: free words, and whether JSON is wanted. */
export function wordsOfCommand(): { readonly words: readonly string[]; readonly json: boolean } {
  const words = process.argv.slice(2);
  return { words: words.filter((word) => word !== '--json' && word !== '--'), json: words.includes('--json') };
}

/** The text of the one file that a command is given; ends the command with a Problem when there is none to read. */
export function textOfFile(words: readonly string[], example: string): { path: string; text: string } {
  const [path] = words;
  if (path === undefined) return endWith([{ code: 'no-file', level: 'stop', where: 'command line', what: 'No file is named.', allowed: example, next: 'Name one file.' }]);
  try {
    const size = statSync(path).size;
    if (size > LARGEST) return endWith([{ code: 'too-large', level: 'stop', where: path, what: `The file has ${Math.round(size / 1e6)} MB.`, allowed: `up to ${LARGEST / 1e6} MB`, next: 'Choose the file that was exported by Leeward; it is far smaller.' }]);
    return { path, text: readFileSync(path, 'utf8') };
  } catch {
    return endWith([{ code: 'no-such-file', level: 'stop', where: path, what: 'The file cannot be opened.', next: 'Check the path and the rights to read it.' }]);
  }
}

/** Prints problems on standard error and ends with exit code 2. */
export function endWith(problems: readonly Problem[]): never {
  for (const problem of problems) console.error(problemAsText(problem));
  process.exit(2);
}
