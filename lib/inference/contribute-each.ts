import { contribute, contributeBack, isBit, type LevelRow } from './level-row';
import type { Place } from './plan';

interface Touch {
  readonly rows: readonly (LevelRow | undefined)[];
}

/**
 * All contributions of one cause in present state `k` (1 … K), from `source` (entries from `offset` on) to `target`.
 * Returns false, with the target untouched, when the state contributes nothing.
 */
export function contributeEach(source: Float64Array, offset: number, target: Float64Array, size: number, touches: readonly Touch[], places: readonly Place[], k: number): boolean {
  return applyEach(source, offset, target, size, touches, places, k, contribute, contributeTwoBits);
}

/** The transpose of `contributeEach`. */
export function contributeEachBack(source: Float64Array, offset: number, target: Float64Array, size: number, touches: readonly Touch[], places: readonly Place[], k: number): boolean {
  return applyEach(source, offset, target, size, touches, places, k, contributeBack, contributeTwoBitsBack);
}

type One = typeof contribute;
type Two = typeof contributeTwoBits;

/** Contributions to different digits commute, so two-level digits are taken in pairs: half the passes over the table. */
function applyEach(source: Float64Array, offset: number, target: Float64Array, size: number, touches: readonly Touch[], places: readonly Place[], k: number, one: One, two: Two): boolean {
  let from = source;
  let start = offset;
  let waitingRow: LevelRow | undefined;
  let waitingPlace: Place | undefined;
  for (let t = 0; t < touches.length; t++) {
    const row = touches[t]?.rows[k - 1];
    const place = places[t];
    if (row === undefined || place === undefined) continue;
    if (waitingRow !== undefined && waitingPlace !== undefined && isBit(place) && place.stride !== waitingPlace.stride) {
      if (place.stride > waitingPlace.stride) two(from, start, target, size, waitingPlace.stride, waitingRow, place.stride, row);
      else two(from, start, target, size, place.stride, row, waitingPlace.stride, waitingRow);
      waitingRow = undefined;
    } else if (waitingRow === undefined && isBit(place)) {
      waitingRow = row;
      waitingPlace = place;
      continue;
    } else one(from, start, target, size, place, row);
    from = target;
    start = 0;
  }
  if (waitingRow !== undefined && waitingPlace !== undefined) {
    one(from, start, target, size, waitingPlace, waitingRow);
    from = target;
  }
  return from === target;
}

/** Two contributions to two-level digits, `near` entries and `far` entries apart; near < far. */
export function contributeTwoBits(source: Float64Array, offset: number, target: Float64Array, size: number, near: number, nearRow: LevelRow, far: number, farRow: LevelRow): void {
  const [nearStay, nearRise, nearKeep] = [nearRow.at[0] ?? 0, nearRow.at[1] ?? 0, nearRow.upTo[1] ?? 0];
  const [farStay, farRise, farKeep] = [farRow.at[0] ?? 0, farRow.at[1] ?? 0, farRow.upTo[1] ?? 0];
  const quarter = size >> 2;
  for (let j = 0; j < quarter; j++) {
    const low = ((j & -near) << 1) | (j & (near - 1));
    const i = ((low & -far) << 1) | (low & (far - 1));
    const off = source[offset + i] ?? 0;
    const farOn = source[offset + i + far] ?? 0;
    const off1 = off * nearStay;
    const nearOn1 = (source[offset + i + near] ?? 0) * nearKeep + off * nearRise;
    const farOn1 = farOn * nearStay;
    const bothOn1 = (source[offset + i + near + far] ?? 0) * nearKeep + farOn * nearRise;
    target[i] = off1 * farStay;
    target[i + near] = nearOn1 * farStay;
    target[i + far] = farOn1 * farKeep + off1 * farRise;
    target[i + near + far] = bothOn1 * farKeep + nearOn1 * farRise;
  }
}

/** The transpose of `contributeTwoBits`. */
export function contributeTwoBitsBack(source: Float64Array, offset: number, target: Float64Array, size: number, near: number, nearRow: LevelRow, far: number, farRow: LevelRow): void {
  const [nearStay, nearRise, nearKeep] = [nearRow.at[0] ?? 0, nearRow.at[1] ?? 0, nearRow.upTo[1] ?? 0];
  const [farStay, farRise, farKeep] = [farRow.at[0] ?? 0, farRow.at[1] ?? 0, farRow.upTo[1] ?? 0];
  const quarter = size >> 2;
  for (let j = 0; j < quarter; j++) {
    const low = ((j & -near) << 1) | (j & (near - 1));
    const i = ((low & -far) << 1) | (low & (far - 1));
    const nearOn = source[offset + i + near] ?? 0;
    const bothOn = source[offset + i + near + far] ?? 0;
    const off1 = (source[offset + i] ?? 0) * nearStay + nearOn * nearRise;
    const nearOn1 = nearOn * nearKeep;
    const farOn1 = (source[offset + i + far] ?? 0) * nearStay + bothOn * nearRise;
    const bothOn1 = bothOn * nearKeep;
    target[i] = off1 * farStay + farOn1 * farRise;
    target[i + near] = nearOn1 * farStay + bothOn1 * farRise;
    target[i + far] = farOn1 * farKeep;
    target[i + near + far] = bothOn1 * farKeep;
  }
}
