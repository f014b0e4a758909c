import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tableOfText } from './table-of-text';

/** Tests that hold air and heat against values from outside; their rows are the table. */
const TESTS = ['tests/lib/airflow/check-values.test.ts', 'tests/lib/airflow/elements.test.ts', 'tests/lib/cooling/check-values.test.ts'];

interface CheckedRow {
  readonly test: string;
  readonly what: string;
  readonly ours: number;
  readonly theirs: number;
  readonly within: number;
}

/** Runs the check-value tests of the air path and gives every row: item, ours, reference, difference, what is allowed. Undefined without a full checkout. */
export function checkValueTable(): string | undefined {
  if (!TESTS.every((test) => existsSync(test))) return undefined;
  const folder = mkdtempSync(join(tmpdir(), 'check-values-'));
  const file = join(folder, 'rows');
  const run = spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...TESTS], { encoding: 'utf8', env: { ...process.env, CHECK_VALUE_TABLE: file } });
  const rows = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n').map((line) => JSON.parse(line) as CheckedRow) : [];
  rmSync(folder, { recursive: true });
  const off = rows.filter((row) => difference(row) > row.within).length;
  return [
    ...withSections(rows),
    '',
    `${rows.length} values held against outside ones, ${off} further off than allowed; the tests ${run.status === 0 ? 'pass' : 'FAIL'}. Origins: tests/independent/airflow/README.md, tests/independent/cooling/README.md.`,
    '',
  ].join('\n');
}

/** The table's lines, with the sentence of each test before its rows. */
function withSections(rows: readonly CheckedRow[]): string[] {
  const [head = '', ...lines] = tableOfText([['item', 'ours', 'reference', 'difference', 'allowed', ''], ...rows.map(lineOf)]).split('\n');
  return [head, ...lines.flatMap((line, k) => (rows[k]?.test === rows[k - 1]?.test ? [line] : ['', rows[k]?.test ?? '', line]))];
}

function lineOf(row: CheckedRow): string[] {
  return [`  ${row.what}`, shown(row.ours), shown(row.theirs), percent(difference(row)), percent(row.within), difference(row) > row.within ? 'OFF' : ''];
}

function difference({ ours, theirs }: CheckedRow): number {
  return Math.abs(ours - theirs) / Math.abs(theirs);
}

function shown(value: number): string {
  return value.toPrecision(6);
}

function percent(share: number): string {
  return share < 1e-9 ? '0' : `${(100 * share).toPrecision(2)} %`;
}
