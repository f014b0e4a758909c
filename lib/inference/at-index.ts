/** The element at an index that must exist; throws with the index when it does not. */
export function atIndex<T>(list: readonly T[], index: number, what: string): T {
  const found = list[index];
  if (found === undefined) throw new Error(`inference: got ${what} ${index}, expected 0 … ${list.length - 1}`);
  return found;
}
