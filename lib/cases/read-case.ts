import type { z } from 'zod';
import type { Problem, Reading } from '../problems';
import { caseSchema, type CaseFile } from './case-schema';

/** Version of the case file that this program writes; it reads this and all earlier ones. */
export const CASE_VERSION = 1;

/** Largest text that is read, in characters: a real case has some tens of thousands. */
export const LARGEST_CASE = 5_000_000;

/**
 * Reads a case file. Never throws: broken, foreign, too large or newer files come back as problems with where, what,
 * what is allowed and the next step; the text that came in is left as it is.
 */
export function readCase(text: string, where = 'case file'): Reading<CaseFile> {
  if (text.length > LARGEST_CASE) return refused('too-large', where, `The file has ${Math.round(text.length / 1e6)} million characters; a case has some tens of thousands.`, `up to ${LARGEST_CASE / 1e6} million characters`, 'Choose the file that was exported as a case.');
  if (text.trim() === '') return refused('empty', where, 'The file is empty.', 'a case exported as a file', 'Export the case again, or start a new one.');
  const parsed = parsedJson(text);
  if (parsed === undefined) return refused('broken-file', where, `The text cannot be read as JSON${brokenAt(text)}.`, 'the text of an exported case, whole', 'Export the case again; if it was sent by mail, send it as an attachment.');
  const { schema, version } = headOf(parsed);
  if (schema !== 'leeward/case') return refused('foreign-file', where, schema === undefined ? 'This is not a case of Leeward.' : `This file calls itself "${schema.slice(0, 40)}".`, 'a file whose "schema" is "leeward/case"', schema === 'leeward/air-path' ? 'Open it on the air path page.' : 'Choose a case file, or describe the fault on the start page.');
  if (typeof version === 'number' && version > CASE_VERSION) return refused('newer-version', where, `The case was written by a newer version (case version ${version}).`, `case version ${CASE_VERSION} or earlier`, 'Reload the page to get the newest version, then open it again. The file is unchanged.');
  const checked = caseSchema.safeParse(parsed);
  if (checked.success) return { value: checked.data, problems: [] };
  return { value: undefined, problems: checked.error.issues.slice(0, 20).map((issue) => problemOf(issue, where)) };
}

/** A case as text to keep or send: JSON with two spaces, ends with a line break. */
export function caseAsText(file: CaseFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

function brokenAt(text: string): string {
  try {
    JSON.parse(text);
    return '';
  } catch (error) {
    const position = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
    return position === undefined ? '' : `; it breaks off near line ${text.slice(0, Number(position)).split('\n').length}`;
  }
}

function headOf(parsed: unknown): { schema: string | undefined; version: unknown } {
  if (typeof parsed !== 'object' || parsed === null) return { schema: undefined, version: undefined };
  const schema: unknown = Reflect.get(parsed, 'schema');
  return { schema: typeof schema === 'string' ? schema : undefined, version: Reflect.get(parsed, 'version') };
}

function problemOf(issue: z.core.$ZodIssue, where: string): Problem {
  const place = `${where}, ${issue.path.map(String).join('.') || 'top'}`;
  if (issue.code === 'unrecognized_keys') return { code: 'unknown-field', level: 'stop', where: place, what: `It has the unknown field "${issue.keys.join('", "')}".`, next: 'Take the field out, or open it with the version that wrote it.' };
  const allowed = issue.code === 'invalid_value' ? issue.values.map(String).join(', ') : undefined;
  return { code: 'wrong-form', level: 'stop', where: place, what: allowed === undefined ? `${issue.message}.`.replace('..', '.') : 'What stands there is none of the values it can have.', ...(allowed === undefined ? {} : { allowed }), next: 'Correct that field; public/schema/case-1.json describes the form.' };
}

function refused(code: string, where: string, what: string, allowed: string, next: string): Reading<CaseFile> {
  return { value: undefined, problems: [{ code, level: 'stop', where, what, allowed, next }] };
}
