import { chanceOfClass, comparesByDifference, isRatio, type Knowledge, type KnownCheck, type KnownMethod, type ReadingModel } from '../knowledge';
import { findUnit, fromUnit, spanFromUnit } from '../units';
import { cheapestMethod, ownMinutesOfMethod } from './cheapest-method';
import { expectedBelow } from './check-outcomes';
import { levelsByItself, orderedModels, sameModel } from './reading-levels';
import { STRAY } from './reading-likelihood';

/** One answer that a check may give: yes or no, or a reading in a range whose meaning its page has fixed beforehand. */
export type CheckAnswer =
  | { readonly kind: 'yes' | 'no'; readonly says: string }
  | { readonly kind: 'range'; readonly says: string; /** Bounds as on the page: shown unit, or ratio. */ readonly from?: number; readonly below?: number };

/** A check that can be taken, by its cheapest method. */
export interface OpenCheck {
  readonly id: string;
  readonly method: string;
  /** Minutes of the person alone: hands, and a quarter of what only waits. */
  readonly minutes: number;
  /** True when it needs a tool that is not at hand. */
  readonly isLacking: boolean;
  readonly answers: readonly CheckAnswer[];
  /** Causes that it hears of, by number. */
  readonly hears: ReadonlySet<number>;
  /** Chance of every answer when exactly these causes are there; sums to 1. */
  readonly chances: (present: readonly number[]) => readonly number[];
  /** The same once the symptom that it measures was seen; undefined for a check that measures none. */
  readonly whenSeen?: { readonly symptom: string; readonly chances: (present: readonly number[]) => readonly number[] };
}

/**
 * Every check of the knowledge base, with the chance of each of its answers for any set of causes. `causes` are ids in
 * the order in which they are numbered.
 */
export function openChecks(knowledge: Knowledge, causes: readonly string[], lacksTools: readonly string[] = []): OpenCheck[] {
  const index = new Map(causes.map((id, number) => [id, number]));
  return Object.values(knowledge.checks).flatMap((check): OpenCheck[] => {
    const way = cheapestMethod(check, knowledge, lacksTools);
    const asked = way === undefined ? undefined : check.answer.kind === 'yes-no' ? yesNo(check, way.method, index) : reading(check, index);
    if (way === undefined || asked === undefined) return [];
    return [{ id: check.id, method: way.method.id, minutes: ownMinutesOfMethod(way.method), isLacking: way.lacks.length > 0, ...asked }];
  });
}

type Asked = Pick<OpenCheck, 'answers' | 'hears' | 'chances' | 'whenSeen'>;

function yesNo(check: KnownCheck, method: KnownMethod, index: ReadonlyMap<string, number>): Asked | undefined {
  if (check.answer.kind !== 'yes-no') return undefined;
  const misled = chanceOfClass(method.misleads ?? 'uncommon');
  const silent = new Map(Object.entries(check.yes).flatMap(([id, link]) => { const cause = index.get(id); return cause === undefined ? [] : [[cause, 1 - link.chance] as const]; }));
  return {
    answers: [{ kind: 'yes', says: check.answer.yesMeans }, { kind: 'no', says: check.answer.noMeans }],
    hears: new Set(silent.keys()),
    chances: (present) => {
      let none = 1 - check.leak;
      for (const cause of present) none *= silent.get(cause) ?? 1;
      const yes = (1 - none) * (1 - misled) + none * misled;
      return [yes, 1 - yes];
    },
  };
}

function reading(check: KnownCheck, index: ReadonlyMap<string, number>): Asked | undefined {
  const { answer, otherwise } = check;
  if (answer.kind !== 'quantity' || otherwise === undefined || Object.keys(check.reads).length === 0) return undefined;
  const models = [otherwise, ...orderedModels(otherwise, Object.values(check.reads))];
  const edges = answer.means.flatMap(({ below }) => (below === undefined ? [] : [below]));
  const ranges = models.map((model) => sharesOfRanges(model, edges.map((edge) => asModelled(edge, answer))));
  const moves = new Map(Object.entries(check.reads).flatMap(([id, read]) => {
    const cause = index.get(id);
    return cause === undefined ? [] : [[cause, { level: models.findIndex((model, level) => level > 0 && sameModel(model, read)), still: 1 - read.chance }] as const];
  }));
  const chancesBeside = (byItself: readonly number[]) => {
    const upTo = byItself.map((_, level) => byItself.slice(0, level + 1).reduce((sum, share) => sum + share, 0));
    return (present: readonly number[]): readonly number[] => {
      const moved = present.flatMap((cause) => moves.get(cause) ?? []);
      const atMost = (level: number): number => moved.reduce((product, move) => (move.level > level ? product * move.still : product), upTo[level] ?? 1);
      return answer.means.map((_, zone) => models.reduce((sum, __, level) => sum + (ranges[level]?.[zone] ?? 0) * (atMost(level) - (level === 0 ? 0 : atMost(level - 1))), 0));
    };
  };
  return {
    answers: answer.means.map((zone, number): CheckAnswer => ({ kind: 'range', says: zone.says, ...(number === 0 ? {} : { from: edges[number - 1] ?? 0 }), ...(zone.below === undefined ? {} : { below: zone.below }) })),
    hears: new Set(moves.keys()),
    chances: chancesBeside(levelsByItself(models.length, false)),
    ...(check.measures === undefined ? {} : { whenSeen: { symptom: check.measures, chances: chancesBeside(levelsByItself(models.length, true)) } }),
  };
}

/** Chance that a reading from this model falls into each range between the edges, stray readings spread evenly. */
function sharesOfRanges(model: ReadingModel, edges: readonly number[]): number[] {
  const below = [...edges.map((edge) => expectedBelow(edge, { models: [model], shares: [1] })), 1];
  return below.map((share, range) => (1 - STRAY) * (share - (range === 0 ? 0 : (below[range - 1] ?? 0))) + STRAY / below.length);
}

/** A bound as the page states it (shown unit, or ratio) in the numbers of the models: SI, or ratio. */
function asModelled(bound: number, answer: Extract<KnownCheck['answer'], { kind: 'quantity' }>): number {
  const unit = findUnit(answer.shownIn, answer.quantity);
  if (isRatio(answer) || unit === undefined) return bound;
  return comparesByDifference(answer) ? spanFromUnit(bound, unit) : fromUnit(bound, unit);
}
