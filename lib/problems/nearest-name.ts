/**
 * The known name that a mistyped one most likely meant, or undefined when none is close.
 *
 * Close means at most one third of the letters changed (edit distance with swaps of neighbours).
 * `nearestName('weak-part-fna', ['weak-part-fan', 'slack-belt'])` is `weak-part-fan`.
 */
export function nearestName(typed: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(typed.length / 3)) + 1;
  for (const name of known) {
    const distance = editDistance(typed.toLowerCase(), name.toLowerCase());
    if (distance < bestDistance) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}

/**
 * Fewest single-letter insertions, deletions, replacements and swaps of neighbours that turn `a` into `b`
 * (optimal string alignment). `editDistance('slakc', 'slack')` is 1.
 */
export function editDistance(a: string, b: string): number {
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const replaced = at(oneBack, column - 1) + (a[row - 1] === b[column - 1] ? 0 : 1);
      let least = Math.min(replaced, at(oneBack, column) + 1, at(current, column - 1) + 1);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) least = Math.min(least, at(twoBack, column - 2) + 1);
      current.push(least);
    }
    twoBack = oneBack;
    oneBack = current;
  }
  return at(oneBack, b.length);
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Number.POSITIVE_INFINITY;
}
