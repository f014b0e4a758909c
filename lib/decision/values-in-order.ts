/** Boxes that values are counted into, and lists that are short enough to be sorted instead. */
const BOXES = 512;
const SHORT = 48;
/** Values that tell where the boxes of a long list go; at most `SHORT`, so that a list that is not short has a step of 1 or more. */
const LOOKED_AT = 40;

/** Counting is done in the same memory every time; nothing in it outlives a call. */
const held = new Int32Array(BOXES);
let boxOf = new Uint16Array(2048);

/**
 * The values that would stand at some places (0 to count - 1, ascending) if all were sorted, without sorting: they are counted
 * into even boxes, and only the boxes that hold a wanted place are looked at more closely. The list itself is left as it is.
 * Worked: 5, 3, 9, 1 at places 0 and 3 gives 1 and 9.
 */
export function valuesInOrder(values: Float64Array, places: readonly number[]): number[] {
  const found: number[] = [];
  const edges = values.length <= SHORT ? undefined : usefulEdges(values);
  if (edges === undefined) {
    const sorted = sortedCopy(values);
    for (const place of places) found.push(sorted[place] ?? Number.NaN);
    return found;
  }
  fillBoxes(values, edges.lowest, edges.highest, boxesFor(values.length), held);
  const wanted = wantedBoxes(places, values.length);
  sortIn(values, wanted);
  for (const box of wanted) found.push(...valuesInOrder(box.values, box.places));
  return found;
}

/** Edges of some values of a long list, or of all where these are alike; undefined where all are. What lies beyond goes into the outer boxes. */
function usefulEdges(values: Float64Array): { lowest: number; highest: number } | undefined {
  const some = edgesOf(values, Math.floor(values.length / LOOKED_AT));
  if (some.highest > some.lowest) return some;
  const all = edgesOf(values, 1);
  return all.highest > all.lowest ? all : undefined;
}

/** A few values are put in order by hand: sorting a typed array is a call out of the compiled code. */
function sortedCopy(values: Float64Array): Float64Array {
  const sorted = values.slice();
  if (sorted.length > SHORT) return sorted.sort();
  for (let n = 1; n < sorted.length; n += 1) {
    const value = sorted[n] ?? 0;
    let to = n;
    for (; to > 0 && (sorted[to - 1] ?? 0) > value; to -= 1) sorted[to] = sorted[to - 1] ?? 0;
    sorted[to] = value;
  }
  return sorted;
}

/**
 * How many of the ascending `limits` (fewer than 256) each value reaches. The limits lie among the values.
 * Worked: 5, 3, 9, 1 between 3 and 5 gives 2, 1, 2, 0.
 */
export function placedBetween(values: Float64Array, limits: Float64Array): Uint8Array {
  const { lowest, highest } = edgesOf(values, 1);
  const perBox = (BOXES - 1) / (highest - lowest);
  // A value whose box lies behind that of a limit has reached the limit; only limits in its own box are compared.
  const reachedBefore = new Uint8Array(BOXES);
  let reached = 0;
  for (let box = 0; box < BOXES; box += 1) {
    while (reached < limits.length && boxAt(limits[reached] ?? 0, lowest, highest, perBox) < box) reached += 1;
    reachedBefore[box] = reached;
  }
  const places = new Uint8Array(values.length);
  const count = values.length;
  for (let s = 0; s < count; s += 1) {
    const value = values[s] ?? 0;
    let place = reachedBefore[boxAt(value, lowest, highest, perBox)] ?? 0;
    while (place < limits.length && value >= (limits[place] ?? 0)) place += 1;
    places[s] = place;
  }
  return places;
}

/** Even boxes from the lowest to the highest value; what lies beyond is in the first and the last. */
function boxAt(value: number, lowest: number, highest: number, perBox: number): number {
  if (value >= highest) return BOXES - 1;
  return value > lowest ? ((value - lowest) * perBox) | 0 : 0;
}

/** Lowest value, and the highest that is not endless, of every so-manieth value. */
function edgesOf(values: Float64Array, step: number): { lowest: number; highest: number } {
  const count = values.length;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let s = 0; s < count; s += step) {
    const value = values[s] ?? 0;
    if (value < lowest && value > Number.NEGATIVE_INFINITY) lowest = value;
    if (value > highest && value < Number.POSITIVE_INFINITY) highest = value;
  }
  return { lowest, highest };
}

function boxesFor(count: number): Uint16Array {
  if (boxOf.length < count) boxOf = new Uint16Array(count);
  return boxOf;
}

/** Box of each value, and how many each box holds. */
function fillBoxes(values: Float64Array, lowest: number, highest: number, boxes: Uint16Array, counts: Int32Array): void {
  counts.fill(0);
  const count = values.length;
  const perBox = (BOXES - 1) / (highest - lowest);
  for (let s = 0; s < count; s += 1) {
    const box = boxAt(values[s] ?? 0, lowest, highest, perBox);
    boxes[s] = box;
    counts[box] = (counts[box] ?? 0) + 1;
  }
}

interface WantedBox {
  readonly box: number;
  readonly places: number[];
  readonly values: Float64Array;
}

/** The boxes that hold the wanted places, each with room for its values and the places counted from its own first. */
function wantedBoxes(places: readonly number[], count: number): WantedBox[] {
  const wanted: WantedBox[] = [];
  let box = 0;
  let before = 0;
  for (const place of places) {
    while (before + (held[box] ?? count) <= place) before += held[box++] ?? 0;
    const last = wanted[wanted.length - 1];
    if (last?.box === box) last.places.push(place - before);
    else wanted.push({ box, places: [place - before], values: new Float64Array(held[box] ?? 0) });
  }
  return wanted;
}

function sortIn(values: Float64Array, wanted: readonly WantedBox[]): void {
  // From here on a box says which of the wanted ones it is, below 0 for boxes that nobody wants.
  held.fill(-1);
  wanted.forEach(({ box }, n) => (held[box] = n));
  const filled = new Int32Array(wanted.length);
  const count = values.length;
  const boxes = boxOf;
  const places = held;
  for (let s = 0; s < count; s += 1) {
    const n = places[boxes[s] ?? 0] ?? -1;
    if (n < 0) continue;
    const list = wanted[n]?.values;
    const next = filled[n] ?? 0;
    if (list !== undefined) list[next] = values[s] ?? 0;
    filled[n] = next + 1;
  }
}
