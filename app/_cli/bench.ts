import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { diagnosisBench } from './bench/diagnosis-bench';
import type { BenchRow } from './bench/timed';
import { tableOfText } from './table-of-text';
import { wordsOfCommand } from './words-of-command';

/**
 * Benches that lean on test data. They live with the tests, which the app must not import, so they are loaded by path
 * when a full checkout is there: [file, function that gives the rows].
 */
const AMONG_THE_TESTS: readonly (readonly [string, string])[] = [['inference-bench.ts', 'inferenceBench'], ['air-bench.ts', 'airBench']];

/** npm run bench -- [diagnosis] [inference] [air] [--json]: the named parts, or all. */
const { words, json } = wordsOfCommand({ usage: 'npm run bench -- [diagnosis] [inference] [air] [--json]', gives: 'Times the named parts, or all of them, against their targets.', options: ['--json'], among: ['diagnosis', 'inference', 'air'] });
const wanted = (part: string): boolean => words.length === 0 || words.includes(part);
const rows: BenchRow[] = wanted('diagnosis') ? diagnosisBench() : [];
for (const [file, name] of AMONG_THE_TESTS) if (wanted(file.replace('-bench.ts', ''))) rows.push(...(await rowsOf(file, name)));
console.log(json ? JSON.stringify(rows, null, 2) : tableOfText([['what', 'median ms', 'p95 ms', 'target ms', '', 'note'], ...rows.map(lineOf)]));

async function rowsOf(file: string, name: string): Promise<readonly BenchRow[]> {
  const path = join(process.cwd(), 'tests/bench', file);
  if (!existsSync(path)) {
    console.error(`${path} is not there; its rows are left out.`);
    return [];
  }
  const found: unknown = await import(pathToFileURL(path).href);
  const bench: unknown = typeof found === 'object' && found !== null ? Reflect.get(found, name) : undefined;
  if (typeof bench !== 'function') throw new Error(`bench: got no function ${name} in ${path}`);
  return (await (bench as () => Promise<readonly BenchRow[]>)());
}

function lineOf({ name, medianMs, p95Ms, target, note }: BenchRow): string[] {
  const verdict = Number.isFinite(target) ? (medianMs <= target ? 'reached' : 'MISSED') : '';
  return [name, medianMs.toFixed(2), p95Ms.toFixed(2), Number.isFinite(target) ? String(target) : '–', verdict, note ?? ''];
}
