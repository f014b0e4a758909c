import { asksForHelp, endWith, endWithHelp } from '../words-of-command';

export interface SimulateOptions {
  readonly sessions: number;
  readonly seed: number;
  /** Minutes that giving up counts. */
  readonly givingUp: number;
  /** Scenarios drawn at every step. */
  readonly draws: number;
  readonly json: boolean;
}

const USAGE = 'npm run simulate -- [--sessions N] [--seed S] [--giving-up MIN] [--draws D] [--json]';

const RANGES = { '--sessions': [1, 100_000, 300], '--seed': [0, 2 ** 31, 1], '--giving-up': [1, 100_000, 600], '--draws': [50, 5000, 300] } as const;

/** The options of the command; ends it with a problem for every one that cannot be used. */
export function wordsOfSimulate(words: readonly string[]): SimulateOptions {
  if (asksForHelp(words)) endWithHelp({ usage: USAGE, gives: `Plays sessions drawn from the knowledge base and compares ways of choosing the next step. Ranges: ${Object.entries(RANGES).map(([name, [least, most, usual]]) => `${name} ${least} to ${most}, usually ${usual}`).join('; ')}.` });
  const value = (name: keyof typeof RANGES): number => {
    const [least, most, usual] = RANGES[name];
    const at = words.indexOf(name);
    if (at < 0) return usual;
    const given = Number(words[at + 1]);
    if (Number.isInteger(given) && given >= least && given <= most) return given;
    return endWith([{ code: 'option-out-of-range', level: 'stop', where: `command line, ${name}`, what: words[at + 1] === undefined ? 'No number follows it.' : `“${words[at + 1] ?? ''}” cannot be used.`, allowed: `a whole number from ${least} to ${most}`, next: `For example: npm run simulate -- ${name} ${usual}` }]);
  };
  const unknown = words.find((word, at) => word !== '--json' && word !== '--' && !(word in RANGES) && !((words[at - 1] ?? '') in RANGES));
  if (unknown !== undefined) endWith([{ code: 'unknown-option', level: 'stop', where: 'command line', what: `“${unknown}” is no option of this command.`, allowed: `${Object.keys(RANGES).join(', ')}, --json`, next: 'npm run simulate -- --sessions 300 --seed 1' }]);
  return { sessions: value('--sessions'), seed: value('--seed'), givingUp: value('--giving-up'), draws: value('--draws'), json: words.includes('--json') };
}
