import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { readCase, type CaseFile } from '@/lib/cases';
import type { Problem, Reading } from '@/lib/problems';

const sourceSchema = z.strictObject({
  where: z.string().min(1),
  /** Cause ids; none when the knowledge base has no page for what was confirmed. */
  confirmed: z.array(z.string()),
  inWords: z.string().min(1),
  domain: z.string().min(1),
});

/** A real failure that somebody got to the bottom of: its case file, and what the cause turned out to be. */
export interface SolvedCase {
  readonly id: string;
  readonly path: string;
  readonly file: CaseFile;
  readonly confirmed: readonly string[];
  readonly inWords: string;
  readonly domain: string;
  /** Where it is told; two cases of one place are one story. */
  readonly where: string;
}

/**
 * The solved cases of a folder: one case file each, and `sources.json` with what was confirmed. Cases without a
 * confirmation are stopped at, and every file that cannot be read is told of; the others still come back.
 */
export function readSolvedCases(folder = join(process.cwd(), 'tests/cases')): Reading<readonly SolvedCase[]> {
  const listPath = join(folder, 'sources.json');
  if (!existsSync(listPath)) return { value: undefined, problems: [{ code: 'no-such-file', level: 'stop', where: listPath, what: 'The list of confirmed causes is not there.', next: 'Run this in the folder of the project, from a full checkout.' }] };
  const sources = z.record(z.string(), sourceSchema).parse(JSON.parse(readFileSync(listPath, 'utf8')));
  const problems: Problem[] = [];
  const cases = readdirSync(folder).filter((name) => /^[a-z]\d{3}\.json$/.test(name)).sort().flatMap((name): SolvedCase[] => {
    const path = join(folder, name);
    const reading = readCase(readFileSync(path, 'utf8'), path);
    problems.push(...reading.problems);
    const id = name.slice(0, 4).toUpperCase();
    const source = sources[id];
    if (!source) problems.push({ code: 'no-confirmed-cause', level: 'stop', where: path, what: `${id} is not in the list of confirmed causes.`, next: `Add ${id} to sources.json.` });
    return reading.value && source ? [{ id, path, file: reading.value, confirmed: source.confirmed, inWords: source.inWords, domain: source.domain, where: source.where }] : [];
  });
  return { value: cases, problems };
}
