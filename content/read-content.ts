import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readKnowledge, type ContentFile, type ReadContent } from '@/lib/knowledge';
import type { Reading } from '@/lib/problems';

/** Every page and list of a content folder as text, with paths relative to it. Blank forms are left out. */
export function contentFiles(folder: string): ContentFile[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => /\.(mdx|yaml)$/.test(path) && !path.startsWith('_blank/'))
    .sort()
    .map((path) => ({ path, text: readFileSync(join(folder, path), 'utf8') }));
}

let read: { readonly changed: number; readonly content: Reading<ReadContent> } | undefined;

/** The knowledge base of this project, read once per process; while somebody writes pages (`npm run dev`), again after each change. */
export function readContent(folder = join(process.cwd(), 'content')): Reading<ReadContent> {
  const changed = process.env.NODE_ENV === 'development' ? lastChange(folder) : 0;
  if (read?.changed !== changed) read = { changed, content: readKnowledge(contentFiles(folder)) };
  return read.content;
}

/** When a file of the folder was last written, ms. */
function lastChange(folder: string): number {
  return Math.max(...readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((path) => statSync(join(folder, path), { throwIfNoEntry: false })?.mtimeMs ?? 0));
}
