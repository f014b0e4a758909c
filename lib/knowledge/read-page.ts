import { LineCounter, parseDocument, type Document } from 'yaml';
import type { z } from 'zod';
import { nearestName, type Problem, type Reading } from '../problems';

/** One file of content/ as text, with its path relative to content/. */
export interface ContentFile {
  readonly path: string;
  readonly text: string;
}

/** A page split into checked front matter and its MDX body. */
export interface Page<T> {
  readonly id: string;
  readonly path: string;
  readonly front: T;
  readonly body: string;
}

const FRONT_MATTER = /^---\r?\n([\s\S]*?)\r?\n---\r?\n?([\s\S]*)$/;

/** Reads one MDX page: front matter between two `---` lines, checked against `schema`; the rest is the body. */
export function readPage<T>(file: ContentFile, schema: z.ZodType<T>): Reading<Page<T>> {
  const parts = FRONT_MATTER.exec(file.text);
  if (!parts) return { value: undefined, problems: [noFrontMatter(file)] };
  const front = readYaml({ path: file.path, text: parts[1] ?? '' }, schema, 1);
  if (front.value === undefined) return { value: undefined, problems: front.problems };
  return { value: { id: idOf(file.path), path: file.path, front: front.value, body: parts[2] ?? '' }, problems: front.problems };
}

/** Reads a YAML text against `schema`; every problem carries file and line. `linesBefore` is added to each line. */
export function readYaml<T>(file: ContentFile, schema: z.ZodType<T>, linesBefore = 0): Reading<T> {
  const lines = new LineCounter();
  const parsed = parseDocument(file.text, { lineCounter: lines, prettyErrors: false });
  if (parsed.errors.length > 0) {
    return { value: undefined, problems: parsed.errors.map((error) => brokenYaml(file.path, lines.linePos(error.pos[0]).line + linesBefore, error.message)) };
  }
  const checked = schema.safeParse(parsed.toJS());
  if (checked.success) return { value: checked.data, problems: [] };
  const problems = checked.error.issues.flatMap((issue) => problemsOfIssue(issue, file.path, parsed, lines, linesBefore));
  return { value: undefined, problems };
}

/** `causes/slack-belt.mdx` → `slack-belt`. */
export function idOf(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.[a-z]+$/, '');
}

function problemsOfIssue(issue: z.core.$ZodIssue, path: string, parsed: Document, lines: LineCounter, linesBefore: number): Problem[] {
  const where = `${path} line ${String(lineOf(issue.path, parsed, lines) + linesBefore)}, ${issue.path.map(String).join('.') || 'top'}`;
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      code: 'unknown-key', level: 'stop' as const, where, what: `There is no field called "${key}" here.`,
      next: 'Take the field out, or compare with the blank form in content/_blank.',
    }));
  }
  if (issue.code === 'invalid_value') {
    const allowed = issue.values.map(String);
    const found = parsed.getIn(issue.path as (string | number)[]);
    const near = typeof found === 'string' ? nearestName(found, allowed) : undefined;
    return [{ code: 'not-allowed-here', level: 'stop', where, what: found === undefined ? 'The field is empty.' : `Found ${JSON.stringify(found)}.`, allowed: allowed.join(', '), next: near ? `Did you mean "${near}"?` : 'Use one of the allowed words.' }];
  }
  if (issue.code === 'invalid_union') {
    return [{ code: 'wrong-form', level: 'stop', where, what: describeUnion(issue), next: 'Compare with the blank form in content/_blank.' }];
  }
  return [{ code: 'wrong-form', level: 'stop', where, what: issue.message.endsWith('.') ? issue.message : `${issue.message}.`, next: 'Compare with the blank form in content/_blank.' }];
}

function describeUnion(issue: z.core.$ZodIssueInvalidUnion): string {
  const ways = issue.errors.map((errors) => errors.map((error) => `${error.path.map(String).join('.')} ${error.message}`.trim()).join('; '));
  return ways.length > 0 ? `None of the allowed forms fits (${ways.join(' | ')}).` : `${issue.message}.`;
}

function lineOf(path: readonly PropertyKey[], parsed: Document, lines: LineCounter): number {
  for (let depth = path.length; depth > 0; depth -= 1) {
    const node = parsed.getIn(path.slice(0, depth) as (string | number)[], true);
    const range = typeof node === 'object' && node !== null && 'range' in node ? (node.range as readonly number[] | null) : null;
    if (range?.[0] !== undefined) return lines.linePos(range[0]).line;
  }
  return 1;
}

function noFrontMatter(file: ContentFile): Problem {
  return { code: 'no-front-matter', level: 'stop', where: `${file.path} line 1`, what: 'The page does not start with front matter.', allowed: 'a line ---, the fields, a line ---, then the text', next: 'Copy the blank form of this kind from content/_blank and fill it in.' };
}

function brokenYaml(path: string, line: number, message: string): Problem {
  return { code: 'broken-yaml', level: 'stop', where: `${path} line ${String(line)}`, what: message.endsWith('.') ? message : `${message}.`, next: 'Check the indentation and the quotes on that line.' };
}
