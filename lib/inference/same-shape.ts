import type { LevelRow } from './level-row';
import type { Model } from './model';

/** True when the steps planned for one model fit the other: the same digits, causes and tables, whatever their numbers. */
export function sameShape(a: Model, b: Model): boolean {
  return (
    a.firstState.length === b.firstState.length &&
    a.firstState.every((first, i) => first === b.firstState[i]) &&
    pairwise(a.digits, b.digits, (x, y) => x.gate === y.gate && x.radix === y.radix && x.inhibitors.length === y.inhibitors.length && pairwise(x.feeds, y.feeds, (f, g) => f.into === g.into)) &&
    pairwise(a.digits, b.digits, (x, y) => pairwise(x.inhibitors, y.inhibitors, (i, j) => i.cause === j.cause)) &&
    pairwise(a.swept, b.swept, (x, y) => x.cause === y.cause && x.kept === y.kept && pairwise(x.touches, y.touches, (t, u) => t.digit === u.digit && sameRows(t.rows, u.rows))) &&
    pairwise(a.joints, b.joints, (x, y) => pairwise(x.causes, y.causes, (i, j) => i === j))
  );
}

function sameRows(a: readonly (LevelRow | undefined)[], b: readonly (LevelRow | undefined)[]): boolean {
  return pairwise(a, b, (x, y) => (x === undefined) === (y === undefined));
}

function pairwise<T>(a: readonly T[], b: readonly T[], same: (x: T, y: T) => boolean): boolean {
  return a.length === b.length && a.every((x, i) => i in b && same(x, b[i] as T));
}
