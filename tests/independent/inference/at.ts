/** The element at an index that the test knows to be there; throws otherwise. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const found = list[index];
  if (found === undefined) throw new Error(`got index ${index}, expected one below ${list.length}`);
  return found;
}
