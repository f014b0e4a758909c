/** The items of each key, keys and items in the order in which they come. */
export function groupBy<T, K>(items: readonly T[], key: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const of = key(item);
    const group = groups.get(of);
    if (group) group.push(item);
    else groups.set(of, [item]);
  }
  return groups;
}
