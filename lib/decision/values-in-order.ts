/** Boxes that values are counted into, and lists that are short enough to be sorted instead. */
const BOXES = 512;
const SHORT = 48;
/** Values that tell where the boxes of a long list go: enough that hardly ever one in twenty of all lies beyond them. */
const LOOKED_AT = 100;

/** Counting is done in the same memory every time; nothing in it outlives a call. */
const held = new Int32Array(BOXES);
/** The last value of each box, and for each value the one before it in its box. */
const lastIn = new Int32Array(BOXES);
let before = new Int32Array(2048);
const few = new Float64Array(SHORT);

/**
 * The values that would stand at some places (0 to count - 1, ascending) if all were sorted, without sorting: they are counted
 * into even boxes, and only the boxes that hold a wanted place are looked at more closely. The list itself is left as it is.
 * Worked: 5, 3, 9, 1 at places 0 and 3 gives 1 and 9.
 */
export function valuesInOrder(values: Float64Array, places: readonly number[]): number[] {
  const edges = values.length <= SHORT ? undefined : usefulEdges(values);
  if (edges === undefined) {
    const sorted = values.slice().sort();
    return places.map((place) => sorted[place] ?? Number.NaN);
  }
  fillBoxes(values, edges.lowest, edges.highest, roomFor(values.length));
  const found: number[] = [];
  let box = 0;
  let passed = 0;
  let sorted = -1;
  let close: Float64Array = few;
  for (const place of places) {
    while (passed + (held[box] ?? values.length) <= place) passed += held[box++] ?? 0;
    if (sorted !== box) close = sortedBox(values, box, before);
    sorted = box;
    found.push(close[place - passed] ?? Number.NaN);
  }
  return found;
}

/** The values of one box in order. A few are put in order by hand: sorting a typed array is a call out of the compiled code. */
function sortedBox(values: Float64Array, box: number, earlier: Int32Array): Float64Array {
  const count = held[box] ?? 0;
  const list = count <= SHORT ? few : new Float64Array(count);
  let at = lastIn[box] ?? 0;
  for (let n = 0; n < count; n += 1) {
    const value = values[at] ?? 0;
    let to = n;
    if (count <= SHORT) for (; to > 0 && (list[to - 1] ?? 0) > value; to -= 1) list[to] = list[to - 1] ?? 0;
    list[to] = value;
    at = earlier[at] ?? 0;
  }
  return count <= SHORT ? list : list.sort();
}

/** Edges of some values of a long list, or of all where these are alike; undefined where all are. What lies beyond goes into the outer boxes. */
function usefulEdges(values: Float64Array): { lowest: number; highest: number } | undefined {
  const some = edgesOf(values, Math.max(1, Math.floor(values.length / LOOKED_AT)));
  if (some.highest > some.lowest) return some;
  const all = edgesOf(values, 1);
  return all.highest > all.lowest ? all : undefined;
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

function roomFor(count: number): Int32Array {
  if (before.length < count) before = new Int32Array(count);
  return before;
}

/** How many values each box holds, and which. */
function fillBoxes(values: Float64Array, lowest: number, highest: number, earlier: Int32Array): void {
  held.fill(0);
  const counts = held;
  const last = lastIn;
  const count = values.length;
  const perBox = (BOXES - 1) / (highest - lowest);
  for (let s = 0; s < count; s += 1) {
    const box = boxAt(values[s] ?? 0, lowest, highest, perBox);
    counts[box] = (counts[box] ?? 0) + 1;
    earlier[s] = last[box] ?? 0;
    last[box] = s;
  }
}
