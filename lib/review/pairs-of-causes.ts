import { STRAY, cheapestMethod, expectedBelow, ownMinutesOfMethod, type ExpectedReading } from '../diagnosis';
import { chanceOfClass, type Knowledge, type KnownCheck, type ReadingModel } from '../knowledge';
import type { Problem } from '../problems';

/** What one check does to the doubt between two causes. */
export interface Separation {
  readonly check: string;
  /** Part of the one bit of doubt between two equally likely causes that its answer settles on average. */
  readonly bits: number;
  /** Minutes of the person alone, by the method that takes fewest. */
  readonly minutes: number;
}

export interface PairOfCauses {
  readonly causes: readonly [string, string];
  /** The check that settles most; none when every check comes out alike for both. */
  readonly best: Separation | undefined;
  /** The check that settles most per minute of one's own. */
  readonly first: Separation | undefined;
  /** Of the checks that separate the two, the one with fewest minutes of one's own. */
  readonly quickest: Separation | undefined;
}

/**
 * A check separates two causes when its answer settles at least this much of the doubt between them, in bits. At 0.2 a
 * yes-no check that says yes for one cause in 60 of 100 cases must say it for the other in 11 at most. Choice; the reference
 * sheet asks for ten times less.
 */
export const SEPARATES = 0.2;

/**
 * Every pair of causes with the checks that tell the two apart, one of them at work and nothing else, everything that the
 * check's own errors blur taken into account. The measure is the mutual information of answer and cause (Jensen–Shannon
 * divergence of the two distributions of the answer): 1 for a check that never fails, 0 for one that comes out alike.
 * Worked: yes in 75 % for one and 3 % for the other, no errors of its own: 0.462 bits.
 */
export function pairsOfCauses(knowledge: Knowledge): PairOfCauses[] {
  const ids = Object.keys(knowledge.causes);
  const checks = new Map(Object.values(knowledge.checks).map((check) => [check.id, outcomesByCause(check, knowledge)]));
  return ids.flatMap((a, index) => ids.slice(index + 1).map((b) => pairOf(a, b, checks, knowledge)));
}

/** Pairs that no check separates, as problems of the page of the first cause. */
export function unseparatedProblems(pairs: readonly PairOfCauses[]): Problem[] {
  return pairs.filter(({ quickest }) => quickest === undefined).map(({ causes: [a, b], best }) => ({
    code: 'not-separated', level: 'stop', where: `causes/${a}.mdx`,
    what: `No check tells it apart from ${b}${best === undefined ? '' : `; the best, ${best.check}, settles ${best.bits.toFixed(2)} of a bit`}.`,
    allowed: `${SEPARATES} of a bit or more by some check`, next: 'Give one of the two a check that comes out differently, or make one page of them.',
  }));
}

/** How a check comes out for each cause. */
interface CheckOutcomes {
  readonly minutes: number;
  /** Bits that its answer settles between these two causes. */
  readonly between: (a: string, b: string) => number;
}

function pairOf(a: string, b: string, checks: ReadonlyMap<string, CheckOutcomes | undefined>, { causes }: Knowledge): PairOfCauses {
  const heard = new Set([a, b].flatMap((id) => [...Object.keys(causes[id]?.yes ?? {}), ...Object.keys(causes[id]?.reads ?? {})]));
  const separations = [...heard].flatMap((check): Separation[] => {
    const outcomes = checks.get(check);
    return outcomes ? [{ check, bits: outcomes.between(a, b), minutes: outcomes.minutes }] : [];
  });
  return {
    causes: [a, b],
    best: most(separations, (each) => each.bits),
    first: most(separations.filter((each) => each.bits > 0), (each) => each.bits / each.minutes),
    quickest: most(separations.filter((each) => each.bits >= SEPARATES), (each) => -each.minutes),
  };
}

function most(list: readonly Separation[], worth: (each: Separation) => number): Separation | undefined {
  return list.reduce<Separation | undefined>((best, each) => (best === undefined || worth(each) > worth(best) ? each : best), undefined);
}

/** Undefined for a check that nobody can take: it separates nothing. */
function outcomesByCause(check: KnownCheck, knowledge: Knowledge): CheckOutcomes | undefined {
  const method = cheapestMethod(check, knowledge)?.method;
  if (!method) return undefined;
  const { given, otherwise } = check.answer.kind === 'yes-no' ? yesNoOutcomes(check, chanceOfClass(method.misleads ?? 'uncommon')) : readingOutcomes(check);
  const toOtherwise = new Map([...given].map(([id, outcomes]) => [id, divergence(outcomes, otherwise)]));
  return {
    minutes: ownMinutesOfMethod(method),
    between: (a, b) => {
      const [one, other] = [given.get(a), given.get(b)];
      if (one && other) return divergence(one, other);
      return toOtherwise.get(one ? a : b) ?? 0;
    },
  };
}

/** Chance of every outcome with one cause at work, and with none that the check hears of. */
interface Outcomes {
  readonly given: ReadonlyMap<string, readonly number[]>;
  readonly otherwise: readonly number[];
}

function yesNoOutcomes(check: KnownCheck, misled: number): Outcomes {
  const outcomes = (chance: number): number[] => {
    const no = (1 - check.leak) * (1 - chance);
    return [no * (1 - misled) + (1 - no) * misled, no * misled + (1 - no) * (1 - misled)];
  };
  return { given: new Map(Object.entries(check.yes).map(([id, link]) => [id, outcomes(link.chance)])), otherwise: outcomes(0) };
}

/** Parts into which readings are cut, and how many standard deviations of the outermost models they reach. */
const PARTS = 64;
const REACH = 4;

function readingOutcomes(check: KnownCheck): Outcomes {
  const healthy = check.otherwise;
  if (!healthy) return { given: new Map(), otherwise: [1] };
  const edges = edgesOf([healthy, ...Object.values(check.reads)]);
  const outcomes = (expected: ExpectedReading): number[] => {
    const below = [0, ...edges.map((edge) => expectedBelow(edge, expected)), 1];
    return below.slice(1).map((each, part) => (1 - STRAY) * (each - (below[part] ?? 0)) + STRAY / (edges.length + 1));
  };
  return {
    given: new Map(Object.entries(check.reads).map(([id, read]) => [id, outcomes({ models: [healthy, read], shares: [1 - read.chance, read.chance] })])),
    otherwise: outcomes({ models: [healthy], shares: [1] }),
  };
}

/** Even steps of the reading, or of its logarithm when every model is one of factors. */
function edgesOf(models: readonly ReadingModel[]): number[] {
  const isFactor = models.every((model) => model.shape === 'log-normal');
  const middle = (model: ReadingModel): number => (isFactor ? Math.log(model.median) : model.median);
  const spread = (model: ReadingModel): number => (isFactor || model.shape === 'normal' ? model.spread : model.median * model.spread);
  const low = Math.min(...models.map((model) => middle(model) - REACH * spread(model)));
  const high = Math.max(...models.map((model) => middle(model) + REACH * spread(model)));
  return Array.from({ length: PARTS - 1 }, (_, part) => low + ((high - low) * (part + 1)) / PARTS).map((edge) => (isFactor ? Math.exp(edge) : edge));
}

/** Jensen–Shannon divergence in bits. */
function divergence(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, p, outcome) => {
    const q = b[outcome] ?? 0;
    const mean = (p + q) / 2;
    return sum + (p > 0 ? (p / 2) * Math.log2(p / mean) : 0) + (q > 0 ? (q / 2) * Math.log2(q / mean) : 0);
  }, 0);
}
