import { readFileSync, readdirSync } from 'node:fs';
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

let read: Reading<ReadContent> | undefined;

/** The knowledge base of this project, read once per process: a running `npm run dev` shows changed pages after a restart. */
export function readContent(folder = join(process.cwd(), 'content')): Reading<ReadContent> {
  read ??= readKnowledge(contentFiles(folder));
  return read;
}
