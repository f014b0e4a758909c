import type { CaseFile, Casebook } from '../cases';
import type { Knowledge } from '../knowledge';
import { diagnose } from './diagnose';

/** True where a proof showed that the case is cured: only such cases teach anything. */
export function isProvenCure({ state, rounds }: Pick<CaseFile, 'state' | 'rounds'>): boolean {
  return state === 'closed' && rounds.some((round) => round.verdict === 'cured');
}

/**
 * Per cause: the chance that it was there and that a change of this case cured it, everything told counted, by the knowledge
 * base alone: what a casebook taught is not counted again. Causes below 0.02 are left out; undefined where too much was told.
 */
export function curedCauses(file: CaseFile, knowledge: Knowledge): ReadonlyMap<string, number> | undefined {
  const result = diagnose({ ...file, casebook: undefined }, knowledge, { copies: 0 });
  if (result.kind !== 'diagnosis') return undefined;
  const { causes } = result.net;
  // States: absent, fixed by the first change that cures it, by the second …, still there.
  return new Map(result.answer.states.flatMap((states, cause) => {
    const fixed = states.slice(1, -1).reduce((sum, share) => sum + share, 0);
    return fixed < 0.02 ? [] : [[causes[cause] ?? '', fixed] as const];
  }));
}

/** A proven case with what was cured in it (`curedCauses`). */
export interface TaughtCase {
  readonly file: Pick<CaseFile, 'machine'>;
  readonly cured: ReadonlyMap<string, number>;
}

/**
 * What proven cases teach a case on this machine. Cases on the same machine, by name, all count. On every other machine what was
 * most likely cured counts once, however often it came back: one machine that fails ten times is not ten machines. Undefined without a case.
 */
export function casebookOf(taught: readonly TaughtCase[], { machine }: Pick<CaseFile, 'machine'>): Casebook | undefined {
  const isHere = ({ file }: TaughtCase): boolean => machine.name !== undefined && file.machine.name === machine.name;
  const seen = new Set<string>();
  const counted = taught.filter((each) => {
    const elsewhere = `${each.file.machine.name ?? ''}\n${likeliest(each.cured)}`;
    if (isHere(each)) return true;
    if (seen.has(elsewhere)) return false;
    seen.add(elsewhere);
    return true;
  });
  if (counted.length === 0) return undefined;
  const cured: Record<string, number> = {};
  for (const each of counted) for (const [cause, share] of each.cured) cured[cause] = Number(((cured[cause] ?? 0) + share).toFixed(3));
  return { cases: counted.length, here: counted.filter(isHere).length, ...(machine.name === undefined ? {} : { machine: machine.name }), cured };
}

function likeliest(cured: ReadonlyMap<string, number>): string {
  return [...cured].reduce((best, each) => (each[1] > best[1] ? each : best), ['', 0])[0];
}
