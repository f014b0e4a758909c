import type { CaseFile, Round } from '@/lib/cases';
import { beliefOf } from './fan-sheet';
import { rowsAt, valueAt, type Sheet } from './sheet';

/** Options of the air path that bring a new fan, a new duct, or both. */
const BRINGS_PARTS = /^(candidate-\d+|even-fork)(\+(candidate-\d+|even-fork))?$/;

/**
 * The last round in which a new fan or duct was fitted that the sheet of the case does not describe yet; undefined where there is none.
 */
export function fittedUndescribed({ rounds, airPath }: Pick<CaseFile, 'rounds' | 'airPath'>): Round | undefined {
  const last = [...rounds].reverse().find((round) => round.fittedOn !== undefined && BRINGS_PARTS.test(round.airOption ?? ''));
  return airPath === undefined || last?.airBefore !== undefined ? undefined : last;
}

/** True where everything that an option brings stands on the sheet with its sizes; a fork that only stood in for one does not. */
export function isDescribed(option: string): boolean {
  return !option.includes('even-fork');
}

/**
 * The sheet once the parts of an option are fitted: the fan and duct on offer take the place of today's, and leave the list of offers.
 * Readings and sides of the failed part go with the old path: they do not speak of the new one.
 */
export function sheetAsFitted(sheet: Sheet, option: string): Sheet {
  const offers = rowsAt(sheet, ['candidates']);
  const fitted = new Set(option.split('+').map((part) => Number(/^candidate-(\d+)$/.exec(part)?.[1] ?? 0) - 1));
  let next: Record<string, unknown> = { ...sheet, candidates: offers.filter((_, index) => !fitted.has(index)), measured: [] };
  offers.forEach((offer, index) => {
    if (!fitted.has(index)) return;
    const [name, fan, duct, outlets, leaks] = (['name', 'fan', 'duct', 'outlets', 'leaks'] as const).map((part) => valueAt(offer, [part]));
    if (typeof fan === 'object') next = { ...without(next, 'trusted', 'reckonWithBand'), ...beliefOf(offer), fan: { name, ...fan } };
    if (duct !== undefined || outlets !== undefined) next = { ...next, duct: duct ?? {}, outlets: outlets ?? rowsAt(sheet, ['outlets']), leaks: leaks ?? [] };
  });
  const print = valueAt(sheet, ['print']);
  return typeof print === 'object' && print !== null ? { ...next, print: { ...print, sides: [] } } : next;
}

function without(sheet: Sheet, ...keys: readonly string[]): Record<string, unknown> {
  return Object.fromEntries(Object.entries(sheet).filter(([key]) => !keys.includes(key)));
}

/** The case with its sheet as fitted; the sheet as it was stays with the round, for the report. */
export function withFittedSheet(file: CaseFile, round: Pick<Round, 'number' | 'airOption'>): CaseFile {
  const { airPath } = file;
  if (airPath === undefined || round.airOption === undefined) return file;
  return {
    ...file, airPath: { ...sheetAsFitted(airPath, round.airOption) },
    rounds: file.rounds.map((each) => (each.number === round.number ? { ...each, airBefore: airPath } : each)),
  };
}

/**
 * The case with its air path as it was before the change of a round: the sheet of then, and nothing of what came after.
 */
export function beforeChangeOf(file: CaseFile, number: number): CaseFile {
  const described = file.rounds.find((round) => round.number >= number && round.airBefore !== undefined)?.airBefore ?? file.airPath;
  return {
    ...file, airPath: described,
    rounds: file.rounds.filter((round) => round.number < number),
    findings: file.findings.filter((finding) => finding.round <= number),
    observations: file.observations.filter((each) => each.round <= number),
  };
}
