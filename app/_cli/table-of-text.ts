/** Rows as lines of columns: the first row is the head, numbers stand right, text stands left. */
export function tableOfText(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => (row[column] ?? '').length)));
  const right = widths.map((_, column) => rows.slice(1).every((row) => /^[\d\s.,%±…–+-]*$/.test(row[column] ?? '')));
  return rows
    .map((row) => row.map((cell, column) => (right[column] ? cell.padStart(widths[column] ?? 0) : cell.padEnd(widths[column] ?? 0))).join('  ').trimEnd())
    .join('\n');
}
