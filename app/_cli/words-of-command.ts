import { readFileSync, statSync } from 'node:fs';
import { problemAsText, type Problem } from '@/lib/problems';

/** Largest file a command reads, in bytes. */
const LARGEST = 50_000_000;

/** What a command takes, for its help and for refusing what it does not take. */
export interface Command {
  /** How it is called, for example "npm run -s diagnose -- FILE [--json]". */
  readonly usage: string;
  /** What it gives, in a sentence. */
  readonly gives: string;
  /** Options that it knows, `--json` among them. */
  readonly options?: readonly string[];
  /** How many free words it takes at most; any number when left out. */
  readonly most?: number;
  /** The only free words that it knows; any when left out. */
  readonly among?: readonly string[];
}

/**
 * The words after a command: free words, and whether JSON is wanted. Asked for help it prints it and ends with exit
 * code 0; a word that the command does not take ends it with a Problem and exit code 2.
 */
export function wordsOfCommand(command: Command): { readonly words: readonly string[]; readonly json: boolean } {
  const given = process.argv.slice(2).filter((word) => word !== '--');
  if (asksForHelp(given)) endWithHelp(command);
  const options = given.filter((word) => word.startsWith('--'));
  const words = given.filter((word) => !word.startsWith('--'));
  const odd = [
    ...options.filter((word) => !command.options?.includes(word)).map((word) => `“${word}” is no option of this command.`),
    ...words.filter((word) => command.among !== undefined && !command.among.includes(word)).map((word) => `“${word}” is not known here.`),
    ...words.slice(command.most ?? Infinity).map((word) => (command.most === 0 ? `It takes no words; “${word}” was given.` : `“${word}” is one word too many.`)),
  ];
  if (odd.length > 0) endWith(odd.map((what) => ({ code: 'unknown-word', level: 'stop', where: 'command line', what, allowed: command.usage, next: 'Leave it out, or ask with --help what the command takes.' })));
  return { words, json: options.includes('--json') };
}

/** True when one of the words asks what the command takes. */
export function asksForHelp(words: readonly string[]): boolean {
  return words.includes('--help') || words.includes('-h');
}

/** Prints how a command is called and what it gives, and ends with exit code 0. */
export function endWithHelp({ usage, gives }: Pick<Command, 'usage' | 'gives'>): never {
  console.log(`${usage}\n${gives}`);
  process.exit(0);
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
    return endWith([{ code: 'no-such-file', level: 'stop', where: path, what: 'The file cannot be opened.', allowed: example, next: 'Check the path and the rights to read it.' }]);
  }
}

/** Prints problems on standard error and ends with exit code 2. */
export function endWith(problems: readonly Problem[]): never {
  for (const problem of problems) console.error(problemAsText(problem));
  process.exit(2);
}
