import type { StoredMeasured } from '@/lib/cases';
import { directions, type Direction, type DirectionReading } from '../../_charts';

/** One place of a proof: its reading before the change and, once taken, after it; both in one unit. */
export interface BeforeAfterRow {
  readonly place: string;
  readonly before: StoredMeasured;
  readonly after: StoredMeasured | undefined;
}

/** The limit that was fixed before, and the side of it on which a reading is good. */
export interface FixedLimit {
  readonly limit: StoredMeasured | undefined;
  readonly good: 'at-most' | 'at-least' | undefined;
}

/** Whether a reading lies on the bad side of the limit; without a limit none does. */
export function isBeyond(reading: StoredMeasured, { limit, good }: FixedLimit): boolean {
  if (!limit) return false;
  return good === 'at-least' ? reading.value < limit.value : reading.value > limit.value;
}

/** Writes every figure of a table with the decimals that its ± allows: 1.1 beside ± 0.08 is "1.10". */
export function figuresOf(rows: readonly BeforeAfterRow[]): (value: number) => string {
  const decimals = Math.max(0, ...rows.flatMap((row) => [row.before, ...(row.after ? [row.after] : [])]).map((reading) => decimalsOf(reading)));
  return (value) => value.toFixed(Math.min(decimals, 6)).replace('-', '−');
}

/** The rows as eight directions, back first, when there is a reading in each of them and the limit is a highest value. */
export function asDirections(rows: readonly BeforeAfterRow[], { limit, good }: FixedLimit): { readonly before: readonly DirectionReading[]; readonly after: readonly DirectionReading[] | undefined; readonly limit: number } | undefined {
  if (!limit || good === 'at-least') return undefined;
  const placed = directions.flatMap((direction) => rows.filter((row) => row.place === direction).slice(0, 1).map((row) => ({ direction, row })));
  if (placed.length < directions.length) return undefined;
  const after = placed.flatMap(({ direction, row }) => (row.after ? [inDirection(direction, row.after)] : []));
  return { before: placed.map(({ direction, row }) => inDirection(direction, row.before)), after: after.length === placed.length ? after : undefined, limit: limit.value };
}

function inDirection(direction: Direction, { value, plusMinus }: StoredMeasured): DirectionReading {
  return { direction, value, low: Math.max(0, value - plusMinus), high: value + plusMinus };
}

/** Two figures of a ± that begins with 1, 2 or 3, else one; a reading without ± keeps the decimals it was typed with. */
function decimalsOf({ value, plusMinus }: StoredMeasured): number {
  if (!(plusMinus > 0)) return (String(value).split('.')[1] ?? '').length;
  const power = Math.floor(Math.log10(plusMinus) + 1e-9);
  return Math.max(0, (plusMinus / 10 ** power < 4 ? 1 : 0) - power);
}
